//! A search that was made, and what it spares the next one: where a single post is moved, most lines that were tried leave
//! what they left.
//!
//! A line whose least room is beside something that stands where it stood is told from memory: one that was no better than
//! another is no better still, and one that was better is so as long as what stands otherwise leaves more than that. Every
//! other line is driven. So the search goes the same way as one that knows nothing.

use super::best::{Choice, Course, Found};
use super::path::Path;
use super::rig::Rig;
use super::room::{Place, Room, Target};
use super::track::Track;
use super::trial::{Thing, Told, things};
use quantity::Length;
use std::sync::Arc;

/// A search for the best line: what was asked, each line that was tried, and what was found.
#[derive(Debug, Clone)]
pub struct Searched {
    rig: Rig,
    course: Course,
    place: Place,
    margin: Length,
    step: Length,
    tried: Vec<Tried>,
    found: Option<(Found, Arc<Track>)>,
}

/// A line that was tried.
#[derive(Debug, Clone)]
pub(super) struct Tried {
    choice: Choice,
    /// What it had to better.
    other: f64,
    told: Told,
}

impl Tried {
    pub(super) fn new(choice: &Choice, other: f64, told: Told) -> Self {
        Self {
            choice: choice.clone(),
            other,
            told,
        }
    }
}

impl Searched {
    pub(super) fn new(
        (rig, course, (margin, step)): (&Rig, &Course, (Length, Length)),
        place: &Place,
        tried: Vec<Tried>,
        found: Option<(Found, Arc<Track>)>,
    ) -> Self {
        Self {
            rig: rig.clone(),
            course: course.clone(),
            place: place.clone(),
            margin,
            step,
            tried,
            found,
        }
    }

    /// The best line, where there is one.
    pub fn found(&self) -> Option<&Found> {
        self.found.as_ref().map(|(found, _)| found)
    }

    /// The same, for whoever wants nothing else.
    pub(super) fn into_found(self) -> Option<Found> {
        self.found.map(|(found, _)| found)
    }
}

/// What a search tells of one beside a place where a few things stand otherwise.
pub(super) struct Unchanged<'k> {
    known: &'k Searched,
    /// For each obstacle, whether it stands otherwise.
    is_changed: Vec<bool>,
    /// Those that do, where they stand now.
    changed: Vec<Thing>,
}

impl<'k> Unchanged<'k> {
    /// What it tells, where it was for the same rig on the same course, beside as many things and the same edges.
    pub(super) fn of(
        known: &'k Searched,
        (rig, course, (margin, step)): (&Rig, &Course, (Length, Length)),
        place: &Place,
        wanted: impl Fn(Target) -> f64,
    ) -> Option<Self> {
        let was = &known.place;
        let is_of_it = (&known.rig, &known.course) == (rig, course)
            && (known.margin, known.step) == (margin, step)
            && was.edges == place.edges
            && was.obstacles.len() == place.obstacles.len();
        if !is_of_it {
            return None;
        }
        let pairs = was.obstacles.iter().zip(&place.obstacles);
        let is_changed: Vec<bool> = pairs.map(|(was, is)| was != is).collect();
        let mut shapes = place.shapes();
        shapes.retain(|(target, _)| is_among(&is_changed, *target));
        Some(Self {
            known,
            changed: things(shapes, wanted),
            is_changed,
        })
    }

    /// What is known of the line that is tried as one of that number, to better another one. `drive` tries it against a few
    /// things.
    pub(super) fn told(
        &mut self,
        number: usize,
        (choice, other): (&Choice, f64),
        drive: &mut impl FnMut(&mut Vec<Thing>, f64) -> Told,
    ) -> Option<Told> {
        let tried = self.known.tried.get(number)?;
        if tried.choice != *choice || tried.other.total_cmp(&other).is_ne() {
            return None;
        }
        let told = tried.told;
        if told == Told::NO_LINE {
            return Some(told);
        }
        if self.is_changed(told.beside?) {
            return None;
        }
        let is_no_better = told.score <= other;
        let stays = is_no_better
            || self.changed.is_empty()
            || drive(&mut self.changed, told.score).score > told.score;
        stays.then_some(told)
    }

    /// What the best line left that was found and its drive, where this is it, and which obstacles it has to be looked at
    /// beside again.
    pub(super) fn found(self, path: &Path) -> Option<(&'k Room, &'k Arc<Track>, Vec<bool>)> {
        let (found, track) = self.known.found.as_ref()?;
        (found.path == *path).then_some((&found.room, track, self.is_changed))
    }

    fn is_changed(&self, target: Target) -> bool {
        is_among(&self.is_changed, target)
    }
}

/// An obstacle is among those that are marked; no edge is.
pub(super) fn is_among(marked: &[bool], target: Target) -> bool {
    match target {
        Target::Obstacle(index) => marked.get(index).copied().unwrap_or_default(),
        Target::Edge(_) => false,
    }
}
