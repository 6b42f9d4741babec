//! Torque that turns a swing leaf.

use super::slope::GRAVITY;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{
    Acceleration, Angle, Force, Length, Mass, MomentOfInertia, Quantity as _, Ratio, Torque,
};
use std::f64::consts::PI;

quantity::words! {
    /// Which way a swing leaf turns.
    pub enum SwingWay {
        /// From the closed position to the open one.
        Opening = "opening",
        /// From the open position to the closed one.
        Closing = "closing",
    }
}

impl SwingWay {
    /// One while the angle grows, minus one while it shrinks.
    fn sign(self) -> f64 {
        match self {
            Self::Opening => 1.0,
            Self::Closing => -1.0,
        }
    }
}

formula! {
    /// Torque about the hinge line that a swing leaf takes at an angle, term by term.
    ///
    /// The angle is 0 closed and grows toward the side to which the leaf opens. A hinge line that leans makes the leaf
    /// climb over one part of its travel and run down over the other, and a rising hinge makes it climb all the way;
    /// both turn their sign with the way of turning. All other terms are torques against the motion. A total below zero
    /// means that the leaf runs away by itself and must be held back.
    ///
    /// Wind may blow from anywhere and is strongest where it meets the leaf squarely, so the force square to the leaf
    /// is taken as it is at every angle; give a force below zero for a wind that pushes the leaf along.
    pub struct SwingGateTorque = "swing-gate-torque" in Motion {
        /// Mass of the leaf with everything on it.
        mass ("m"): Mass,
        /// Width from the hinge line to the free end.
        width ("w"): Length,
        /// Distance of the center of gravity from the hinge line.
        center ("r"): Length,
        /// Moment of inertia about the hinge line; m · w² / 3 for an even leaf.
        inertia ("J"): MomentOfInertia,
        /// Turning parts of the drive as a share of the leaf's moment of inertia.
        rotating_share ("ρ"): Ratio,
        /// Torque of friction in the hinges.
        hinge_friction ("Th"): Torque,
        /// How far the top of the hinge line leans toward the latching side, over its height.
        lean_along ("a"): Ratio,
        /// How far the top of the hinge line leans toward the side to which the leaf opens, over its height.
        lean_across ("c"): Ratio,
        /// How far a rising hinge lifts the leaf over its whole travel; 0 for plain hinges.
        rise ("s"): Length,
        /// Angle of the whole travel.
        travel_angle ("αt"): Angle,
        /// Angle asked about, 0 closed.
        angle ("α"): Angle,
        /// Which way the leaf turns.
        way ("–"): SwingWay,
        /// Force of the wind square to the leaf, above zero against the motion.
        wind_force ("Fw"): Force,
        /// Distance of the wind's force from the hinge line; half the width where it presses evenly.
        wind_arm ("x"): Length,
        /// Force of seals or of a catch at the free end, where they are met.
        seal_force ("Fs"): Force,
        /// Acceleration of the free end, not below zero.
        acceleration ("b"): Acceleration,
    }
    gives
    /// Torque about the hinge line of a swing leaf, term by term.
    pub struct SwingTorques {
        /// Friction of the hinges.
        friction ("Th"): Torque,
        /// Weight on a hinge line out of plumb, below zero where the leaf runs down.
        lean ("Tl"): Torque,
        /// Weight on a rising hinge, below zero where the leaf comes down.
        rising ("Tr"): Torque,
        /// Wind.
        wind ("Tw"): Torque,
        /// Seals or catch.
        seals ("Ts"): Torque,
        /// Speeding up leaf and drive.
        turning_up ("Ta"): Torque,
        /// All terms at steady speed.
        steady ("T0"): Torque,
        /// All terms while speeding up.
        total ("T"): Torque,
    }
    formula "σ = 1 while opening, −1 while closing\nTl = σ · m · g · r · (a · sin α − c · cos α)\nTr = σ · m · g · s / αt\nTw = Fw · x\nTs = Fs · w\nTa = J · (1 + ρ) · b / w\nT0 = Th + Tl + Tr + Tw + Ts\nT = T0 + Ta"
    valid "Hinge lines that lean by no more than 1 in 10, travels up to 180°; stiff leaves on sound hinges. A rising hinge is taken to climb evenly with the angle. Standard gravity, 9.80665 m/s²."
    source { work: "work and height: the torque of gravity is m · g · dh/dα; moments about the hinge line", clause: "", evidence: Physics, seen: "height of the center of gravity h(α) = −r · (a · cos α + c · sin α) about a line that leans a little" }
    by swing_gate_torque
}

fn swing_gate_torque(leaf: &SwingGateTorque) -> Result<SwingTorques, OutOfReach> {
    check(leaf)?;
    let weight = leaf.mass.base() * GRAVITY;
    let (sine, cosine) = leaf.angle.base().sin_cos();
    let climb = leaf.lean_along.base() * sine - leaf.lean_across.base() * cosine;
    let sign = leaf.way.sign();
    let lean = sign * weight * leaf.center.base() * climb;
    let rising = sign * weight * leaf.rise.base() / leaf.travel_angle.base();
    let wind = leaf.wind_force.base() * leaf.wind_arm.base();
    let seals = leaf.seal_force.base() * leaf.width.base();
    let inertia = leaf.inertia.base() * (1.0 + leaf.rotating_share.base());
    let turning_up = inertia * leaf.acceleration.base() / leaf.width.base();
    let steady = leaf.hinge_friction.base() + lean + rising + wind + seals;
    Ok(SwingTorques {
        friction: leaf.hinge_friction,
        lean: Torque::from_base(lean),
        rising: Torque::from_base(rising),
        wind: Torque::from_base(wind),
        seals: Torque::from_base(seals),
        turning_up: Torque::from_base(turning_up),
        steady: Torque::from_base(steady),
        total: Torque::from_base(steady + turning_up),
    })
}

/// Greatest lean of a hinge line: beyond it the small-angle height is no longer good to one part in a hundred.
const MOST_LEAN: f64 = 0.1;

fn check(leaf: &SwingGateTorque) -> Result<(), OutOfReach> {
    positive("mass", leaf.mass, "350 lb")?;
    positive("width", leaf.width, "9 ft")?;
    positive("center", leaf.center, "4 ft 6 in")?;
    positive("inertia", leaf.inertia, "9500 lb·ft²")?;
    not_negative("rotating_share", leaf.rotating_share, "0.2")?;
    not_negative("hinge_friction", leaf.hinge_friction, "4 lbf·ft")?;
    upright("lean_along", leaf.lean_along)?;
    upright("lean_across", leaf.lean_across)?;
    positive("travel_angle", leaf.travel_angle, "90°")?;
    if leaf.travel_angle.base() > PI {
        return Err(OutOfReach::new(
            "travel_angle",
            "a swing leaf travels up to 180°",
        ));
    }
    if !(0.0..=leaf.travel_angle.base() * (1.0 + 1e-9)).contains(&leaf.angle.base()) {
        return Err(OutOfReach::new(
            "angle",
            "the angle lies between 0, closed, and the whole travel",
        ));
    }
    not_negative("wind_arm", leaf.wind_arm, "4 ft 6 in")?;
    not_negative("seal_force", leaf.seal_force, "5 lbf")?;
    not_negative("acceleration", leaf.acceleration, "1 ft/s²")
}

fn upright(input: &'static str, lean: Ratio) -> Result<(), OutOfReach> {
    if (-MOST_LEAN..=MOST_LEAN).contains(&lean.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        input,
        "give the lean over the height, from −0.1 to 0.1, such as 0.005; a hinge line that leans more is set right first",
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(angle: f64, lean: (f64, f64)) -> SwingGateTorque {
        SwingGateTorque {
            mass: Mass::from_base(180.0),
            width: Length::from_base(2.9),
            center: Length::from_base(1.4),
            inertia: MomentOfInertia::from_base(504.6),
            rotating_share: Ratio::from_base(0.2),
            hinge_friction: Torque::from_base(12.0),
            lean_along: Ratio::from_base(lean.0),
            lean_across: Ratio::from_base(lean.1),
            rise: Length::from_base(0.0),
            travel_angle: Angle::from_base(PI / 2.0),
            angle: Angle::from_base(angle),
            way: SwingWay::Opening,
            wind_force: Force::from_base(220.0),
            wind_arm: Length::from_base(1.45),
            seal_force: Force::from_base(0.0),
            acceleration: Acceleration::from_base(0.25),
        }
    }

    /// Height of the center of gravity about a line that leans a little.
    fn height(angle: f64, lean: (f64, f64)) -> f64 {
        -1.4 * (lean.0 * angle.cos() + lean.1 * angle.sin())
    }

    proptest! {
        #[test]
        fn the_work_of_the_lean_is_the_weight_times_the_rise(
            along in -0.1..0.1, across in -0.1..0.1, end in 0.1..1.5
        ) {
            let steps = 400_u32;
            let step = end / f64::from(steps);
            let work: f64 = (0..steps)
                .map(|at| leaf((f64::from(at) + 0.5) * step, (along, across)).evaluate().unwrap())
                .map(|torques| torques.lean.base() * step)
                .sum();
            let rise = height(end, (along, across)) - height(0.0, (along, across));
            prop_assert!((work - 180.0 * GRAVITY * rise).abs() < 1e-3);
        }

        #[test]
        fn the_way_back_turns_the_sign_of_the_weight_only(
            angle in 0.0..1.5, along in -0.1..0.1, across in -0.1..0.1
        ) {
            let opening = leaf(angle, (along, across));
            let closing = SwingGateTorque { way: SwingWay::Closing, ..opening };
            let (there, back) = (opening.evaluate().unwrap(), closing.evaluate().unwrap());
            prop_assert!((there.lean + back.lean).base().abs() < 1e-9);
            prop_assert!((there.total - back.total - 2.0 * there.lean).base().abs() < 1e-9);
        }

        #[test]
        fn the_terms_add_up(angle in 0.0..1.5, along in -0.1..0.1, across in -0.1..0.1) {
            let torque = leaf(angle, (along, across)).evaluate().unwrap();
            let sum = torque.friction + torque.lean + torque.rising + torque.wind + torque.seals
                + torque.turning_up;
            prop_assert!((sum - torque.total).base().abs() < 1e-9);
        }
    }

    #[test]
    fn an_angle_past_the_travel_is_refused() {
        assert_eq!(leaf(1.6, (0.0, 0.0)).evaluate().unwrap_err().input, "angle");
        assert_eq!(
            leaf(0.6, (0.2, 0.0)).evaluate().unwrap_err().input,
            "lean_along"
        );
    }
}
