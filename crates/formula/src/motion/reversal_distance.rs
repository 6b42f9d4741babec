//! What a leaf does after it has met something.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Acceleration, Length, Quantity as _, Time, Velocity};

formula! {
    /// How far a leaf goes on after a contact, when it starts back, and how far beyond the place of contact it gets.
    ///
    /// It goes on at its speed until the controller acts, brakes, stands for the pause of the controller, and runs back.
    /// A clearance below zero means that it stops again before it is back at the place of contact: whoever is caught
    /// stays caught.
    pub struct ReversalDistance = "reversal-distance" in Motion {
        /// Speed at the contact.
        speed ("v"): Velocity,
        /// Time from the contact to the start of braking.
        reaction_time ("tr"): Time,
        /// Braking, as a value above zero.
        deceleration ("b"): Acceleration,
        /// Time that it stands before it starts back.
        pause ("tp"): Time,
        /// Acceleration of the way back.
        acceleration ("a"): Acceleration,
        /// Speed of the way back.
        reverse_speed ("vr"): Velocity,
        /// Way back that is set.
        reverse_distance ("dr"): Length,
    }
    gives
    /// What a leaf does after a contact.
    pub struct Reversal {
        /// Way on after the contact.
        overtravel ("so"): Length,
        /// Time from the contact to standing.
        standing_time ("t1"): Time,
        /// Time from the contact to the start back.
        start_back_time ("t2"): Time,
        /// Time from the contact to the end of the way back, its last stop left out.
        total_time ("t"): Time,
        /// How far beyond the place of contact it gets; below zero when it does not get back there.
        clearance ("c"): Length,
    }
    formula "so = v · tr + v² / 2b\nt1 = tr + v / b,  t2 = t1 + tp\nt = t2 + √(2 · dr / a), or t2 + vr / 2a + dr / vr where dr ≥ vr² / 2a\nc = dr − so"
    valid "An obstacle that gives way while the leaf goes on; a stiff one stops it sooner and harder."
    source { work: "motion with constant acceleration", clause: "", evidence: Physics, seen: "area under the speed-time line" }
    by reversal_distance
}

fn reversal_distance(leaf: &ReversalDistance) -> Result<Reversal, OutOfReach> {
    not_negative("speed", leaf.speed, "1 ft/s")?;
    not_negative("reaction_time", leaf.reaction_time, "100 ms")?;
    positive("deceleration", leaf.deceleration, "5 ft/s²")?;
    not_negative("pause", leaf.pause, "0.3 s")?;
    positive("acceleration", leaf.acceleration, "0.5 ft/s²")?;
    positive("reverse_speed", leaf.reverse_speed, "1 ft/s")?;
    not_negative("reverse_distance", leaf.reverse_distance, "6 in")?;
    let braking: Time = leaf.speed / leaf.deceleration;
    let overtravel: Length = leaf.speed * leaf.reaction_time + leaf.speed * braking / 2.0;
    let standing_time = leaf.reaction_time + braking;
    let start_back_time = standing_time + leaf.pause;
    Ok(Reversal {
        overtravel,
        standing_time,
        start_back_time,
        total_time: start_back_time + way_back(leaf),
        clearance: leaf.reverse_distance - overtravel,
    })
}

/// Time of the way back, from standing.
fn way_back(leaf: &ReversalDistance) -> Time {
    let (distance, up) = (leaf.reverse_distance.base(), leaf.acceleration.base());
    let speed = leaf.reverse_speed.base();
    let ramp = speed.powi(2) / (2.0 * up);
    Time::from_base(if distance < ramp {
        (2.0 * distance / up).sqrt()
    } else {
        speed / up + (distance - ramp) / speed
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(speed: f64, back: f64) -> ReversalDistance {
        ReversalDistance {
            speed: Velocity::from_base(speed),
            reaction_time: Time::from_base(0.1),
            deceleration: Acceleration::from_base(1.5),
            pause: Time::from_base(0.3),
            acceleration: Acceleration::from_base(0.3),
            reverse_speed: Velocity::from_base(0.2),
            reverse_distance: Length::from_base(back),
        }
    }

    proptest! {
        #[test]
        fn a_faster_leaf_goes_on_farther_and_starts_back_later(speed in 0.0..1.0, back in 0.0..0.5) {
            let (slow, fast) = (leaf(speed, back), leaf(speed + 0.01, back));
            let (slow, fast) = (slow.evaluate().unwrap(), fast.evaluate().unwrap());
            prop_assert!(slow.overtravel < fast.overtravel);
            prop_assert!(slow.start_back_time < fast.start_back_time);
            prop_assert!(slow.clearance > fast.clearance);
        }

        #[test]
        fn a_longer_way_back_takes_longer(speed in 0.0..1.0, back in 0.0..0.5) {
            let (short, long) = (leaf(speed, back), leaf(speed, back + 0.01));
            prop_assert!(short.evaluate().unwrap().total_time < long.evaluate().unwrap().total_time);
        }
    }

    #[test]
    fn a_leaf_that_cannot_brake_is_refused() {
        let wrong = ReversalDistance {
            deceleration: Acceleration::from_base(0.0),
            ..leaf(0.3, 0.1)
        };
        assert_eq!(wrong.evaluate().unwrap_err().input, "deceleration");
    }
}
