//! Concrete pried out behind fasteners in shear by EN 1992-4.

use super::concrete::within;
use super::en1992_cone::partial;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Quantity as _, Ratio};

formula! {
    /// Resistance against fasteners prying out the concrete behind them in shear, by EN 1992-4.
    ///
    /// Recalled; look it up before anything rests on it. The factor stands in the product's assessment. For bonded
    /// fasteners the lesser of cone and bond resistance counts.
    pub struct En1992Pryout = "en1992-pryout" in Standing {
        /// Factor of the product's assessment, from 1 to 2; 1 where it is not known.
        factor ("k8"): Ratio,
        /// Characteristic cone resistance of the fasteners that take shear, or bond resistance where that is less.
        cone ("NRk,c"): Force,
        /// Partial factor of the concrete: 1.5 is usual.
        partial ("γMc"): Ratio,
    }
    gives
    /// Pry-out resistance.
    pub struct PryoutResistance {
        /// Characteristic resistance.
        characteristic ("VRk,cp"): Force,
        /// Design resistance.
        design ("VRd,cp"): Force,
    }
    formula "VRk,cp = k8 · NRk,c\nVRd,cp = VRk,cp / γMc"
    valid "No supplementary bars counted."
    source { work: "EN 1992-4:2018", clause: "7.2.2.4", evidence: Memory, seen: "recalled" }
    by pryout
}

fn pryout(fasteners: &En1992Pryout) -> Result<PryoutResistance, OutOfReach> {
    within(
        "factor",
        fasteners.factor,
        1.0,
        2.0,
        "give the factor of the product's assessment, from 1 to 2; 1 where it is not known",
    )?;
    positive("cone", fasteners.cone, "30 kN")?;
    partial(fasteners.partial)?;
    let characteristic = fasteners.cone.base() * fasteners.factor.base();
    Ok(PryoutResistance {
        characteristic: Force::from_base(characteristic),
        design: Force::from_base(characteristic / fasteners.partial.base()),
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
        fn between_once_and_twice_the_cone(factor in 1.0..2.0, cone in 1e3..1e6) {
            let fasteners = En1992Pryout {
                factor: Ratio::from_base(factor),
                cone: Force::from_base(cone),
                partial: Ratio::from_base(1.0),
            };
            let found = fasteners.evaluate().unwrap().characteristic.base();
            prop_assert!((cone..=2.0 * cone).contains(&found));
        }
    }
}
