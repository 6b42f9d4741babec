//! The moving panel, and how it moves.

use crate::model::{Finish, HingeSide, Hinges, LeafOutside};
use crate::{Id, Section, Signed, Text};
use quantity::{
    Acceleration, AngularVelocity, Jerk, Length, Mass, MassPerArea, MassPerLength, Measured,
    Pressure, Ratio, Time, Velocity,
};

site_words! {
    /// What a member, a leaf or a track is made of.
    pub enum Material {
        /// Carbon steel.
        Steel = "steel",
        /// Stainless steel.
        StainlessSteel = "stainless steel",
        /// Aluminum alloy.
        Aluminum = "aluminum",
        /// Timber.
        Timber = "timber",
        /// Plastic.
        Plastic = "plastic",
    }
}

site_words! {
    /// What a member does in the leaf.
    pub enum MemberRole {
        /// Upper rail of the frame.
        TopRail = "top rail",
        /// Lower rail of the frame.
        BottomRail = "bottom rail",
        /// Post of the frame.
        Upright = "upright",
        /// Diagonal of the frame.
        Brace = "brace",
        /// Pickets, slats, mesh, sheet.
        Infill = "infill",
        /// Hinges, rack, edges, locks and other fittings.
        Fitting = "fitting",
    }
}

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
        /// Where the latching end stands along x when the leaf is closed; below zero where it overlaps the opening.
        closed_end: Option<Signed<Length>>,
        /// Distance of the center of gravity from the latching end.
        center_along: Option<Measured<Length>>,
        /// Height of the center of gravity above the bottom edge.
        center_up: Option<Measured<Length>>,
        /// What its frame is made of.
        material: Option<Material>,
        /// Yield strength of the frame's metal.
        yield_strength: Option<Measured<Pressure>>,
        /// Members, when the mass is to be summed rather than weighed.
        member: Vec<Member>,
        /// The hinges of a leaf that turns about an upright line.
        hinges: Option<Hinges>,
        /// How it is kept from rust.
        finish: Option<Finish>,
        /// What fills the frame.
        infill: Option<Text>,
        /// The owner has it in writing that nothing may be hung on the leaf, boarded over it or left to grow through it.
        owner_warned: Option<bool>,
        /// What is on its outside.
        outside: Option<LeafOutside>,
        /// Its hinge side, where it turns about an upright line.
        hinge_side: Option<HingeSide>,
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
        /// What it does in the leaf.
        role: Option<MemberRole>,
        /// Its section.
        section: Option<Section>,
        /// What it is made of; that of the leaf where this is missing.
        material: Option<Material>,
        /// Mass of each unit of length, where the section does not give it.
        mass_per_length: Option<Measured<MassPerLength>>,
        /// The other side of a sheet or a mesh.
        width: Option<Measured<Length>>,
        /// Mass of each unit of area of a sheet or a mesh.
        mass_per_area: Option<Measured<MassPerArea>>,
        /// Distance of its middle from the latching end; that of the leaf's middle where this is missing.
        along: Option<Measured<Length>>,
        /// Height of its middle above the bottom edge; that of the leaf's middle where this is missing.
        up: Option<Measured<Length>>,
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
        /// How fast the acceleration itself may change; missing where the controller does not round its ramps.
        jerk: Option<Measured<Jerk>>,
        /// Distance before the limit at which the slow-down is set to begin.
        slow_down_distance: Option<Measured<Length>>,
        /// How far the limit strays from one travel to the next.
        limit_repeatability: Option<Measured<Length>>,
        /// Way left between the limit and the positive stop.
        stop_gap: Option<Measured<Length>>,
        /// From the contact with an obstacle to the start of the way back.
        reversal_delay: Option<Measured<Time>>,
        /// How far it runs back from an obstacle.
        reversal_distance: Option<Measured<Length>>,
        /// Farthest that it runs on after a held control is let go, the worst of five tries each way.
        held_overtravel: Option<Measured<Length>>,
        /// It eases its push off the lock before the lock lets go.
        relieves_lock: Option<bool>,
    }
}
