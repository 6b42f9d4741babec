//! Adhesive for anchor holes, and how many cartridges that is.

use super::concrete::within;
use super::whole::whole_number_up;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio, Volume};

formula! {
    /// Adhesive for the holes of anchors, with waste, and the cartridges for it.
    ///
    /// The gap around the rod is filled, its threads taken as solid. What the mixing nozzle keeps and what is thrown
    /// away at the start of each nozzle is a volume of its own for each: nozzles harden while you walk. A quarter more
    /// than the gap is usual; holes in hollow block take several times as much and follow the product's table.
    pub struct AdhesiveOrder = "adhesive-order" in Standing {
        /// Number of holes.
        holes ("n"): u32,
        /// Diameter of the hole.
        hole_diameter ("D"): Length,
        /// Diameter of the rod.
        rod_diameter ("d"): Length,
        /// Depth of the hole.
        depth ("h"): Length,
        /// Share added for waste.
        waste ("w"): Ratio,
        /// Number of nozzles that will be used.
        nozzles ("m"): u32,
        /// Adhesive lost with each nozzle.
        nozzle_loss ("Vn"): Volume,
        /// Adhesive in a cartridge.
        cartridge ("Vc"): Volume,
    }
    gives
    /// Adhesive and cartridges.
    pub struct AdhesiveNeed {
        /// Volume of one empty hole.
        hole ("Vh"): Volume,
        /// Adhesive around one rod.
        each ("V1"): Volume,
        /// Adhesive in all, with waste and nozzles.
        total ("V"): Volume,
        /// Cartridges, rounded up.
        cartridges ("N"): u32,
    }
    formula "Vh = π/4 · D² · h\nV1 = π/4 · (D² − d²) · h\nV = n · V1 · (1 + w) + m · Vn\nN = V / Vc, rounded up"
    valid "Round holes in solid concrete; waste up to 200 %."
    source { work: "volume of a ring", clause: "", evidence: Physics, seen: "geometry" }
    by order
}

fn order(need: &AdhesiveOrder) -> Result<AdhesiveNeed, OutOfReach> {
    if !(1..=10_000).contains(&need.holes) {
        return Err(OutOfReach::new(
            "holes",
            "give the number of holes, from 1 to 10,000",
        ));
    }
    if need.nozzles > 10_000 {
        return Err(OutOfReach::new(
            "nozzles",
            "give the number of nozzles, up to 10,000",
        ));
    }
    positive("rod_diameter", need.rod_diameter, "5/8 in")?;
    if need.hole_diameter.base() <= need.rod_diameter.base() {
        return Err(OutOfReach::new(
            "hole_diameter",
            "the hole is wider than its rod; give its diameter, such as 3/4 in",
        ));
    }
    positive("depth", need.depth, "6 in")?;
    not_negative("nozzle_loss", need.nozzle_loss, "1 in³")?;
    positive("cartridge", need.cartridge, "650 mL")?;
    within(
        "waste",
        need.waste,
        0.0,
        2.0,
        "give the share added for waste, such as 25 %, at most 200 %",
    )?;
    let quarter = std::f64::consts::FRAC_PI_4 * need.depth.base();
    let hole = quarter * need.hole_diameter.base().powi(2);
    let each = hole - quarter * need.rod_diameter.base().powi(2);
    let total = f64::from(need.holes) * each * (1.0 + need.waste.base())
        + f64::from(need.nozzles) * need.nozzle_loss.base();
    Ok(AdhesiveNeed {
        hole: Volume::from_base(hole),
        each: Volume::from_base(each),
        total: Volume::from_base(total),
        cartridges: whole_number_up("cartridge", total / need.cartridge.base())?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn need(holes: u32, hole: f64, rod: f64) -> AdhesiveOrder {
        AdhesiveOrder {
            holes,
            hole_diameter: Length::from_base(hole),
            rod_diameter: Length::from_base(rod),
            depth: Length::from_base(0.125),
            waste: Ratio::from_base(0.25),
            nozzles: 1,
            nozzle_loss: Volume::from_base(15e-6),
            cartridge: Volume::from_base(280e-6),
        }
    }

    proptest! {
        #[test]
        fn the_cartridges_are_enough(holes in 1_u32..60, rod in 0.008..0.03, gap in 0.001..0.006) {
            let found = need(holes, rod + gap, rod).evaluate().unwrap();
            prop_assert!(f64::from(found.cartridges) * 280e-6 >= found.total.base() * (1.0 - 1e-9));
            prop_assert!(found.each < found.hole);
        }
    }

    #[test]
    fn a_rod_that_does_not_fit_is_refused() {
        assert_eq!(
            need(4, 0.012, 0.016).evaluate().unwrap_err().input,
            "hole_diameter"
        );
    }
}
