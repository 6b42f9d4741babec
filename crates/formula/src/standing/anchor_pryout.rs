//! Concrete pried out behind anchors that are shoved.

use super::concrete::inches;
use super::factors::reduction;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Length, Quantity as _, Ratio};

formula! {
    /// Strength against short stiff anchors prying out the concrete behind them when shoved, by ACI 318-19.
    ///
    /// The breakout strength is that of all anchors that take shear as if they were pulled together, without earthquake
    /// factor; for adhesive anchors the lesser of breakout and bond. Edges do not matter here beyond what they take from
    /// that strength.
    pub struct AnchorPryout = "anchor-pryout" in Standing {
        /// Effective embedment.
        embedment ("hef"): Length,
        /// Nominal breakout strength in tension, or bond strength where that is less.
        tension ("Ncpg"): Force,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Pry-out strength.
    pub struct Pryout {
        /// Factor for the embedment.
        factor ("kcp"): Ratio,
        /// Nominal strength.
        nominal ("Vcpg"): Force,
        /// Design strength.
        design ("φVcpg"): Force,
    }
    formula "Vcpg = kcp · Ncpg\nkcp = 1 where hef < 2.5 in, otherwise 2"
    valid "Anchors as in the calculation of the tension strength."
    source { work: "ACI 318-19", clause: "17.7.3.1", evidence: Seen, seen: "worked examples to ACI 318-11 and of an anchor maker's guide (name withheld)" }
    by pryout
}

fn pryout(anchors: &AnchorPryout) -> Result<Pryout, OutOfReach> {
    positive("embedment", anchors.embedment, "4 in")?;
    positive("tension", anchors.tension, "5,000 lbf")?;
    reduction(anchors.reduction)?;
    let factor = if inches(anchors.embedment) < 2.5 * (1.0 - 1e-9) {
        1.0
    } else {
        2.0
    };
    let nominal = anchors.tension * factor;
    Ok(Pryout {
        factor: Ratio::from_base(factor),
        nominal,
        design: nominal * anchors.reduction,
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
        fn a_deeper_anchor_never_pries_out_sooner(embedment in 0.01..0.5, more in 0.0..0.1) {
            let strength = |embedment: f64| {
                let anchors = AnchorPryout {
                    embedment: Length::from_base(embedment),
                    tension: Force::from_base(20e3),
                    reduction: Ratio::from_base(0.7),
                };
                anchors.evaluate().unwrap().nominal
            };
            prop_assert!(strength(embedment + more) >= strength(embedment));
        }
    }
}
