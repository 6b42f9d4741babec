//! How far a control stands from the moving gate.

use super::customary::feet;
use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::Length;

formula! {
    /// Whether a control stands far enough from the gate that nobody can touch the moving leaf while working it.
    ///
    /// The rule itself names no number; trade guidance puts it at 6 ft, and some operator manuals ask for more: the
    /// larger holds. Measure to the nearest point that any moving part reaches, and look whether an arm through the
    /// leaf or the fence comes nearer.
    pub struct ControlDistance = "control-distance" in Protection {
        /// Distance from the control to the nearest point of the travel.
        distance ("d"): Length,
        /// Distance that the operator's own manual asks for; 0 where it names none.
        manual_distance ("dm"): Length,
    }
    gives
    /// How a control's distance stands to the guidance.
    pub struct ControlRule {
        /// Least distance.
        least ("dmin"): Length,
        /// Distance to spare; below zero where the control is too near.
        spare ("d − dmin"): Length,
        /// Whether the guidance is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "dmin = max(6 ft, dm)\nd ≥ dmin"
    valid "Controls that people work by hand: buttons, keypads, readers, intercoms; United States."
    source { work: "UL 325, installation instructions; DASMA gate safety brochure, 2020", clause: "", evidence: Seen, seen: "operator manuals that reprint the rule, the brochure's drawing labeled 6 ft, and an operator guide that states 6 ft; one manual asks 8 ft (addresses withheld)" }
    by control_rule
}

fn control_rule(control: &ControlDistance) -> Result<ControlRule, OutOfReach> {
    not_negative("distance", control.distance, "8 ft")?;
    not_negative("manual_distance", control.manual_distance, "6 ft")?;
    let guidance = feet(6.0);
    let least = if control.manual_distance > guidance {
        control.manual_distance
    } else {
        guidance
    };
    Ok(ControlRule {
        least,
        spare: control.distance - least,
        verdict: verdict(is_at_least(control.distance, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn control(distance: f64, manual: f64) -> ControlDistance {
        ControlDistance {
            distance: Length::from_base(distance),
            manual_distance: Length::from_base(manual),
        }
    }

    proptest! {
        #[test]
        fn a_manual_never_lets_it_stand_nearer(distance in 0.0..5.0, manual in 0.0..5.0) {
            let (with, without) = (control(distance, manual), control(distance, 0.0));
            prop_assert!(with.evaluate().unwrap().least >= without.evaluate().unwrap().least);
            prop_assert!(with.evaluate().unwrap().least.base() >= manual);
        }
    }

    #[test]
    fn a_distance_below_zero_is_refused() {
        assert_eq!(control(-1.0, 0.0).evaluate().unwrap_err().input, "distance");
    }
}
