//! Which scenario a number stands for: an additive recurrence in whole numbers, so that every number can be worked again.
//!
//! Point n of a repeat has the coordinates n·α + shift, the whole parts dropped, with α the powers of one over the real
//! root of x⁶ = x + 1 (M. Roberts, “The unreasonable effectiveness of quasirandom sequences”, 2018; memory). Sixteen
//! repeats with shifts of their own (splitmix64 of Steele, Lea and Flood, 2014; memory) give shares their error.

use super::lane::{Lane, Walk};
use super::path::{Case, Path};
use super::scenario::{Scenario, Way};

/// Repeats with shifts of their own.
pub const REPEATS: usize = 16;
/// Numbers in a row that belong to one family.
pub(super) const BLOCK: u64 = 1024;
/// Coordinates of a point.
const WIDE: usize = 5;
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

/// A point of the unit cube.
#[allow(
    clippy::cast_precision_loss,
    reason = "53 bits are what a number holds"
)]
fn point(number: u64, repeat: usize) -> [f64; WIDE] {
    let mut unit = [0.0; WIDE];
    for (at, value) in unit.iter_mut().enumerate() {
        let bits = number
            .wrapping_mul(STEPS[at])
            .wrapping_add(SHIFTS[repeat][at]);
        *value = (bits >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0);
    }
    unit
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
        point(self.number, self.repeat)
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

/// The families of so many passes and of bodies that go or that only lie or sit.
pub(super) fn families(passes: usize, goes: &[bool]) -> Vec<Family> {
    let mut families = Vec::new();
    for pass in 0..passes {
        for (body, goes) in goes.iter().enumerate() {
            let habits: &[Habit] = if *goes {
                &[Habit::Cross, Habit::Follow, Habit::Stop, Habit::Stand]
            } else {
                &[Habit::Stand]
            };
            for way in [Way::In, Way::Out] {
                families.extend(habits.iter().map(|&habit| Family {
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
        let goes: Vec<bool> = self.lanes.first().map_or(Vec::new(), |lane| {
            let people = lane.people.iter();
            people.map(|person| person.speeds.is_some()).collect()
        });
        families(self.lanes.len(), &goes)
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

impl Lane {
    /// The case that a number stands for.
    pub(super) fn drawn(&self, family: &Family, draw: &Draw, slant: f64) -> Case {
        let [when, place, lean, pace, deep] = draw.point();
        let person = &self.people[family.body];
        let (slowest, fastest) = person.speeds.unwrap_or((1.0, 1.0));
        let speed = slowest + pace * (fastest - slowest);
        let slant = slant * (2.0 * lean - 1.0);
        let through = speed / (1.0 + slant * slant).sqrt();
        let half = person.reach + self.half;
        let depth = half * (2.0 * deep - 1.0);
        let stay = 2.0 * half / through;
        let earliest = match family.habit {
            Habit::Follow => 0.0,
            _ => -stay,
        };
        let enters = earliest + when * (self.profile.end - earliest);
        let (low, high) = self.places();
        Case {
            body: family.body,
            way: usize::from(family.way == Way::Out),
            path: match family.habit {
                Habit::Cross | Habit::Follow => Path::Cross,
                Habit::Stop => Path::Stop(depth),
                Habit::Stand => Path::Stand(depth),
            },
            x0: low + place * (high - low),
            slant,
            speed,
            arrives: enters + half / through,
        }
    }

    /// From where to where paths cross the gate line: from what is opposite, or a little beyond the leaf's end, to the
    /// leaf's start.
    pub(super) fn places(&self) -> (f64, f64) {
        (-self.room.min(0.5), self.profile.travel)
    }
}
