//! Openings in which a child's head or finger can be caught, by the US playground handbook.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _};

quantity::words! {
    /// What an opening can catch.
    pub enum CaughtPart {
        /// A child's finger.
        Finger = "a finger",
        /// A child's head.
        Head = "a head",
        /// Neither, by this rule.
        None = "neither head nor finger",
    }
}

formula! {
    /// Whether an opening that does not move can catch a child's head or finger, by the US playground handbook.
    ///
    /// A child's body goes in feet first where the head does not follow. It is a rule for playgrounds and a yardstick for
    /// gates and fences where children come; other rules, such as 100 mm between pales in the United Kingdom, have
    /// another purpose and can lie inside the band. Angles that narrow downward below 55° catch a head as well.
    pub struct CpscEntrapmentOpening = "cpsc-entrapment-opening" in Protection {
        /// Smallest clear dimension of the opening.
        opening ("e"): Length,
    }
    gives
    /// What an opening can catch.
    pub struct EntrapmentOpening {
        /// What can be caught.
        caught ("–"): CaughtPart,
    }
    formula "a finger where 3/8 in < e < 1 in\na head where 3.5 in < e < 9 in"
    valid "Openings bounded all around that do not move; a closing gap is judged by iso13854-gap."
    source { work: "CPSC Public Playground Safety Handbook", clause: "as cited in Caring for Our Children 6.2.1.9", evidence: Seen, seen: "the citing standard; the handbook itself was not at hand" }
    by entrapment_opening
}

/// One inch in meters.
const INCH: f64 = 0.0254;
/// A thousandth of a millimeter, so that limits converted from another unit stay limits.
const SLACK: f64 = 1e-6;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn entrapment_opening(hole: &CpscEntrapmentOpening) -> Result<EntrapmentOpening, OutOfReach> {
    positive("opening", hole.opening, "4 in")?;
    let between = |low: f64, high: f64| {
        let opening = hole.opening.base();
        opening > low * INCH + SLACK && opening < high * INCH - SLACK
    };
    Ok(EntrapmentOpening {
        caught: if between(0.375, 1.0) {
            CaughtPart::Finger
        } else if between(3.5, 9.0) {
            CaughtPart::Head
        } else {
            CaughtPart::None
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::protection::{F2200Edition, F2200Opening, OpeningVerdict};
    use proptest::prelude::*;

    proptest! {
        /// Whatever stops the sphere of a sliding gate catches no head.
        #[test]
        fn the_sphere_keeps_heads_out(opening in 0.1..12.0) {
            let opening = Length::from_base(opening * INCH);
            let leaf = F2200Opening {
                edition: F2200Edition::Later,
                opening,
                opening_bottom: Length::from_base(0.1),
                gate_top: Length::from_base(1.8),
            };
            if leaf.evaluate().unwrap().verdict == OpeningVerdict::Stops {
                let hole = CpscEntrapmentOpening { opening };
                prop_assert!(hole.evaluate().unwrap().caught != CaughtPart::Head);
            }
        }
    }

    #[test]
    fn no_opening_is_refused() {
        let hole = CpscEntrapmentOpening {
            opening: Length::from_base(0.0),
        };
        assert_eq!(hole.evaluate().unwrap_err().input, "opening");
    }
}
