//! A gate: its kind, its opening, what it runs on, and what stands near it.

use crate::model::{
    Balance, Catch, FallProtection, ForceTest, GateControl, Guide, HandRelease, HoldsAgainst,
    Interlock, Leaf, LeafOrder, NightApproach, Post, Profile, RunningCovers, Stop, Track, Wheels,
};
use crate::{Date, Id, Position, Signed, Text};
use quantity::{Angle, Force, Length, Measured, Ratio, Time, Torque};

site_words! {
    /// The kind of gate, by how its leaf moves.
    pub enum GateKind {
        /// Leaf on wheels on a ground track.
        TrackSlide = "track-slide",
        /// Leaf carried by trolleys beside the opening.
        CantileverSlide = "cantilever-slide",
        /// One leaf that turns about an upright line at one side.
        SingleSwing = "single-swing",
        /// Two leaves that meet in the middle.
        DoubleSwing = "double-swing",
        /// Leaf that turns up about a level pivot at one end.
        VerticalPivot = "vertical-pivot",
        /// Leaf that rises straight up.
        VerticalLift = "vertical-lift",
        /// Arm that pivots up from one end.
        BarrierArm = "barrier-arm",
    }
}

site_words! {
    /// To which side a swing leaf opens.
    pub enum SwingSide {
        /// Into the property (+y).
        IntoProperty = "into the property",
        /// Out toward the road (−y).
        TowardRoad = "toward the road",
    }
}

site_words! {
    /// What a gate does when the mains fail.
    pub enum GateOnPowerLoss {
        /// It stays as it is until somebody lets its drive go.
        Stays = "stays as it is",
        /// It runs on its battery, and opens and stays open before that is empty.
        OpensOnBattery = "opens on its battery",
        /// A spring or a weight opens it.
        OpensByItself = "opens by spring or weight",
    }
}

record! {
    /// A gate.
    pub struct Gate {
        /// Name of the gate, unique on the site.
        id: Id,
        /// The kind of gate.
        kind: GateKind,
        /// Width free for passing with the gate fully open.
        clear_opening: Option<Measured<Length>>,
        /// Distance that a sliding or lifting leaf travels between its stops.
        travel: Option<Measured<Length>>,
        /// Angle that a turning leaf travels between its stops.
        travel_angle: Option<Measured<Angle>>,
        /// To which side a swing leaf opens.
        swings: Option<SwingSide>,
        /// Slope along the travel; positive when the leaf climbs as it opens.
        slope: Option<Signed<Ratio>>,
        /// Slope of the drive across the gate line; positive when the ground rises into the property.
        cross_slope: Option<Signed<Ratio>>,
        /// Room beside the opening into which a slide leaf opens.
        run_back: Option<Measured<Length>>,
        /// Force of seals, brushes or a catch over the last part of the travel.
        seal_force: Option<Measured<Force>>,
        /// Allowance for ice, leaves and gravel on the track.
        debris_force: Option<Measured<Force>>,
        /// Time within which the owner wants it to open.
        wanted_opening_time: Option<Measured<Time>>,
        /// Run timer of the controller.
        run_timer: Option<Measured<Time>>,
        /// How long it stays open before auto-close; missing when it does not close by itself.
        hold_time: Option<Measured<Time>>,
        /// How its movement is commanded, where it does not close by itself; the least watched way counts.
        commanded: Option<GateControl>,
        /// Cycles on a usual day.
        cycles_per_day: Option<u32>,
        /// Cycles in the busiest hour of the year.
        cycles_in_busiest_hour: Option<u32>,
        /// Height free above the finished surface where a leaf rises or stands open.
        overhead_room: Option<Measured<Length>>,
        /// Height of the level pivot about which an arm or a leaf turns up, above its bottom edge when closed.
        pivot_up: Option<Signed<Length>>,
        /// Least torque of friction about the pivot or the hinge line with the drive released, by a pull scale.
        least_friction_torque: Option<Measured<Torque>>,
        /// Least friction along the travel of a leaf that slides or lifts, with the drive released, by a pull scale.
        least_friction: Option<Measured<Force>>,
        /// Weight of a person who may climb on the free end.
        climbing_load: Option<Measured<Force>>,
        /// Height free over the opening and ten steps before and behind it, the gate open: cables, branches, guides, the
        /// leaf itself; how high somebody looked, where there is nothing.
        clear_height: Option<Measured<Length>>,
        /// What it does when the mains fail.
        on_power_loss: Option<GateOnPowerLoss>,
        /// Levels of the ground that the leaf passes over.
        ground: Vec<Position>,
        /// The leaf or leaves.
        leaf: Vec<Leaf>,
        /// The wheels that carry a track slide, or the trolleys of a cantilever slide.
        wheels: Option<Wheels>,
        /// The guide that keeps a slide leaf upright.
        guide: Option<Guide>,
        /// The track or the rail that a leaf runs on.
        track: Option<Track>,
        /// How the leaf moves through its travel.
        motion: Option<Profile>,
        /// Spring or counterweight of a leaf or an arm that rises.
        balance: Option<Balance>,
        /// What holds the leaf at its ends beside the drive.
        catch: Option<Catch>,
        /// In which order two leaves move.
        leaf_order: Option<LeafOrder>,
        /// What keeps the leaf up when one part lets go.
        fall: Option<FallProtection>,
        /// Covers over what rolls and drives.
        covers: Option<RunningCovers>,
        /// Gate posts, guide posts, catch posts.
        post: Vec<Post>,
        /// Positive stops.
        stop: Vec<Stop>,
        /// Places at which its drive is let go by hand.
        release: Vec<HandRelease>,
        /// Fixed things near the travel: walls, pillars, fences, kerbs.
        nearby: Vec<FixedThing>,
        /// Contact forces measured with a force meter.
        force_test: Vec<ForceTest>,
        /// The gate, or its leaf, was there before this job.
        existing: Option<bool>,
        /// Day on which it was built.
        built: Option<Date>,
        /// Rules that it was built to, such as `"ASTM F2200-14"`, or `"none known"`.
        built_to: Option<Text>,
        /// Everybody may walk or drive on the ground before it, inside the boundary or not.
        public_in_front: Option<bool>,
        /// Gates that may not be open at the same time.
        interlock: Vec<Interlock>,
        /// What it shall hold against once it is shut.
        holds_against: Option<HoldsAgainst>,
        /// How drivers come up to it at night.
        night_approach: Vec<NightApproach>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// A fixed thing near the travel.
    pub struct FixedThing {
        /// Name, unique on the site.
        id: Id,
        /// What it is.
        what: Text,
        /// One end of it at the ground.
        from: Option<Position>,
        /// The other end of it at the ground.
        to: Option<Position>,
        /// Height above the finished surface.
        height: Option<Measured<Length>>,
        /// Least gap between it and the moving leaf.
        gap: Option<Measured<Length>>,
        /// Largest opening through it beside the travel.
        opening: Option<Measured<Length>>,
        /// Height to which that opening reaches.
        opening_height: Option<Measured<Length>>,
        /// A person sees through it: mesh, bars, glass.
        see_through: Option<bool>,
    }
}
