//! How an operator is joined to its leaf, and what lies between motor and leaf.

use crate::Text;
use quantity::{AngularVelocity, Force, Length, Mass, Measured, Ratio, Torque};

record! {
    /// Where the pins of a swing operator are. Measured from the hinge line with the leaf closed: along the leaf toward
    /// its free end, and across it toward the side to which it opens.
    pub struct Mounting {
        /// Rear pin or drive axis: distance behind the hinge line, away from the free end.
        rear_behind: Option<crate::Signed<Length>>,
        /// Rear pin or drive axis: distance across, toward the side to which the leaf opens.
        rear_across: Option<crate::Signed<Length>>,
        /// Front pin on the leaf: distance from the hinge line along the leaf.
        front_along: Option<Measured<Length>>,
        /// Front pin on the leaf: distance off the hinge line's plane, toward the side to which the leaf opens.
        front_across: Option<crate::Signed<Length>>,
        /// Length of a linear drive between its pins, drawn in.
        shortest: Option<Measured<Length>>,
        /// Length of a linear drive between its pins, run out.
        longest: Option<Measured<Length>>,
        /// Stroke kept in hand at each end.
        spare_stroke: Option<Measured<Length>>,
        /// First part of a folding arm, from the drive's axis to the elbow.
        crank: Option<Measured<Length>>,
        /// Second part of a folding arm, from the elbow to the leaf.
        link: Option<Measured<Length>>,
        /// Least distance between the push and the hinge line.
        least_lever_arm: Option<Measured<Length>>,
        /// Distance from the hinge line to the face of the post on the drive's side.
        post_depth: Option<Measured<Length>>,
        /// Distance from the hinge line back to the near edge of the post.
        hinge_inset: Option<Measured<Length>>,
        /// Distance that the drive's line keeps from the post: half its body and some air.
        body_clearance: Option<Measured<Length>>,
        /// The farthest behind the hinge line that the rear pin may be.
        most_behind: Option<Measured<Length>>,
        /// The farthest across that the rear pin may be.
        most_across: Option<Measured<Length>>,
        /// Distance of a wall from the hinge line, across, on the side where the drive stands.
        wall_across: Option<Measured<Length>>,
    }
}

record! {
    /// The buried box of an underground drive.
    pub struct DriveBox {
        /// How far its axis stands from the hinge line.
        axis_offset: Option<Measured<Length>>,
        /// Offset that its data sheet allows.
        allowed_offset: Option<Measured<Length>>,
        /// Wheel load that its cover carries.
        cover_rating: Option<Measured<Force>>,
        /// Wheel load that may come over it.
        wheel_load: Option<Measured<Force>>,
        /// Depth of its bottom below the finished surface.
        depth: Option<Measured<Length>>,
        /// Depth of ground water in the wettest month.
        ground_water: Option<Measured<Length>>,
        /// Fall from its bottom to the drain's outlet.
        drain_fall: Option<Measured<Length>>,
        /// Where the drain comes out.
        drain_outlet: Option<Text>,
        /// Mass of the motor that is lifted out.
        motor_mass: Option<Measured<Mass>>,
    }
}

record! {
    /// One point of an operator's torque-speed curve.
    pub struct TorquePoint {
        /// Turning speed of the output shaft.
        turning_speed: Measured<AngularVelocity>,
        /// Torque of the output shaft at that speed.
        torque: Measured<Torque>,
    }
}

record! {
    /// A part between motor and leaf that may break: rack, chain, screw, arm, bracket, weld.
    pub struct DrivePart {
        /// What it is.
        what: Text,
        /// Force on the leaf, or along the ram, at which it breaks or bends for good.
        strength: Option<Measured<Force>>,
        /// Factor that is wanted between its strength and the greatest force.
        factor: Option<Measured<Ratio>>,
        /// It is meant to give way first.
        gives_first: Option<bool>,
    }
}
