//! Where the property ends, and the signs at a gate.

use crate::{Date, Id, Position, Text};
use quantity::{Length, Measured};

site_words! {
    /// What lies beyond a boundary.
    pub enum Beyond {
        /// Road, sidewalk or another way that is open to everybody.
        PublicWay = "public way",
        /// A neighbor's land.
        Neighbor = "neighbor",
        /// A drive that is shared with others.
        SharedDrive = "shared drive",
    }
}

record! {
    /// A line at which the property ends.
    pub struct Boundary {
        /// Name, unique on the site.
        id: Id,
        /// Corners of the line in their order, from the marks or the survey.
        line: Vec<Position>,
        /// Any point of the property from which the line is seen, such as the door of the house.
        inside: Option<Position>,
        /// What lies beyond it.
        beyond: Option<Beyond>,
        /// Remarks.
        note: Option<Text>,
    }
}

site_words! {
    /// What a sign says.
    pub enum SignKind {
        /// That a moving gate can kill: the placard that came with the operator, or its like.
        Warning = "warning placard",
        /// How a held control is worked, and to keep the gate in view.
        HeldControl = "held-control placard",
        /// Where people on foot go.
        OnFoot = "way on foot",
        /// Anything else.
        Other = "other",
    }
}

site_words! {
    /// From which side a sign is read.
    pub enum SignSide {
        /// From the road.
        Outside = "outside",
        /// From the property.
        Inside = "inside",
    }
}

record! {
    /// A sign at a gate.
    pub struct Sign {
        /// Name, unique on the site.
        id: Id,
        /// What it says.
        what: SignKind,
        /// The gate that it belongs to.
        gate: Option<Id>,
        /// Where it hangs.
        at: Option<Position>,
        /// From which side it is read, with the gate open and shut.
        side: Option<SignSide>,
        /// The control beside which it hangs.
        beside: Option<Id>,
        /// Height of the capital letters of its smallest line that matters.
        letter_height: Option<Measured<Length>>,
        /// Distance at which people must have read it.
        read_from: Option<Measured<Length>>,
        /// Languages in which it speaks.
        languages: Vec<Text>,
        /// A picture says the same.
        picture: Option<bool>,
        /// Day on which it was last seen there, whole and clean.
        seen: Option<Date>,
    }
}
