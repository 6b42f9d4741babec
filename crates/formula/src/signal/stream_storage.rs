//! What the pictures of one camera fill in a time.

use crate::OutOfReach;
use quantity::{DataRate, DataSize, Quantity as _, Ratio, Time};

formula! {
    /// What a stream of pictures comes to over a time, quiet and busy scenes weighed by their share.
    ///
    /// A camera that keeps its quality sends more when something moves, and more still in rain and at night. The rates
    /// are those read at the camera or the recorder in each scene, the share is that of the whole day.
    pub struct StreamStorage = "stream-storage" in Signal {
        /// Rate while nothing moves; zero where only motion is recorded.
        quiet ("r"): DataRate,
        /// Rate while something moves.
        busy ("b"): DataRate,
        /// Share of the time in which something moves; one for a stream of constant rate.
        share ("m"): Ratio,
        /// How long it is kept.
        time ("T"): Time,
    }
    gives
    /// What a stream comes to.
    pub struct Stored {
        /// Mean rate.
        mean ("r̄"): DataRate,
        /// Amount of data over the time.
        size ("S"): DataSize,
    }
    formula "r̄ = (1 − m) · r + m · b\nS = r̄ · T"
    valid "Any stream. Sound and the recorder's own index add a little; disks are sold in powers of ten, some programs show powers of two, 7 to 9 % fewer."
    source { work: "rate times time", clause: "", evidence: Physics, seen: "worked examples in the cases" }
    by stream_storage
}

fn stream_storage(stream: &StreamStorage) -> Result<Stored, OutOfReach> {
    let negative = [
        ("quiet", stream.quiet.base()),
        ("busy", stream.busy.base()),
        ("time", stream.time.base()),
    ];
    if let Some((input, _)) = negative.iter().find(|(_, value)| *value < 0.0) {
        return Err(OutOfReach::new(input, "this cannot be below zero"));
    }
    let share = stream.share.base();
    if !(0.0..=1.0).contains(&share) {
        return Err(OutOfReach::new(
            "share",
            "a share of the time lies between 0 % and 100 %",
        ));
    }
    let mean = (1.0 - share) * stream.quiet.base() + share * stream.busy.base();
    Ok(Stored {
        mean: DataRate::from_base(mean),
        size: DataSize::from_base(mean * stream.time.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn stream(quiet: f64, busy: f64, share: f64, time: f64) -> StreamStorage {
        StreamStorage {
            quiet: DataRate::from_base(quiet),
            busy: DataRate::from_base(busy),
            share: Ratio::from_base(share),
            time: Time::from_base(time),
        }
    }

    proptest! {
        #[test]
        fn the_mean_lies_between_and_time_adds_up(quiet in 0.0..1e7, more in 0.0..1e7, share in 0.0..=1.0, time in 0.0..1e7) {
            let busy = quiet + more;
            let once = stream(quiet, busy, share, time).evaluate().unwrap();
            let twice = stream(quiet, busy, share, 2.0 * time).evaluate().unwrap();
            prop_assert!(once.mean.base() >= quiet * (1.0 - 1e-12) && once.mean.base() <= busy * (1.0 + 1e-12));
            prop_assert!((twice.size.base() - 2.0 * once.size.base()).abs() <= 1e-6 * twice.size.base());
        }
    }

    #[test]
    fn no_share_above_the_whole_and_no_time_backward() {
        assert_eq!(
            stream(1.0, 2.0, 1.5, 1.0).evaluate().unwrap_err().input,
            "share"
        );
        assert_eq!(
            stream(1.0, 2.0, 0.5, -1.0).evaluate().unwrap_err().input,
            "time"
        );
    }
}
