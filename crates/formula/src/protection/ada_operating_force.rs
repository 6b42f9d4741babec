//! Force to work a walk gate or a control, by the 2010 ADA Standards.

use super::customary::pounds_force;
use super::limit::{LimitVerdict, is_at_most, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::Force;

quantity::words! {
    /// What is worked by hand.
    pub enum HandWorked {
        /// A button, lever, latch or other operable part.
        Part = "operable part",
        /// A sliding or folding walk gate.
        SlidingGate = "sliding or folding walk gate",
        /// A hinged walk gate outdoors.
        HingedGate = "hinged walk gate outdoors",
    }
}

formula! {
    /// Whether a walk gate or a control is worked with little enough force, by the 2010 ADA Standards.
    ///
    /// A gate is pulled slowly with a spring scale at the handle: the force that keeps it moving counts, not the start
    /// and not the latch.
    pub struct AdaOperatingForce = "ada-operating-force" in Protection {
        /// What is worked by hand.
        thing ("–"): HandWorked,
        /// Force that it takes.
        force ("F"): Force,
    }
    gives
    /// How a force stands to its limit.
    pub struct AdaForce {
        /// Greatest force.
        limit ("Fmax"): Force,
        /// Force to spare; below zero where it takes too much.
        spare ("Fmax − F"): Force,
        /// Whether the limit is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "F ≤ 5 lbf"
    valid "Operable parts, sliding and folding leaves under the 2010 ADA Standards, United States."
    source { work: "2010 ADA Standards", clause: "309.4, 404.2.9", evidence: Seen, seen: "public pages of the standards" }
    by operating_force
}

fn operating_force(pull: &AdaOperatingForce) -> Result<AdaForce, OutOfReach> {
    not_negative("force", pull.force, "4 lbf")?;
    if pull.thing == HandWorked::HingedGate {
        return Err(OutOfReach::new(
            "thing",
            "that outdoor hinged gates have no limit of force is recalled only; keep it low, and ask the authority",
        ));
    }
    let limit = pounds_force(5.0);
    Ok(AdaForce {
        limit,
        spare: limit - pull.force,
        verdict: verdict(is_at_most(pull.force, limit)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn pull(thing: HandWorked, force: f64) -> AdaOperatingForce {
        AdaOperatingForce {
            thing,
            force: Force::from_base(force),
        }
    }

    proptest! {
        #[test]
        fn a_lighter_pull_never_breaks_it(force in 0.0..100.0, share in 0.0..1.0) {
            let kept = |force| pull(HandWorked::Part, force).evaluate().unwrap().verdict;
            prop_assert!(kept(force) == LimitVerdict::Broken || kept(force * share) == LimitVerdict::Kept);
        }
    }

    #[test]
    fn a_hinged_gate_outdoors_is_refused() {
        let hinged = pull(HandWorked::HingedGate, 30.0);
        assert_eq!(hinged.evaluate().unwrap_err().input, "thing");
    }
}
