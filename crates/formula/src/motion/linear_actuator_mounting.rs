//! A linear drive on a swing leaf over its whole travel.

use super::linear_actuator_geometry::before_the_dead_point;
use super::pins::{Pins, check};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Length, Quantity as _, Ratio};

formula! {
    /// Stroke, leverage and speed of a linear drive between two pins over the whole travel of a swing leaf, and what
    /// is left of its own stroke at each end.
    ///
    /// Pins are measured as in `linear-actuator-geometry`. Leverage is least at an end of the travel: between them it
    /// rises and falls once. The tip is fastest where the leverage is least.
    ///
    /// A drive cannot reach where one of the two lengths left is below zero: it is then too long for the one end
    /// (`left_drawn_in`) or too short for the other (`left_run_out`).
    pub struct LinearActuatorMounting = "linear-actuator-mounting" in Motion {
        /// Rear pin: distance behind the hinge line.
        rear_behind ("A"): Length,
        /// Rear pin: distance across, toward the side to which the leaf opens.
        rear_across ("B"): Length,
        /// Front pin: distance along the leaf.
        front_along ("C"): Length,
        /// Front pin: distance across, with the leaf closed.
        front_across ("e"): Length,
        /// Angle of the whole travel.
        travel_angle ("αt"): Angle,
        /// Width of the leaf from the hinge line to the free end.
        width ("w"): Length,
        /// Length of the drive between its pins, drawn in.
        shortest ("Ls"): Length,
        /// Length of the drive between its pins, run out.
        longest ("Ll"): Length,
        /// Stroke kept in hand at each end.
        spare_stroke ("s"): Length,
    }
    gives
    /// A linear drive over the whole travel.
    pub struct LinearMounting {
        /// Distance between the pins, closed.
        closed_length ("L0"): Length,
        /// Distance between the pins, open.
        open_length ("L1"): Length,
        /// Stroke that the travel takes.
        stroke ("ΔL"): Length,
        /// Least distance of the drive's line from the hinge line.
        least_lever_arm ("p"): Length,
        /// Angle at which that is: 0 or the whole travel.
        least_at ("αp"): Angle,
        /// Greatest distance of the drive's line from the hinge line.
        greatest_lever_arm ("pm"): Length,
        /// Greatest speed of the free end over the speed of the ram.
        speed_ratio ("k"): Ratio,
        /// Length left before it is drawn in, spare stroke taken off; below zero where it is too long.
        left_drawn_in ("di"): Length,
        /// Length left before it is run out, spare stroke taken off; below zero where it is too short.
        left_run_out ("do"): Length,
    }
    formula "L(α) = |Q(α) − P|,  p(α) = |P × Q(α)| / L(α)\nΔL = |L0 − L1|\np = min(p(0), p(αt))\npm = min(|P|, |Q|) where the pins pass its angle, else max(p(0), p(αt))\nk = w / p\ndi = min(L0, L1) − Ls − s\ndo = Ll − s − max(L0, L1)"
    valid "Pins square to the hinge line, travels up to 180° that end before the dead point."
    source { work: "law of cosines, and its derivative by the principle of virtual work", clause: "", evidence: Physics, seen: "triangle of hinge line and pins" }
    by linear_actuator_mounting
}

fn linear_actuator_mounting(drive: &LinearActuatorMounting) -> Result<LinearMounting, OutOfReach> {
    let pins = Pins::new(
        drive.rear_behind,
        drive.rear_across,
        drive.front_along,
        drive.front_across,
    );
    check(&pins, "travel_angle", drive.travel_angle)?;
    positive("travel_angle", drive.travel_angle, "90°")?;
    positive("width", drive.width, "8 ft")?;
    positive("shortest", drive.shortest, "30 in")?;
    not_negative("spare_stroke", drive.spare_stroke, "1/2 in")?;
    if drive.longest <= drive.shortest {
        return Err(OutOfReach::new(
            "longest",
            "run out it is longer than drawn in; give both lengths between the pins",
        ));
    }
    before_the_dead_point("travel_angle", &pins, drive.travel_angle)?;
    let travel = drive.travel_angle.base();
    let lengths = [pins.length_and_area(0.0).0, pins.length_and_area(travel).0];
    let arms = [pins.lever_arm(0.0).abs(), pins.lever_arm(travel).abs()];
    let (least, at) = if arms[0] <= arms[1] {
        (arms[0], 0.0)
    } else {
        (arms[1], travel)
    };
    let (short, long) = (lengths[0].min(lengths[1]), lengths[0].max(lengths[1]));
    Ok(LinearMounting {
        closed_length: Length::from_base(lengths[0]),
        open_length: Length::from_base(lengths[1]),
        stroke: Length::from_base(long - short),
        least_lever_arm: Length::from_base(least),
        least_at: Angle::from_base(at),
        greatest_lever_arm: Length::from_base(greatest(&pins, travel, arms)),
        speed_ratio: Ratio::from_base(drive.width.base() / least),
        left_drawn_in: Length::from_base(short) - drive.shortest - drive.spare_stroke,
        left_run_out: drive.longest - drive.spare_stroke - Length::from_base(long),
    })
}

/// The greatest lever arm: the shorter radius where the drive comes square to it inside the travel.
fn greatest(pins: &Pins, travel: f64, arms: [f64; 2]) -> f64 {
    let (rear, front) = pins.radii();
    let (short, long) = (rear.min(front), rear.max(front));
    let square = (short / long).acos();
    let start = pins.included();
    let (from, to) = (start.abs(), (start - travel).abs());
    if (from.min(to)..=from.max(to)).contains(&square) {
        short
    } else {
        arms[0].max(arms[1])
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn drive(behind: f64, across: f64, along: f64, travel: f64) -> LinearActuatorMounting {
        LinearActuatorMounting {
            rear_behind: Length::from_base(behind),
            rear_across: Length::from_base(across),
            front_along: Length::from_base(along),
            front_across: Length::from_base(0.05),
            travel_angle: Angle::from_base(travel),
            width: Length::from_base(2.5),
            shortest: Length::from_base(0.7),
            longest: Length::from_base(1.1),
            spare_stroke: Length::from_base(0.01),
        }
    }

    proptest! {
        #[test]
        fn no_angle_between_has_less_or_more_leverage(
            behind in 0.0..0.3, across in 0.05..0.4, along in 0.4..1.5, travel in 0.2..1.5, share in 0.0..1.0
        ) {
            let reached = drive(behind, across, along, travel).evaluate();
            // Short arms push through the hinge before the end, and are refused.
            prop_assume!(reached.is_ok());
            let gives = reached.unwrap();
            let pins = Pins::new(
                Length::from_base(behind), Length::from_base(across),
                Length::from_base(along), Length::from_base(0.05),
            );
            let arm = pins.lever_arm(share * travel);
            prop_assert!(arm >= gives.least_lever_arm.base() - 1e-12);
            prop_assert!(arm <= gives.greatest_lever_arm.base() + 1e-12);
        }

        #[test]
        fn the_stroke_is_the_leverage_summed_over_the_angle(
            behind in 0.0..0.3, across in 0.05..0.4, along in 0.4..1.5, travel in 0.2..1.5
        ) {
            let reached = drive(behind, across, along, travel).evaluate();
            // Short arms push through the hinge before the end, and are refused.
            prop_assume!(reached.is_ok());
            let gives = reached.unwrap();
            let pins = Pins::new(
                Length::from_base(behind), Length::from_base(across),
                Length::from_base(along), Length::from_base(0.05),
            );
            let step = travel / 1000.0;
            let sum: f64 = (0..1000).map(|at| pins.lever_arm((f64::from(at) + 0.5) * step) * step).sum();
            prop_assert!((sum - gives.stroke.base()).abs() < 1e-5);
        }
    }

    #[test]
    fn a_drive_that_pushes_through_the_hinge_is_refused() {
        let refused = drive(0.2, 0.2, 0.9, 2.4).evaluate().unwrap_err();
        assert_eq!(refused.input, "travel_angle");
        assert!(refused.why.contains("one line"), "{}", refused.why);
    }
}
