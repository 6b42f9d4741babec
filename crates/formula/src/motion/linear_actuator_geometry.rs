//! A linear drive on a swing leaf at one angle.

use super::pins::{Pins, check};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, AngularVelocity, Force, Length, Quantity as _, Torque, Velocity};

formula! {
    /// Length, leverage, speed and push of a linear drive between two pins, at one angle of a swing leaf.
    ///
    /// Pins are measured from the hinge line with the leaf closed: behind it, away from the free end; along the leaf;
    /// and across, toward the side to which the leaf opens. A drive on that side draws in while the leaf opens; one on
    /// the other side (across below zero) runs out.
    ///
    /// A drive whose pins have come into one line with the hinge line pushes through the hinge and turns nothing: an
    /// angle at or past that dead point is refused.
    pub struct LinearActuatorGeometry = "linear-actuator-geometry" in Motion {
        /// Rear pin: distance behind the hinge line.
        rear_behind ("A"): Length,
        /// Rear pin: distance across.
        rear_across ("B"): Length,
        /// Front pin: distance along the leaf.
        front_along ("C"): Length,
        /// Front pin: distance across, with the leaf closed.
        front_across ("e"): Length,
        /// Angle of the leaf, 0 closed.
        angle ("α"): Angle,
        /// Width of the leaf from the hinge line to the free end.
        width ("w"): Length,
        /// Speed of the ram.
        rod_speed ("v"): Velocity,
        /// Torque about the hinge line that the leaf asks for.
        torque ("T"): Torque,
    }
    gives
    /// A linear drive at one angle.
    pub struct LinearActuator {
        /// Distance between the pins.
        length ("L"): Length,
        /// By how much it has drawn in since closed; below zero where it runs out.
        drawn_in ("ΔL"): Length,
        /// Distance of its line from the hinge line: also the stroke for each radian.
        lever_arm ("p"): Length,
        /// Turning speed of the leaf at that speed of the ram.
        turning_speed ("ω"): AngularVelocity,
        /// Speed of the free end at that speed of the ram.
        tip_speed ("vt"): Velocity,
        /// Force along the ram for that torque.
        rod_force ("F"): Force,
    }
    formula "P = (−A, B),  Q = (C · cos α − e · sin α, C · sin α + e · cos α)\nL = |Q − P|,  ΔL = L(0) − L\np = |Px · Qy − Py · Qx| / L = |dL/dα|\nω = v / p\nvt = ω · w\nF = T / p"
    valid "Pins square to the hinge line, 0° to 180°, before the dead point. Friction of the pins and give of the brackets are left out."
    source { work: "law of cosines, and its derivative by the principle of virtual work", clause: "", evidence: Physics, seen: "triangle of hinge line and pins" }
    by linear_actuator_geometry
}

fn linear_actuator_geometry(drive: &LinearActuatorGeometry) -> Result<LinearActuator, OutOfReach> {
    let pins = Pins::new(
        drive.rear_behind,
        drive.rear_across,
        drive.front_along,
        drive.front_across,
    );
    check(&pins, "angle", drive.angle)?;
    positive("width", drive.width, "8 ft")?;
    not_negative("rod_speed", drive.rod_speed, "0.6 in/s")?;
    let closed = pins.length_and_area(0.0);
    let (length, area) = pins.length_and_area(drive.angle.base());
    before_the_dead_point("angle", &pins, drive.angle)?;
    let lever_arm = area.abs() / length;
    let turning = drive.rod_speed.base() / lever_arm;
    Ok(LinearActuator {
        length: Length::from_base(length),
        drawn_in: Length::from_base(closed.0 - length),
        lever_arm: Length::from_base(lever_arm),
        turning_speed: AngularVelocity::from_base(turning),
        tip_speed: Velocity::from_base(turning * drive.width.base()),
        rod_force: Force::from_base(drive.torque.base() / lever_arm),
    })
}

/// Leverage below this, in meters, is none.
const NO_LEVER: f64 = 1e-6;

/// Refuses an angle at which the drive has lost its leverage on the way from closed.
pub(super) fn before_the_dead_point(
    input: &'static str,
    pins: &Pins,
    angle: Angle,
) -> Result<(), OutOfReach> {
    let (length, closed) = pins.length_and_area(0.0);
    let (reach, here) = pins.length_and_area(angle.base());
    // Over less than half a turn the area changes its sign once at most: at the dead point.
    let arms = closed.abs() / length > NO_LEVER && here.abs() / reach > NO_LEVER;
    if arms && (closed > 0.0) == (here > 0.0) {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        format!(
            "at {:.0}° the pins stand in one line with the hinge line and the drive turns nothing; move the rear pin or open less",
            pins.dead_point().to_degrees()
        ),
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    pub(super) fn drive(
        behind: f64,
        across: f64,
        along: f64,
        angle: f64,
    ) -> LinearActuatorGeometry {
        LinearActuatorGeometry {
            rear_behind: Length::from_base(behind),
            rear_across: Length::from_base(across),
            front_along: Length::from_base(along),
            front_across: Length::from_base(0.0),
            angle: Angle::from_base(angle),
            width: Length::from_base(2.5),
            rod_speed: Velocity::from_base(0.016),
            torque: Torque::from_base(150.0),
        }
    }

    proptest! {
        /// What the ram gives in a second is what the leaf takes.
        #[test]
        fn power_in_is_power_out(
            behind in 0.0..0.3, across in 0.05..0.4, along in 0.4..1.5, angle in 0.0..1.4
        ) {
            let gives = drive(behind, across, along, angle).evaluate().unwrap();
            let ram = gives.rod_force.base() * 0.016;
            let leaf = 150.0 * gives.turning_speed.base();
            prop_assert!((ram - leaf).abs() < 1e-9 * leaf);
        }

        #[test]
        fn the_lever_arm_is_the_stroke_for_each_radian(
            behind in 0.0..0.3, across in 0.05..0.4, along in 0.4..1.5, angle in 0.01..1.4
        ) {
            let step = 1e-6;
            let before = drive(behind, across, along, angle - step).evaluate().unwrap();
            let after = drive(behind, across, along, angle + step).evaluate().unwrap();
            let here = drive(behind, across, along, angle).evaluate().unwrap();
            let slope = (after.drawn_in - before.drawn_in).base() / (2.0 * step);
            prop_assert!((slope - here.lever_arm.base()).abs() < 1e-6);
        }
    }

    #[test]
    fn the_dead_point_is_refused() {
        // Rear pin on the gate line behind the hinge: no leverage on a closed leaf.
        assert_eq!(
            drive(0.2, 0.0, 0.9, 0.5).evaluate().unwrap_err().input,
            "angle"
        );
        // 0.2 behind and 0.2 across: dead at 135°.
        assert!(drive(0.2, 0.2, 0.9, 2.3).evaluate().is_ok());
        assert_eq!(
            drive(0.2, 0.2, 0.9, 2.4).evaluate().unwrap_err().input,
            "angle"
        );
    }
}
