//! Posts, old pillars that serve as posts, and masts.

use crate::model::Finish;
use crate::{Id, Position, Price, Section, Text};
use quantity::{Angle, Area, Force, Length, Mass, Measured, Pressure};

site_words! {
    /// What a post is for.
    pub enum PostRole {
        /// Carries hinges.
        Hinge = "hinge",
        /// Takes the leaf's end when shut.
        Catch = "catch",
        /// Carries guides or trolleys.
        Guide = "guide",
        /// Carries devices only.
        Device = "device",
    }
}

record! {
    /// A post.
    pub struct Post {
        /// Name of the post, unique on the site.
        id: Id,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// What it is for.
        role: PostRole,
        /// Center of its foot.
        at: Option<Position>,
        /// Height above the finished surface.
        height: Option<Measured<Length>>,
        /// Width across the gate line and along it.
        width: Option<Measured<Length>>,
        /// Section, such as `"HSS 4x4x1/4"`.
        section: Option<Section>,
        /// Yield strength of its steel.
        yield_strength: Option<Measured<Pressure>>,
        /// Foundation that it stands in or on.
        foundation: Option<Id>,
        /// Heights of its hinges or guides above the finished surface.
        fixing_heights: Vec<Measured<Length>>,
        /// The leaf that hangs on it or shuts against it, where the gate has more than one.
        leaf: Option<Id>,
        /// Height of latch, lock or beam above the finished surface.
        latch_height: Option<Measured<Length>>,
        /// Movement there that latch, lock or beam tolerates.
        latch_play: Option<Measured<Length>>,
        /// Angle by which its foot turns under load, measured.
        foot_turn: Option<Measured<Angle>>,
        /// Mass of what is on top of a mast.
        top_mass: Option<Measured<Mass>>,
        /// Area that what is on top shows to the wind.
        top_area: Option<Measured<Area>>,
        /// Turn in everyday wind that what is on top tolerates.
        allowed_sway: Option<Measured<Angle>>,
        /// Largest sideways force on it beside wind and leaf: a push, a bump, a cable.
        side_force: Option<Measured<Force>>,
        /// Height of that force above the finished surface.
        side_force_height: Option<Measured<Length>>,
        /// The old pillar or wall that it is, where it is no steel post.
        pillar: Option<Pillar>,
        /// How it is kept from rust.
        finish: Option<Finish>,
        /// What it costs.
        price: Option<Price>,
    }
}

site_words! {
    /// What is inside an old pillar or wall.
    pub enum PillarCore {
        /// Nobody has looked.
        Unknown = "unknown",
        /// Hollow, or filled with loose stuff.
        Hollow = "hollow or loose fill",
        /// Masonry right through.
        Solid = "solid masonry",
        /// Concrete with bars, tied to its footing.
        Reinforced = "reinforced concrete",
    }
}

site_words! {
    /// What mortar is like when it is scratched.
    pub enum MortarState {
        /// Hard, joints full.
        Sound = "sound",
        /// Sandy, washed out or cracked.
        Weak = "weak",
    }
}

record! {
    /// An old pillar or wall that carries a hinge, a catch or a drive.
    pub struct Pillar {
        /// What it is made of, in words.
        what: Option<Text>,
        /// What is inside.
        core: Option<PillarCore>,
        /// What the mortar is like.
        mortar: Option<MortarState>,
        /// Its footing has been seen.
        footing_seen: Option<bool>,
        /// Width along the gate line.
        length: Option<Measured<Length>>,
        /// Width across the gate line.
        width: Option<Measured<Length>>,
        /// Mass above the ground.
        mass: Option<Measured<Mass>>,
        /// Load to which a fixing in it was pulled without movement.
        proof_pull: Option<Measured<Force>>,
    }
}
