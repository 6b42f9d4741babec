//! The line that leaves the most room: a driver who knows the place goes wide, and turns no tighter than he must.

use super::again::{Searched, Tried, Unchanged};
use super::path::{Path, leg, turning};
use super::rig::Rig;
use super::room::{Place, Room, Target};
use super::track::Track;
use super::trial::{Thing, Told, Trial, things};
use super::{Flat, along, cross, left};
use crate::walk::Spot;
use formula::OutOfReach;
use quantity::{Length, Quantity as _};
use std::sync::Arc;

/// Corners of more than this divide the way into stretches that may be shifted each for itself (rad).
const CORNER: f64 = 0.17;
/// Corners of less than this are the surveyor's, not the driver's (rad).
const BARELY: f64 = 0.009;
/// Longest arc at a slight corner (m).
const GENTLE: f64 = 60.0;
/// Steps of the search, first and last, and of the trial drives (m).
const FIRST: f64 = 1.6;
const LAST: f64 = 0.04;
const TRIAL: f64 = 0.2;
/// Most drives that are tried.
const MOST_TRIED: usize = 480;

/// The middle of a way with its corners, and how far to each side a driver may go.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// The corners of the middle line, in the order of driving.
    pub corners: Vec<Spot>,
    /// For each stretch between corners, how far to its left and to its right the middle of the front axle may be.
    pub play: Vec<[Length; 2]>,
}

/// The best line that was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The line.
    pub path: Path,
    /// What it leaves.
    pub room: Room,
    /// How many lines were driven for it.
    pub tried: u32,
}

/// A course in plain numbers, its slight corners joined.
struct Plain {
    corners: Vec<Flat>,
    /// For each stretch, which shift it has.
    group: Vec<usize>,
    /// Limits of each shift, to the left.
    limits: Vec<(f64, f64)>,
    /// For each corner between the ends, which radius it has; none at a slight one.
    radius: Vec<Option<usize>>,
    radii: usize,
}

/// What a driver chooses: shifts of the stretches to the left, radii of the corners.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Choice {
    shifts: Vec<f64>,
    radii: Vec<f64>,
}

impl Rig {
    /// The line along a course that leaves the most room beside everything, the margin of obstacles taken off; the middle
    /// of the course if that leaves enough; none where no line fits with arcs that it can steer and couplings can bend.
    ///
    /// # Errors
    ///
    /// Where rig, course, place or step cannot be as given.
    pub fn best(
        &self,
        course: &Course,
        place: &Place,
        (margin, step): (Length, Length),
    ) -> Result<Option<Found>, OutOfReach> {
        let searched = self.search(course, place, (margin, step), None)?;
        Ok(searched.into_found())
    }

    /// The same, with all that another search may want to know of it. One that is `known`, of the same rig on the same course,
    /// spares what it tells: where a few things stand otherwise, only lines near them are driven again.
    ///
    /// # Errors
    ///
    /// Where rig, course, place or step cannot be as given.
    pub fn search(
        &self,
        course: &Course,
        place: &Place,
        (margin, step): (Length, Length),
        known: Option<&Searched>,
    ) -> Result<Searched, OutOfReach> {
        self.check()?;
        place.check()?;
        crate::plan::above_zero("step", step)?;
        let plain = Plain::of(course)?;
        let wanted = |target| match target {
            Target::Obstacle(_) => margin.base(),
            Target::Edge(_) => 0.0,
        };
        let asked = (self, course, (margin, step));
        let mut search = Search {
            rig: self,
            plain: &plain,
            things: things(place.shapes(), wanted),
            trial: Trial::default(),
            tried: Vec::new(),
            unchanged: known.and_then(|known| Unchanged::of(known, asked, place, wanted)),
        };
        let choice = search.best();
        let Search {
            tried, unchanged, ..
        } = search;
        let found = match choice {
            None => None,
            Some(choice) => {
                let path = plain.path(self, &choice)?;
                let known = unchanged.and_then(|unchanged| unchanged.found(&path));
                let (room, track) = if let Some((room, track, changed)) = known {
                    let room = self.room_beside_others(track, place, (room, &changed));
                    (room, Arc::clone(track))
                } else {
                    let track = Track::of(self, &path, step.base());
                    (self.room((&path, &track), place), Arc::new(track))
                };
                let tried = u32::try_from(tried.len()).unwrap_or(u32::MAX);
                Some((Found { path, room, tried }, track))
            }
        };
        Ok(Searched::new(asked, place, tried, found))
    }
}

struct Search<'s> {
    rig: &'s Rig,
    plain: &'s Plain,
    things: Vec<Thing>,
    trial: Trial,
    tried: Vec<Tried>,
    /// What another search tells of this one.
    unchanged: Option<Unchanged<'s>>,
}

impl Search<'_> {
    fn best(&mut self) -> Option<Choice> {
        let least = self.rig.least_radius.base();
        let starts = [1.0, 1.25, 1.7, 2.5].map(|times| self.plain.middle(least * times));
        let mut first: Option<(f64, Choice)> = None;
        for start in starts {
            let best = first.as_ref().map_or(f64::NEG_INFINITY, |(best, _)| *best);
            let score = self.score(&start, best);
            if first.is_none() || score > best {
                first = Some((score, start));
            }
        }
        let (score, start) = first?;
        if score >= 0.0 {
            return Some(start);
        }
        let mut best = self.improved((score, start));
        if best.0 < 0.0 {
            for wide in self.plain.wide(least * 1.02) {
                let score = self.score(&wide, f64::NEG_INFINITY);
                let other = self.improved((score, wide));
                if other.0 > best.0 {
                    best = other;
                }
            }
        }
        best.0.is_finite().then_some(best.1)
    }

    /// One shift or radius after the other is moved as long as that helps, in ever smaller steps.
    fn improved(&mut self, (mut score, mut choice): (f64, Choice)) -> (f64, Choice) {
        let least = self.rig.least_radius.base();
        let until = self.tried.len() + MOST_TRIED / 3;
        let mut step = FIRST;
        while step >= LAST && self.tried.len() < until {
            let mut better = false;
            for index in 0..choice.shifts.len() + choice.radii.len() {
                for by in [step, -step] {
                    let trial = self.plain.moved(&choice, index, by, least);
                    if trial == choice {
                        continue;
                    }
                    let found = self.score(&trial, score);
                    if found > score {
                        (score, choice, better) = (found, trial, true);
                    }
                }
            }
            if !better {
                step /= 2.0;
            }
        }
        (score, choice)
    }

    /// The least room beside anything with its margin off, where that is more than another line leaves; no line at all
    /// counts as none.
    fn score(&mut self, choice: &Choice, other: f64) -> f64 {
        let told = self.told(choice, other);
        let score = told.score;
        self.tried.push(Tried::new(choice, other, told));
        score
    }

    fn told(&mut self, choice: &Choice, other: f64) -> Told {
        let Ok(path) = self.plain.path(self.rig, choice) else {
            return Told::NO_LINE;
        };
        let (at, trial) = (self.tried.len(), &mut self.trial);
        let mut drive = |things: &mut Vec<Thing>, other: f64| {
            self.rig.spare(&path, things, (TRIAL, other), trial)
        };
        let known = self.unchanged.as_mut();
        known
            .and_then(|known| known.told(at, (choice, other), &mut drive))
            .unwrap_or_else(|| drive(&mut self.things, other))
    }
}

impl Plain {
    fn of(course: &Course) -> Result<Self, OutOfReach> {
        let bad = || OutOfReach::new("corners", "a way has two ends and a play for each stretch");
        if course.corners.len() < 2
            || course.play.len() + 1 != course.corners.len()
            || course.corners.iter().any(|corner| !corner.is_finite())
        {
            return Err(bad());
        }
        let all: Vec<Flat> = course
            .corners
            .iter()
            .map(|corner| (corner.x.base(), corner.y.base()))
            .collect();
        let limit = |index: usize| {
            let play = course.play.get(index).copied().unwrap_or_default();
            (-play[1].base().max(0.0), play[0].base().max(0.0))
        };
        let mut plain = Self {
            corners: vec![all[0]],
            group: Vec::new(),
            limits: vec![limit(0)],
            radius: Vec::new(),
            radii: 0,
        };
        for index in 1..all.len() {
            let Some(next) = all.get(index + 1) else {
                plain.group.push(plain.limits.len() - 1);
                break;
            };
            let last = plain.corners[plain.corners.len() - 1];
            let turned = turning(leg(last, all[index]).0, leg(all[index], *next).0).abs();
            if !turned.is_finite() {
                return Err(bad());
            }
            let group = plain.limits.len() - 1;
            if turned < CORNER {
                let (one, other) = (plain.limits[group], limit(index));
                plain.limits[group] = (one.0.max(other.0), one.1.min(other.1));
            }
            if turned < BARELY {
                continue;
            }
            plain.group.push(group);
            plain.corners.push(all[index]);
            if turned >= CORNER {
                plain.limits.push(limit(index));
                plain.radius.push(Some(plain.radii));
                plain.radii += 1;
            } else {
                plain.radius.push(None);
            }
        }
        plain.corners.push(all[all.len() - 1]);
        Ok(plain)
    }

    /// The middle of the way as far as its limits let it.
    fn middle(&self, radius: f64) -> Choice {
        Choice {
            shifts: self.limits.iter().map(|_| 0.0).collect(),
            radii: vec![radius; self.radii],
        }
    }

    /// Wide entries: each stretch at one of its limits, as a driver swings out before a turn.
    fn wide(&self, radius: f64) -> Vec<Choice> {
        let middle = self.middle(radius);
        let mut wide = Vec::new();
        for (index, (low, high)) in self.limits.iter().enumerate() {
            for shift in [*low, *high] {
                if shift.abs() > LAST && wide.len() < 4 {
                    let mut choice = middle.clone();
                    choice.shifts[index] = shift;
                    wide.push(choice);
                }
            }
        }
        wide
    }

    fn moved(&self, choice: &Choice, index: usize, by: f64, least: f64) -> Choice {
        let mut moved = choice.clone();
        if let (Some(shift), Some((low, high))) =
            (moved.shifts.get_mut(index), self.limits.get(index))
        {
            *shift = (*shift + by).clamp(*low, *high);
        } else if let Some(radius) = moved.radii.get_mut(index - choice.shifts.len()) {
            *radius = (*radius + 2.0 * by).max(least);
        }
        moved
    }

    /// The line of a choice: every stretch moved aside by its shift, every corner rounded.
    fn path(&self, rig: &Rig, choice: &Choice) -> Result<Path, OutOfReach> {
        let least = rig.least_radius.base();
        let legs: Vec<(Flat, f64)> = self
            .corners
            .windows(2)
            .map(|pair| leg(pair[0], pair[1]))
            .collect();
        let shift = |leg: usize| {
            let group = self.group.get(leg).copied().unwrap_or_default();
            choice.shifts.get(group).copied().unwrap_or_default()
        };
        let count = self.corners.len();
        let mut corners = Vec::with_capacity(count);
        for (index, corner) in self.corners.iter().enumerate() {
            let before = legs[index.saturating_sub(1).min(legs.len() - 1)].0;
            let after = legs[index.min(legs.len() - 1)].0;
            let (near, far) = (
                shift(index.saturating_sub(1)),
                shift(index.min(count.saturating_sub(2))),
            );
            corners.push(shifted(*corner, (before, near), (after, far)));
        }
        let radii: Vec<f64> = (0..self.radius.len())
            .map(|index| {
                if let Some(which) = self.radius[index] {
                    choice.radii[which]
                } else {
                    let turned = turning(legs[index].0, legs[index + 1].0).abs();
                    let room = 0.3 * legs[index].1.min(legs[index + 1].1);
                    (room / (turned / 2.0).tan()).min(GENTLE).max(least)
                }
            })
            .collect();
        Path::of(&corners, &radii)
    }
}

/// Where two lines meet that were moved aside, each to its left by its shift.
fn shifted(corner: Flat, (before, near): (Flat, f64), (after, far): (Flat, f64)) -> Flat {
    let moved = along(corner, left(before), near);
    let turn = cross(before, after);
    if turn.abs() < 1e-9 {
        return moved;
    }
    let other = along(corner, left(after), far);
    let off = (other.0 - moved.0, other.1 - moved.1);
    along(moved, before, cross(off, after) / turn)
}
