//! How high a danger has to be to be out of reach, by ISO 13857.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Length, Quantity as _};

quantity::words! {
    /// How bad an injury could be.
    pub enum RiskLevel {
        /// Injuries that heal, such as scrapes.
        Low = "low",
        /// Anything worse: crushing, drawing in, shearing.
        High = "high",
    }
}

formula! {
    /// Whether a danger is so high above the ground that nobody reaches it, by ISO 13857.
    ///
    /// Count from wherever somebody can stand: a curb, a wall, a parked trailer or a foothold on the leaf. Moving parts
    /// of gates that crush, shear or draw in are a high risk.
    pub struct Iso13857Upward = "iso13857-upward" in Protection {
        /// How bad an injury could be.
        risk ("–"): RiskLevel,
        /// Height of the danger above where people stand.
        height ("h"): Length,
    }
    gives
    /// How a height stands to the reach upward.
    pub struct UpwardReach {
        /// Least height that is out of reach.
        least ("hmin"): Length,
        /// Height to spare; below zero where the danger can be reached.
        spare ("h − hmin"): Length,
        /// Whether it is out of reach.
        verdict ("–"): LimitVerdict,
    }
    formula "hmin = 2500 mm at low risk, 2700 mm at high risk"
    valid "People who stand on the ground without a ladder; machinery and powered gates."
    source { work: "ISO 13857:2019", clause: "4.2.1", evidence: Seen, seen: "an engineering consultant's page (address withheld); the standard itself was not at hand" }
    by upward
}

fn upward(danger: &Iso13857Upward) -> Result<UpwardReach, OutOfReach> {
    not_negative("height", danger.height, "2.4 m")?;
    let least = Length::from_base(match danger.risk {
        RiskLevel::Low => 2.5,
        RiskLevel::High => 2.7,
    });
    Ok(UpwardReach {
        least,
        spare: danger.height - least,
        verdict: verdict(is_at_least(danger.height, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn kept(risk: RiskLevel, height: f64) -> bool {
        let height = Length::from_base(height);
        Iso13857Upward { risk, height }.evaluate().unwrap().verdict == LimitVerdict::Kept
    }

    proptest! {
        #[test]
        fn a_high_risk_never_asks_less(height in 0.0..5.0, more in 0.0..2.0) {
            prop_assert!(!kept(RiskLevel::High, height) || kept(RiskLevel::Low, height));
            prop_assert!(!kept(RiskLevel::High, height) || kept(RiskLevel::High, height + more));
        }
    }
}
