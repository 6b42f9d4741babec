//! How fast and over which ground a swinging leaf sweeps.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, AngularVelocity, Area, Length, Quantity as _, Time, Velocity};

formula! {
    /// Speed of a swinging leaf's tip and the ground that the leaf sweeps.
    ///
    /// The tip is fastest; nearer the hinge the leaf is slower and pushes harder. The top speed comes from the time of
    /// the whole travel when the leaf gathers speed evenly at the start and loses it evenly at the end, each over a
    /// share of that time.
    pub struct SwingLeafSweep = "swing-leaf-sweep" in Protection {
        /// Length of the leaf from hinge to tip.
        length ("L"): Length,
        /// Angle through which it turns.
        angle ("θ"): Angle,
        /// Time of the whole travel.
        time ("T"): Time,
        /// Time in which it gathers speed, and again in which it loses it.
        ramp ("tr"): Time,
    }
    gives
    /// Tip speed and swept ground.
    pub struct LeafSweep {
        /// Mean turning speed.
        mean_rate ("ωm"): AngularVelocity,
        /// Top turning speed.
        top_rate ("ω"): AngularVelocity,
        /// Top speed of the tip.
        tip_speed ("v"): Velocity,
        /// Way of the tip.
        tip_way ("s"): Length,
        /// Ground that the leaf sweeps.
        area ("A"): Area,
    }
    formula "ωm = θ / T\nω = θ / (T − tr)\nv = ω · L\ns = θ · L\nA = ½ · θ · L²"
    valid "One leaf that turns about an upright axis; ramps up to half of the travel's time each; thickness of the leaf not counted."
    source { work: "motion in a circle; area of a sector", clause: "", evidence: Physics, seen: "area under the speed-time line; the radian" }
    by sweep
}

fn sweep(leaf: &SwingLeafSweep) -> Result<LeafSweep, OutOfReach> {
    positive("length", leaf.length, "8 ft")?;
    positive("angle", leaf.angle, "90°")?;
    positive("time", leaf.time, "15 s")?;
    if leaf.angle.base() > std::f64::consts::TAU {
        return Err(OutOfReach::new(
            "angle",
            "a leaf turns less than once around; give its angle, such as 90°",
        ));
    }
    let ramp = leaf.ramp.base();
    if !(0.0..=leaf.time.base() / 2.0 * (1.0 + 1e-12)).contains(&ramp) {
        return Err(OutOfReach::new(
            "ramp",
            "each ramp takes at most half of the travel's time; give the time from rest to top speed, such as 2 s",
        ));
    }
    let (angle, length) = (leaf.angle.base(), leaf.length.base());
    let top = angle / (leaf.time.base() - ramp);
    Ok(LeafSweep {
        mean_rate: AngularVelocity::from_base(angle / leaf.time.base()),
        top_rate: AngularVelocity::from_base(top),
        tip_speed: Velocity::from_base(top * length),
        tip_way: Length::from_base(angle * length),
        area: Area::from_base(0.5 * angle * length * length),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(length: f64, time: f64, ramp: f64) -> SwingLeafSweep {
        SwingLeafSweep {
            length: Length::from_base(length),
            angle: Angle::from_base(1.6),
            time: Time::from_base(time),
            ramp: Time::from_base(ramp),
        }
    }

    proptest! {
        #[test]
        fn the_tip_runs_its_way_in_the_time(length in 0.5..6.0, time in 2.0..60.0, share in 0.0..0.5) {
            let ramp = share * time;
            let found = leaf(length, time, ramp).evaluate().unwrap();
            let way = found.tip_speed.base() * (time - ramp);
            prop_assert!((way - found.tip_way.base()).abs() < 1e-9);
            prop_assert!(found.top_rate >= found.mean_rate);
            prop_assert!((found.area.base() - 0.5 * length * found.tip_way.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn ramps_longer_than_the_travel_are_refused() {
        assert_eq!(leaf(3.0, 10.0, 6.0).evaluate().unwrap_err().input, "ramp");
    }
}
