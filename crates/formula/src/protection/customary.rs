//! Lengths and forces in the units in which rules of the United States print them.

use quantity::{Force, Length, Quantity as _};

/// A number of inches.
pub(super) fn inches(number: f64) -> Length {
    Length::from_base(number * 0.0254)
}

/// A number of feet.
pub(super) fn feet(number: f64) -> Length {
    Length::from_base(number * 0.3048)
}

/// A number of pounds of force.
pub(super) fn pounds_force(number: f64) -> Force {
    Force::from_base(number * 4.448_221_615_260_5)
}
