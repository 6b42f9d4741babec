//! Speed that a person's shove gives to a leaf.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Energy, Force, Length, Mass, Quantity as _, Velocity};

formula! {
    /// Speed and energy that a person's shove gives to a leaf whose drive is released.
    ///
    /// The push works over a distance against what resists; a person cannot push a leaf that runs faster than they do,
    /// so the speed ends at a top speed.
    pub struct HandPushSpeed = "hand-push-speed" in Motion {
        /// Mass of the leaf, as felt where it is pushed.
        mass ("m"): Mass,
        /// Push of the person.
        push ("P"): Force,
        /// Distance over which they push.
        distance ("d"): Length,
        /// What resists the motion; zero where it is not counted on.
        resistance ("R"): Force,
        /// Speed beyond which a person pushes no more.
        top_speed ("vt"): Velocity,
    }
    gives
    /// What a shove gives to a leaf.
    pub struct Pushed {
        /// Speed of the leaf.
        speed ("v"): Velocity,
        /// Energy of the leaf.
        energy ("E"): Energy,
    }
    formula "v = √(2 · (P − R) · d / m), at most vt; zero where R is above P\nE = ½ · m · v²"
    valid "A push that stays the same over the distance; several people, or a run-up, give more."
    source { work: "work and kinetic energy", clause: "", evidence: Physics, seen: "the work of a force is the gain of kinetic energy" }
    by hand_push_speed
}

fn hand_push_speed(shove: &HandPushSpeed) -> Result<Pushed, OutOfReach> {
    positive("mass", shove.mass, "640 lb")?;
    not_negative("push", shove.push, "90 lbf")?;
    not_negative("distance", shove.distance, "3 ft")?;
    not_negative("resistance", shove.resistance, "20 lbf")?;
    positive("top_speed", shove.top_speed, "6 ft/s")?;
    let mass = shove.mass.base();
    let work = (shove.push - shove.resistance).base().max(0.0) * shove.distance.base();
    let speed = (2.0 * work / mass).sqrt().min(shove.top_speed.base());
    Ok(Pushed {
        speed: Velocity::from_base(speed),
        energy: Energy::from_base(0.5 * mass * speed.powi(2)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn shove(mass: f64, resistance: f64) -> HandPushSpeed {
        HandPushSpeed {
            mass: Mass::from_base(mass),
            push: Force::from_base(400.0),
            distance: Length::from_base(1.0),
            resistance: Force::from_base(resistance),
            top_speed: Velocity::from_base(2.0),
        }
    }

    proptest! {
        #[test]
        fn a_leaf_never_gets_more_than_the_work_of_the_push(mass in 1.0..3000.0, resistance in 0.0..400.0) {
            let gives = shove(mass, resistance).evaluate().unwrap();
            prop_assert!(gives.energy.base() <= (400.0 - resistance) * (1.0 + 1e-9));
            prop_assert!(gives.speed.base() <= 2.0);
        }

        #[test]
        fn a_heavier_leaf_is_never_faster(mass in 1.0..3000.0, more in 0.1..500.0) {
            let (light, heavy) = (shove(mass, 50.0), shove(mass + more, 50.0));
            prop_assert!(heavy.evaluate().unwrap().speed <= light.evaluate().unwrap().speed);
        }
    }

    #[test]
    fn what_resists_more_stays_and_a_mass_is_above_zero() {
        assert!(shove(300.0, 500.0).evaluate().unwrap().speed.base().abs() < 1e-12);
        assert_eq!(shove(0.0, 0.0).evaluate().unwrap_err().input, "mass");
    }
}
