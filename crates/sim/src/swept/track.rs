//! A drive kept step by step, and the search in it for the place at which a unit is nearest to one thing.

use super::body::Gap;
use super::path::Path;
use super::rig::{Rig, Unit};
use super::roll::{Moment, Pose, roll};
use super::room::Shape;
use super::{MOST, dot};

/// A drive step by step: where each unit is, kept apart so that one of them is looked at along the whole way.
pub(super) struct Track {
    pub(super) ways: Vec<f64>,
    pub(super) units: [Vec<Pose>; MOST],
    /// The greatest angle of the front wheels, and at each coupling (rad).
    pub(super) steered: f64,
    pub(super) bent: [f64; MOST],
}

/// Steps between the looks with which the search for the nearest place begins.
const COARSE: usize = 64;

impl Track {
    pub(super) fn of(rig: &Rig, path: &Path, step: f64) -> Self {
        let mut track = Self {
            ways: Vec::with_capacity(1024),
            units: std::array::from_fn(|_| Vec::with_capacity(1024)),
            steered: 0.0,
            bent: [0.0; MOST],
        };
        let (mut straightest, mut bent) = (1.0_f64, [1.0_f64; MOST]);
        roll(rig, path, step, |moment| {
            straightest = straightest.min(dot(moment.steered, moment.poses[0].heading));
            for (least, pair) in bent.iter_mut().zip(moment.poses.windows(2)) {
                *least = least.min(dot(pair[0].heading, pair[1].heading));
            }
            track.take(moment);
        });

        track.steered = angle(straightest);
        track.bent = bent.map(angle);
        track
    }

    fn take(&mut self, moment: &Moment<'_>) {
        self.ways.push(moment.way);
        for (kept, pose) in self.units.iter_mut().zip(moment.poses) {
            kept.push(*pose);
        }
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
}

impl Search<'_> {
    fn gap(&self, at: usize) -> Gap {
        self.poses.get(at).map_or(Gap::none(), |pose| {
            self.shape.gap(self.unit, pose, self.steers)
        })
    }

    /// The least room, where it is less than that of another unit.
    pub(super) fn least(&self, other: Gap) -> (Gap, usize) {
        let mut best = (other, 0);
        let last = self.poses.len().saturating_sub(1);
        let mut looks: Vec<(usize, f64)> = Vec::with_capacity(last / COARSE + 2);
        let mut at = 0;
        while at <= last {
            let gap = self.gap(at);
            looks.push((at, gap.room));
            if gap.room < best.0.room {
                best = (gap, at);
            }
            at = if at < last {
                (at + COARSE).min(last)
            } else {
                last + 1
            };
        }
        for pair in looks.windows(2) {
            if best.0.room <= self.enough {
                break;
            }
            self.halve(pair[0], pair[1], &mut best);
        }
        best
    }

    fn halve(&self, from: (usize, f64), to: (usize, f64), best: &mut (Gap, usize)) {
        if to.0 - from.0 < 2
            || best.0.room <= self.enough
            || self.comes_no_nearer(from, to, best.0.room)
        {
            return;
        }
        let middle = usize::midpoint(from.0, to.0);
        let gap = self.gap(middle);
        let look = (middle, gap.room);
        if gap.room < best.0.room {
            *best = (gap, middle);
        }
        self.halve(from, look, best);
        self.halve(look, to, best);
    }

    /// Between two looks it comes no nearer than the best; what it lies over is looked at in full, since how far it
    /// reaches over that may leap.
    fn comes_no_nearer(&self, from: (usize, f64), to: (usize, f64), best: f64) -> bool {
        let way = self.ways[to.0] - self.ways[from.0];
        (from.1 + to.1 - self.speed * way) / 2.0 >= best.max(0.0)
    }
}

/// The angle of a cosine.
fn angle(cosine: f64) -> f64 {
    cosine.clamp(-1.0, 1.0).acos()
}
