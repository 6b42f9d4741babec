//! How the drive of a gate is let go by hand.

use crate::{Date, Id, Position, Text};
use quantity::{Force, Length, Measured, Time};

site_words! {
    /// A side of the gate line.
    pub enum GateSide {
        /// On the property (+y).
        Inside = "inside",
        /// Toward the road (−y).
        Outside = "outside",
    }
}

site_words! {
    /// What it takes to get at something that is worked by hand.
    pub enum KeyNeeded {
        /// Nothing: anybody can work it.
        NoKey = "no key",
        /// A key or tool that is kept beside it, behind glass for instance.
        BesideIt = "key beside it",
        /// A key that those who may need it carry on them.
        Carried = "key carried",
        /// A key that has to be fetched.
        Elsewhere = "key elsewhere",
    }
}

record! {
    /// A place at which the drive of a gate is let go by hand, so that the leaf can be pushed.
    pub struct HandRelease {
        /// The operator that it lets go; missing where it lets go every one of the gate.
        operator: Option<Id>,
        /// Where its handle or lock is.
        at: Option<Position>,
        /// Where the person who works it stands: middle between the feet.
        stand_at: Option<Position>,
        /// From which sides of the gate line somebody gets to it with the gate shut.
        reached_from: Vec<GateSide>,
        /// What it takes to get at it.
        key: Option<KeyNeeded>,
        /// Who has the key: `["yard master", "fire department"]`.
        held_by: Vec<Text>,
        /// Force at its handle, where it differs from the operator's data sheet, by a pull scale.
        effort: Option<Measured<Force>>,
        /// It works with mains and battery off.
        without_power: Option<bool>,
        /// It draws the lock as well.
        frees_lock: Option<bool>,
        /// From a person before it, key in hand, until the leaf can be pushed, by the watch.
        time: Option<Measured<Time>>,
        /// Who has been shown how to let go and to engage again.
        shown_to: Vec<Text>,
        /// Day on which they were last shown.
        shown: Option<Date>,
        /// Engaged again, the leaf stays still until it is told to move, and every protective device acts from its first inch.
        restores_protection: Option<bool>,
        /// Shortest way of an arm or a stick to it from where anybody may stand outside: over, under or through.
        from_outside: Option<Measured<Length>>,
        /// Remarks.
        note: Option<Text>,
    }
}
