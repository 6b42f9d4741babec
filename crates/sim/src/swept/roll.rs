//! The rolling itself: headings from step to step along a path.

use super::path::{Path, Piece};
use super::rig::Rig;
use super::{Flat, MOST, along, cross, dot, left};
use quantity::Quantity as _;

/// A unit at a moment.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Pose {
    /// The point that is pulled or steered.
    pub(super) pulled: Flat,
    /// The middle of its axle.
    pub(super) axle: Flat,
    /// Where it looks.
    pub(super) heading: Flat,
}

/// All units at a moment.
pub(super) struct Moment<'r> {
    /// How far the middle of the front axle has come.
    pub(super) way: f64,
    /// Where the front wheels point.
    pub(super) steered: Flat,
    /// The units, front to rear.
    pub(super) poses: &'r [Pose],
}

type Headings = [Flat; MOST];

/// The measures that rolling takes.
struct Chain {
    count: usize,
    wheelbase: [f64; MOST],
    hitch: [f64; MOST],
}

impl Chain {
    fn of(rig: &Rig) -> Self {
        let (mut wheelbase, mut hitch) = ([1.0; MOST], [0.0; MOST]);
        for (index, unit) in rig.units.iter().enumerate().take(MOST) {
            wheelbase[index] = unit.wheelbase.base();
            hitch[index] = unit.hitch.base();
        }
        Self {
            count: rig.units.len().min(MOST),
            wheelbase,
            hitch,
        }
    }

    /// How fast each unit turns when the middle of the front axle moves at one in a direction.
    fn rates(&self, direction: Flat, headings: &Headings) -> [f64; MOST] {
        let mut rates = [0.0; MOST];
        let mut pull = direction;
        for unit in 0..self.count {
            let heading = headings[unit];
            let rate = cross(heading, pull) / self.wheelbase[unit];
            let rolled = dot(heading, pull);
            rates[unit] = rate;
            let aside = left(heading);
            let swing = -self.hitch[unit] * rate;
            pull = (
                heading.0 * rolled + aside.0 * swing,
                heading.1 * rolled + aside.1 * swing,
            );
        }
        rates
    }

    /// One step of the classical method of Runge and Kutta.
    fn step(&self, headings: &mut Headings, directions: [Flat; 3], step: f64) {
        let first = self.rates(directions[0], headings);
        let second = self.rates(directions[1], &self.turned(headings, &first, step / 2.0));
        let third = self.rates(directions[1], &self.turned(headings, &second, step / 2.0));
        let fourth = self.rates(directions[2], &self.turned(headings, &third, step));
        let mut mean = [0.0; MOST];
        for unit in 0..self.count {
            mean[unit] = (first[unit] + 2.0 * (second[unit] + third[unit]) + fourth[unit]) / 6.0;
        }
        *headings = self.turned(headings, &mean, step);
    }

    fn turned(&self, headings: &Headings, rates: &[f64; MOST], step: f64) -> Headings {
        let mut turned = *headings;
        for (heading, rate) in turned.iter_mut().zip(rates).take(self.count) {
            *heading = turn_a_little(*heading, rate * step);
        }
        turned
    }

    fn poses(&self, at: Flat, headings: &Headings) -> [Pose; MOST] {
        let mut poses = [Pose::default(); MOST];
        let mut pulled = at;
        for unit in 0..self.count {
            let heading = headings[unit];
            let axle = along(pulled, heading, -self.wheelbase[unit]);
            poses[unit] = Pose {
                pulled,
                axle,
                heading,
            };
            pulled = along(axle, heading, -self.hitch[unit]);
        }
        poses
    }
}

/// A turn by a small angle, whose sine and cosine are five terms of their series.
fn turn_a_little(direction: Flat, by: f64) -> Flat {
    let squared = by * by;
    let sine = by * (1.0 - squared / 6.0 * (1.0 - squared / 20.0));
    let cosine = 1.0 - squared / 2.0 * (1.0 - squared / 12.0 * (1.0 - squared / 30.0));
    (
        direction.0 * cosine - direction.1 * sine,
        direction.1 * cosine + direction.0 * sine,
    )
}

/// Rolls a rig along a path, in line with its start at first, in steps no longer than one; each moment is shown.
pub(super) fn roll(rig: &Rig, path: &Path, longest: f64, see: impl FnMut(&Moment<'_>)) {
    roll_from(rig, path, longest, path.start().1, see);
}

/// Rolls a rig whose units all look one way at first.
pub(super) fn roll_from(
    rig: &Rig,
    path: &Path,
    longest: f64,
    looking: Flat,
    mut see: impl FnMut(&Moment<'_>),
) {
    let chain = Chain::of(rig);
    let (start, direction) = path.start();
    let mut headings = [looking; MOST];
    let mut show = |way: f64, at: Flat, steered: Flat, headings: &Headings| {
        let poses = chain.poses(at, headings);
        see(&Moment {
            way,
            steered,
            poses: &poses[..chain.count],
        });
    };
    show(0.0, start, direction, &headings);
    let mut begun = 0.0;
    for piece in &path.pieces {
        let count = (piece.length / longest).ceil().clamp(1.0, 1e6);
        let step = piece.length / count;
        let mut steps = Steps::of(piece, step);
        let mut done = 0.0;
        while done < count {
            done += 1.0;
            let directions = steps.next();
            chain.step(&mut headings, directions, step);
            let at = steps.place(piece, step * done);
            show(begun + step * done, at, directions[2], &headings);
        }
        begun += piece.length;
    }
}

/// Directions of a piece from step to step: at its start, its middle and its end.
struct Steps {
    now: Flat,
    half: Flat,
    center: Flat,
}

impl Steps {
    fn of(piece: &Piece, step: f64) -> Self {
        let (sine, cosine) = (piece.curvature * step / 2.0).sin_cos();
        let center = if piece.curvature == 0.0 {
            piece.start
        } else {
            along(piece.start, left(piece.direction), 1.0 / piece.curvature)
        };
        Self {
            now: piece.direction,
            half: (cosine, sine),
            center,
        }
    }

    fn next(&mut self) -> [Flat; 3] {
        let first = self.now;
        let middle = self.turn(first);
        let last = self.turn(middle);
        self.now = last;
        [first, middle, last]
    }

    fn turn(&self, direction: Flat) -> Flat {
        let (cosine, sine) = self.half;
        (
            direction.0 * cosine - direction.1 * sine,
            direction.1 * cosine + direction.0 * sine,
        )
    }

    fn place(&self, piece: &Piece, way: f64) -> Flat {
        if piece.curvature == 0.0 {
            return along(piece.start, piece.direction, way);
        }
        along(self.center, left(self.now), -1.0 / piece.curvature)
    }
}
