//! Pull-out of a post-installed anchor by its product report.

use super::concrete::{AnchorKind, strength_in_psi, within};
use super::factors::reduction;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Pressure, Quantity as _, Ratio};

formula! {
    /// Pull-out strength of an expansion, undercut or screw anchor from its product report, for stronger concrete.
    ///
    /// The report prints the strength in concrete of 2,500 psi, for cracked or for uncracked concrete, and how it grows
    /// with the strength of the concrete: usually with the square root, for small anchors less. A report without a
    /// value says that pull-out does not govern.
    pub struct AnchorPulloutProduct = "anchor-pullout-product" in Standing {
        /// Pull-out strength in concrete of 2,500 psi, from the report.
        reported ("Np"): Force,
        /// Exponent of the concrete's strength, from the report: 0.5 is usual.
        exponent ("n"): Ratio,
        /// Compressive strength of the concrete.
        concrete_strength ("f′c"): Pressure,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Pull-out strength of a post-installed anchor.
    pub struct ProductPullout {
        /// Nominal strength.
        nominal ("Npn"): Force,
        /// Design strength.
        design ("φNpn"): Force,
    }
    formula "Npn = Np · (f′c / 2,500 psi)ⁿ"
    valid "Concrete from 2,500 psi to 8,000 psi, as far as the report goes; exponent from 0 to 0.5."
    source { work: "ACI 318-19 with product reports by ACI 355.2", clause: "17.6.3.2.1", evidence: Seen, seen: "pull-out values of worked examples of an anchor maker's guide (name withheld)" }
    by product
}

fn product(anchor: &AnchorPulloutProduct) -> Result<ProductPullout, OutOfReach> {
    positive("reported", anchor.reported, "4,000 lbf")?;
    within(
        "exponent",
        anchor.exponent,
        0.0,
        0.5,
        "give the exponent of the report, such as 0.5, from 0 to 0.5",
    )?;
    let strength = strength_in_psi(anchor.concrete_strength, AnchorKind::PostInstalled)?;
    if strength < 2_500.0 * (1.0 - 1e-9) {
        return Err(OutOfReach::new(
            "concrete_strength",
            "post-installed anchors are tested in concrete of 2,500 psi and more",
        ));
    }
    reduction(anchor.reduction)?;
    let growth = (strength / 2_500.0).powf(anchor.exponent.base());
    let nominal = anchor.reported * growth;
    Ok(ProductPullout {
        nominal,
        design: nominal * anchor.reduction,
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
        fn never_less_than_reported(strength in 17.3e6..55e6, exponent in 0.0..0.5) {
            let anchor = AnchorPulloutProduct {
                reported: Force::from_base(9e3),
                exponent: Ratio::from_base(exponent),
                concrete_strength: Pressure::from_base(strength),
                reduction: Ratio::from_base(0.65),
            };
            let found = anchor.evaluate().unwrap();
            prop_assert!(found.nominal.base() >= 9e3 && found.design < found.nominal);
        }
    }
}
