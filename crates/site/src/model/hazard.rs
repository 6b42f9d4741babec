//! What is on a leaf, beside it and on its drive that can catch, hook, cut or carry somebody.

use crate::Text;
use quantity::{Angle, Area, Length, Measured};

site_words! {
    /// What became of the latch that was worked by hand.
    pub enum ManualLatch {
        /// There is none.
        None = "none",
        /// It is pinned open or taken apart.
        Disabled = "disabled",
        /// It still falls or can be thrown.
        Working = "working",
    }
}

record! {
    /// What is on the outside of a leaf.
    pub struct LeafOutside {
        /// How far the lowest thing sticks down below the bottom edge, wheels of a track left out.
        bottom_protrusion: Option<Measured<Length>>,
        /// A gloved hand was run over every edge up to 6 ft and nothing cut or caught it.
        edges_smooth: Option<bool>,
        /// What became of the latch that was worked by hand.
        manual_latch: Option<ManualLatch>,
        /// Something on it offers a hold to a hand or a foot: a rail, a ledge, a wide mesh.
        hand_hold: Option<bool>,
        /// Height above the finished surface of the lowest barbed wire.
        barbed_wire: Option<Measured<Length>>,
        /// Height above the finished surface of the lowest barbed tape.
        barbed_tape: Option<Measured<Length>>,
        /// Things fixed to it that reach past its faces.
        fixed: Vec<FixedOnLeaf>,
    }
}

record! {
    /// A thing fixed to a leaf.
    pub struct FixedOnLeaf {
        /// What it is: sign, bracket, handle.
        what: Text,
        /// How far it reaches past the face of the leaf.
        reach: Option<Measured<Length>>,
        /// Its cross-section, as it would meet somebody.
        cross_section: Option<Measured<Area>>,
    }
}

record! {
    /// The hinge side of a swing leaf.
    pub struct HingeSide {
        /// From the center line of the pivot to the end of the wall, pillar or post that carries the leaf.
        pivot_to_end: Option<Measured<Length>>,
        /// The gap between the leaf's heel and what carries it, taped at several angles: the narrowest of three heights.
        gap: Vec<HingeGap>,
        /// A cover closes the whole gap at every angle, does not fold into it, and comes off only with a tool.
        covered: Option<bool>,
    }
}

record! {
    /// A gap at the hinge side with the leaf turned by an angle.
    pub struct HingeGap {
        /// Angle by which the leaf is open.
        angle: Measured<Angle>,
        /// The gap there.
        gap: Measured<Length>,
    }
}

record! {
    /// Covers over what rolls and drives.
    pub struct RunningCovers {
        /// Height above the finished surface of the lowest roller or trolley that carries weight.
        roller_height: Option<Measured<Length>>,
        /// A guard covers those rollers, so that no finger gets between roller and rail.
        rollers_covered: Option<bool>,
        /// Height above the finished surface of rack, pinion, chain or rope.
        drive_height: Option<Measured<Length>>,
        /// A guard covers the place where rack and pinion, chain and sprocket or rope and drum run together.
        drive_covered: Option<bool>,
        /// These guards come off only with a tool.
        need_tool: Option<bool>,
    }
}
