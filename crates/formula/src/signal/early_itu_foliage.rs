//! Loss of a radio wave in trees, by the early formula of the ITU.

use super::foliage::within;
use crate::OutOfReach;
use quantity::{Frequency, Gain, Length, Quantity as _};

formula! {
    /// What trees in leaf take from a radio wave that goes through them.
    ///
    /// Measured through woods with both antennas near. It gives more than other formulas for a few trees, so that it is on
    /// the safe side for a garden; wet leaves take more than dry ones, bare branches a third to a half of it.
    pub struct EarlyItuFoliage = "early-itu-foliage" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// Length of the way inside the foliage.
        depth ("d"): Length,
    }
    gives
    /// What the trees take.
    pub struct FoliageLoss {
        /// Loss that comes on top of the loss of the way.
        loss ("L"): Gain,
    }
    formula "L = 0.2 · f^0.3 · d^0.6, f in MHz, d in meters"
    valid "Up to 400 m of foliage, 200 MHz to 95 GHz; trees in leaf near an antenna."
    source { work: "early ITU vegetation model (CCIR report 236)", clause: "", evidence: Seen, seen: "cavac.at, early ITU model; the example of a book on radio propagation as quoted at homeworksource.com" }
    by early_itu_foliage
}

fn early_itu_foliage(trees: &EarlyItuFoliage) -> Result<FoliageLoss, OutOfReach> {
    let (frequency, depth) = within(trees.frequency, trees.depth)?;
    Ok(FoliageLoss {
        loss: Gain::from_base(0.2 * (frequency / 1e6).powf(0.3) * depth.powf(0.6)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn trees(gigahertz: f64, depth: f64) -> EarlyItuFoliage {
        EarlyItuFoliage {
            frequency: Frequency::from_base(gigahertz * 1e9),
            depth: Length::from_base(depth),
        }
    }

    proptest! {
        #[test]
        fn more_trees_and_shorter_waves_lose_more(f in 0.3..30.0, d in 0.0..200.0, more in 0.1..100.0) {
            let here = trees(f, d).evaluate().unwrap().loss;
            prop_assert!(trees(f, d + more).evaluate().unwrap().loss > here);
            prop_assert!(trees(2.0 * f, d).evaluate().unwrap().loss >= here);
        }
    }

    #[test]
    fn a_whole_forest_and_long_waves_are_refused() {
        assert_eq!(trees(1.0, 500.0).evaluate().unwrap_err().input, "depth");
        assert_eq!(trees(0.1, 5.0).evaluate().unwrap_err().input, "frequency");
    }
}
