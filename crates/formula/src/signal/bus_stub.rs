//! How long a stub may be.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Ratio, Time, Velocity};

/// Speed of light, in meters a second.
const LIGHT: f64 = 299_792_458.0;

formula! {
    /// Longest branch from the line of a bus to a device.
    ///
    /// A branch that is short against the rise of the signal is a small load; a longer one is an end of its own that
    /// throws the signal back. The fastest sender on the line decides, whatever the bit rate.
    pub struct BusStub = "bus-stub" in Signal {
        /// Shortest rise time of a sender on the line.
        rise_time ("tr"): Time,
        /// Speed of a signal in the pair as a share of that of light.
        velocity ("v"): Ratio,
    }
    gives
    /// How long a stub may be.
    pub struct BusStubs {
        /// Longest stub.
        longest ("l"): Length,
    }
    formula "l = tr / 10 · v · c"
    valid "A rule of thumb for a few stubs along a terminated line; c is the speed of light."
    source { work: "guides to TIA-485: delay of a stub at most a tenth of the rise time", clause: "", evidence: Seen, seen: "data sheets of two families of interface circuits, with a table (addresses withheld: makers' names are in them)" }
    by bus_stub
}

fn bus_stub(bus: &BusStub) -> Result<BusStubs, OutOfReach> {
    positive("rise_time", bus.rise_time, "100 ns")?;
    positive("velocity", bus.velocity, "66 %")?;
    if bus.velocity.base() > 1.0 {
        return Err(OutOfReach::new(
            "velocity",
            "no signal is faster than light; give a share such as 66 %",
        ));
    }
    let speed = Velocity::from_base(LIGHT) * bus.velocity;
    Ok(BusStubs {
        longest: speed * bus.rise_time / 10.0,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn longest(rise: f64, velocity: f64) -> Result<Length, OutOfReach> {
        let stub = BusStub {
            rise_time: Time::from_base(rise),
            velocity: Ratio::from_base(velocity),
        };
        stub.evaluate().map(|gives| gives.longest)
    }

    proptest! {
        #[test]
        fn slower_senders_allow_longer_stubs(rise in 1e-9..1e-6, velocity in 0.3..1.0) {
            prop_assert!(longest(2.0 * rise, velocity).unwrap() > longest(rise, velocity).unwrap());
        }
    }

    #[test]
    fn refusals_name_the_input() {
        assert_eq!(longest(0.0, 0.7).unwrap_err().input, "rise_time");
        assert_eq!(longest(1e-7, 1.2).unwrap_err().input, "velocity");
    }
}
