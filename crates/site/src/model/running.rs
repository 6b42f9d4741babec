//! What a leaf runs on, what keeps it upright, and what stops it.

use crate::model::Material;
use crate::{Id, Position, Price, Signed, Text};
use quantity::{Force, ForcePerLength, Length, Measured, Ratio, Temperature};

site_words! {
    /// What rolls on what.
    pub enum RollingPair {
        /// Steel wheel on a steel track.
        SteelOnSteel = "steel on steel",
        /// Polymer wheel or tread on a steel track.
        PolymerOnSteel = "polymer on steel",
    }
}

site_words! {
    /// What rolls inside a bearing.
    pub enum BearingKind {
        /// Balls.
        Ball = "ball",
        /// Rollers or needles.
        Roller = "roller",
    }
}

record! {
    /// Wheels or trolleys.
    pub struct Wheels {
        /// Name, where it is an entry of a parts file.
        id: Option<Id>,
        /// Entry of the parts file that they are bought as.
        part: Option<Id>,
        /// Diameter over the running surface.
        diameter: Option<Measured<Length>>,
        /// What rolls on what.
        rolling: Option<RollingPair>,
        /// Friction coefficient of the wheel bearing, at the axle.
        bearing_friction: Option<Measured<Ratio>>,
        /// Diameter of the axle.
        axle_diameter: Option<Measured<Length>>,
        /// How many carry the leaf.
        count: Option<u32>,
        /// Load that one may carry.
        rated_load: Option<Measured<Force>>,
        /// Pull upward that one may carry, where it is held down by its rail.
        rated_uplift: Option<Measured<Force>>,
        /// Distance between the foremost and the rearmost of them.
        spacing: Option<Measured<Length>>,
        /// Where the trolley next to the opening stands along x, on a cantilever slide.
        front_at: Option<Signed<Length>>,
        /// Width over which a tread bears on its rail.
        tread_width: Option<Measured<Length>>,
        /// What rolls inside its bearing.
        bearing: Option<BearingKind>,
        /// Basic dynamic load rating of its bearing (ISO 281).
        dynamic_rating: Option<Measured<Force>>,
        /// Cycles of the gate that the data sheet promises.
        rated_cycles: Option<u32>,
        /// The shape of rail or track keeps them from lifting off.
        retained: Option<bool>,
        /// What a set costs.
        price: Option<Price>,
    }
}

record! {
    /// Guide rollers or blocks.
    pub struct Guide {
        /// Friction of the guide: drag over side force.
        friction: Option<Measured<Ratio>>,
        /// How many pairs.
        count: Option<u32>,
        /// Height of the guide above the finished surface.
        height: Option<Measured<Length>>,
        /// Where the guides stand along x.
        at: Vec<Signed<Length>>,
        /// Side load that one pair may carry.
        rated_load: Option<Measured<Force>>,
        /// They sit on posts of their own and stay when the drive is taken off.
        independent_of_drive: Option<bool>,
    }
}

record! {
    /// The track of a track slide, or the rails of a lift.
    pub struct Track {
        /// Length.
        length: Option<Measured<Length>>,
        /// What it is made of.
        material: Option<Material>,
        /// Joints at which it may grow.
        joints: Option<u32>,
        /// Gap left at each of them.
        joint_gap: Option<Measured<Length>>,
        /// Temperature of the metal when the gaps were set.
        set_at: Option<Measured<Temperature>>,
        /// Greatest departure from level, over the travel.
        level_error: Option<Measured<Length>>,
        /// Greatest departure from a straight line, over the travel.
        line_error: Option<Measured<Length>>,
        /// Departure that the profile of the wheels takes.
        allowed_error: Option<Measured<Length>>,
        /// Least play between rack and pinion, over the travel.
        least_rack_play: Option<Measured<Length>>,
        /// Greatest play between rack and pinion, over the travel.
        greatest_rack_play: Option<Measured<Length>>,
        /// The beam of concrete that it lies on.
        foundation: Option<Id>,
        /// Load of one wheel of a vehicle for which its fixing is good.
        rated_wheel_load: Option<Measured<Force>>,
    }
}

site_words! {
    /// Which end of the travel a stop holds.
    pub enum TravelEnd {
        /// The open position.
        Open = "open",
        /// The closed position.
        Closed = "closed",
    }
}

record! {
    /// A positive stop.
    pub struct Stop {
        /// Which end of the travel it holds.
        end: TravelEnd,
        /// Where it is.
        at: Option<Position>,
        /// How it is made.
        how: Option<Text>,
        /// Force that it and its fixing may take.
        rated_force: Option<Measured<Force>>,
        /// The post that takes its force.
        post: Option<Id>,
        /// How stiff it is with its buffer: force over the way that it gives.
        stiffness: Option<Measured<ForcePerLength>>,
    }
}

record! {
    /// What holds a leaf at an end of its travel beside the drive: catch, hold-back, brake, bolt.
    pub struct Catch {
        /// What it is.
        what: Option<Text>,
        /// Force at the leaf's end that it holds, closed.
        closed_force: Option<Measured<Force>>,
        /// Force at the leaf's end that it holds, open.
        open_force: Option<Measured<Force>>,
        /// It holds with the drive released.
        holds_when_released: Option<bool>,
        /// By how much the leaf's end may stand too high or too low for it.
        height_band: Option<Measured<Length>>,
        /// By how much the leaf's end may stand too near or too far for it.
        length_band: Option<Measured<Length>>,
    }
}
