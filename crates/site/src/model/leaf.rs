//! The moving panel, and how it moves.

use crate::{Id, Text};
use quantity::{
    Acceleration, AngularVelocity, Length, Mass, MassPerLength, Measured, Ratio, Velocity,
};

record! {
    /// A leaf: the moving panel.
    pub struct Leaf {
        /// Name of the leaf, unique on the site.
        id: Id,
        /// Length along the gate line, tail included.
        length: Option<Measured<Length>>,
        /// Part of the length beyond the opening that balances a cantilever leaf.
        tail: Option<Measured<Length>>,
        /// Height of the leaf itself.
        height: Option<Measured<Length>>,
        /// Thickness.
        thickness: Option<Measured<Length>>,
        /// Gap between the leaf and the finished surface.
        ground_clearance: Option<Measured<Length>>,
        /// Mass of everything that moves.
        mass: Option<Measured<Mass>>,
        /// Solid area over whole area, seen from the front.
        solidity: Option<Measured<Ratio>>,
        /// Largest opening through the leaf, as a ball that just passes.
        opening: Option<Measured<Length>>,
        /// Height above the finished surface to which openings are guarded by bars or mesh.
        guarded_height: Option<Measured<Length>>,
        /// Depth of bars or frame that stick out of the leaf's face.
        protrusion: Option<Measured<Length>>,
        /// Members, when the mass is to be summed rather than weighed.
        member: Vec<Member>,
        /// What fills the frame.
        infill: Option<Text>,
    }
}

record! {
    /// A member of the leaf's frame.
    pub struct Member {
        /// What it is: `"top rail, 2x2x1/8 tube"`.
        what: Text,
        /// How many.
        count: Option<u32>,
        /// Length of one.
        length: Option<Measured<Length>>,
        /// Mass of each unit of length.
        mass_per_length: Option<Measured<MassPerLength>>,
    }
}

record! {
    /// How a leaf moves through its travel.
    pub struct Profile {
        /// Cruise speed of a sliding or lifting leaf.
        cruise_speed: Option<Measured<Velocity>>,
        /// Cruise speed of a turning leaf.
        cruise_turning_speed: Option<Measured<AngularVelocity>>,
        /// Acceleration from rest to cruise.
        acceleration: Option<Measured<Acceleration>>,
        /// Usual slow-down toward the stop.
        deceleration: Option<Measured<Acceleration>>,
        /// Creep speed at the end.
        creep_speed: Option<Measured<Velocity>>,
        /// Distance covered at creep speed.
        creep_distance: Option<Measured<Length>>,
        /// Braking when a device trips.
        stopping_deceleration: Option<Measured<Acceleration>>,
    }
}
