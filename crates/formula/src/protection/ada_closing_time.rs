//! How slowly the closer of a walk gate closes, by the 2010 ADA Standards.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{AngularVelocity, Quantity as _, Time};

formula! {
    /// Whether the closer of a walk gate gives people time to pass, by the 2010 ADA Standards.
    ///
    /// Timed with a watch from 90° open until the leaf stands 12° from the latch, on a windy day as well.
    pub struct AdaClosingTime = "ada-closing-time" in Protection {
        /// Time from 90° to 12° from the latch.
        time ("t"): Time,
    }
    gives
    /// How a closing time stands to its limit.
    pub struct AdaClosing {
        /// Least time.
        least ("tmin"): Time,
        /// Mean turning speed over these 78°.
        rate ("ωm"): AngularVelocity,
        /// Whether the limit is kept.
        verdict ("–"): LimitVerdict,
    }
    formula "t ≥ 5 s\nωm = 78° / t"
    valid "Hinged walk gates with closers under the 2010 ADA Standards, United States."
    source { work: "2010 ADA Standards", clause: "404.2.8.1", evidence: Seen, seen: "public pages of the standards" }
    by closing_time
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn closing_time(closer: &AdaClosingTime) -> Result<AdaClosing, OutOfReach> {
    positive("time", closer.time, "6 s")?;
    let least = Time::from_base(5.0);
    Ok(AdaClosing {
        least,
        rate: AngularVelocity::from_base(78_f64.to_radians() / closer.time.base()),
        verdict: verdict(is_at_least(closer.time, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn closing(time: f64) -> Result<AdaClosing, OutOfReach> {
        let time = Time::from_base(time);
        AdaClosingTime { time }.evaluate()
    }

    proptest! {
        #[test]
        fn slower_never_breaks_it(time in 0.1..20.0, more in 0.0..20.0) {
            let (quick, slow) = (closing(time).unwrap(), closing(time + more).unwrap());
            prop_assert!(quick.verdict == LimitVerdict::Broken || slow.verdict == LimitVerdict::Kept);
            prop_assert!(slow.rate <= quick.rate);
        }
    }

    #[test]
    fn no_time_is_refused() {
        assert_eq!(closing(0.0).unwrap_err().input, "time");
    }
}
