//! A drive kept step by step, and the search in it for the place at which a unit is nearest to one thing.

use super::path::Path;
use super::rig::{Rig, Unit};
use super::roll::{Moment, Pose, roll_from, steps_of};
use super::shape::Shape;
use super::{MOST, dot};
use std::ops::ControlFlow;

/// A drive step by step: where each unit is, kept apart so that one of them is looked at along the whole way.
#[derive(Debug, Default)]
pub(super) struct Track {
    pub(super) ways: Vec<f64>,
    pub(super) units: [Vec<Pose>; MOST],
    /// Cosines of the greatest angle of the front wheels, and at each coupling.
    straightest: f64,
    bent: [f64; MOST],
}

/// Steps between the looks with which the search for the nearest place begins.
const COARSE: usize = 64;

impl Track {
    pub(super) fn of(rig: &Rig, path: &Path, step: f64) -> Self {
        let mut track = Self::default();
        let _ = track.drive(rig, path, step, |_, _| ControlFlow::Continue(()));
        track
    }

    /// Drives a path in the room that an earlier drive took, for as long as what looks at each moment and its place in the
    /// row wants more of them.
    pub(super) fn drive(
        &mut self,
        rig: &Rig,
        path: &Path,
        step: f64,
        mut look: impl FnMut(&Moment<'_>, &Self) -> ControlFlow<()>,
    ) -> ControlFlow<()> {
        let count = 1.0
            + path
                .pieces
                .iter()
                .map(|piece| steps_of(piece, step))
                .sum::<f64>();
        self.begin(rig.units.len(), count);
        roll_from(rig, path, (step, path.start().1), |moment| {
            self.take(moment);
            look(moment, self)
        })
    }

    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count of steps is a small whole number above zero"
    )]
    fn begin(&mut self, units: usize, count: f64) {
        self.ways.clear();
        self.ways.reserve(count as usize);
        for unit in &mut self.units {
            unit.clear();
        }
        for unit in self.units.iter_mut().take(units) {
            unit.reserve(count as usize);
        }
        (self.straightest, self.bent) = (1.0, [1.0; MOST]);
    }

    fn take(&mut self, moment: &Moment<'_>) {
        self.straightest = self
            .straightest
            .min(dot(moment.steered, moment.poses[0].heading));
        for (least, pair) in self.bent.iter_mut().zip(moment.poses.windows(2)) {
            *least = least.min(dot(pair[0].heading, pair[1].heading));
        }
        self.ways.push(moment.way);
        for (kept, pose) in self.units.iter_mut().zip(moment.poses) {
            kept.push(*pose);
        }
    }

    /// The greatest angle of the front wheels (rad).
    pub(super) fn steered(&self) -> f64 {
        angle(self.straightest)
    }

    /// The greatest angle at each coupling (rad).
    pub(super) fn bent(&self) -> [f64; MOST] {
        self.bent.map(angle)
    }
}

/// The search for the place at which one unit is nearest to one thing.
///
/// No point of a unit moves faster than its greatest speed, so that between two looks it comes no nearer than both tell:
/// stretches that cannot hold the nearest place are left out, the others halved.
pub(super) struct Search<'s> {
    pub(super) unit: &'s Unit,
    pub(super) poses: &'s [Pose],
    pub(super) ways: &'s [f64],
    pub(super) shape: &'s Shape,
    pub(super) speed: f64,
    pub(super) steers: bool,
    /// The search ends where it has found no more than this.
    pub(super) enough: f64,
    /// Nobody asks for room that is no less than this.
    pub(super) asked: f64,
}

/// Steps at which the search for the nearest place begins, in a row of so many.
pub(super) fn is_coarse(at: usize) -> bool {
    at.is_multiple_of(COARSE)
}

impl Search<'_> {
    fn room(&self, at: usize) -> f64 {
        self.poses.get(at).map_or(f64::INFINITY, |pose| {
            self.shape.room(self.unit, pose, self.steers)
        })
    }

    /// The least room, where it is less than that of another unit, and at which step.
    pub(super) fn least(&self, other: f64, looks: &mut Vec<(usize, f64)>) -> Option<(f64, usize)> {
        let mut best = (other, None);
        let last = self.poses.len().saturating_sub(1);
        looks.clear();
        for at in (0..last).step_by(COARSE).chain([last]) {
            let room = self.room(at);
            looks.push((at, room));
            note(&mut best, room, at);
        }
        for pair in looks.windows(2) {
            if best.0 <= self.enough {
                break;
            }
            self.halve(pair[0], pair[1], &mut best);
        }
        best.1.map(|at| (best.0, at))
    }

    fn halve(&self, from: (usize, f64), to: (usize, f64), best: &mut (f64, Option<usize>)) {
        if to.0 - from.0 < 2 || best.0 <= self.enough || self.comes_no_nearer(from, to, best.0) {
            return;
        }
        let middle = usize::midpoint(from.0, to.0);
        let look = (middle, self.room(middle));
        note(best, look.1, middle);
        self.halve(from, look, best);
        self.halve(look, to, best);
    }

    /// Between two looks it comes no nearer than the best, or than anybody asks; what it lies over is looked at in full,
    /// since how far it reaches over that may leap.
    fn comes_no_nearer(&self, from: (usize, f64), to: (usize, f64), best: f64) -> bool {
        let way = self.ways[to.0] - self.ways[from.0];
        let least = (from.1 + to.1 - self.speed * way) / 2.0;
        least >= best.max(0.0) || least >= self.asked.max(0.0)
    }
}

fn note(best: &mut (f64, Option<usize>), room: f64, at: usize) {
    if room < best.0 {
        *best = (room, Some(at));
    }
}

/// The angle of a cosine.
fn angle(cosine: f64) -> f64 {
    cosine.clamp(-1.0, 1.0).acos()
}
