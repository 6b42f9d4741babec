//! How a scanner, radar or ultrasonic detector hangs and what its field is set to.

use crate::{Position, Text};
use quantity::{Angle, Length, Measured};

site_words! {
    /// What a field is made of.
    pub enum FieldPrinciple {
        /// A plane of laser light.
        Laser = "laser",
        /// Infrared light that comes back from the ground.
        Infrared = "infrared",
        /// Radar.
        Radar = "radar",
        /// Sound.
        Ultrasonic = "ultrasonic",
    }
}

record! {
    /// Something beside or in a field that may pass for a vehicle.
    pub struct Disturbance {
        /// What it is: `"hedge"`.
        what: Text,
        /// A corner of the ground that it takes.
        from: Position,
        /// The corner across from it.
        to: Position,
        /// It is masked out in the detector.
        masked: Option<bool>,
    }
}

record! {
    /// The field of a detector as it is set, told as the detector itself sees it: it looks along its `facing` from its `at`.
    pub struct FieldMount {
        /// What the field is made of.
        principle: Option<FieldPrinciple>,
        /// How far it is tilted down from level.
        tilt: Option<Measured<Angle>>,
        /// Opening of the field up and down, by its data sheet; none for a plane of light.
        opening: Option<Measured<Angle>>,
        /// How far ahead of it the field begins, as set.
        begins: Option<Measured<Length>>,
        /// How far ahead of it the field ends, as set.
        ends: Option<Measured<Length>>,
        /// How far the field reaches to what the detector takes for its left, as set.
        left: Option<Measured<Length>>,
        /// How far it reaches to what the detector takes for its right.
        right: Option<Measured<Length>>,
        /// It hangs upside down, its cable toward the sky: left and right change places.
        upside_down: Option<bool>,
        /// Its setting for left and right is turned over, which undoes that.
        mirrored: Option<bool>,
        /// Its filter for rain and snow is on.
        weather_filter: Option<bool>,
        /// What may pass for a vehicle there.
        disturbance: Vec<Disturbance>,
    }
}
