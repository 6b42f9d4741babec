//! The embedments that are tried.

use quantity::{Length, Quantity as _, UnitSystem};
use site::{Anchor, AnchorKind};

/// Least and greatest depth of bonded and cast-in anchors, in diameters.
const DIAMETERS: (f64, f64) = (4.0, 20.0);
/// Least depth in meters: 2 3/8 in, 60 mm.
const LEAST: f64 = 0.060;

/// Depths of this anchor: that of its data sheet; for rods that are cast or glued in without one, every step that their
/// diameter allows; for others the depth that the site has.
pub(super) fn embedments(anchor: &Anchor, from_part: bool, units: UnitSystem) -> Vec<Length> {
    let stated = anchor.embedment.map(|embedment| embedment.nominal());
    let free = anchor
        .kind
        .is_some_and(|kind| kind.is_cast_in() || kind == AnchorKind::Adhesive);
    match (stated, anchor.diameter) {
        (_, Some(diameter)) if free && !from_part => steps(diameter.nominal(), step(units)),
        (stated, _) => stated.into_iter().collect(),
    }
}

/// Half an inch, or 10 mm.
fn step(units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Si => 0.01,
        UnitSystem::UsCustomary => 0.0127,
    }
}

fn steps(diameter: Length, step: f64) -> Vec<Length> {
    let least = (DIAMETERS.0 * diameter.base()).max(LEAST);
    let first = (least / step - 1e-9).ceil() * step;
    std::iter::successors(Some(first), |depth| Some(depth + step))
        .take_while(|depth| *depth <= DIAMETERS.1 * diameter.base() + 1e-9)
        .map(Length::from_base)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_half_inch_rod_is_tried_from_two_and_a_half_to_ten_inches() {
        let inch = 0.0254;
        let found = steps(Length::from_base(0.5 * inch), 0.5 * inch);
        assert_eq!(found.len(), 16);
        assert!((found[0].base() / inch - 2.5).abs() < 1e-9);
        assert!((found[15].base() / inch - 10.0).abs() < 1e-9);
    }
}
