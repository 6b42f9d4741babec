//! Radio links between a gate and a house, mobile modems, and the radio of hand remotes.

use crate::{Id, Position, Signed, Text};
use quantity::{Gain, Length, Measured, PowerLevel, Ratio, Velocity};

site_words! {
    /// What a radio link is.
    pub enum RadioLinkKind {
        /// Two radios of one's own that look at each other.
        Bridge = "bridge",
        /// A modem in a public mobile network.
        Modem = "mobile modem",
    }
}

site_words! {
    /// How the electric field of an antenna stands.
    pub enum Polarized {
        /// Level.
        Horizontal = "horizontal",
        /// Upright.
        Vertical = "vertical",
    }
}

record! {
    /// A radio link.
    pub struct RadioLink {
        /// Name, unique on the site.
        id: Id,
        /// What it is.
        kind: RadioLinkKind,
        /// Rate that it has to keep: `"20 Mbit/s for two cameras"`.
        rate: Option<Text>,
        /// How its electric field stands.
        polarization: Option<Polarized>,
        /// Its end at the gate.
        near: Option<RadioEnd>,
        /// Its other end.
        far: Option<RadioEnd>,
        /// How far the signal has to stand above what the receiver needs on an ordinary day.
        wanted_margin: Option<Measured<Gain>>,
        /// The hardest rain in which it still has to work.
        rain_rate: Option<Measured<Velocity>>,
        /// Tops of the ground and of what stands on it along the way, from one end to the other.
        ground: Vec<Position>,
        /// Trees and hedges through which it goes.
        tree: Vec<RadioTree>,
        /// Vehicles that may be parked in its way.
        parked: Vec<ParkedInPath>,
        /// Level that the radio at the gate shows, logged for a day in dry weather.
        level: Option<Signed<PowerLevel>>,
        /// Share of an hour in which it sends at most.
        on_air: Option<Measured<Ratio>>,
        /// What else uses this band here, and who was asked: `"nobody; scanned 2026-05-02"`.
        neighbors: Option<Text>,
    }
}

record! {
    /// One end of a radio link.
    pub struct RadioEnd {
        /// The radio, where it is one of the site's.
        device: Option<Id>,
        /// Where its antenna is.
        at: Option<Position>,
        /// Power at the transmitter's socket, as set.
        power: Option<Signed<PowerLevel>>,
        /// Gain of its antenna.
        antenna_gain: Option<Signed<Gain>>,
        /// Loss in cable and plugs between radio and antenna.
        cable_loss: Option<Measured<Gain>>,
        /// Weakest signal that it takes at the rate.
        receiver_limit: Option<Signed<PowerLevel>>,
        /// It sits in a metal box.
        in_metal_box: Option<bool>,
        /// Its antenna is outside of the box.
        antenna_outside: Option<bool>,
        /// The cable of its antenna has a surge protector, bonded where it comes in; a radio in one piece with its antenna
        /// has its data cable protected.
        surge_protected: Option<bool>,
    }
}

record! {
    /// Trees in the way of a radio link.
    pub struct RadioTree {
        /// What they are.
        what: Text,
        /// Length of the way inside them, in full leaf.
        depth: Option<Measured<Length>>,
    }
}

record! {
    /// A vehicle parked in the way of a radio link.
    pub struct ParkedInPath {
        /// The vehicle.
        vehicle: Id,
        /// The middle of where it stands.
        at: Option<Position>,
    }
}

record! {
    /// The radio of a hand remote.
    pub struct RemoteRadio {
        /// Level that it radiates with a new cell, over an antenna that sends evenly.
        radiated: Option<Signed<PowerLevel>>,
        /// How much less with a tired cell.
        tired_loss: Option<Measured<Gain>>,
        /// Height at which it is held.
        held_at: Option<Measured<Length>>,
        /// Height of the receiver's antenna above the ground.
        antenna_height: Option<Measured<Length>>,
        /// Gain of the receiver's antenna, box and cable included; below zero where the box swallows some.
        receiver_gain: Option<Signed<Gain>>,
        /// Weakest signal that the receiver takes.
        receiver_limit: Option<Signed<PowerLevel>>,
        /// How much lamps, supplies and neighbors raise the noise on the channel, with everything on.
        noise: Option<Measured<Gain>>,
        /// Distance from which it has to work.
        wanted: Option<Measured<Length>>,
        /// Farthest place on the ways in and out from which the whole gate is seen.
        seen_from: Option<Measured<Length>>,
        /// Farthest from which it still worked with a tired cell, tried on site.
        tired_works_from: Option<Measured<Length>>,
        /// Share of an hour in which it sends at most.
        on_air: Option<Measured<Ratio>>,
        /// What else uses this band here, and who was asked.
        neighbors: Option<Text>,
    }
}
