//! Pull-out of a headed anchor that was cast in.

use super::concrete::{AnchorKind, Cracking, strength_in_psi};
use super::factors::{in_square_inches, pounds, reduction};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, Force, Pressure, Quantity as _, Ratio};

formula! {
    /// Strength against a cast-in headed bolt or stud pulling its head through the concrete, by ACI 318-19.
    ///
    /// The bearing area is that of the head or nut, or of a washer stiff enough, less the area of the bolt. Each anchor
    /// for itself; breakout, side-face blow-out and steel have to hold as well.
    pub struct AnchorPulloutHeaded = "anchor-pullout-headed" in Standing {
        /// Net bearing area of the head.
        bearing_area ("Abrg"): Area,
        /// Compressive strength of the concrete.
        concrete_strength ("f′c"): Pressure,
        /// Whether the concrete counts as cracked.
        cracking ("–"): Cracking,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Pull-out strength of a headed anchor.
    pub struct HeadedPullout {
        /// Factor for cracking.
        cracking_factor ("ψc,P"): Ratio,
        /// Nominal strength.
        nominal ("Npn"): Force,
        /// Design strength.
        design ("φNpn"): Force,
    }
    formula "Npn = ψc,P · 8 · Abrg · f′c\nψc,P = 1 cracked, 1.4 uncracked"
    valid "Cast-in headed bolts and studs; concrete from 1,000 psi to 10,000 psi."
    source { work: "ACI 318-19", clause: "17.6.3.2.2a and 17.6.3.3", evidence: Seen, seen: "a worked example to ACI 318-19 and example A4 of ACI 349.2R-07 in a public library; summaries of the chapter in public sources (8 · Abrg · f′c, 1.0 and 1.4)" }
    by headed
}

fn headed(anchor: &AnchorPulloutHeaded) -> Result<HeadedPullout, OutOfReach> {
    positive("bearing_area", anchor.bearing_area, "0.654 in²")?;
    let strength = strength_in_psi(anchor.concrete_strength, AnchorKind::CastIn)?;
    reduction(anchor.reduction)?;
    let cracking_factor = cracking_factor(anchor.cracking);
    let bearing = 8.0 * in_square_inches(anchor.bearing_area) * strength;
    let nominal = pounds(cracking_factor * bearing);
    Ok(HeadedPullout {
        cracking_factor: Ratio::from_base(cracking_factor),
        nominal,
        design: nominal * anchor.reduction,
    })
}

/// Factor ψc,P.
pub(super) fn cracking_factor(cracking: Cracking) -> f64 {
    match cracking {
        Cracking::Cracked => 1.0,
        Cracking::Uncracked => 1.4,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn anchor(area: f64, cracking: Cracking) -> AnchorPulloutHeaded {
        AnchorPulloutHeaded {
            bearing_area: Area::from_base(area),
            concrete_strength: Pressure::from_base(25e6),
            cracking,
            reduction: Ratio::from_base(0.7),
        }
    }

    proptest! {
        /// Eight times the strength of the concrete on the bearing area, whatever the units.
        #[test]
        fn the_head_presses_eight_times_the_strength(area in 1e-5..1e-2) {
            let found = anchor(area, Cracking::Cracked).evaluate().unwrap();
            prop_assert!((found.nominal.base() - 8.0 * area * 25e6).abs() < 1e-6 * found.nominal.base());
            let uncracked = anchor(area, Cracking::Uncracked).evaluate().unwrap();
            prop_assert!(uncracked.nominal > found.nominal);
        }
    }
}
