//! How deep the bottom of a footing has to lie.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _};

formula! {
    /// Least depth of the bottom of a footing: for its load, below frost, and never less than 12 in.
    ///
    /// The frost depth is what the local building authority says. Frost lifts a footing from its sides too: keep the
    /// hole as wide at the bottom as at the top, and drain what stands beside it.
    pub struct FootingBottom = "footing-bottom" in Standing {
        /// Depth that the load asks for; 0 where none does.
        load_depth ("d"): Length,
        /// Frost depth at the place; 0 where the ground does not freeze.
        frost_depth ("df"): Length,
        /// Depth of the bottom below the finished ground, as planned or built.
        bottom ("D"): Length,
    }
    gives
    /// Depth that is asked for, beside the planned one.
    pub struct FootingDepth {
        /// Least depth of the bottom.
        least ("Dmin"): Length,
        /// What the planned bottom lies below that, below zero where it is too shallow.
        margin ("D − Dmin"): Length,
    }
    formula "Dmin = max(d, df, 12 in)"
    valid "Footings on soil; a footing on solid rock or one protected from frost another way follows the local code."
    source { work: "IBC", clause: "1809.4 and 1809.5", evidence: Seen, seen: "a retelling of both sections: https://aeroflyjabrasisters.pages.dev/791377.html; a city ordinance with the same rule and its frost depth" }
    by bottom
}

/// Least depth of any footing in meters: 12 in.
const LEAST: f64 = 0.3048;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn bottom(footing: &FootingBottom) -> Result<FootingDepth, OutOfReach> {
    not_negative("load_depth", footing.load_depth, "4 ft")?;
    not_negative("frost_depth", footing.frost_depth, "32 in")?;
    not_negative("bottom", footing.bottom, "4 ft")?;
    let asked = footing.load_depth.base().max(footing.frost_depth.base());
    let least = Length::from_base(asked.max(LEAST));
    Ok(FootingDepth {
        least,
        margin: footing.bottom - least,
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
        fn never_less_than_any_of_the_three(load in 0.0..3.0, frost in 0.0..3.0, bottom in 0.0..3.0) {
            let footing = FootingBottom {
                load_depth: Length::from_base(load),
                frost_depth: Length::from_base(frost),
                bottom: Length::from_base(bottom),
            };
            let found = footing.evaluate().unwrap();
            let least = found.least.base();
            prop_assert!(least >= load && least >= frost && least >= 0.3048);
            prop_assert!((found.margin.base() - (bottom - least)).abs() < 1e-12);
        }
    }
}
