//! What is where in an enclosure: the panel behind its door, the rails on it, the holes in its walls, and its sides in the sun.

use crate::Text;
use quantity::{Angle, Area, Length, Measured};

record! {
    /// The front of a thing as it is mounted, by its data sheet or taped.
    pub struct MountedFront {
        /// Width, along a mounting rail where it is on one.
        width: Option<Measured<Length>>,
        /// Height.
        height: Option<Measured<Length>>,
    }
}

record! {
    /// The panel in an enclosure on which everything is mounted.
    pub struct MountingPanel {
        /// Its width.
        width: Option<Measured<Length>>,
        /// Its height.
        height: Option<Measured<Length>>,
        /// From the left side of the box to its left edge, seen from the door.
        from_left: Option<Measured<Length>>,
        /// From the bottom of the box to its lower edge.
        from_bottom: Option<Measured<Length>>,
        /// Its mounting rails, the highest first.
        rails: Vec<MountingRail>,
        /// What stands or is fixed beside the rails.
        loose: Vec<LooseThing>,
        /// What the box is fixed to, and with what: `"two galvanized uprights, four bolts M10"`.
        fixed_to: Option<Text>,
    }
}

record! {
    /// A mounting rail with what is on it, from left to right.
    pub struct MountingRail {
        /// From the left edge of the panel to its beginning.
        from_left: Option<Measured<Length>>,
        /// From the lower edge of the panel to its middle.
        from_bottom: Option<Measured<Length>>,
        /// Its length.
        length: Option<Measured<Length>>,
        /// Gap kept between each thing and the next; none when missing.
        between: Option<Measured<Length>>,
        /// Names of the devices, supplies and batteries on it, and `what` of the things mounted, from the left.
        holds: Vec<Text>,
    }
}

record! {
    /// A thing in an enclosure that is on no rail.
    pub struct LooseThing {
        /// Name of a device, supply or battery, `what` of something mounted, or words for anything else.
        what: Text,
        /// From the left edge of the panel to its left side.
        from_left: Option<Measured<Length>>,
        /// From the lower edge of the panel to its lower side.
        from_bottom: Option<Measured<Length>>,
        /// Its width, where it has no front of its own.
        width: Option<Measured<Length>>,
        /// Its height, where it has no front of its own.
        height: Option<Measured<Length>>,
    }
}

record! {
    /// Where holes of one sort are drilled, and how large.
    pub struct EntryHoles {
        /// Diameter to drill or punch: one for each hole, or one for all.
        drill: Vec<Measured<Length>>,
        /// From the left side of the box to the middle of each hole, seen from the door; on a side from its front.
        from_left: Vec<Measured<Length>>,
        /// From the back of the box to their middles; on the back from the bottom.
        from_back: Option<Measured<Length>>,
    }
}

site_words! {
    /// A face of a box, seen from its door.
    pub enum BoxFace {
        /// The door.
        Front = "front",
        /// Behind the panel.
        Back = "back",
        /// To the left of whoever stands before the door.
        Left = "left",
        /// To the right.
        Right = "right",
        /// The roof.
        Top = "top",
    }
}

record! {
    /// The faces of a box on which the sun can fall.
    pub struct BoxInSun {
        /// Direction in which the door looks, counter-clockwise from +x.
        facing: Option<Measured<Angle>>,
        /// Faces that no shield, roof or wall keeps the sun from.
        lit: Vec<LitFace>,
    }
}

record! {
    /// A face of a box with what of it the sun can reach.
    pub struct LitFace {
        /// Which face.
        face: BoxFace,
        /// Area of it that the sun can reach.
        area: Option<Measured<Area>>,
    }
}
