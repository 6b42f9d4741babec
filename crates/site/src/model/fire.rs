//! What the fire service asks of a gate, and how it gets in.

use crate::{Date, Id, Position, Text};
use quantity::{Length, Measured};

site_words! {
    /// How the fire engine comes to the gate.
    pub enum FireApproach {
        /// In line with the gate over its own length and more.
        Straight = "straight",
        /// By a turn shortly before the gate.
        Turn = "turn",
    }
}

site_words! {
    /// By what the fire service opens a gate.
    pub enum FireOpens {
        /// A key switch that tells the operator to open.
        KeySwitch = "key switch",
        /// A siren that a sensor hears.
        Siren = "siren",
        /// A radio signal.
        Radio = "radio",
        /// A flashing light that a sensor sees.
        Light = "flashing light",
        /// A code on a keypad.
        Code = "code",
        /// A box of theirs that holds the key to the hand release.
        KeyBox = "key box",
        /// A key of theirs to the hand release.
        ReleaseKey = "key to the hand release",
        /// A padlock or a link of chain that they cut or unlock.
        Padlock = "padlock or chain",
    }
}

impl FireOpens {
    /// It needs no power: hands and a key do it.
    pub fn is_mechanical(self) -> bool {
        matches!(self, Self::KeyBox | Self::ReleaseKey | Self::Padlock)
    }
}

record! {
    /// One way in which the fire service opens a gate.
    pub struct FireOpener {
        /// The gate that it opens; missing where it opens every one.
        gate: Option<Id>,
        /// By what.
        how: Option<FireOpens>,
        /// The device that it is, where it is one.
        device: Option<Id>,
        /// Where it is; missing where the device says it.
        at: Option<Position>,
        /// The fire service has approved it for this gate.
        approved: Option<bool>,
        /// The gate stays open after it until somebody of the fire service closes it.
        holds_open: Option<bool>,
    }
}

record! {
    /// What the fire service asks of this site, and how it gets in.
    pub struct Fire {
        /// Clear width that it asks of the open gate, by its letter.
        clear_width: Option<Measured<Length>>,
        /// Clear height that it asks, by its letter.
        clear_height: Option<Measured<Length>>,
        /// Who agreed to it.
        agreed_with: Option<Text>,
        /// Day of the agreement.
        agreed: Option<Date>,
        /// How the engine comes to the gate.
        approach: Option<FireApproach>,
        /// Radius of the inner kerb of the turn into the gate.
        turn_inside: Option<Measured<Length>>,
        /// Radius to which the outer side of that turn is clear, about the same center.
        turn_outside: Option<Measured<Length>>,
        /// The ways in which it opens the gate.
        opener: Vec<FireOpener>,
    }
}
