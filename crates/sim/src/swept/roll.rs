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

    /// One step of the classical method of Runge and Kutta: the mean rates of a step whose first rates are known.
    fn mean_rates(
        &self,
        headings: &[Flat; UNITS],
        directions: [Flat; 3],
        first: &[f64; UNITS],
        step: f64,
    ) -> [f64; UNITS] {
        let second = self.rates(directions[1], &turned(headings, first, step / 2.0));
        let third = self.rates(directions[1], &turned(headings, &second, step / 2.0));
        let fourth = self.rates(directions[2], &turned(headings, &third, step));
        let mut mean = [0.0; UNITS];
        for unit in 0..UNITS {
            mean[unit] = (first[unit] + 2.0 * (second[unit] + third[unit]) + fourth[unit]) / 6.0;
        }
        mean
    }

    /// How many steps may be worked as one: what lies between is interpolated, and neither leaves an error above 1e-9 as
    /// long as the stride is short beside every wheelbase.
    fn stride(&self, step: f64) -> usize {
        let shortest = self.wheelbase.iter().copied().fold(f64::INFINITY, f64::min);
        if 8.0 * step <= 0.02 * shortest { 8 } else { 1 }
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
        let most = chain.stride(step);
        let mut first = chain.rates(piece.direction, &headings);
        let mut done = 0.0;
        let mut in_line = false;
        while done < count {
            let stride = if done + STRIDE <= count { most } else { 1 };
            let Between { directions, ends } = steps.next(stride);
            let long = step * length_of(stride);
            let before = headings;
            let mut turn = Turn::default();
            if !in_line {
                turn.mean = chain.mean_rates(&headings, directions, &first, long);
                headings = turned(&headings, &turn.mean, long);
                turn.rates = [first, chain.rates(directions[2], &headings)];
                first = turn.rates[1];
                in_line = is_one(&directions) && is_same(&headings, &before);
            }
            for (place, end) in (1..=stride).zip(ends) {
                done += 1.0;
                let share = length_of(place) / length_of(stride);
                let now = if place == stride || in_line {
                    headings
                } else {
                    turned(&before, &turn.until(share, long), 1.0)
                };
                let at = steps.place(piece, end, step * done);
                show(begun + step * done, at, end, &now)?;
            }
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

/// Most steps that are worked as one.
const STRIDE: f64 = 8.0;

fn length_of(steps: usize) -> f64 {
    f64::from(u32::try_from(steps).unwrap_or(u32::MAX))
}

/// How units turn over a stride.
struct Turn<const UNITS: usize> {
    mean: [f64; UNITS],
    /// At its start and at its end.
    rates: [[f64; UNITS]; 2],
}

impl<const UNITS: usize> Default for Turn<UNITS> {
    fn default() -> Self {
        Self {
            mean: [0.0; UNITS],
            rates: [[0.0; UNITS]; 2],
        }
    }
}

impl<const UNITS: usize> Turn<UNITS> {
    /// How far each unit has turned after a share of the stride: the cubic with the turn and the rates of both its ends.
    fn until(&self, share: f64, long: f64) -> [f64; UNITS] {
        let left = 1.0 - share;
        let mut turned = [0.0; UNITS];
        for (unit, turned) in turned.iter_mut().enumerate() {
            let whole = share * share * (3.0 - 2.0 * share) * self.mean[unit];
            let start = share * left * left * self.rates[0][unit];
            let end = share * share * left * self.rates[1][unit];
            *turned = long * (whole + start - end);
        }
        turned
    }
}

/// Directions of a piece from stride to stride.
struct Steps {
    now: Flat,
    half: Flat,
    center: Flat,
}

/// Directions of a stride.
struct Between {
    /// At its start, its middle and its end.
    directions: [Flat; 3],
    /// At the end of each of its steps.
    ends: [Flat; 8],
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

    fn next(&mut self, stride: usize) -> Between {
        let first = self.now;
        let mut ends = [first; 8];
        let mut middle = first;
        for (place, end) in ends.iter_mut().enumerate().take(stride) {
            let half = self.turn(self.now);
            self.now = self.turn(half);
            *end = self.now;
            if 2 * place + 2 == stride {
                middle = self.now;
            } else if 2 * place + 1 == stride {
                middle = half;
            }
        }
        Between {
            directions: [first, middle, self.now],
            ends,
        }
    }

    fn turn(&self, direction: Flat) -> Flat {
        let (cosine, sine) = self.half;
        (
            direction.0 * cosine - direction.1 * sine,
            direction.1 * cosine + direction.0 * sine,
        )
    }

    /// The place so far along a piece, where the direction is known.
    fn place(&self, piece: &Piece, direction: Flat, way: f64) -> Flat {
        if piece.curvature == 0.0 {
            return along(piece.start, piece.direction, way);
        }
        along(self.center, left(direction), -1.0 / piece.curvature)
    }
}
