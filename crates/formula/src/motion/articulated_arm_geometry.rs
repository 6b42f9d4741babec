//! A folding arm on a swing leaf at one angle.

use super::folding_arm::{ElbowSide, Fold, FoldingArm};
use super::pins::{Pins, check};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, Length, Quantity as _, Ratio, Torque};

formula! {
    /// Elbow, leverage and torque of a folding arm between a drive on the pillar and a swing leaf, at one angle.
    ///
    /// The drive's axis and the bracket on the leaf are measured from the hinge line with the leaf closed: behind it,
    /// along the leaf, and across toward the side to which the leaf opens. The first bar turns with the drive, the
    /// second joins the elbow to the leaf.
    ///
    /// Two places are dead. Where the bars come into one line, stretched or folded, the arm does not lead the leaf any
    /// more; where the second bar points at the hinge line, it turns nothing. Both are refused, and so is an angle that
    /// lies beyond such a place, seen from the closed leaf.
    pub struct ArticulatedArmGeometry = "articulated-arm-geometry" in Motion {
        /// Drive axis: distance behind the hinge line.
        rear_behind ("A"): Length,
        /// Drive axis: distance across.
        rear_across ("B"): Length,
        /// Leaf bracket: distance along the leaf.
        front_along ("C"): Length,
        /// Leaf bracket: distance across, with the leaf closed.
        front_across ("e"): Length,
        /// First bar, from the drive's axis to the elbow.
        crank ("a"): Length,
        /// Second bar, from the elbow to the leaf.
        link ("b"): Length,
        /// To which side the elbow stands, leaf closed.
        elbow ("–"): ElbowSide,
        /// Angle of the leaf, 0 closed.
        angle ("α"): Angle,
        /// Torque about the hinge line that the leaf asks for.
        torque ("T"): Torque,
    }
    gives
    /// A folding arm at one angle.
    pub struct ArticulatedArm {
        /// Direction of the first bar, from the line of the closed leaf toward the side to which it opens.
        crank_angle ("θ"): Angle,
        /// Angle between the bars; 180° is stretched.
        fold_angle ("φ"): Angle,
        /// Elbow: distance along the closed leaf from the hinge line, below zero behind it.
        elbow_along ("Ex"): Length,
        /// Elbow: distance across.
        elbow_across ("Ey"): Length,
        /// Distance of the second bar's line from the hinge line.
        lever_arm ("p"): Length,
        /// Turning of the drive for each turning of the leaf; the torque of the leaf over that of the drive.
        torque_ratio ("i"): Ratio,
        /// Torque of the drive for that torque of the leaf.
        drive_torque ("Td"): Torque,
    }
    formula "D = (−A, B),  Q = (C · cos α − e · sin α, C · sin α + e · cos α)\nE: |E − D| = a and |Q − E| = b\ncos φ = (a² + b² − |Q − D|²) / (2 · a · b)\np = |E × Q| / b,  pd = |(E − D) × (Q − E)| / b\ni = p / pd = dθ/dα\nTd = T / i"
    valid "Bars in a plane square to the hinge line, 0° to 180°, free of dead points. Friction of the joints is left out."
    source { work: "geometry of a four-bar linkage; ratio of torques by the principle of virtual work", clause: "", evidence: Physics, seen: "two circles that meet at the elbow; moments of the second bar's force about the drive and about the hinge line" }
    by articulated_arm_geometry
}

fn articulated_arm_geometry(arm: &ArticulatedArmGeometry) -> Result<ArticulatedArm, OutOfReach> {
    let pins = Pins::new(
        arm.rear_behind,
        arm.rear_across,
        arm.front_along,
        arm.front_across,
    );
    check(&pins, "angle", arm.angle)?;
    positive("crank", arm.crank, "16 in")?;
    positive("link", arm.link, "24 in")?;
    let bars = FoldingArm::new(pins, arm.crank, arm.link, arm.elbow);
    let fold = led_to("angle", &bars, arm.angle.base(), |_, _| ())?;
    let ratio = fold.ratio().abs();
    Ok(ArticulatedArm {
        crank_angle: Angle::from_base(bars.crank_angle(&fold)),
        fold_angle: Angle::from_base(fold.cosine.clamp(-1.0, 1.0).acos()),
        elbow_along: Length::from_base(fold.elbow.0),
        elbow_across: Length::from_base(fold.elbow.1),
        lever_arm: Length::from_base(fold.leaf_arm.abs()),
        torque_ratio: Ratio::from_base(ratio),
        drive_torque: Torque::from_base(arm.torque.base() / ratio),
    })
}

/// Places of the travel that are tried on the way to an angle.
pub(super) const STEPS: u32 = 90;
/// Leverage below this, in meters, is none.
const NO_LEVER: f64 = 1e-6;

/// The arm at an angle, led there from the closed leaf; refused where it meets a dead place on the way.
pub(super) fn led_to(
    input: &'static str,
    bars: &FoldingArm,
    angle: f64,
    mut each: impl FnMut(f64, &Fold),
) -> Result<Fold, OutOfReach> {
    let mut last: Option<Fold> = None;
    for step in 0..=STEPS {
        let at = angle * f64::from(step) / f64::from(STEPS);
        let fold = bars
            .at(at)
            .filter(|fold| fold.drive_arm.abs() > NO_LEVER)
            .ok_or_else(|| cannot_reach(bars, at))?;
        let turned = last.is_some_and(|last| last.leaf_arm * fold.leaf_arm <= 0.0);
        if turned || fold.leaf_arm.abs() < NO_LEVER {
            return Err(OutOfReach::new(
                input,
                format!(
                    "at {:.0}° the second bar points at the hinge line and turns nothing; move the leaf bracket or the drive",
                    at.to_degrees()
                ),
            ));
        }
        each(at, &fold);
        last = Some(fold);
    }
    last.ok_or_else(|| cannot_reach(bars, angle))
}

fn cannot_reach(bars: &FoldingArm, angle: f64) -> OutOfReach {
    let (distance, _) = bars.pins.length_and_area(angle);
    let (input, what) = if distance >= bars.crank.max(bars.link) {
        ("link", "stretched, the bars do not reach the leaf bracket")
    } else {
        (
            "crank",
            "folded, the bars do not come as near as the leaf bracket",
        )
    };
    OutOfReach::new(
        input,
        format!(
            "at {:.0}° {what}; give bars of other lengths, or move the bracket or the drive",
            angle.to_degrees()
        ),
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn arm(crank: f64, link: f64, angle: f64) -> ArticulatedArmGeometry {
        ArticulatedArmGeometry {
            rear_behind: Length::from_base(0.15),
            rear_across: Length::from_base(0.35),
            front_along: Length::from_base(0.75),
            front_across: Length::from_base(0.1),
            crank: Length::from_base(crank),
            link: Length::from_base(link),
            elbow: ElbowSide::AwayFromHinge,
            angle: Angle::from_base(angle),
            torque: Torque::from_base(100.0),
        }
    }

    proptest! {
        #[test]
        fn both_bars_keep_their_lengths(crank in 0.42..0.6, link in 0.55..0.7, angle in 0.0..1.6) {
            let asked = arm(crank, link, angle);
            let gives = asked.evaluate().unwrap();
            let (x, y) = (gives.elbow_along.base(), gives.elbow_across.base());
            prop_assert!(((x + 0.15).hypot(y - 0.35) - crank).abs() < 1e-9);
            let bracket = Pins::new(
                asked.rear_behind, asked.rear_across, asked.front_along, asked.front_across,
            ).front_at(angle);
            prop_assert!(((x - bracket.0).hypot(y - bracket.1) - link).abs() < 1e-9);
        }

        #[test]
        fn the_torque_ratio_is_the_turning_of_the_drive(
            crank in 0.42..0.6, link in 0.55..0.7, angle in 0.01..1.6
        ) {
            let step = 1e-6;
            let before = arm(crank, link, angle - step).evaluate().unwrap().crank_angle.base();
            let after = arm(crank, link, angle + step).evaluate().unwrap().crank_angle.base();
            let ratio = arm(crank, link, angle).evaluate().unwrap().torque_ratio.base();
            let turned = (after - before).abs();
            let turned = turned.min(std::f64::consts::TAU - turned) / (2.0 * step);
            prop_assert!((turned - ratio).abs() < 1e-4 * ratio);
        }
    }

    #[test]
    fn bars_that_do_not_reach_or_do_not_fold_are_refused() {
        assert_eq!(arm(0.3, 0.5, 0.5).evaluate().unwrap_err().input, "link");
        assert_eq!(arm(0.2, 1.0, 1.6).evaluate().unwrap_err().input, "crank");
    }
}
