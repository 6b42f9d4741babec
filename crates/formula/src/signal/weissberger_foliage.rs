//! Loss of a radio wave in dry trees in leaf, by Weissberger's formula.

use super::foliage::within;
use crate::OutOfReach;
use quantity::{Frequency, Length};

formula! {
    /// What dense, dry trees in leaf take from a radio wave that goes through them.
    ///
    /// Two branches that join with a small step at 14 m. It was fitted where the trees stand between the antennas and the
    /// wave goes through, not over them.
    pub struct WeissbergerFoliage = "weissberger-foliage" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// Length of the way inside the foliage.
        depth ("d"): Length,
    }
    gives
    /// What the trees take.
    pub struct DryFoliageLoss {
        /// Loss that comes on top of the loss of the way.
        loss ("L"): quantity::Gain,
    }
    formula "L = 0.45 · f^0.284 · d up to 14 m\nL = 1.33 · f^0.284 · d^0.588 from 14 m to 400 m; f in GHz, d in meters"
    valid "Up to 400 m of dense, dry trees in leaf; 230 MHz to 95 GHz."
    source { work: "Weissberger, modified exponential decay model", clause: "", evidence: Seen, seen: "formula at homeworksource.com/p/1069142" }
    by weissberger_foliage
}

/// Depth at which the branches meet, in meters.
const JOINT: f64 = 14.0;

fn weissberger_foliage(trees: &WeissbergerFoliage) -> Result<DryFoliageLoss, OutOfReach> {
    use quantity::{Gain, Quantity as _};
    let (frequency, depth) = within(trees.frequency, trees.depth)?;
    let factor = (frequency / 1e9).powf(0.284);
    let loss = if depth <= JOINT {
        0.45 * factor * depth
    } else {
        1.33 * factor * depth.powf(0.588)
    };
    Ok(DryFoliageLoss {
        loss: Gain::from_base(loss),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn loss(gigahertz: f64, depth: f64) -> f64 {
        let trees = WeissbergerFoliage {
            frequency: Frequency::from_base(gigahertz * 1e9),
            depth: Length::from_base(depth),
        };
        trees.evaluate().unwrap().loss.base()
    }

    proptest! {
        #[test]
        fn more_trees_lose_more_but_for_the_step_of_the_joint(f in 0.3..30.0, d in 0.0..300.0, more in 1.0..50.0) {
            prop_assert!(loss(f, d + more) > loss(f, d));
        }
    }

    #[test]
    fn the_branches_meet_nearly() {
        assert!((loss(1.0, 14.0) - loss(1.0, 14.000_001)).abs() < 0.03);
    }

    #[test]
    fn depths_below_zero_are_refused() {
        let trees = WeissbergerFoliage {
            frequency: Frequency::from_base(1e9),
            depth: Length::from_base(-1.0),
        };
        assert_eq!(trees.evaluate().unwrap_err().input, "depth");
    }
}
