//! Lubricant for a pull.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Volume};

formula! {
    /// Lubricant that coats a cable, or the conduit around it, over the whole pull.
    ///
    /// Bends, rough jackets and corrugated conduit take half as much again; what the container holds is more than this,
    /// never less.
    pub struct PullingLubricant = "pulling-lubricant" in Ways {
        /// Length of the pull.
        length ("L"): Length,
        /// Diameter of what is coated: inside of the conduit, or outside of the cables together.
        diameter ("D"): Length,
    }
    gives
    /// Lubricant for a pull.
    pub struct LubricantNeed {
        /// Volume of lubricant.
        volume ("Q"): Volume,
    }
    formula "Q = 0.0015 · L · D, with Q in US gallons, L in feet and D in inches"
    valid "Pulls of cable into conduit; a first figure that the work on site corrects."
    source { work: "rule of thumb for pulling lubricant", clause: "0.0015 gal for each foot and inch", evidence: Seen, seen: "a trade journal of 1996 and a calculator of today, both with worked figures" }
    by lubricant
}

/// US gallons for each foot of pull and inch of diameter, in cubic meters for each square meter.
const FILM: f64 = 0.0015 * 231.0 * 0.0254 * 0.0254 * 0.0254 / (0.3048 * 0.0254);

fn lubricant(pull: &PullingLubricant) -> Result<LubricantNeed, OutOfReach> {
    positive("length", pull.length, "150 ft")?;
    positive("diameter", pull.diameter, "1.25 in")?;
    Ok(LubricantNeed {
        volume: Volume::from_base(FILM * pull.length.base() * pull.diameter.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn need(length: f64, diameter: f64) -> PullingLubricant {
        PullingLubricant {
            length: Length::from_base(length),
            diameter: Length::from_base(diameter),
        }
    }

    proptest! {
        #[test]
        fn twice_the_way_takes_twice_as_much(length in 1.0..500.0_f64, diameter in 0.005..0.2_f64) {
            let one = need(length, diameter).evaluate().unwrap().volume.base();
            let two = need(2.0 * length, diameter).evaluate().unwrap().volume.base();
            prop_assert!((two / one - 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn nothing_to_pull_is_refused() {
        assert_eq!(need(0.0, 0.02).evaluate().unwrap_err().input, "length");
        assert_eq!(need(10.0, 0.0).evaluate().unwrap_err().input, "diameter");
    }
}
