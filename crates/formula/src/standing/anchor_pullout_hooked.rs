//! Pull-out of a hooked anchor that was cast in.

use super::anchor_pullout_headed::cracking_factor;
use super::concrete::{AnchorKind, Cracking, inches, strength_in_psi};
use super::factors::{pounds, reduction};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Force, Length, Pressure, Quantity as _, Ratio};

formula! {
    /// Strength against a cast-in J- or L-bolt straightening and pulling out, by ACI 318-19.
    ///
    /// A hook holds far less than a head of the same size, and lets go without much warning: for posts and operators
    /// that are pulled every day a head or a plate is the better choice. Breakout and steel have to hold as well.
    pub struct AnchorPulloutHooked = "anchor-pullout-hooked" in Standing {
        /// Distance from the inner face of the shaft to the tip of the hook, three to four and a half diameters.
        hook_length ("eh"): Length,
        /// Diameter of the bolt.
        diameter ("da"): Length,
        /// Compressive strength of the concrete.
        concrete_strength ("f′c"): Pressure,
        /// Whether the concrete counts as cracked.
        cracking ("–"): Cracking,
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
    }
    gives
    /// Pull-out strength of a hooked anchor.
    pub struct HookedPullout {
        /// Factor for cracking.
        cracking_factor ("ψc,P"): Ratio,
        /// Nominal strength.
        nominal ("Npn"): Force,
        /// Design strength.
        design ("φNpn"): Force,
    }
    formula "Npn = ψc,P · 0.9 · f′c · eh · da, 3 · da ≤ eh ≤ 4.5 · da\nψc,P = 1 cracked, 1.4 uncracked"
    valid "Cast-in J- and L-bolts; concrete from 1,000 psi to 10,000 psi."
    source { work: "ACI 318-19", clause: "17.6.3.2.2b and 17.6.3.3", evidence: Seen, seen: "AISC Design Guide 1, third edition, values in a public test file; summaries of the chapter in public sources" }
    by hooked
}

fn hooked(anchor: &AnchorPulloutHooked) -> Result<HookedPullout, OutOfReach> {
    positive("diameter", anchor.diameter, "3/4 in")?;
    let (hook, diameter) = (inches(anchor.hook_length), inches(anchor.diameter));
    if !(3.0 * diameter * (1.0 - 1e-9)..=4.5 * diameter * (1.0 + 1e-9)).contains(&hook) {
        return Err(OutOfReach::new(
            "hook_length",
            "the hook counts from 3 to 4.5 diameters of the bolt; a longer one counts as 4.5, a shorter one not at all",
        ));
    }
    let strength = strength_in_psi(anchor.concrete_strength, AnchorKind::CastIn)?;
    reduction(anchor.reduction)?;
    let cracking_factor = cracking_factor(anchor.cracking);
    let nominal = pounds(cracking_factor * 0.9 * strength * hook * diameter);
    Ok(HookedPullout {
        cracking_factor: Ratio::from_base(cracking_factor),
        nominal,
        design: nominal * anchor.reduction,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn anchor(hook: f64, diameter: f64) -> AnchorPulloutHooked {
        AnchorPulloutHooked {
            hook_length: Length::from_base(hook),
            diameter: Length::from_base(diameter),
            concrete_strength: Pressure::from_base(25e6),
            cracking: Cracking::Cracked,
            reduction: Ratio::from_base(0.7),
        }
    }

    proptest! {
        #[test]
        fn a_longer_hook_holds_more_within_its_range(diameter in 0.006..0.05, times in 3.0..4.4) {
            let short = anchor(times * diameter, diameter).evaluate().unwrap();
            let long = anchor((times + 0.1) * diameter, diameter).evaluate().unwrap();
            prop_assert!(long.nominal > short.nominal);
        }

        #[test]
        fn a_hook_out_of_range_is_refused(diameter in 0.006..0.05, times in 4.6..9.0) {
            let long = anchor(times * diameter, diameter).evaluate();
            prop_assert_eq!(long.unwrap_err().input, "hook_length");
        }
    }
}
