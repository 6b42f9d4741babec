//! Bond stress of an adhesive that nobody has data for.

use super::anchor_reduction::AnchorLoading;
use super::concrete::PSI;
use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Pressure, Quantity as _, Ratio, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Where an adhesive anchor is set and serves.
    pub enum BondEnvironment {
        /// Outdoors: concrete dry to soaked when set, up to 175 °F in service.
        Outdoor = "outdoor",
        /// Indoors: concrete dry when set, up to 110 °F in service.
        Indoor = "indoor",
    }
}

quantity::words! {
    /// Whether an anchor is pulled all the time.
    pub enum PullDuration {
        /// Wind, bumps, a leaf that swings: no lasting pull.
        Passing = "passing",
        /// A lasting pull, such as the weight of a leaf that hangs on the anchors.
        Sustained = "sustained",
    }
}

formula! {
    /// Least bond stress that the code allows for an adhesive anchor without product data.
    ///
    /// Only for an adhesive qualified by ACI 355.4, in a hole drilled with a hammer drill or rock drill, in concrete of
    /// 2,500 psi and more that is at least 21 days old and not below 50 °F when the anchor is set. A gate stands
    /// outdoors, whatever the weather was on the day. Data of the product are far higher, and prevail.
    pub struct AnchorMinimumBond = "anchor-minimum-bond" in Standing {
        /// Where the anchor is set and serves.
        environment ("–"): BondEnvironment,
        /// Whether the pull lasts.
        duration ("–"): PullDuration,
        /// Whether earthquake counts.
        loading ("–"): AnchorLoading,
    }
    gives
    /// Least bond stresses.
    pub struct MinimumBond {
        /// Share left by a lasting pull.
        sustained_factor ("αs"): Ratio,
        /// Bond stress in cracked concrete.
        cracked ("τcr"): Pressure,
        /// Bond stress in uncracked concrete.
        uncracked ("τuncr"): Pressure,
    }
    formula "τ from the table\na lasting pull: both times 0.4\nearthquake: τcr times 0.8, τuncr times 0.4"
    valid "As said above; horizontal and overhead anchors with a lasting pull are for certified installers."
    source { work: "ACI 318-19", clause: "table 17.6.5.2.5 with notes", evidence: Seen, seen: "the table with its notes quoted in an anchor maker's guide to the code (name withheld)" }
    by minimum_bond
}

static BONDS: Stored = LazyLock::new(|| Table::read(include_str!("anchor_minimum_bond.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn minimum_bond(anchor: &AnchorMinimumBond) -> Result<MinimumBond, OutOfReach> {
    let table = Table::of(&BONDS)?;
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(anchor.environment.word()));
    let number = |place: usize| row.and_then(|row| row.get(place)).and_then(Cell::number);
    let (Some(cracked), Some(uncracked)) = (number(1), number(2)) else {
        return Err(OutOfReach::new(
            "environment",
            "the table has no bond stress for this place",
        ));
    };
    let sustained = match anchor.duration {
        PullDuration::Passing => 1.0,
        PullDuration::Sustained => 0.4,
    };
    let (shaken_cracked, shaken_uncracked) = match anchor.loading {
        AnchorLoading::Static => (1.0, 1.0),
        AnchorLoading::Earthquake => (0.8, 0.4),
    };
    Ok(MinimumBond {
        sustained_factor: Ratio::from_base(sustained),
        cracked: Pressure::from_base(cracked * sustained * shaken_cracked * PSI),
        uncracked: Pressure::from_base(uncracked * sustained * shaken_uncracked * PSI),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn indoors_holds_more_and_cracked_concrete_less() {
        let bond = |environment, duration| {
            let anchor = AnchorMinimumBond {
                environment,
                duration,
                loading: AnchorLoading::Static,
            };
            anchor.evaluate().unwrap()
        };
        for duration in PullDuration::ALL {
            let outdoor = bond(BondEnvironment::Outdoor, *duration);
            let indoor = bond(BondEnvironment::Indoor, *duration);
            assert!(outdoor.cracked < indoor.cracked && outdoor.uncracked < indoor.uncracked);
            assert!(outdoor.cracked < outdoor.uncracked);
        }
        let lasting = bond(BondEnvironment::Outdoor, PullDuration::Sustained);
        assert!(lasting.cracked < bond(BondEnvironment::Outdoor, PullDuration::Passing).cracked);
    }
}
