//! How a leaf is hung or taken down, and what holds it at each step.

use crate::{Id, Text};
use quantity::{Force, Length, Measured, Velocity};

record! {
    /// The hanging or the taking down of a leaf.
    pub struct Hanging {
        /// Name, unique on the site.
        id: Id,
        /// The leaf.
        leaf: Option<Id>,
        /// Wind above which the work stops.
        stops_at_wind: Option<Measured<Velocity>>,
        /// The steps in order.
        step: Vec<HangingStep>,
    }
}

record! {
    /// A step of it.
    pub struct HangingStep {
        /// What is done.
        what: Text,
        /// What holds the leaf while it is done.
        hold: Vec<Hold>,
    }
}

record! {
    /// Something that holds a leaf.
    pub struct Hold {
        /// What it is: prop, strap, hoist, hinge, guide.
        what: Text,
        /// Load that it is rated to carry upright.
        rated_load: Option<Measured<Force>>,
        /// Sideways force that it is good for.
        side_load: Option<Measured<Force>>,
        /// Height at which it holds the leaf sideways, as far above the leaf's bottom.
        height: Option<Measured<Length>>,
    }
}
