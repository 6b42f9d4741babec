//! Time that a vehicle needs to clear the travel of a gate.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Length, Quantity as _, Time, Velocity};

formula! {
    /// Time that a vehicle needs from a standing start until its tail has cleared the travel of a gate, against the
    /// time that the gate holds open.
    ///
    /// The way is the whole length of the vehicle, the depth that the leaf sweeps, and the distance from its front to
    /// that depth. It gathers speed up to the speed at which people drive there, and no more. Where traffic outside can
    /// hold a vehicle up no time is long enough, and a detector has to hold the gate.
    pub struct VehicleClearanceTime = "vehicle-clearance-time" in Protection {
        /// Length of the vehicle, trailer included.
        length ("lv"): Length,
        /// Depth of the zone that the leaf sweeps or closes.
        zone ("lz"): Length,
        /// Distance from the front of the standing vehicle to that zone.
        approach ("la"): Length,
        /// Time until the driver moves off after the gate has opened.
        reaction ("tr"): Time,
        /// How fast the vehicle gathers speed.
        acceleration ("a"): Acceleration,
        /// Speed at which it drives through.
        speed ("v"): Velocity,
        /// Time for which the gate holds open.
        hold_open ("th"): Time,
    }
    gives
    /// Time that a vehicle needs.
    pub struct VehicleTime {
        /// Way from the standing start until the tail is clear.
        way ("l"): Length,
        /// Time needed.
        time ("t"): Time,
        /// Time to spare; below zero where the gate closes too soon.
        spare ("th − t"): Time,
        /// Whether the gate holds open long enough.
        verdict ("–"): LimitVerdict,
    }
    formula "l = la + lz + lv\nt = tr + √(2 · l / a) where l ≤ v² / (2 · a)\nt = tr + v / (2 · a) + l / v otherwise"
    valid "A standing start and constant acceleration; a free way out."
    source { work: "motion with constant acceleration", clause: "", evidence: Physics, seen: "area under the speed-time line" }
    by vehicle_time
}

fn vehicle_time(drive: &VehicleClearanceTime) -> Result<VehicleTime, OutOfReach> {
    positive("length", drive.length, "19 ft")?;
    not_negative("zone", drive.zone, "6 in")?;
    not_negative("approach", drive.approach, "15 ft")?;
    not_negative("reaction", drive.reaction, "2 s")?;
    positive("acceleration", drive.acceleration, "3 ft/s²")?;
    positive("speed", drive.speed, "7 ft/s")?;
    not_negative("hold_open", drive.hold_open, "20 s")?;
    let way = drive.approach + drive.zone + drive.length;
    let (l, a, v) = (way.base(), drive.acceleration.base(), drive.speed.base());
    let driving = if l <= v * v / (2.0 * a) {
        (2.0 * l / a).sqrt()
    } else {
        v / (2.0 * a) + l / v
    };
    let time = drive.reaction + Time::from_base(driving);
    Ok(VehicleTime {
        way,
        time,
        spare: drive.hold_open - time,
        verdict: verdict(is_at_least(drive.hold_open, time)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn drive(length: f64, acceleration: f64, speed: f64) -> VehicleClearanceTime {
        VehicleClearanceTime {
            length: Length::from_base(length),
            zone: Length::from_base(0.2),
            approach: Length::from_base(3.0),
            reaction: Time::from_base(2.0),
            acceleration: Acceleration::from_base(acceleration),
            speed: Velocity::from_base(speed),
            hold_open: Time::from_base(20.0),
        }
    }

    proptest! {
        #[test]
        fn longer_lazier_or_slower_takes_longer(
            length in 2.0..25.0, acceleration in 0.2..3.0, speed in 0.5..8.0, share in 0.3..1.0
        ) {
            let time = |length, acceleration, speed| {
                drive(length, acceleration, speed).evaluate().unwrap().time.base()
            };
            let base = time(length, acceleration, speed);
            prop_assert!(time(length / share, acceleration, speed) >= base);
            prop_assert!(time(length, acceleration * share, speed) >= base - 1e-9);
            prop_assert!(time(length, acceleration, speed * share) >= base - 1e-9);
        }
    }

    #[test]
    fn a_vehicle_that_does_not_move_off_is_refused() {
        assert_eq!(
            drive(5.0, 0.0, 2.0).evaluate().unwrap_err().input,
            "acceleration"
        );
    }
}
