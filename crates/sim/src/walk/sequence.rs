//! Which scenario a number stands for: an additive recurrence in whole numbers, so that every number can be worked again.
//!
//! Point n of a repeat has the coordinates n·α + shift, the whole parts dropped, with α the powers of one over the real
//! root of x⁶ = x + 1 (M. Roberts, “The unreasonable effectiveness of quasirandom sequences”, 2018; memory). Sixteen
//! repeats with shifts of their own (splitmix64 of Steele, Lea and Flood, 2014; memory) give shares their error.

#![allow(
    clippy::inline_always,
    reason = "only what is inlined is worked in wide registers"
)]

use super::lane::{Lane, Walk};
use super::path::{Case, Path};
use super::person::Person;
use super::scenario::{Scenario, Way};

/// Repeats with shifts of their own.
pub const REPEATS: usize = 16;
/// Numbers in a row that belong to one family.
pub(super) const BLOCK: u64 = 1024;
/// Points of a block that belong to one repeat.
pub(super) const SIDE: usize = 64;
/// Coordinates of a point.
pub(super) const WIDE: usize = 5;
const STEPS: [u64; WIDE] = [
    0xe19b_01aa_9d42_c633,
    0xc6d1_d6c8_ed0c_9631,
    0xaf36_d01e_f751_8dbb,
    0x9a69_443f_36f7_10e7,
    0x8814_03b9_339b_d42d,
];
const SHIFTS: [[u64; WIDE]; REPEATS] = shifts();

/// What the people of a family do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Habit {
    /// They cross at any time of the travel.
    Cross,
    /// They come to the leaf after it has started, as one who follows another.
    Follow,
    /// They come at any time and stay in the way.
    Stop,
    /// They stand there before the leaf starts.
    Stand,
    /// They stand beside the leaf's path before it starts, an arm in the gap.
    Lean,
}

/// Scenarios of one pass, body, way and habit; each family has the same share of the numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Family {
    /// Which of the leaf's ways.
    pub pass: usize,
    /// Which body.
    pub body: usize,
    /// Which way it goes or faces.
    pub way: Way,
    /// What it does.
    pub habit: Habit,
}

const fn shifts() -> [[u64; WIDE]; REPEATS] {
    let mut table = [[0; WIDE]; REPEATS];
    let mut state: u64 = 0;
    let mut at = 0;
    while at < WIDE * REPEATS {
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        table[at / WIDE][at % WIDE] = z ^ (z >> 31);
        at += 1;
    }
    table
}

/// A coordinate from its bits.
#[allow(
    clippy::cast_precision_loss,
    reason = "53 bits are what a number holds"
)]
#[inline(always)]
fn unit(bits: u64) -> f64 {
    (bits >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0)
}

/// Where a number falls: its family, its repeat, its point.
pub(super) struct Draw {
    pub family: usize,
    pub repeat: usize,
    number: u64,
}

impl Draw {
    /// Its point of the unit cube.
    pub(super) fn point(&self) -> [f64; WIDE] {
        let mut point = [0.0; WIDE];
        for (at, value) in point.iter_mut().enumerate() {
            let bits = self.number.wrapping_mul(STEPS[at]);
            *value = unit(bits.wrapping_add(SHIFTS[self.repeat][at]));
        }
        point
    }

    #[allow(
        clippy::cast_possible_truncation,
        reason = "both are below the small numbers that they are divided by"
    )]
    pub(super) fn new(seed: u64, families: usize) -> Self {
        let (block, families) = (seed / BLOCK, families as u64);
        let at = block / families * BLOCK + seed % BLOCK;
        Self {
            family: (block % families) as usize,
            repeat: (at % REPEATS as u64) as usize,
            number: at / REPEATS as u64,
        }
    }
}

/// Numbers in a row of one family, from the first of its block on.
pub(super) struct Block {
    /// The first number, and how many there are.
    pub seed: u64,
    pub count: u64,
    families: usize,
}

/// Points of one repeat side by side: for each coordinate the values of all.
pub(super) struct Points {
    pub at: [[f64; SIDE]; WIDE],
    /// Their numbers, and how many of them are there.
    pub seeds: [u64; SIDE],
    pub count: usize,
}

impl Points {
    pub(super) const NONE: Self = Self {
        at: [[0.0; SIDE]; WIDE],
        seeds: [0; SIDE],
        count: 0,
    };
}

impl Block {
    pub(super) fn new(block: u64, count: u64, families: usize) -> Self {
        Self {
            seed: block * BLOCK,
            count,
            families,
        }
    }

    /// The family of all of its numbers.
    pub(super) fn family(&self) -> usize {
        Draw::new(self.seed, self.families).family
    }

    /// Its numbers with where they fall.
    pub(super) fn draws(&self) -> impl Iterator<Item = (u64, Draw)> {
        (self.seed..self.seed + self.count).map(|seed| (seed, Draw::new(seed, self.families)))
    }

    /// The repeat of a number.
    #[allow(clippy::cast_possible_truncation, reason = "it is below sixteen")]
    pub(super) fn repeat_of(seed: u64) -> usize {
        (seed % REPEATS as u64) as usize
    }

    /// Sets the points to those of one repeat.
    #[inline(always)]
    pub(super) fn points(&self, repeat: usize, points: &mut Points) {
        let first = Draw::new(self.seed + repeat as u64, self.families);
        points.count = 0;
        let mut seed = self.seed + repeat as u64;
        for at in &mut points.seeds {
            *at = seed;
            points.count += usize::from(seed < self.seed + self.count);
            seed += REPEATS as u64;
        }
        for (at, values) in points.at.iter_mut().enumerate() {
            let mut bits = first
                .number
                .wrapping_mul(STEPS[at])
                .wrapping_add(SHIFTS[repeat][at]);
            for value in values {
                *value = unit(bits);
                bits = bits.wrapping_add(STEPS[at]);
            }
        }
    }
}

/// What one does who goes, who only lies or sits, who leans in.
fn habits(person: &Person) -> &'static [Habit] {
    if person.arm > 0 {
        &[Habit::Lean]
    } else if person.speeds.is_some() {
        &[Habit::Cross, Habit::Follow, Habit::Stop, Habit::Stand]
    } else {
        &[Habit::Stand]
    }
}

/// The families of so many passes and of some people.
pub(super) fn families(passes: usize, people: &[Person]) -> Vec<Family> {
    let mut families = Vec::new();
    for pass in 0..passes {
        for (body, person) in people.iter().enumerate() {
            for way in [Way::In, Way::Out] {
                families.extend(habits(person).iter().map(|&habit| Family {
                    pass,
                    body,
                    way,
                    habit,
                }));
            }
        }
    }
    families
}

impl Walk {
    /// The families in their order.
    pub fn families(&self) -> Vec<Family> {
        let people = self.lanes.first().map_or(&[][..], |lane| &lane.people);
        families(self.lanes.len(), people)
    }

    /// The scenario that a number stands for.
    pub fn scenario(&self, seed: u64) -> Scenario {
        let families = self.families();
        let draw = Draw::new(seed, families.len());
        let family = families[draw.family];
        let lane = &self.lanes[family.pass];
        lane.scenario(family.pass, &lane.drawn(&family, &draw, self.slant))
    }
}

/// What the scenarios of a family are drawn from.
pub(super) struct Drawing {
    slowest: f64,
    faster: f64,
    slant: f64,
    /// Half of the depth in which the body may be beside the leaf.
    pub half: f64,
    follows: bool,
    end: f64,
    low: f64,
    wide: f64,
}

/// A scenario that is drawn.
#[derive(Clone, Copy)]
pub(super) struct Drawn {
    pub x0: f64,
    pub slant: f64,
    pub speed: f64,
    pub arrives: f64,
    pub depth: f64,
    /// √(1 + slant²).
    pub stretch: f64,
}

impl Drawing {
    /// The scenario of a point.
    #[inline(always)]
    pub(super) fn of(&self, [when, place, lean, pace, deep]: [f64; WIDE]) -> Drawn {
        let speed = self.slowest + pace * self.faster;
        let slant = self.slant * (2.0 * lean - 1.0);
        let stretch = (1.0 + slant * slant).sqrt();
        let through = speed / stretch;
        let stay = 2.0 * self.half / through;
        let earliest = if self.follows { 0.0 } else { -stay };
        let enters = earliest + when * (self.end - earliest);
        Drawn {
            x0: self.low + place * self.wide,
            slant,
            speed,
            arrives: enters + self.half / through,
            depth: self.half * (2.0 * deep - 1.0),
            stretch,
        }
    }
}

impl Drawn {
    /// It as a case of its family.
    pub(super) fn case(&self, family: &Family) -> Case {
        Case {
            body: family.body,
            way: usize::from(family.way == Way::Out),
            path: match family.habit {
                Habit::Cross | Habit::Follow => Path::Cross,
                Habit::Stop => Path::Stop(self.depth),
                Habit::Stand | Habit::Lean => Path::Stand(self.depth),
            },
            x0: self.x0,
            slant: self.slant,
            speed: self.speed,
            arrives: self.arrives,
        }
    }
}

impl Lane {
    /// The case that a number stands for.
    pub(super) fn drawn(&self, family: &Family, draw: &Draw, slant: f64) -> Case {
        let point = draw.point();
        let mut drawn = self.drawing(family, slant).of(point);
        if family.habit == Habit::Lean {
            let way = usize::from(family.way == Way::Out);
            drawn.depth = self.leant(&self.people[family.body], way, drawn.slant, point[4]);
        }
        drawn.case(family)
    }

    /// What the scenarios of a family are drawn from.
    pub(super) fn drawing(&self, family: &Family, slant: f64) -> Drawing {
        let person = &self.people[family.body];
        let (slowest, fastest) = person.speeds.unwrap_or((1.0, 1.0));
        let (low, high) = self.places();
        Drawing {
            slowest,
            faster: fastest - slowest,
            slant,
            half: person.reach + self.half,
            follows: family.habit == Habit::Follow,
            end: self.profile.end,
            low,
            wide: high - low,
        }
    }

    /// From where to where paths cross the gate line: from what is opposite, or a little beyond the leaf's end, to the
    /// leaf's start.
    pub(super) fn places(&self) -> (f64, f64) {
        (-self.room.min(0.5), self.profile.travel)
    }
}
