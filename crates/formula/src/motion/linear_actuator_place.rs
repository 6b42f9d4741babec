//! Where to put the pins of a linear drive so that it keeps the most leverage.

use super::pins::Pins;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Angle, Length, Quantity as _};
use std::f64::consts::PI;

/// A linear drive, the post that it stands on and the angle that it must reach.
#[derive(Debug, Clone, Copy)]
pub struct LinearPlace {
    /// Angle of the whole travel.
    pub travel_angle: Angle,
    /// Length of the drive between its pins, drawn in.
    pub shortest: Length,
    /// Length of the drive between its pins, run out.
    pub longest: Length,
    /// Stroke kept in hand at each end.
    pub spare_stroke: Length,
    /// Distance from the hinge line to the face of the post on the drive's side.
    pub post_depth: Length,
    /// Distance from the hinge line back to the near edge of the post.
    pub hinge_inset: Length,
    /// Least distance of the drive's line from the post: half its body and some air.
    pub clearance: Length,
    /// Front pin: distance across, toward the side to which the leaf opens.
    pub front_across: Length,
    /// The farthest behind the hinge line that the rear pin may be.
    pub most_behind: Length,
    /// The farthest across that the rear pin may be.
    pub most_across: Length,
    /// The farthest along the leaf that the front pin may be.
    pub most_along: Length,
}

/// Where the pins go, and what that gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinearPins {
    /// Rear pin: distance behind the hinge line.
    pub rear_behind: Length,
    /// Rear pin: distance across.
    pub rear_across: Length,
    /// Front pin: distance along the leaf.
    pub front_along: Length,
    /// Least distance of the drive's line from the hinge line over the travel.
    pub least_lever_arm: Length,
}

/// Steps of the first grid in each direction.
const GRID: u32 = 24;
/// Steps of each finer grid around the best place so far, to either side.
const FINE: i32 = 4;
/// Places of the first grid that are looked at more closely: the best of all may lie beside the second best.
const STARTS: usize = 8;
/// Times that the grid is drawn closer.
const ROUNDS: u32 = 18;
/// What a grid keeps of the step of the one before; half of what its reach would allow, since the best lies along ridges.
const SHRINK: f64 = 0.6;

impl LinearPlace {
    /// The place of the pins with the greatest least lever arm; a drive on the side to which the leaf opens, which
    /// draws in while it opens.
    ///
    /// A grid over the three distances, then finer grids around the best of each: the same input always gives the same place,
    /// within a tenth of a millimeter.
    ///
    /// # Errors
    /// Where no place in the given room reaches the angle inside the stroke and clear of the post.
    pub fn best(&self) -> Result<LinearPins, OutOfReach> {
        self.check()?;
        let low = [0.0, self.least_across(), 0.1];
        let high = [
            self.most_behind.base(),
            self.most_across.base(),
            self.most_along.base(),
        ];
        let mut step = [0.0; 3];
        for (axis, step) in step.iter_mut().enumerate() {
            *step = (high[axis] - low[axis]) / f64::from(GRID);
        }
        let starts = self.coarse(low, step)?;
        let mut best: Option<Scored> = None;
        for start in starts {
            let found = self.refined(start, step, (low, high));
            keep_better(&mut best, Some(found.0), found.1);
        }
        let best = best.ok_or_else(no_place)?;
        let [behind, across, along] = best.1.map(Length::from_base);
        Ok(LinearPins {
            rear_behind: behind,
            rear_across: across,
            front_along: along,
            least_lever_arm: Length::from_base(best.0),
        })
    }

    fn least_across(&self) -> f64 {
        (self.post_depth + self.clearance).base()
    }

    /// The best place for each distance behind and for each distance along, the best of them first.
    fn coarse(&self, low: [f64; 3], step: [f64; 3]) -> Result<Vec<Scored>, OutOfReach> {
        let count = GRID as usize + 1;
        let (mut by_behind, mut by_along) = (vec![None; count], vec![None; count]);
        let at = |axis: usize, count: u32| low[axis] + step[axis] * f64::from(count);
        for (behind, of_behind) in (0..=GRID).zip(&mut by_behind) {
            for across in 0..=GRID {
                for (along, of_along) in (0..=GRID).zip(&mut by_along) {
                    let place = [at(0, behind), at(1, across), at(2, along)];
                    let score = self.score(place);
                    keep_better(of_behind, score, place);
                    keep_better(of_along, score, place);
                }
            }
        }
        let mut starts: Vec<Scored> = by_behind.into_iter().chain(by_along).flatten().collect();
        starts.sort_by(|a, b| b.0.total_cmp(&a.0));
        starts.dedup();
        starts.truncate(STARTS);
        if starts.is_empty() {
            return Err(no_place());
        }
        Ok(starts)
    }

    /// Finer and finer grids around a place.
    fn refined(&self, from: Scored, step: [f64; 3], room: ([f64; 3], [f64; 3])) -> Scored {
        let (mut best, mut step) = (from, step);
        for _ in 0..ROUNDS {
            step = step.map(|step| step * SHRINK);
            best = self.finer(best, step, room);
        }
        best
    }

    fn finer(&self, from: Scored, step: [f64; 3], (low, high): ([f64; 3], [f64; 3])) -> Scored {
        let mut best = Some(from);
        let at = |axis: usize, count: i32| {
            (from.1[axis] + step[axis] * f64::from(count)).clamp(low[axis], high[axis])
        };
        for behind in -FINE..=FINE {
            for across in -FINE..=FINE {
                for along in -FINE..=FINE {
                    let place = [at(0, behind), at(1, across), at(2, along)];
                    keep_better(&mut best, self.score(place), place);
                }
            }
        }
        best.unwrap_or(from)
    }

    /// The least lever arm of a place; nothing where it does not work.
    fn score(&self, [behind, across, along]: [f64; 3]) -> Option<f64> {
        let pins = Pins::new(
            Length::from_base(behind),
            Length::from_base(across),
            Length::from_base(along),
            self.front_across,
        );
        let travel = self.travel_angle.base();
        let (closed, closed_area) = pins.length_and_area(0.0);
        let (open, open_area) = pins.length_and_area(travel);
        let spare = self.spare_stroke.base();
        let reaches = closed <= self.longest.base() - spare && open >= self.shortest.base() + spare;
        if !reaches || closed_area <= 0.0 || open_area <= 0.0 || travel >= pins.dead_point() {
            return None;
        }
        let clear = self.clear_of_post(&pins, closed) && self.clear_of_post_when_open(&pins);
        clear.then(|| (closed_area / closed).min(open_area / open))
    }

    /// The line of the drive, leaf closed, passes the post's edge at the clearance or more.
    fn clear_of_post(&self, pins: &Pins, length: f64) -> bool {
        let (rear, front) = (pins.rear, pins.front_at(0.0));
        let edge = (-self.hinge_inset.base(), self.post_depth.base());
        let along = (front.0 - rear.0) / length;
        let across = (front.1 - rear.1) / length;
        let past = along * (edge.1 - rear.1) - across * (edge.0 - rear.0);
        edge.0 <= rear.0 || -past >= self.clearance.base()
    }

    /// With the leaf open the front pin stands beyond the post's face.
    fn clear_of_post_when_open(&self, pins: &Pins) -> bool {
        let front = pins.front_at(self.travel_angle.base());
        front.0 >= -self.hinge_inset.base() || front.1 >= self.least_across()
    }

    fn check(&self) -> Result<(), OutOfReach> {
        positive("travel_angle", self.travel_angle, "90°")?;
        if self.travel_angle.base() > PI {
            return Err(OutOfReach::new(
                "travel_angle",
                "a swing leaf travels up to 180°",
            ));
        }
        positive("shortest", self.shortest, "30 in")?;
        if self.longest <= self.shortest {
            return Err(OutOfReach::new(
                "longest",
                "run out it is longer than drawn in; give both lengths between the pins",
            ));
        }
        not_negative("spare_stroke", self.spare_stroke, "1/2 in")?;
        not_negative("post_depth", self.post_depth, "2 in")?;
        not_negative("hinge_inset", self.hinge_inset, "1 in")?;
        not_negative("clearance", self.clearance, "2 in")?;
        positive("most_behind", self.most_behind, "12 in")?;
        positive("most_along", self.most_along, "5 ft")?;
        if self.most_across.base() < self.least_across() {
            return Err(OutOfReach::new(
                "most_across",
                "the rear pin may stand at least as far across as the post's face and the clearance",
            ));
        }
        Ok(())
    }
}

fn no_place() -> OutOfReach {
    OutOfReach::new(
        "longest",
        "no place of the pins in this room reaches the angle inside the stroke and clear of the post; give a longer drive, a deeper room or a smaller angle",
    )
}

/// A place with its least lever arm.
type Scored = (f64, [f64; 3]);

fn keep_better(best: &mut Option<Scored>, score: Option<f64>, place: [f64; 3]) {
    if let Some(score) = score
        && best.is_none_or(|best| score > best.0)
    {
        *best = Some((score, place));
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::motion::LinearActuatorMounting;
    use proptest::prelude::*;

    fn place(travel: f64, depth: f64, stroke: f64) -> LinearPlace {
        let meters = Length::from_base;
        LinearPlace {
            travel_angle: Angle::from_base(travel),
            shortest: meters(0.75),
            longest: meters(0.75 + stroke),
            spare_stroke: meters(0.01),
            post_depth: meters(depth),
            hinge_inset: meters(0.03),
            clearance: meters(0.05),
            front_across: meters(0.05),
            most_behind: meters(0.35),
            most_across: meters(0.40),
            most_along: meters(1.5),
        }
    }

    fn mounting(asked: &LinearPlace, pins: [f64; 3]) -> LinearActuatorMounting {
        LinearActuatorMounting {
            rear_behind: Length::from_base(pins[0]),
            rear_across: Length::from_base(pins[1]),
            front_along: Length::from_base(pins[2]),
            front_across: asked.front_across,
            travel_angle: asked.travel_angle,
            width: Length::from_base(2.5),
            shortest: asked.shortest,
            longest: asked.longest,
            spare_stroke: asked.spare_stroke,
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(200))]
        #[test]
        fn no_place_tried_at_random_does_better(
            travel in 1.3..1.8, depth in 0.0..0.12, stroke in 0.3..0.5,
            tries in proptest::collection::vec((0.0..0.35, 0.05..0.4, 0.2..1.5), 400)
        ) {
            let asked = place(travel, depth, stroke);
            let best = asked.best();
            for (behind, across, along) in tries {
                let tried = [behind, across, along];
                if across < depth + 0.05 { continue; }
                if let Some(score) = asked.score(tried) {
                    let found = best.as_ref().unwrap().least_lever_arm.base();
                    prop_assert!(score <= found + 1e-3, "{score} beside {found}");
                }
            }
        }

        #[test]
        fn what_is_found_works(travel in 1.3..1.8, depth in 0.0..0.12, stroke in 0.3..0.5) {
            let asked = place(travel, depth, stroke);
            if let Ok(found) = asked.best() {
                let pins = [found.rear_behind, found.rear_across, found.front_along].map(quantity::Quantity::base);
                let gives = mounting(&asked, pins).evaluate().unwrap();
                prop_assert!(gives.left_drawn_in.base() >= -1e-9 && gives.left_run_out.base() >= -1e-9);
                prop_assert!((gives.least_lever_arm - found.least_lever_arm).base().abs() < 1e-9);
            }
        }
    }

    #[test]
    fn a_drive_that_is_too_short_is_refused_in_words() {
        let refused = place(PI / 2.0, 0.05, 0.08).best().unwrap_err();
        assert!(refused.why.contains("inside the stroke"), "{}", refused.why);
    }
}
