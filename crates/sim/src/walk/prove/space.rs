//! The space of touches that a proof covers: when, how deep, on which slant, how slow, after how long a stand.
//!
//! Where the path crosses the gate line is no coordinate: the touch itself says it, so that every point of the space is a
//! touch by construction. Times of arrival have no bounds at all.

use super::span::Span;
use crate::walk::evaluate::Found;
use crate::walk::lane::{Lane, Walk};
use crate::walk::path::{Case, Path};
use crate::walk::scenario::Way;
use crate::walk::sequence::{Family, Habit};

/// Sizes of a box along: time, depth of the touched cylinder, slant, one over the speed, time that it has stood.
pub(super) type Box5 = [Span; 5];

/// What one proof is about: one cylinder of a family.
pub(super) struct Job<'a> {
    pub lane: &'a Lane,
    pub body: usize,
    pub way: usize,
    pub habit: Habit,
    pub part: usize,
    /// How much a size of each coordinate matters, in meters.
    weights: [f64; 5],
}

impl<'a> Job<'a> {
    pub(super) fn new(walk: &'a Walk, family: &Family, part: usize) -> Self {
        let lane = &walk.lanes[family.pass];
        let fastest = lane
            .profile
            .stretches
            .iter()
            .map(|stretch| stretch.speed)
            .fold(0.0, f64::max);
        Self {
            lane,
            body: family.body,
            way: usize::from(family.way == Way::Out),
            habit: family.habit,
            part,
            weights: [fastest, 1.0, 0.3, 0.5 * fastest, fastest],
        }
    }

    /// The whole space of the job.
    pub(super) fn whole(&self, slant: f64) -> Box5 {
        let person = &self.lane.people[self.body];
        let half = person.parts[self.part].radius + self.lane.half;
        let (slowest, fastest) = person.speeds.unwrap_or((1.0, 1.0));
        let end = self.lane.profile.end;
        let slowness = if self.habit == Habit::Stand {
            Span::of(1.0)
        } else {
            Span::of(1.0).over(Span::new(slowest, fastest))
        };
        let stood = if self.habit == Habit::Stop {
            Span::new(0.0, end)
        } else {
            Span::of(0.0)
        };
        [
            Span::new(0.0, end),
            Span::new(-half, half),
            Span::new(-slant, slant),
            slowness,
            stood,
        ]
    }

    /// Halves of a box along the coordinate that matters most.
    pub(super) fn split(&self, of: &Box5) -> Option<(Box5, Box5)> {
        let size = |at: &usize| of[*at].width() * self.weights[*at];
        let at = (0..5).max_by(|a, b| size(a).total_cmp(&size(b)))?;
        if size(&at) < 1e-9 {
            return None;
        }
        let (low, high) = of[at].halves();
        let (mut one, mut other) = (*of, *of);
        one[at] = low;
        other[at] = high;
        Some((one, other))
    }

    /// Share of the whole space that a box is.
    pub(super) fn share(of: &Box5, whole: &Box5) -> f64 {
        of.iter()
            .zip(whole)
            .filter(|(_, whole)| whole.width() > 0.0)
            .map(|(of, whole)| of.width() / whole.width())
            .product()
    }

    /// The cases whose first touch may be close to a corner of depth, slant and speed: the worst of a smooth bound lies
    /// in corners.
    pub(super) fn try_corners(&self, of: &Box5, try_case: &mut impl FnMut(Case, Found)) {
        for corner in 0..8_u8 {
            let mut point = of.map(Span::middle);
            for (bit, at) in (1..=3).enumerate() {
                let (half, low) = (0.499 * of[at].width(), corner & (1 << bit) == 0);
                point[at] += if low { -half } else { half };
            }
            self.try_point(point, try_case);
        }
    }

    /// The case whose first touch may be a point: with the leaf on its plan, and as the devices stop it.
    pub(super) fn try_point(&self, point: [f64; 5], try_case: &mut impl FnMut(Case, Found)) {
        let [time, depth, slant, slowness, stood] = point;
        let lane = self.lane;
        let part = &lane.people[self.body].parts[self.part];
        let aside = lane.right(self.way) * part.aside;
        let stretch = (1.0 + slant * slant).sqrt();
        let middle = depth - (part.ahead - aside * slant) / stretch;
        let chord = part.radius.powi(2) - (depth.abs() - lane.half).max(0.0).powi(2);
        let pace = 1.0 / (slowness * stretch);
        let mut place = lane.profile.place_at(time);
        for _ in 0..3 {
            let end = lane.profile.travel - place;
            // A hair toward the leaf, so that rounding does not turn the touch into a miss.
            let x = end - chord.max(0.0).sqrt() + 1e-9;
            let case = Case {
                body: self.body,
                way: self.way,
                path: match self.habit {
                    Habit::Cross | Habit::Follow => Path::Cross,
                    Habit::Stop => Path::Stop(middle),
                    Habit::Stand => Path::Stand(middle),
                },
                x0: x - depth * slant - aside * stretch,
                slant,
                speed: 1.0 / slowness,
                arrives: time - stood - middle / pace,
            };
            let (low, high) = lane.places();
            if case.x0 >= low && case.x0 <= high {
                try_case(case, lane.run(&case));
            }
            let next = lane.place_in(&case, time);
            if (next - place).abs() < 1e-9 {
                return;
            }
            place = next;
        }
    }
}
