//! What of a walk test can be drawn: its worst cases, and the squares of the plan in which somebody is touched.

use super::GateWalk;
use super::told::{Told, rank};
use quantity::{Length, Quantity as _, Time};
use sim::walk::{Account, Class, Direction, Scenario, Spot, Worst};
use std::collections::BTreeMap;

/// A case to be drawn.
#[derive(Debug, Clone)]
pub struct ShownCase {
    /// Who it is, and which way the leaf moves: `child of about 3, leaf closing`.
    pub title: String,
    /// It in words.
    pub told: Told,
    /// What the body does.
    pub scenario: Scenario,
    /// Its course.
    pub account: Account,
    /// Names of the beams, and after them the fields, that act in that direction.
    pub devices: Vec<String>,
}

/// A square of the plan in which somebody is touched.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TouchedSquare {
    /// Its middle.
    pub at: Spot,
    /// A limit is passed there, or somebody is trapped.
    pub bad: bool,
}

/// Walks of each family that are looked at for drawings.
const EACH: u64 = 512;
/// Pictures of a course (s).
const STEP: f64 = 0.01;
/// Side of a square (m).
const SIDE: f64 = 0.1;

impl GateWalk<'_> {
    /// Side of the squares of [`GateWalk::touched_squares`].
    pub fn side(&self) -> Length {
        Length::from_base(SIDE)
    }

    /// So many of the worst cases, each of another body or direction.
    pub fn worst_cases(&self, count: usize) -> Vec<ShownCase> {
        let mut worst: Vec<Worst> = self
            .walk
            .glance(EACH)
            .families
            .iter()
            .filter_map(|family| family.worst)
            .filter(|worst| worst.class >= Class::Within)
            .collect();
        worst.sort_by(|a, b| {
            let order = rank(b.class).cmp(&rank(a.class));
            order.then(b.severity.base().total_cmp(&a.severity.base()))
        });
        let mut shown: Vec<ShownCase> = Vec::new();
        for one in worst {
            if shown.len() == count {
                break;
            }
            let scenario = self.walk.scenario(one.seed);
            let like = |known: &ShownCase| {
                (known.scenario.body, known.scenario.pass) == (scenario.body, scenario.pass)
            };
            if !shown.iter().any(like) {
                shown.extend(self.shown(one.seed, scenario));
            }
        }
        shown
    }

    fn shown(&self, seed: u64, scenario: Scenario) -> Option<ShownCase> {
        let world = &self.lowered.world;
        let step = Time::from_base(STEP);
        let account = self.walk.account(&scenario, step).ok()?;
        let direction = world.direction(scenario.pass)?;
        let body = world.bodies().get(scenario.body)?;
        let moves = self.moving(&scenario);
        Some(ShownCase {
            title: format!("{}, leaf {moves}", body.name),
            told: self.told(seed),
            devices: self.in_order(direction).map(|one| one.id.clone()).collect(),
            scenario,
            account,
        })
    }

    /// The squares in which somebody is touched in a direction, and how many walks were looked at.
    pub fn touched_squares(&self, direction: Direction) -> (Vec<TouchedSquare>, u64) {
        let count = self.walk.families().len() as u64 * 1024;
        let mut squares: BTreeMap<(i64, i64), bool> = BTreeMap::new();
        let mut looked_at = 0;
        for seed in (0..count).step_by(2) {
            let scenario = self.walk.scenario(seed);
            if self.lowered.world.direction(scenario.pass) != Some(direction) {
                continue;
            }
            looked_at += 1;
            let Ok(outcome) = self.walk.evaluate(&scenario) else {
                continue;
            };
            if let Some(touch) = outcome.touch {
                let bad = squares
                    .entry((index(touch.at.x), index(touch.at.y)))
                    .or_default();
                *bad |= outcome.class.is_bad();
            }
        }
        let squares = squares.into_iter().map(|((x, y), bad)| TouchedSquare {
            at: Spot {
                x: middle(x),
                y: middle(y),
            },
            bad,
        });
        (squares.collect(), looked_at)
    }
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "places of a walk lie within kilometers"
)]
fn index(place: Length) -> i64 {
    (place.base() / SIDE).floor() as i64
}

#[allow(clippy::cast_precision_loss, reason = "squares are few")]
fn middle(index: i64) -> Length {
    Length::from_base((index as f64 + 0.5) * SIDE)
}
