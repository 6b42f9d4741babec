//! What a rig sweeps, for drawings: the outermost that its bodies reach to each side, the lines of its tires, itself at
//! places on its way, and how far its last axle cuts the corner.

use super::body::wheels;
use super::path::{Path, spot};
use super::rig::{Rig, Unit};
use super::roll::{Moment, Pose, roll};
use super::{Flat, along, left};
use crate::walk::Spot;
use formula::OutOfReach;
use quantity::{Length, Quantity as _};

/// Between places along the way at which the outermost point is kept (m).
const BIN: f64 = 0.15;
/// Steps of the drive (m).
const STEP: f64 = 0.05;

/// A rig at one moment: the corners of each body.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// How far the middle of the front axle has come.
    pub way: Length,
    /// Corners of the bodies, front to rear.
    pub bodies: Vec<[Spot; 4]>,
}

/// What is swept.
#[derive(Debug, Clone, PartialEq)]
pub struct Envelope {
    /// The outermost that bodies reach to the left of the path.
    pub left: Vec<Spot>,
    /// The outermost that they reach to its right.
    pub right: Vec<Spot>,
    /// Lines of the outsides of tires: of the steered axle, then of each unit's own, left and right by turns.
    pub tires: Vec<Vec<Spot>>,
    /// The rig at places along its way.
    pub standing: Vec<Standing>,
    /// The farthest that the last axle is from the path.
    pub off_tracking: Length,
    /// The widest that it sweeps across the path.
    pub widest: Length,
}

/// The outermost points beside the path, by places along it.
struct Sides {
    low: f64,
    bins: Vec<[Option<(f64, Flat)>; 2]>,
}

impl Rig {
    /// What it sweeps along a path; itself is kept each time it has come so far again.
    ///
    /// # Errors
    ///
    /// Where the rig or the interval cannot be as given.
    pub fn outline(&self, path: &Path, every: Length) -> Result<Envelope, OutOfReach> {
        self.check()?;
        crate::plan::above_zero("every", every)?;
        let ahead = self.reach();
        let mut sides = Sides::new(-ahead, path.length().base() + ahead);
        let mut tires: Vec<Vec<Spot>> = vec![Vec::new(); 2 * (self.units.len() + 1)];
        let (mut standing, mut off, mut next) = (Vec::new(), 0.0_f64, 0.0);
        roll(self, path, STEP, |moment| {
            self.take_bodies(path, moment, &mut sides);
            self.take_tires(moment, &mut tires);
            if let Some(last) = moment.poses.last() {
                off = off.max(path.beside(last.axle).1.abs());
            }
            if moment.way >= next {
                next += every.base();
                standing.push(self.standing(moment));
            }
        });
        Ok(Envelope {
            left: sides.line(0),
            right: sides.line(1),
            tires,
            standing,
            off_tracking: Length::from_base(off),
            widest: Length::from_base(sides.widest()),
        })
    }

    /// The farthest that its last axle is from a path: that of [`Rig::outline`] alone.
    ///
    /// # Errors
    ///
    /// Where the rig cannot be as given.
    pub fn off_tracking(&self, path: &Path) -> Result<Length, OutOfReach> {
        self.check()?;
        let mut off = 0.0_f64;
        roll(self, path, STEP, |moment| {
            if let Some(last) = moment.poses.last() {
                off = off.max(path.beside(last.axle).1.abs());
            }
        });
        Ok(Length::from_base(off))
    }

    fn reach(&self) -> f64 {
        let long = |unit: &Unit| {
            let body = unit
                .body
                .map_or(0.0, |body| body.ahead.base().abs() + body.behind.base());
            unit.wheelbase.base() + unit.hitch.base().abs() + body
        };
        self.units.iter().map(long).sum()
    }

    fn take_bodies(&self, path: &Path, moment: &Moment<'_>, sides: &mut Sides) {
        for (unit, pose) in self.units.iter().zip(moment.poses) {
            if unit.body.is_some() {
                // What the flanks sweep is bounded by the corners and by the points abreast of the axle.
                let corners = corners(unit, pose);
                let half = unit.body.map_or(0.0, |body| body.width.base() / 2.0);
                let aside = left(pose.heading);
                let abreast = [half, -half].map(|by| along(pose.axle, aside, by));
                for point in corners.into_iter().chain(abreast) {
                    sides.take(path.beside(point), point);
                }
            }
        }
    }

    fn take_tires(&self, moment: &Moment<'_>, tires: &mut [Vec<Spot>]) {
        let each = self.units.iter().zip(moment.poses).enumerate();
        let points = each.flat_map(|(index, (unit, pose))| {
            let all: Vec<Flat> = wheels(unit, pose, index == 0).collect();
            let swap = if index == 0 { 2 } else { 0 };
            let mut all = all;
            all.rotate_left(swap);
            all
        });
        for (line, point) in tires.iter_mut().zip(points) {
            line.push(spot(point));
        }
    }

    fn standing(&self, moment: &Moment<'_>) -> Standing {
        let each = self.units.iter().zip(moment.poses);
        let with_body = each.filter(|(unit, _)| unit.body.is_some());
        Standing {
            way: Length::from_base(moment.way),
            bodies: with_body
                .map(|(unit, pose)| corners(unit, pose).map(spot))
                .collect(),
        }
    }
}

/// Corners of a body, around it.
fn corners(unit: &Unit, pose: &Pose) -> [Flat; 4] {
    let Some(body) = unit.body else {
        return [pose.axle; 4];
    };
    let (front, rear) = ((unit.wheelbase + body.ahead).base(), -body.behind.base());
    let half = body.width.base() / 2.0;
    [(front, half), (front, -half), (rear, -half), (rear, half)].map(|(ahead, aside)| {
        along(
            along(pose.axle, pose.heading, ahead),
            left(pose.heading),
            aside,
        )
    })
}

impl Sides {
    fn new(low: f64, high: f64) -> Self {
        let mut bins = Vec::new();
        let mut at = low;
        while at < high && bins.len() < 100_000 {
            bins.push([None; 2]);
            at += BIN;
        }
        Self { low, bins }
    }

    fn take(&mut self, (way, aside): (f64, f64), point: Flat) {
        let mut at = self.low + BIN;
        // The bins are few and stand in order: the one wanted is found by halving.
        let (mut first, mut last) = (0, self.bins.len());
        while last - first > 1 {
            let middle = usize::midpoint(first, last);
            let begins = self.low + BIN * f64::from(u32::try_from(middle).unwrap_or(u32::MAX));
            if begins <= way {
                (first, at) = (middle, begins + BIN);
            } else {
                last = middle;
            }
        }
        if way > at {
            return;
        }
        if let Some(bin) = self.bins.get_mut(first) {
            let (left, right) = (bin[0], bin[1]);
            if left.is_none_or(|(most, _)| aside > most) {
                bin[0] = Some((aside, point));
            }
            if right.is_none_or(|(most, _)| aside < most) {
                bin[1] = Some((aside, point));
            }
        }
    }

    fn line(&self, side: usize) -> Vec<Spot> {
        let points = self
            .bins
            .iter()
            .filter_map(|bin| bin.get(side).copied().flatten());
        points.map(|(_, point)| spot(point)).collect()
    }

    fn widest(&self) -> f64 {
        let across = self.bins.iter().filter_map(|bin| {
            let (Some((left, _)), Some((right, _))) = (bin[0], bin[1]) else {
                return None;
            };
            Some(left - right)
        });
        across.fold(0.0, f64::max)
    }
}
