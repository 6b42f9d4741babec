//! How long the gap of a vehicle stands in a beam.

use super::limit::{LimitVerdict, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Time, Velocity};

formula! {
    /// Whether a gap in a passing vehicle, such as the one over a drawbar, lets the gate take the lane for clear.
    ///
    /// While the gap passes nothing breaks the beam. When that lasts as long as the beam takes to clear and the
    /// controller waits before it closes, the leaf starts toward the trailer. A vehicle that stops with its gap in the
    /// beam is never seen: no time helps then, only a second field that sees what the beam cannot. Take the slowest
    /// speed at which people drive through.
    pub struct VehicleGapInBeam = "vehicle-gap-in-beam" in Protection {
        /// Length of the gap at the height of the beam.
        gap ("g"): Length,
        /// Diameter of the beam, which is the lens of an opposed pair.
        beam_diameter ("D"): Length,
        /// Slowest speed of the vehicle.
        speed ("v"): Velocity,
        /// Time from the beam becoming clear until the controller is told.
        clear_time ("tc"): Time,
        /// Time that the controller waits from then until the leaf moves.
        close_delay ("td"): Time,
    }
    gives
    /// Time for which a gap leaves a beam clear.
    pub struct GapTime {
        /// Time for which the beam is clear.
        clear ("t"): Time,
        /// Time to spare before the leaf would move; below zero where it moves.
        spare ("tc + td − t"): Time,
        /// Slowest speed at which the gap passes without the leaf moving; 0 where every speed does.
        slowest ("vmin"): Velocity,
        /// Kept where the leaf does not move.
        verdict ("–"): LimitVerdict,
    }
    formula "t = max(0, g − D) / v\nkept where t < tc + td\nvmin = max(0, g − D) / (tc + td)"
    valid "Constant speed straight across a beam that is broken by any part of its diameter; one beam, no other field."
    source { work: "distance is speed times time", clause: "", evidence: Physics, seen: "kinematics of two edges that pass a line" }
    by gap_time
}

fn gap_time(vehicle: &VehicleGapInBeam) -> Result<GapTime, OutOfReach> {
    not_negative("gap", vehicle.gap, "5 ft")?;
    not_negative("beam_diameter", vehicle.beam_diameter, "20 mm")?;
    not_negative("clear_time", vehicle.clear_time, "50 ms")?;
    not_negative("close_delay", vehicle.close_delay, "3 s")?;
    positive("speed", vehicle.speed, "3 ft/s")?;
    let hold = vehicle.clear_time + vehicle.close_delay;
    if hold.base() <= 0.0 {
        return Err(OutOfReach::new(
            "close_delay",
            "a gate that moves the moment its beam clears closes on every gap; give the clear time and the delay of the controller",
        ));
    }
    let open = Length::from_base((vehicle.gap - vehicle.beam_diameter).base().max(0.0));
    let clear: Time = open / vehicle.speed;
    Ok(GapTime {
        clear,
        spare: hold - clear,
        slowest: open / hold,
        verdict: verdict(clear < hold),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn vehicle(gap: f64, speed: f64, delay: f64) -> VehicleGapInBeam {
        VehicleGapInBeam {
            gap: Length::from_base(gap),
            beam_diameter: Length::from_base(0.02),
            speed: Velocity::from_base(speed),
            clear_time: Time::from_base(0.05),
            close_delay: Time::from_base(delay),
        }
    }

    proptest! {
        #[test]
        fn faster_than_the_slowest_speed_is_kept(gap in 0.1..5.0, speed in 0.05..5.0, delay in 0.0..10.0) {
            let found = vehicle(gap, speed, delay).evaluate().unwrap();
            prop_assert_eq!(found.verdict == LimitVerdict::Kept, found.slowest.base() < speed);
        }

        #[test]
        fn a_longer_gap_is_clear_longer(gap in 0.1..5.0, more in 0.01..2.0) {
            let clear = |gap| vehicle(gap, 0.5, 3.0).evaluate().unwrap().clear;
            prop_assert!(clear(gap) < clear(gap + more));
        }
    }

    #[test]
    fn a_standing_vehicle_is_refused() {
        assert_eq!(
            vehicle(1.5, 0.0, 3.0).evaluate().unwrap_err().input,
            "speed"
        );
    }
}
