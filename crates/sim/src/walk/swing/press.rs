//! How hard a leaf that turns or rises can press at most: by its weight and its drive, and as it was measured.

use super::super::harm::{Bounds, Harm, Most, Spring};
use super::super::world::{at_least_zero, positive};
use crate::walk::device::Direction;
use formula::OutOfReach;
use quantity::{Force, Length, Mass, Quantity as _};

/// What moves with a leaf, as its free end feels it; of a leaf that is lifted, as its edge does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heft {
    /// Mass of the leaf and of what turns in its drive.
    pub mass: Mass,
    /// Greatest push of the drive.
    pub push: Force,
}

/// Forces that were measured at one place of a leaf. They count for touches there and farther from the hinge line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// Which leaf, by its place in the list.
    pub leaf: usize,
    /// The direction in which it moved.
    pub guards: Direction,
    /// From the hinge line along the leaf.
    pub from: Length,
    /// Gap before the leaf at the touch.
    pub gap: Length,
    /// Greatest force.
    pub peak: Force,
    /// Force after the first time of the limits.
    pub settled: Force,
    /// Force after the second time of the limits.
    pub end: Force,
}

impl Heft {
    pub(in super::super) fn check(&self) -> Result<(), OutOfReach> {
        positive("mass", self.mass)?;
        at_least_zero("push", self.push)
    }
}

impl Measured {
    pub(in super::super) fn check(&self, leaves: usize) -> Result<(), OutOfReach> {
        if self.leaf >= leaves {
            return Err(OutOfReach::new(
                "leaf",
                "a force is that of one of the leaves",
            ));
        }
        at_least_zero("from", self.from)?;
        at_least_zero("gap", self.gap)?;
        at_least_zero("peak", self.peak)?;
        at_least_zero("settled", self.settled)?;
        at_least_zero("end", self.end)
    }
}

/// A body with what it rides is no heavier than this, in kilograms.
const FREE: f64 = 200.0;

/// What is known of how hard one leaf presses in one direction, in plain numbers.
#[derive(Debug, Clone, Default)]
pub(in super::super) struct Press {
    /// Mass at the free end and push there.
    heft: Option<(f64, f64)>,
    rows: Vec<Row>,
}

#[derive(Debug, Clone, Copy)]
struct Row {
    from: f64,
    gap: f64,
    forces: Forces,
}

/// Measured forces: the greatest, what is left after the first time, after the second.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in super::super) struct Forces {
    pub peak: f64,
    pub settled: f64,
    pub end: f64,
}

/// What a touch may come to: as it was measured, or by its springs; in a wide gap or in one that crushes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in super::super) struct Outcome {
    pub forces: Option<Forces>,
    pub wide: bool,
}

impl Press {
    pub(in super::super) fn new<'a>(
        heft: Option<&Heft>,
        measured: impl Iterator<Item = &'a Measured>,
        direction: Direction,
    ) -> Self {
        let rows = measured
            .filter(|one| one.guards == direction)
            .map(|one| Row {
                from: one.from.base(),
                gap: one.gap.base(),
                forces: Forces {
                    peak: one.peak.base(),
                    settled: one.settled.base(),
                    end: one.end.base(),
                },
            });
        Self {
            heft: heft.map(|heft| (heft.mass.base(), heft.push.base())),
            rows: rows.collect(),
        }
    }

    /// The most that a touch can be at a place that goes so much of the way of the free end, by a leaf whose end goes at a
    /// speed: its energy and the work of its drive go into the spring.
    pub(in super::super) fn most(&self, spring: &Spring, share: f64, speed: f64) -> Most {
        let Some((mass, push)) = self.heft else {
            return Most::ANY;
        };
        let push = push / share;
        Most {
            deepest: pressed_by(spring, 0.5 * mass * speed * speed, push),
            push,
        }
    }

    /// The most that a touch can be of a body that has room all the way to where the leaf ends: it is struck, and gives way.
    /// Counts only where it is known what moves.
    pub(in super::super) fn free(&self, spring: &Spring, share: f64, speed: f64) -> Most {
        if self.heft.is_none() {
            return Most::ANY;
        }
        let speed = share * speed;
        Most {
            deepest: pressed_by(spring, 0.5 * FREE * speed * speed, 0.0),
            push: 0.0,
        }
    }

    /// Forces that were measured so far from the hinge line or nearer to it: the greatest of those in gaps that crush, or
    /// of all if one was measured at a gap that does not.
    pub(in super::super) fn forces(&self, far: f64, wide: bool, bounds: &Bounds) -> Option<Forces> {
        let within = |row: &&Row| row.from <= far && (wide || row.gap <= bounds.gap);
        let here = || self.rows.iter().filter(within);
        if wide && !here().any(|row| row.gap >= bounds.gap) {
            return None;
        }
        here().map(|row| row.forces).reduce(|a, b| Forces {
            peak: a.peak.max(b.peak),
            settled: a.settled.max(b.settled),
            end: a.end.max(b.end),
        })
    }

    /// What touches may come to between two distances from the hinge line, in a gap no less than one.
    pub(in super::super) fn outcomes(
        &self,
        (near, far): (f64, f64),
        gap: f64,
        bounds: &Bounds,
    ) -> Vec<Outcome> {
        let mut all = Vec::with_capacity(2);
        for wide in [true, false] {
            if !wide && gap > bounds.gap {
                continue;
            }
            // Farther out never fewer rows count, so that the most is at the far end.
            if let Some(forces) = self.forces(far, wide, bounds) {
                let forces = Some(forces);
                all.push(Outcome { forces, wide });
            }
            if self.forces(near, wide, bounds).is_none() {
                all.push(Outcome { forces: None, wide });
            }
        }
        all
    }
}

/// How far a spring is pressed by an energy and a push that goes on.
fn pressed_by(spring: &Spring, energy: f64, push: f64) -> f64 {
    let soft = (push + (push * push + 2.0 * spring.soft * energy).sqrt()) / spring.soft;
    if soft <= spring.way {
        return soft;
    }
    // The rest goes into the hard part of it.
    let knee = spring.soft * spring.way;
    let left = (energy + push * spring.way - 0.5 * knee * spring.way).max(0.0);
    let more = push - knee;
    spring.way + (more + (more * more + 2.0 * spring.hard * left).sqrt()) / spring.hard
}

impl Forces {
    /// A touch as it was measured: what is measured counts, however hard it was worked out to be. A meter in the gap is
    /// squeezed as a body is, and the forces that are left say whether it is let go.
    pub(in super::super) fn instead_of(
        &self,
        harm: Harm,
        spring: &Spring,
        bounds: &Bounds,
    ) -> Harm {
        let falls = |force: f64, limit: f64| if force <= limit { 0.0 } else { f64::INFINITY };
        let harm = Harm {
            force: self.peak,
            travel: harm.travel.min(spring.pressed(self.peak)),
            lasts: falls(self.settled, bounds.lasting),
            rests: falls(self.end, bounds.rest),
            ..harm
        };
        harm.judged(bounds, f64::INFINITY)
    }
}
