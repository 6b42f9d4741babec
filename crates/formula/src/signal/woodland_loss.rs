//! Loss of a radio wave that ends inside a wood.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Gain, Length, Quantity as _};

formula! {
    /// What a wood takes from a radio wave of which one antenna stands inside or behind it.
    ///
    /// It grows with the depth at first and then comes to rest, for a wave also finds its way over the trees and scattered
    /// through them.
    pub struct WoodlandLoss = "woodland-loss" in Signal {
        /// Loss of the first meter of thin woodland at this frequency.
        first_meter ("γ"): Gain,
        /// Greatest loss that the wood can take at this frequency.
        greatest ("Am"): Gain,
        /// Length of the way inside the wood.
        depth ("d"): Length,
    }
    gives
    /// What the wood takes.
    pub struct WoodLoss {
        /// Loss that comes on top of the loss of the way.
        loss ("A"): Gain,
    }
    formula "A = Am · (1 − e^(−d · γ / Am)), d in meters"
    valid "One antenna inside the wood or just behind it."
    source { work: "ITU-R P.833", clause: "terrestrial path with one terminal in woodland", evidence: Memory, seen: "not seen; from memory" }
    by woodland_loss
}

fn woodland_loss(wood: &WoodlandLoss) -> Result<WoodLoss, OutOfReach> {
    not_negative("first_meter", wood.first_meter, "0.2 dB")?;
    positive("greatest", wood.greatest, "30 dB")?;
    not_negative("depth", wood.depth, "50 m")?;
    let most = wood.greatest.base();
    let fading = -(wood.depth.base() * wood.first_meter.base() / most);
    Ok(WoodLoss {
        loss: Gain::from_base(-most * fading.exp_m1()),
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
        fn it_grows_with_the_depth_and_stays_below_its_greatest(d in 0.0..1000.0, more in 0.1..100.0) {
            let wood = |depth: f64| WoodlandLoss {
                first_meter: Gain::from_base(0.2),
                greatest: Gain::from_base(30.0),
                depth: Length::from_base(depth),
            }.evaluate().unwrap().loss.base();
            prop_assert!(wood(d) <= wood(d + more) && wood(d + more) <= 30.0 && wood(d) <= 0.2 * d + 1e-12);
        }
    }

    #[test]
    fn a_wood_that_takes_nothing_at_most_is_refused() {
        let wood = WoodlandLoss {
            first_meter: Gain::from_base(0.2),
            greatest: Gain::from_base(0.0),
            depth: Length::from_base(5.0),
        };
        assert_eq!(wood.evaluate().unwrap_err().input, "greatest");
    }
}
