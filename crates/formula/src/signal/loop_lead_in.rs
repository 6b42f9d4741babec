//! Inductance of a twisted lead-in.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Inductance, Length, Quantity as _};

formula! {
    /// Inductance that the twisted lead-in of a loop adds: two round wires side by side.
    ///
    /// Vehicles do not change it, so that it only dilutes what they do to the loop. The current is taken all over the wire; at
    /// the frequency of a detector it moves outward and the lead-in has up to a fifth less, which is on the good side. The
    /// twist itself adds nothing but a little length.
    pub struct LoopLeadIn = "loop-lead-in" in Signal {
        /// Length of the lead-in from the loop to the detector.
        length ("ll"): Length,
        /// Diameter of the bare conductor.
        wire ("d"): Length,
        /// Distance between the middles of the two wires: the diameter over the insulation of one where they lie together.
        spacing ("D"): Length,
    }
    gives
    /// What a lead-in adds.
    pub struct LeadIn {
        /// Its inductance.
        inductance ("Ll"): Inductance,
    }
    formula "Ll = μ₀ / π · ll · (ln(2 · D / d) + 1/4)"
    valid "A pair of equal wires without a screen, much longer than wide."
    source { work: "inductance of two parallel round wires, from Neumann's integral", clause: "", evidence: Physics, seen: "worked again by numerical integration in another library, see the cases" }
    by lead_in
}

/// Permeability of free space over pi (H/m).
const PAIR: f64 = 4e-7;

fn lead_in(at: &LoopLeadIn) -> Result<LeadIn, OutOfReach> {
    not_negative("length", at.length, "50 ft")?;
    positive("wire", at.wire, "1.3 mm")?;
    if at.spacing < at.wire {
        return Err(OutOfReach::new(
            "spacing",
            "the middles of two wires are at least a diameter apart",
        ));
    }
    let apart = (2.0 * at.spacing.base() / at.wire.base()).ln() + 0.25;
    Ok(LeadIn {
        inductance: Inductance::from_base(PAIR * at.length.base() * apart),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(length: f64, spacing: f64) -> LoopLeadIn {
        LoopLeadIn {
            length: Length::from_base(length),
            wire: Length::from_base(1.3e-3),
            spacing: Length::from_base(spacing),
        }
    }

    proptest! {
        #[test]
        fn longer_and_looser_is_more(length in 0.1..100.0, spacing in 1.4e-3..20e-3) {
            let of = |length, spacing| at(length, spacing).evaluate().unwrap().inductance.base();
            prop_assert!((of(2.0 * length, spacing) - 2.0 * of(length, spacing)).abs() < 1e-12);
            prop_assert!(of(length, 1.1 * spacing) > of(length, spacing));
        }
    }

    #[test]
    fn wires_in_each_other_are_refused() {
        assert_eq!(at(10.0, 1e-3).evaluate().unwrap_err().input, "spacing");
        assert_eq!(at(-1.0, 3e-3).evaluate().unwrap_err().input, "length");
    }
}
