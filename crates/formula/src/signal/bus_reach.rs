//! How long a bus may be at its bit rate.

use crate::OutOfReach;
use quantity::{Length, Quantity as _};

/// Length at low rates, in meters.
const LONGEST: f64 = 1200.0;
/// Length in meters times bits in a second.
const LENGTH_TIMES_RATE: f64 = 1e8;

formula! {
    /// Longest line of a two-wire bus at a bit rate.
    ///
    /// At low rates the resistance of the pair ends the line, at high ones its losses: twice the rate, half the length.
    pub struct BusReach = "bus-reach" in Signal {
        /// Bits in a second.
        bit_rate ("b"): u32,
    }
    gives
    /// How long the line may be.
    pub struct BusReached {
        /// Longest line from end to end.
        longest ("l"): Length,
    }
    formula "l = 10⁸ m/s / b, at most 1200 m"
    valid "Twisted pair of about 0.2 mm² or thicker; a rule of thumb, so that a line near its end is tried with an error counter over a day."
    source { work: "TIA-485 and its guides: about 1200 m up to 100 kbit/s, beyond that length times rate", clause: "", evidence: Seen, seen: "manual of a router, page 85 (address withheld: a maker's name is in it); wiring instructions of a reader: 1200 m up to 100 kBaud" }
    by bus_reach
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn bus_reach(bus: &BusReach) -> Result<BusReached, OutOfReach> {
    if bus.bit_rate == 0 || bus.bit_rate > 10_000_000 {
        return Err(OutOfReach::new(
            "bit_rate",
            "give bits in a second up to 10000000, such as 9600",
        ));
    }
    let longest = (LENGTH_TIMES_RATE / f64::from(bus.bit_rate)).min(LONGEST);
    Ok(BusReached {
        longest: Length::from_base(longest),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_faster_bus_is_never_longer(rate in 1u32..5_000_000) {
            let reach = |bit_rate| BusReach { bit_rate }.evaluate().unwrap().longest;
            prop_assert!(reach(2 * rate) <= reach(rate));
        }
    }

    #[test]
    fn no_rate_is_refused() {
        assert_eq!(
            BusReach { bit_rate: 0 }.evaluate().unwrap_err().input,
            "bit_rate"
        );
    }
}
