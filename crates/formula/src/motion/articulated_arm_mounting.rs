//! A folding arm on a swing leaf over its whole travel.

use super::articulated_arm_geometry::{STEPS, led_to};
use super::folding_arm::{ElbowSide, Fold, FoldingArm};
use super::pins::{Pins, check};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Angle, Length, Quantity as _, Ratio};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

formula! {
    /// Leverage, turning of the drive and reach of the elbow of a folding arm over the whole travel of a swing leaf.
    ///
    /// Measured as in `articulated-arm-geometry`, whose dead places are refused here for the whole travel. The leaf is
    /// fastest, and the drive's torque goes least far, where the torque ratio is least.
    ///
    /// The travel is tried at 91 angles, and narrowed down around the least of them.
    pub struct ArticulatedArmMounting = "articulated-arm-mounting" in Motion {
        /// Drive axis: distance behind the hinge line.
        rear_behind ("A"): Length,
        /// Drive axis: distance across, toward the side to which the leaf opens.
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
        /// Angle of the whole travel.
        travel_angle ("αt"): Angle,
    }
    gives
    /// A folding arm over the whole travel.
    pub struct ArticulatedMounting {
        /// Angle through which the drive turns.
        drive_travel ("Δθ"): Angle,
        /// Least distance of the second bar's line from the hinge line.
        least_lever_arm ("p"): Length,
        /// Angle of the leaf at which that is.
        least_at ("αp"): Angle,
        /// Least turning of the drive for each turning of the leaf.
        least_ratio ("i"): Ratio,
        /// Angle of the leaf at which that is.
        least_ratio_at ("αi"): Angle,
        /// Greatest turning of the drive for each turning of the leaf.
        greatest_ratio ("im"): Ratio,
        /// Greatest angle between the bars; 180° is stretched.
        most_stretched ("φm"): Angle,
        /// Least angle between the bars.
        most_folded ("φ"): Angle,
        /// Farthest that the elbow comes across.
        elbow_across ("Ey"): Length,
        /// Farthest that the elbow comes behind the hinge line; below zero where it stays ahead of it.
        elbow_behind ("Ex"): Length,
    }
    formula "least and greatest of p(α), i(α), φ(α), Ey(α), −Ex(α) of articulated-arm-geometry for α from 0 to αt\nΔθ = ∫ i dα, the turning of the first bar"
    valid "Bars in a plane square to the hinge line, travels up to 180° free of dead points."
    source { work: "geometry of a four-bar linkage; ratio of torques by the principle of virtual work", clause: "", evidence: Physics, seen: "two circles that meet at the elbow" }
    by articulated_arm_mounting
}

fn articulated_arm_mounting(
    arm: &ArticulatedArmMounting,
) -> Result<ArticulatedMounting, OutOfReach> {
    let pins = Pins::new(
        arm.rear_behind,
        arm.rear_across,
        arm.front_along,
        arm.front_across,
    );
    check(&pins, "travel_angle", arm.travel_angle)?;
    positive("travel_angle", arm.travel_angle, "90°")?;
    positive("crank", arm.crank, "16 in")?;
    positive("link", arm.link, "24 in")?;
    let bars = FoldingArm::new(pins, arm.crank, arm.link, arm.elbow);
    let mut seen = Seen::default();
    led_to(
        "travel_angle",
        &bars,
        arm.travel_angle.base(),
        |angle, fold| {
            seen.lever.meet(fold.leaf_arm.abs(), angle);
            seen.ratio.meet(fold.ratio().abs(), angle);
            seen.fold.meet(fold.cosine.clamp(-1.0, 1.0).acos(), angle);
            seen.turned.meet(bars.crank_angle(fold));
            let (across, behind) = seen.turned.passed();
            seen.across.meet(fold.elbow.1, angle);
            seen.behind.meet(-fold.elbow.0, angle);
            if across {
                seen.across.meet(bars.pins.rear.1 + bars.crank, angle);
            }
            if behind {
                seen.behind.meet(bars.crank - bars.pins.rear.0, angle);
            }
        },
    )?;
    let travel = arm.travel_angle.base();
    let lever = narrowed(&bars, travel, seen.lever.least, |fold| fold.leaf_arm.abs());
    let ratio = narrowed(&bars, travel, seen.ratio.least, |fold| fold.ratio().abs());
    Ok(ArticulatedMounting {
        drive_travel: Angle::from_base(seen.turned.total.abs()),
        least_lever_arm: Length::from_base(lever.0),
        least_at: Angle::from_base(lever.1),
        least_ratio: Ratio::from_base(ratio.0),
        least_ratio_at: Angle::from_base(ratio.1),
        greatest_ratio: Ratio::from_base(seen.ratio.most),
        most_stretched: Angle::from_base(seen.fold.most),
        most_folded: Angle::from_base(seen.fold.least.0),
        elbow_across: Length::from_base(seen.across.most),
        elbow_behind: Length::from_base(seen.behind.most),
    })
}

/// Thirds taken off the neighborhood of a least value.
const THIRDS: u32 = 40;

/// The least value near the least of those tried, with its angle.
fn narrowed(
    bars: &FoldingArm,
    travel: f64,
    (least, at): (f64, f64),
    value: impl Fn(&Fold) -> f64,
) -> (f64, f64) {
    let step = travel / f64::from(STEPS);
    let (mut from, mut to) = ((at - step).max(0.0), (at + step).min(travel));
    let value = |angle: f64| bars.at(angle).map_or(f64::INFINITY, |fold| value(&fold));
    for _ in 0..THIRDS {
        let third = (to - from) / 3.0;
        if value(from + third) < value(to - third) {
            to -= third;
        } else {
            from += third;
        }
    }
    let middle = f64::midpoint(from, to);
    let found = value(middle);
    if found < least {
        (found, middle)
    } else {
        (least, at)
    }
}

/// What was met over the travel.
#[derive(Debug, Default)]
struct Seen {
    lever: Ends,
    ratio: Ends,
    fold: Ends,
    across: Ends,
    behind: Ends,
    turned: Turned,
}

/// Least value with its angle, and greatest value.
#[derive(Debug)]
struct Ends {
    least: (f64, f64),
    most: f64,
}

impl Default for Ends {
    fn default() -> Self {
        Self {
            least: (f64::INFINITY, 0.0),
            most: f64::NEG_INFINITY,
        }
    }
}

impl Ends {
    fn meet(&mut self, value: f64, angle: f64) {
        if value < self.least.0 {
            self.least = (value, angle);
        }
        self.most = self.most.max(value);
    }
}

/// A turning summed over steps that are each less than half a turn.
#[derive(Debug, Default)]
struct Turned {
    /// Where it began, and where the step before the last one ended.
    ends: Option<(f64, f64)>,
    /// Where it stands, turns counted.
    now: f64,
    total: f64,
}

impl Turned {
    fn meet(&mut self, angle: f64) {
        let Some((start, _)) = self.ends else {
            self.ends = Some((angle, angle));
            self.now = angle;
            return;
        };
        let step = angle - self.now;
        self.ends = Some((start, self.now));
        self.now += step - TAU * (step / TAU).round();
        self.total = self.now - start;
    }

    /// In the last step the bar pointed straight across, or straight back.
    fn passed(&self) -> (bool, bool) {
        let (_, before) = self.ends.unwrap_or_default();
        let passes = |place: f64| {
            let turns = |angle: f64| ((angle - place) / TAU).floor();
            (turns(before) - turns(self.now)).abs() > 0.5
        };
        (passes(FRAC_PI_2), passes(PI))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn arm(crank: f64, link: f64, travel: f64) -> ArticulatedArmMounting {
        ArticulatedArmMounting {
            rear_behind: Length::from_base(0.15),
            rear_across: Length::from_base(0.35),
            front_along: Length::from_base(0.75),
            front_across: Length::from_base(0.1),
            crank: Length::from_base(crank),
            link: Length::from_base(link),
            elbow: ElbowSide::AwayFromHinge,
            travel_angle: Angle::from_base(travel),
        }
    }

    proptest! {
        #[test]
        fn a_longer_travel_never_has_more_leverage_or_less_reach(
            crank in 0.42..0.6, link in 0.55..0.7, travel in 0.3..1.5
        ) {
            let short = arm(crank, link, travel).evaluate().unwrap();
            let long = arm(crank, link, travel + 0.1).evaluate().unwrap();
            prop_assert!(long.least_lever_arm.base() <= short.least_lever_arm.base() + 1e-4);
            prop_assert!(long.elbow_across.base() >= short.elbow_across.base() - 1e-4);
            prop_assert!(long.drive_travel > short.drive_travel);
        }

        #[test]
        fn the_drive_turns_between_its_least_and_greatest_ratio_times_the_travel(
            crank in 0.42..0.6, link in 0.55..0.7, travel in 0.3..1.6
        ) {
            let gives = arm(crank, link, travel).evaluate().unwrap();
            let mean = gives.drive_travel.base() / travel;
            prop_assert!(mean >= gives.least_ratio.base() - 1e-3);
            prop_assert!(mean <= gives.greatest_ratio.base() + 1e-3);
        }
    }

    #[test]
    fn an_arm_that_stretches_on_the_way_is_refused() {
        let refused = arm(0.3, 0.5, 1.5).evaluate().unwrap_err();
        assert!(refused.why.contains("stretched"), "{}", refused.why);
    }
}
