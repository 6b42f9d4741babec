//! The room in which a vehicle turns round without backing.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// The clear circle that a vehicle needs to turn round at full lock without backing.
    ///
    /// Its outer front wheel runs on the circle of the data sheet; its outer front corner runs farther out.
    pub struct TurningCircle = "turning-circle" in Signal {
        /// Radius of the circle of the outer front wheel at full lock.
        wheel_radius ("R"): Length,
        /// From the front axle to the rear axle.
        wheelbase ("l"): Length,
        /// From the front axle to the foremost point.
        front_overhang ("a"): Length,
    }
    gives
    /// What it needs.
    pub struct CircleNeeded {
        /// Radius on which its outer front corner runs.
        corner_radius ("Rc"): Length,
        /// Diameter of the clear circle.
        diameter ("D"): Length,
    }
    formula "Rc = √(R² − l² + (l + a)²)\nD = 2 · Rc"
    valid "Slow, on level ground, wheels as wide apart as the body; a trailer swings inward and needs no larger circle if it follows at all."
    source { work: "geometry of a vehicle whose rear wheels do not steer", clause: "", evidence: Physics, seen: "design-vehicle dimensions and turning paths of AASHTO's Green Book as repeated in public, see the cases" }
    by turning_circle
}

fn turning_circle(vehicle: &TurningCircle) -> Result<CircleNeeded, OutOfReach> {
    positive("wheel_radius", vehicle.wheel_radius, "42 ft")?;
    not_negative("wheelbase", vehicle.wheelbase, "20 ft")?;
    not_negative("front_overhang", vehicle.front_overhang, "4 ft")?;
    let (radius, base) = (vehicle.wheel_radius.base(), vehicle.wheelbase.base());
    if base >= radius {
        return Err(OutOfReach::new(
            "wheelbase",
            "no vehicle turns on a circle smaller than its wheelbase",
        ));
    }
    let front = base + vehicle.front_overhang.base();
    let corner = (radius * radius - base * base).sqrt().hypot(front);
    Ok(CircleNeeded {
        corner_radius: Length::from_base(corner),
        diameter: Length::from_base(2.0 * corner),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn needed(radius: f64, base: f64, front: f64) -> Result<CircleNeeded, OutOfReach> {
        let vehicle = TurningCircle {
            wheel_radius: Length::from_base(radius),
            wheelbase: Length::from_base(base),
            front_overhang: Length::from_base(front),
        };
        vehicle.evaluate()
    }

    proptest! {
        #[test]
        fn the_corner_runs_outside_of_the_wheel(r in 6.0..20.0, base in 2.0..5.5, front in 0.0..2.0) {
            let here = needed(r, base, front).unwrap().corner_radius.base();
            prop_assert!(here >= r - 1e-9);
            prop_assert!(needed(r, base, front + 0.1).unwrap().corner_radius.base() > here);
        }
    }

    #[test]
    fn a_circle_smaller_than_the_wheelbase_is_refused() {
        assert_eq!(needed(3.0, 4.0, 1.0).unwrap_err().input, "wheelbase");
    }
}
