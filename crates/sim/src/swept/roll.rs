//! The rolling itself: headings from step to step along a path.

use super::path::{Path, Piece};
use super::rig::Rig;
use super::{Flat, MOST, along, cross, dot, left};
use quantity::Quantity as _;
use std::ops::ControlFlow;

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

/// The measures that rolling takes, of so many units.
struct Chain<const UNITS: usize> {
    wheelbase: [f64; UNITS],
    hitch: [f64; UNITS],
}

impl<const UNITS: usize> Chain<UNITS> {
    fn of(rig: &Rig) -> Self {
        let (mut wheelbase, mut hitch) = ([1.0; UNITS], [0.0; UNITS]);
        for (index, unit) in rig.units.iter().enumerate().take(UNITS) {
            wheelbase[index] = unit.wheelbase.base();
            hitch[index] = unit.hitch.base();
        }
        Self { wheelbase, hitch }
    }

    /// How fast each unit turns when the middle of the front axle moves at one in a direction.
    fn rates(&self, direction: Flat, headings: &[Flat; UNITS]) -> [f64; UNITS] {
        let mut rates = [0.0; UNITS];
        let mut pull = direction;
        for unit in 0..UNITS {
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
    fn step(&self, headings: &[Flat; UNITS], directions: [Flat; 3], step: f64) -> [Flat; UNITS] {
        let first = self.rates(directions[0], headings);
        let second = self.rates(directions[1], &turned(headings, &first, step / 2.0));
        let third = self.rates(directions[1], &turned(headings, &second, step / 2.0));
        let fourth = self.rates(directions[2], &turned(headings, &third, step));
        let mut mean = [0.0; UNITS];
        for unit in 0..UNITS {
            mean[unit] = (first[unit] + 2.0 * (second[unit] + third[unit]) + fourth[unit]) / 6.0;
        }
        turned(headings, &mean, step)
    }

    fn poses(&self, at: Flat, headings: &[Flat; UNITS]) -> [Pose; UNITS] {
        let mut poses = [Pose::default(); UNITS];
        let mut pulled = at;
        for unit in 0..UNITS {
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

fn turned<const UNITS: usize>(
    headings: &[Flat; UNITS],
    rates: &[f64; UNITS],
    step: f64,
) -> [Flat; UNITS] {
    let mut turned = *headings;
    for (heading, rate) in turned.iter_mut().zip(rates) {
        *heading = turn_a_little(*heading, rate * step);
    }
    turned
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
pub(super) fn roll(rig: &Rig, path: &Path, longest: f64, mut see: impl FnMut(&Moment<'_>)) {
    let looking = path.start().1;
    let _ = roll_from(rig, path, (longest, looking), |moment| {
        see(moment);
        ControlFlow::Continue(())
    });
}

/// Rolls a rig whose units all look one way at first, for as long as what sees its moments wants more of them.
pub(super) fn roll_from(
    rig: &Rig,
    path: &Path,
    start: (f64, Flat),
    see: impl FnMut(&Moment<'_>) -> ControlFlow<()>,
) -> ControlFlow<()> {
    match rig.units.len() {
        0 | 1 => rolled::<1>(rig, path, start, see),
        2 => rolled::<2>(rig, path, start, see),
        3 => rolled::<3>(rig, path, start, see),
        _ => rolled::<MOST>(rig, path, start, see),
    }
}

/// Into how many steps a piece is divided.
pub(super) fn steps_of(piece: &Piece, longest: f64) -> f64 {
    (piece.length / longest).ceil().clamp(1.0, 1e6)
}

fn rolled<const UNITS: usize>(
    rig: &Rig,
    path: &Path,
    (longest, looking): (f64, Flat),
    mut see: impl FnMut(&Moment<'_>) -> ControlFlow<()>,
) -> ControlFlow<()> {
    let chain = Chain::<UNITS>::of(rig);
    let (start, direction) = path.start();
    let mut headings = [looking; UNITS];
    let mut show = |way: f64, at: Flat, steered: Flat, headings: &[Flat; UNITS]| {
        let poses = chain.poses(at, headings);
        see(&Moment {
            way,
            steered,
            poses: &poses,
        })
    };
    show(0.0, start, direction, &headings)?;
    let mut begun = 0.0;
    for piece in &path.pieces {
        let count = steps_of(piece, longest);
        let step = piece.length / count;
        let mut steps = Steps::of(piece, step);
        let mut done = 0.0;
        let mut in_line = false;
        while done < count {
            done += 1.0;
            let directions = steps.next();
            if !in_line {
                let turned = chain.step(&headings, directions, step);
                in_line = is_one(&directions) && is_same(&turned, &headings);
                headings = turned;
            }
            let at = steps.place(piece, step * done);
            show(begun + step * done, at, directions[2], &headings)?;
        }
        begun += piece.length;
    }
    ControlFlow::Continue(())
}

/// The directions of a step are one to the last bit: those of each step behind it on its piece are the same then, and where
/// a step leaves the headings as they are, so does each behind it.
fn is_one(directions: &[Flat; 3]) -> bool {
    is_same(&directions[..2], &directions[1..])
}

fn is_same(some: &[Flat], others: &[Flat]) -> bool {
    let bits = |at: &Flat| (at.0.to_bits(), at.1.to_bits());
    some.iter().map(bits).eq(others.iter().map(bits))
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
