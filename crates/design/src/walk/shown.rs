//! What of a walk test can be drawn: its worst cases, and the squares of the plan in which somebody is touched.

use super::told::{COARSE, Told, rank, severity};
use super::{GateWalk, Seed, WalkRecord};
use quantity::{Length, Quantity as _, Time};
use sim::walk::{Account, Class, Direction, Scenario, Spot};
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

/// Where somebody is touched in a direction.
#[derive(Debug, Clone, PartialEq)]
pub struct Touched {
    /// Squares of the plan.
    pub from_above: Vec<TouchedSquare>,
    /// Squares of the elevation, for y their heights; none where a leaf does not rise.
    pub from_the_road: Vec<TouchedSquare>,
    /// Walks that were looked at.
    pub walks: u64,
}

/// A square in which somebody is touched.
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

    /// So many of the worst cases, each of another body or direction: of a first look, and of what was kept.
    pub fn worst_cases(&self, count: usize, kept: Option<&WalkRecord>) -> Vec<ShownCase> {
        let sampled = self.walk.glance(EACH).families.into_iter();
        let sampled = sampled.filter_map(|family| family.worst);
        let seeds = sampled.map(|worst| worst.seed.into());
        let known = kept.into_iter().flat_map(WalkRecord::touches);
        let seeds = seeds.chain(known.filter_map(|told| told.seed));
        let ended = seeds.filter_map(|seed| {
            let scenario = self.scenario(seed).ok()?;
            let outcome = self.walk.evaluate(&scenario).ok()?;
            let touch = outcome.touch.as_ref()?;
            Some((outcome.class, severity(self, touch).base(), seed, scenario))
        });
        let mut worst: Vec<(Class, f64, Seed, Scenario)> = ended.collect();
        worst.retain(|(class, ..)| *class >= Class::Within);
        worst.sort_by(|one, other| {
            let order = rank(other.0).cmp(&rank(one.0));
            order.then(other.1.total_cmp(&one.1))
        });
        let mut shown: Vec<ShownCase> = Vec::new();
        for (_, _, seed, scenario) in worst {
            if shown.len() == count {
                break;
            }
            let like = |known: &ShownCase| {
                (known.scenario.body, known.scenario.pass) == (scenario.body, scenario.pass)
            };
            if !shown.iter().any(like) {
                shown.extend(self.shown(seed));
            }
        }
        shown
    }

    /// Who a walk is of, and which way the leaf moves.
    pub(crate) fn whose(&self, seed: Seed) -> Option<String> {
        let scenario = self.scenario(seed).ok()?;
        let body = self.lowered.world.bodies().get(scenario.body)?;
        Some(format!("{}, leaf {}", body.name, self.moving(&scenario)))
    }

    fn shown(&self, seed: Seed) -> Option<ShownCase> {
        let scenario = self.scenario(seed).ok()?;
        let world = &self.lowered.world;
        let step = Time::from_base(STEP);
        let account = self.walk.account(&scenario, step).ok()?;
        let direction = world.direction(scenario.pass)?;
        Some(ShownCase {
            title: self.whose(seed)?,
            told: self.told(seed),
            devices: self.in_order(direction).map(|one| one.id.clone()).collect(),
            scenario,
            account,
        })
    }

    /// Where somebody is touched in a direction.
    pub fn touched_squares(&self, direction: Direction) -> Touched {
        let count = self.walk.families().len() as u64 * 1024;
        let (mut above, mut road) = (Squares::new(), Squares::new());
        let mut walks = 0;
        for seed in (0..count).step_by(2) {
            let scenario = self.walk.scenario(seed);
            if self.lowered.world.direction(scenario.pass) != Some(direction) {
                continue;
            }
            walks += 1;
            let Ok(outcome) = self.walk.evaluate(&scenario) else {
                continue;
            };
            let bad = outcome.class.is_bad();
            if let Some(touch) = outcome.touch {
                *above.entry(square(touch.at)).or_default() |= bad;
                let account = self.walk.account(&scenario, Time::from_base(COARSE));
                if let Ok(Some(meets)) = account.map(|account| account.meets) {
                    *road.entry(square(meets)).or_default() |= bad;
                }
            }
        }
        Touched {
            from_above: squares(above),
            from_the_road: squares(road),
            walks,
        }
    }
}

/// Which squares somebody is touched in, and whether a limit is passed there.
type Squares = BTreeMap<(i64, i64), bool>;

fn square(at: Spot) -> (i64, i64) {
    (index(at.x), index(at.y))
}

fn squares(all: Squares) -> Vec<TouchedSquare> {
    let one = |((x, y), bad)| TouchedSquare {
        at: Spot {
            x: middle(x),
            y: middle(y),
        },
        bad,
    };
    all.into_iter().map(one).collect()
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
