//! From the circle of the outer front wheel to that of the front axle.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _};

formula! {
    /// Radius of the circle of the middle of the front axle, from that of the outer front wheel as data sheets give it.
    ///
    /// The wheel is taken to stand flush with the flank. Where the wheels stand farther in, the circle is a little wider
    /// than this.
    pub struct FrontAxleTurningRadius = "front-axle-turning-radius" in Protection {
        /// Radius of the circle of the outer front wheel at full lock.
        wheel_radius ("Rw"): Length,
        /// From the front axle to the rear axle.
        wheelbase ("l"): Length,
        /// Width over the front wheels.
        width ("b"): Length,
    }
    gives
    /// Circle of the front axle.
    pub struct FrontAxleCircle {
        /// Radius of the circle of the middle of the front axle.
        center_radius ("Rc"): Length,
    }
    formula "Rc = √((√(Rw² − l²) − b/2)² + l²)"
    valid "One vehicle that steers its front wheels, all of them rolling about one point on the line of the rear axle."
    source { work: "motion of a rigid body about a fixed point on the line of its rear axle", clause: "", evidence: Physics, seen: "two right triangles; held against the design vehicles of AASHTO" }
    by front_axle
}

fn front_axle(vehicle: &FrontAxleTurningRadius) -> Result<FrontAxleCircle, OutOfReach> {
    positive("wheel_radius", vehicle.wheel_radius, "36 ft")?;
    positive("wheelbase", vehicle.wheelbase, "17 ft")?;
    positive("width", vehicle.width, "8 ft 6 in")?;
    let wheelbase = vehicle.wheelbase.base();
    let squared = vehicle.wheel_radius.base().powi(2) - wheelbase.powi(2);
    let outer = squared.max(0.0).sqrt();
    let rear = outer - vehicle.width.base() / 2.0;
    if rear <= 0.0 {
        return Err(OutOfReach::new(
            "wheel_radius",
            "no vehicle turns that tightly on its front wheels; read the radius off the data sheet, such as 36 ft",
        ));
    }
    Ok(FrontAxleCircle {
        center_radius: Length::from_base(rear.hypot(wheelbase)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn of(wheel: f64, wheelbase: f64, width: f64) -> Result<f64, OutOfReach> {
        let [wheel_radius, wheelbase, width] = [wheel, wheelbase, width].map(Length::from_base);
        let vehicle = FrontAxleTurningRadius {
            wheel_radius,
            wheelbase,
            width,
        };
        vehicle.evaluate().map(|circle| circle.center_radius.base())
    }

    proptest! {
        #[test]
        fn it_lies_between_the_wheelbase_and_the_wheel(wheelbase in 2.0..8.0, more in 4.0..20.0, width in 1.5..3.0) {
            let center = of(wheelbase + more, wheelbase, width).unwrap();
            prop_assert!(center > wheelbase && center < wheelbase + more);
            prop_assert!(of(wheelbase + more + 1.0, wheelbase, width).unwrap() > center);
        }
    }

    #[test]
    fn a_circle_smaller_than_the_vehicle_is_refused() {
        assert_eq!(of(4.0, 5.0, 2.5).unwrap_err().input, "wheel_radius");
        assert_eq!(of(0.0, 5.0, 2.5).unwrap_err().input, "wheel_radius");
    }
}
