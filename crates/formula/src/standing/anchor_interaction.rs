//! Anchors that are pulled and shoved at once.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Quantity as _, Ratio};

formula! {
    /// How much of an anchorage is used when it is pulled and shoved at once, by ACI 318-19, both ways that are allowed.
    ///
    /// The strengths are the least design strengths of all ways to fail, in tension and in shear. Either of the two
    /// shares no more than 100 % will do.
    pub struct AnchorInteraction = "anchor-interaction" in Standing {
        /// Factored pull.
        pull ("Nua"): Force,
        /// Least design strength in tension.
        tension_strength ("φNn"): Force,
        /// Factored shove.
        shove ("Vua"): Force,
        /// Least design strength in shear.
        shear_strength ("φVn"): Force,
    }
    gives
    /// Shares of the strengths that are used.
    pub struct Interaction {
        /// Share of the strength in tension.
        tension_share ("Nua / φNn"): Ratio,
        /// Share of the strength in shear.
        shear_share ("Vua / φVn"): Ratio,
        /// Both shares added.
        sum ("Σ"): Ratio,
        /// Used by the straight-line rule: the larger share where the other is up to 0.2, otherwise the sum over 1.2.
        straight ("u1"): Ratio,
        /// Used by the power rule: the sum of both shares to the power of 5/3.
        power ("u2"): Ratio,
    }
    formula "Σ = Nua / φNn + Vua / φVn\nVua / φVn ≤ 0.2: u1 = Nua / φNn\nNua / φNn ≤ 0.2: u1 = Vua / φVn\notherwise u1 = Σ / 1.2\nu2 = (Nua / φNn)^(5/3) + (Vua / φVn)^(5/3)"
    valid "Design strengths by the same code."
    source { work: "ACI 318-19", clause: "17.8 and R17.8", evidence: Seen, seen: "a worked example of an anchor maker's guide (name withheld) with equation 17.8.3 and the power of the commentary" }
    by interaction
}

/// Share up to which the other direction does not count.
const SMALL: f64 = 0.2;

fn interaction(anchors: &AnchorInteraction) -> Result<Interaction, OutOfReach> {
    not_negative("pull", anchors.pull, "1,000 lbf")?;
    positive("tension_strength", anchors.tension_strength, "4,000 lbf")?;
    not_negative("shove", anchors.shove, "500 lbf")?;
    positive("shear_strength", anchors.shear_strength, "3,000 lbf")?;
    let tension = anchors.pull.base() / anchors.tension_strength.base();
    let shear = anchors.shove.base() / anchors.shear_strength.base();
    let straight = if shear.min(tension) <= SMALL {
        tension.max(shear)
    } else {
        (tension + shear) / 1.2
    };
    let power = tension.powf(5.0 / 3.0) + shear.powf(5.0 / 3.0);
    Ok(Interaction {
        tension_share: Ratio::from_base(tension),
        shear_share: Ratio::from_base(shear),
        sum: Ratio::from_base(tension + shear),
        straight: Ratio::from_base(straight),
        power: Ratio::from_base(power),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn used(tension: f64, shear: f64) -> Interaction {
        AnchorInteraction {
            pull: Force::from_base(1e4 * tension),
            tension_strength: Force::from_base(1e4),
            shove: Force::from_base(5e3 * shear),
            shear_strength: Force::from_base(5e3),
        }
        .evaluate()
        .unwrap()
    }

    proptest! {
        #[test]
        fn the_two_directions_count_alike(tension in 0.0..1.5, shear in 0.0..1.5) {
            let (one, other) = (used(tension, shear), used(shear, tension));
            prop_assert!((one.straight - other.straight).base().abs() < 1e-12);
            prop_assert!((one.power - other.power).base().abs() < 1e-12);
        }

        #[test]
        fn neither_rule_forgives_an_overload_in_one_direction(tension in 1.0..2.0, shear in 0.0..1.0) {
            let found = used(tension, shear);
            prop_assert!(found.power.base() >= 1.0);
            prop_assert!(found.straight.base() >= 1.0 - 1e-9);
        }
    }
}
