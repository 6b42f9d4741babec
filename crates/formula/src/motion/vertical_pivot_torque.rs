//! Torque about the level pivot of a barrier arm or a leaf that turns up.

use super::slope::GRAVITY;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{
    Acceleration, Angle, Length, Mass, MomentOfInertia, Pressure, Quantity as _, Torque,
};
use std::f64::consts::PI;

formula! {
    /// Torque about the level pivot of a barrier arm or of a leaf that turns up, term by term.
    ///
    /// The angle is zero with the arm level and closed, and grows as it rises. The unbalanced torque is signed: above
    /// zero the arm falls closed, below zero it rises by itself. Springs come in by the torque with which they lift at
    /// this angle; ask torsion-spring-torque or extension-spring-torque for it, or give zero.
    ///
    /// The center of gravity lies `center_along` ahead of the pivot and `center_up` above it with the arm closed; an
    /// arm that reaches far enough behind its pivot has its center behind it, and the distance is below zero then.
    /// The counterweight's line is turned upward by the offset angle from the arm's line drawn on beyond the pivot.
    ///
    /// Wind blows level along the gate line onto the raised arm, with its part square to the arm; it may help or
    /// hinder, and is counted as hindering both ways.
    pub struct VerticalPivotTorque = "vertical-pivot-torque" in Motion {
        /// Mass of the arm or leaf with everything on it, counterweight left out.
        mass ("m"): Mass,
        /// Distance of its center of gravity ahead of the pivot, below zero behind it.
        center_along ("r"): Length,
        /// Height of its center of gravity above the pivot with the arm closed, below zero under it.
        center_up ("e"): Length,
        /// Distance from the pivot to the free end.
        reach ("L"): Length,
        /// Depth of the arm or height of the leaf.
        depth ("H"): Length,
        /// Angle above the level, closed position.
        angle ("θ"): Angle,
        /// Mass of the counterweight; zero for none.
        counterweight_mass ("mc"): Mass,
        /// Distance of the counterweight's center from the pivot.
        counterweight_radius ("rc"): Length,
        /// By how much the counterweight's line is turned upward from the arm's line drawn on beyond the pivot.
        offset_angle ("δ"): Angle,
        /// Torque with which springs lift at this angle; zero for none.
        spring_torque ("Ms"): Torque,
        /// Pressure of the wind on the upright arm, drag factor included.
        wind_pressure ("p"): Pressure,
        /// Width of the arm as this wind meets it.
        wind_width ("w"): Length,
        /// Acceleration of the free end along its arc, not below zero.
        acceleration ("a"): Acceleration,
    }
    gives
    /// Torque about a level pivot, term by term.
    pub struct VerticalPivotTorques {
        /// Weight of the arm, above zero where it falls closed.
        weight ("Mw"): Torque,
        /// Counterweight, above zero where it lifts.
        counterweight ("Mc"): Torque,
        /// What falls closed when nothing holds the arm; below zero it rises.
        unbalanced ("M0"): Torque,
        /// Wind, either way.
        wind ("Mp"): Torque,
        /// Moment of inertia about the pivot.
        inertia ("J"): MomentOfInertia,
        /// Speeding up arm and counterweight.
        speeding_up ("Ma"): Torque,
        /// What the drive must bring to open.
        opening ("Mo"): Torque,
        /// What the drive must bring to close; below zero it must hold the arm back.
        closing ("Mz"): Torque,
    }
    formula "Mw = m · g · (r · cos θ − e · sin θ)\nMc = mc · g · rc · cos(θ − δ)\nM0 = Mw − Mc − Ms\nMp = ½ · p · w · L² · sin² θ\nJ = m · (r² + e² + (L² + H²) / 12) + mc · rc²\nMa = J · a / L\nMo = M0 + Mp + Ma\nMz = −M0 + Mp + Ma"
    valid "A stiff arm whose mass is spread evenly over its reach for the inertia; from 45° below to 135° above the level position; friction and the mass of springs left out. Standard gravity, 9.80665 m/s²."
    source { work: "statics and Newton's second law for a turning body", clause: "", evidence: Physics, seen: "moments about the pivot; compared with the slope of the potential energy" }
    by vertical_pivot_torque
}

fn vertical_pivot_torque(arm: &VerticalPivotTorque) -> Result<VerticalPivotTorques, OutOfReach> {
    check(arm)?;
    let (sine, cosine) = arm.angle.base().sin_cos();
    let (mass, reach) = (arm.mass.base(), arm.reach.base());
    let (along, up) = (arm.center_along.base(), arm.center_up.base());
    let weight = mass * GRAVITY * (along * cosine - up * sine);
    let (other, radius) = (
        arm.counterweight_mass.base(),
        arm.counterweight_radius.base(),
    );
    let counterweight = other * GRAVITY * radius * (arm.angle - arm.offset_angle).base().cos();
    let unbalanced = weight - counterweight - arm.spring_torque.base();
    let face = arm.wind_pressure.base() * arm.wind_width.base();
    let wind = 0.5 * face * (reach * sine).powi(2);
    let spread = (reach.powi(2) + arm.depth.base().powi(2)) / 12.0;
    let inertia = mass * (along.powi(2) + up.powi(2) + spread) + other * radius.powi(2);
    let speeding_up = inertia * arm.acceleration.base() / reach;
    Ok(VerticalPivotTorques {
        weight: Torque::from_base(weight),
        counterweight: Torque::from_base(counterweight),
        unbalanced: Torque::from_base(unbalanced),
        wind: Torque::from_base(wind),
        inertia: MomentOfInertia::from_base(inertia),
        speeding_up: Torque::from_base(speeding_up),
        opening: Torque::from_base(unbalanced + wind + speeding_up),
        closing: Torque::from_base(-unbalanced + wind + speeding_up),
    })
}

fn check(arm: &VerticalPivotTorque) -> Result<(), OutOfReach> {
    positive("mass", arm.mass, "30 lb")?;
    positive("reach", arm.reach, "12 ft")?;
    if arm.center_along.base().abs() > arm.reach.base() {
        return Err(OutOfReach::new(
            "center_along",
            "the center of gravity lies nearer to the pivot than the free end does",
        ));
    }
    turns_up("angle", arm.angle)?;
    if arm.offset_angle.base().abs() > PI / 2.0 {
        return Err(OutOfReach::new(
            "offset_angle",
            "a counterweight sits beyond the pivot: give an angle from −90° to 90° off the arm's line drawn on",
        ));
    }
    not_negative("depth", arm.depth, "4 in")?;
    not_negative("counterweight_mass", arm.counterweight_mass, "60 lb")?;
    not_negative("counterweight_radius", arm.counterweight_radius, "14 in")?;
    not_negative("spring_torque", arm.spring_torque, "90 lbf·ft")?;
    not_negative("wind_pressure", arm.wind_pressure, "3 psf")?;
    not_negative("wind_width", arm.wind_width, "4 in")?;
    not_negative("acceleration", arm.acceleration, "2 ft/s²")
}

/// Refuses an angle that no arm reaches.
pub(super) fn turns_up(input: &'static str, angle: Angle) -> Result<(), OutOfReach> {
    if (-PI / 4.0..=0.75 * PI).contains(&angle.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        "give the angle above the level, closed position, from −45° to 135°",
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn arm(angle: f64, up: f64, offset: f64) -> VerticalPivotTorque {
        VerticalPivotTorque {
            mass: Mass::from_base(14.0),
            center_along: Length::from_base(1.9),
            center_up: Length::from_base(up),
            reach: Length::from_base(4.1),
            depth: Length::from_base(0.1),
            angle: Angle::from_base(angle),
            counterweight_mass: Mass::from_base(52.0),
            counterweight_radius: Length::from_base(0.45),
            offset_angle: Angle::from_base(offset),
            spring_torque: Torque::from_base(0.0),
            wind_pressure: Pressure::from_base(140.0),
            wind_width: Length::from_base(0.1),
            acceleration: Acceleration::from_base(0.5),
        }
    }

    /// Height times weight of both masses.
    fn potential(arm: &VerticalPivotTorque) -> f64 {
        let (angle, offset) = (arm.angle.base(), arm.offset_angle.base());
        let lifted = arm.center_along.base() * angle.sin() + arm.center_up.base() * angle.cos();
        let other = -arm.counterweight_radius.base() * (angle - offset).sin();
        GRAVITY * (arm.mass.base() * lifted + arm.counterweight_mass.base() * other)
    }

    proptest! {
        #[test]
        fn the_unbalanced_torque_is_the_slope_of_the_potential_energy(
            angle in -0.7..2.2, up in -0.4..0.4, offset in -1.0..1.0
        ) {
            let step = 1e-5;
            let slope = (potential(&arm(angle + step, up, offset)) - potential(&arm(angle - step, up, offset))) / (2.0 * step);
            let torque = arm(angle, up, offset).evaluate().unwrap().unbalanced.base();
            prop_assert!((slope - torque).abs() < 1e-4, "{slope} {torque}");
        }

        #[test]
        fn opening_and_closing_differ_by_twice_what_is_unbalanced(angle in -0.7..2.2) {
            let gives = arm(angle, 0.1, 0.1).evaluate().unwrap();
            let difference = (gives.opening - gives.closing - 2.0 * gives.unbalanced).base();
            prop_assert!(difference.abs() < 1e-9);
        }

        #[test]
        fn a_heavier_counterweight_lifts_more(angle in -0.7..1.4, more in 0.1..50.0) {
            let light = arm(angle, 0.0, 0.0);
            let heavy = VerticalPivotTorque {
                counterweight_mass: light.counterweight_mass + Mass::from_base(more),
                ..light
            };
            prop_assert!(heavy.evaluate().unwrap().unbalanced < light.evaluate().unwrap().unbalanced);
        }
    }

    #[test]
    fn what_no_arm_does_is_refused() {
        let far = VerticalPivotTorque {
            center_along: Length::from_base(5.0),
            ..arm(0.3, 0.0, 0.0)
        };
        assert_eq!(far.evaluate().unwrap_err().input, "center_along");
        let over = arm(3.0, 0.0, 0.0);
        assert_eq!(over.evaluate().unwrap_err().input, "angle");
        let beside = arm(0.3, 0.0, 2.0);
        assert_eq!(beside.evaluate().unwrap_err().input, "offset_angle");
    }
}
