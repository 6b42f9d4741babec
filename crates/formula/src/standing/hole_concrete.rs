//! Concrete for round holes, and how many bags that is.

use super::concrete::within;
use super::whole::whole_number_up;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio, Volume};

formula! {
    /// Concrete for round holes, with waste, and the bags of dry mix for it.
    ///
    /// Bags are rounded up over all the holes together. What a bag gives stands on it; `bag-yield` has the usual
    /// values. A post of hollow section that stays empty takes its outside volume off the hole; one that is filled
    /// takes none.
    pub struct HoleConcrete = "hole-concrete" in Standing {
        /// Number of holes.
        holes ("n"): u32,
        /// Diameter of a hole.
        diameter ("D"): Length,
        /// Depth of the concrete in a hole.
        depth ("h"): Length,
        /// Volume that a post takes in a hole; 0 to leave it out.
        displaced ("Vp"): Volume,
        /// Share added for waste and ragged holes.
        waste ("w"): Ratio,
        /// Concrete that one bag gives.
        bag_yield ("Vb"): Volume,
    }
    gives
    /// Concrete and bags.
    pub struct ConcreteOrder {
        /// Concrete in one hole, without waste.
        each ("V1"): Volume,
        /// Concrete for all holes, with waste.
        total ("V"): Volume,
        /// Bags, rounded up.
        bags ("N"): u32,
    }
    formula "V1 = π/4 · D² · h − Vp\nV = n · V1 · (1 + w)\nN = V / Vb, rounded up"
    valid "Round holes of even width; waste up to 100 %."
    source { work: "volume of a cylinder", clause: "", evidence: Physics, seen: "calculators of post-hole concrete with worked numbers" }
    by concrete
}

fn concrete(hole: &HoleConcrete) -> Result<ConcreteOrder, OutOfReach> {
    if !(1..=10_000).contains(&hole.holes) {
        return Err(OutOfReach::new(
            "holes",
            "give the number of holes, from 1 to 10,000",
        ));
    }
    positive("diameter", hole.diameter, "12 in")?;
    positive("depth", hole.depth, "36 in")?;
    not_negative("displaced", hole.displaced, "0.1 ft³")?;
    positive("bag_yield", hole.bag_yield, "0.6 ft³")?;
    within(
        "waste",
        hole.waste,
        0.0,
        1.0,
        "give the share added for waste, such as 10 %, at most 100 %",
    )?;
    let full = std::f64::consts::FRAC_PI_4 * hole.diameter.base().powi(2) * hole.depth.base();
    let each = full - hole.displaced.base();
    if each <= 0.0 {
        return Err(OutOfReach::new(
            "displaced",
            "the post takes more than the hole has; give its volume below the ground only",
        ));
    }
    let total = f64::from(hole.holes) * each * (1.0 + hole.waste.base());
    Ok(ConcreteOrder {
        each: Volume::from_base(each),
        total: Volume::from_base(total),
        bags: whole_number_up("bag_yield", total / hole.bag_yield.base())?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_bags_are_enough_and_one_less_is_not(
            holes in 1_u32..40, diameter in 0.1..1.0, depth in 0.2..2.0, waste in 0.0..0.3
        ) {
            let hole = HoleConcrete {
                holes,
                diameter: Length::from_base(diameter),
                depth: Length::from_base(depth),
                displaced: Volume::from_base(0.0),
                waste: Ratio::from_base(waste),
                bag_yield: Volume::from_base(0.017),
            };
            let order = hole.evaluate().unwrap();
            let given = |bags: u32| f64::from(bags) * 0.017;
            prop_assert!(given(order.bags) >= order.total.base() * (1.0 - 1e-9));
            prop_assert!(given(order.bags - 1) < order.total.base());
        }
    }

    #[test]
    fn a_post_wider_than_its_hole_is_refused() {
        let hole = HoleConcrete {
            holes: 1,
            diameter: Length::from_base(0.3),
            depth: Length::from_base(0.9),
            displaced: Volume::from_base(0.1),
            waste: Ratio::from_base(0.1),
            bag_yield: Volume::from_base(0.017),
        };
        assert_eq!(hole.evaluate().unwrap_err().input, "displaced");
    }
}
