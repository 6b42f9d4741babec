//! Ring that a vehicle sweeps as it turns on a circle.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

formula! {
    /// Ring of ground that a rigid vehicle sweeps while it drives on a circle, its rear wheels following its front ones.
    ///
    /// The vehicle keeps to its tightest circle, or to the one that clears the inner kerb where that is wider. Inside it is
    /// bounded by its flank beside the rear axle, outside by the outer corner of its front. A pair of rear axles counts as
    /// one in their middle. Swinging in and out of the circle takes no more room outside, and less inside; the tail swings
    /// out a little as the turn begins, which is not asked here. Trailers need another calculation.
    pub struct TurningRing = "turning-ring" in Protection {
        /// Radius of the circle of the middle of the front axle at full lock.
        center_radius ("Rc"): Length,
        /// From the front axle to the rear axle.
        wheelbase ("l"): Length,
        /// Width of the vehicle.
        width ("b"): Length,
        /// From the front axle to the foremost point.
        front_overhang ("f"): Length,
        /// Radius of the inner kerb; 0 where there is none.
        kerb_radius ("rk"): Length,
    }
    gives
    /// Ring that is swept.
    pub struct SweptRing {
        /// Radius of the circle of the middle of the rear axle.
        rear_radius ("R"): Length,
        /// Radius of the inner edge of the ring.
        inside_radius ("ri"): Length,
        /// Radius of the outer edge of the ring.
        corner_radius ("ro"): Length,
        /// Width of the ring.
        ring_width ("ro − ri"): Length,
    }
    formula "R = max(√(Rc² − l²), rk + b/2)\nri = R − b/2\nro = √((R + b/2)² + (l + f)²)"
    valid "One rigid vehicle that steers its front wheels, slow, on firm ground; rear overhang no longer than wheelbase and front overhang."
    source { work: "motion of a rigid body about a fixed point on the line of its rear axle", clause: "", evidence: Physics, seen: "the distances of the corners of a rectangle from that point; held against the design vehicles of AASHTO" }
    by ring
}

fn ring(vehicle: &TurningRing) -> Result<SweptRing, OutOfReach> {
    positive("center_radius", vehicle.center_radius, "36 ft")?;
    positive("wheelbase", vehicle.wheelbase, "17 ft")?;
    positive("width", vehicle.width, "8 ft 6 in")?;
    not_negative("front_overhang", vehicle.front_overhang, "7 ft")?;
    not_negative("kerb_radius", vehicle.kerb_radius, "25 ft")?;
    let (wheelbase, half) = (vehicle.wheelbase.base(), vehicle.width.base() / 2.0);
    let tightest = (vehicle.center_radius.base().powi(2) - wheelbase.powi(2)).max(0.0);
    let rear = tightest.sqrt().max(vehicle.kerb_radius.base() + half);
    if tightest.sqrt() < half {
        return Err(OutOfReach::new(
            "center_radius",
            "no vehicle turns about a point under itself; read the radius of its front axle off the data sheet, such as 36 ft",
        ));
    }
    let corner = (rear + half).hypot(wheelbase + vehicle.front_overhang.base());
    Ok(SweptRing {
        rear_radius: Length::from_base(rear),
        inside_radius: Length::from_base(rear - half),
        corner_radius: Length::from_base(corner),
        ring_width: Length::from_base(corner - (rear - half)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn vehicle(center: f64, wheelbase: f64, width: f64, front: f64, kerb: f64) -> TurningRing {
        let [center_radius, wheelbase, width, front_overhang, kerb_radius] =
            [center, wheelbase, width, front, kerb].map(Length::from_base);
        TurningRing {
            center_radius,
            wheelbase,
            width,
            front_overhang,
            kerb_radius,
        }
    }

    proptest! {
        #[test]
        fn every_point_of_the_body_stays_in_the_ring(
            wheelbase in 2.0..8.0, more in 2.0..20.0, width in 1.5..3.0, front in 0.0..3.0, kerb in 0.0..25.0,
            along in 0.0..1.0, across in -0.5..0.5
        ) {
            let body = vehicle(wheelbase + more, wheelbase, width, front, kerb);
            let ring = body.evaluate().unwrap();
            let rear = ring.rear_radius.base();
            // From as far behind the rear axle as the front is before it, to the front.
            let ahead = (wheelbase + front) * (2.0 * along - 1.0);
            let from_center = f64::hypot(rear + across * width, ahead);
            prop_assert!(from_center >= ring.inside_radius.base() - 1e-9);
            prop_assert!(from_center <= ring.corner_radius.base() + 1e-9);
            prop_assert!(ring.inside_radius.base() >= kerb - 1e-9);
        }

        #[test]
        fn a_wider_circle_sweeps_a_narrower_ring(center in 9.0..20.0, more in 0.0..20.0) {
            let ring = |center| vehicle(center, 5.0, 2.5, 2.0, 0.0).evaluate().unwrap();
            prop_assert!(ring(center + more).ring_width.base() <= ring(center).ring_width.base() + 1e-9);
        }
    }

    #[test]
    fn a_turn_about_itself_is_refused() {
        let spinning = vehicle(5.0, 5.0, 2.5, 2.0, 10.0);
        assert_eq!(spinning.evaluate().unwrap_err().input, "center_radius");
        let none = vehicle(12.0, 0.0, 2.5, 2.0, 0.0);
        assert_eq!(none.evaluate().unwrap_err().input, "wheelbase");
    }
}
