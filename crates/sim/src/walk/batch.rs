//! Scenarios of one family side by side, so that what is the same for all is worked once and each step goes over all.

#![allow(
    clippy::inline_always,
    reason = "only what is inlined is worked in wide registers"
)]

use super::lane::Lane;
use super::person::Person;
use super::profile::{EVER, Profile};
use super::sequence::{Block, Drawing, Drawn, Points, SIDE};

/// A value for each scenario.
pub(super) type Values = [f64; SIDE];

/// Devices that are met first and are worked exactly; of the others only the earliest time of a report is.
pub(super) const EXACT: usize = 3;

/// Scenarios side by side.
pub(super) struct Batch {
    points: Points,
    /// Their numbers.
    pub seeds: [u64; SIDE],
    pub count: usize,
    pub x0: Values,
    pub slant: Values,
    pub speed: Values,
    pub arrives: Values,
    pub depth: Values,
    /// The share of all depths that this is.
    pub deep: Values,
    /// Depth at which it stays.
    pub stays: Values,
    /// √(1 + slant²), and one over it.
    pub stretch: Values,
    pub shrink: Values,
    pub per_depth: Values,
    /// How far from the end of the way of the leaf a cylinder may be touched.
    pub reach: Values,
    /// When the first cylinder comes beside the leaf, and where along the gate line; far behind where that is not clear.
    pub beside: Values,
    pub at: Values,
    /// Before when the devices that are met first surely neither report nor keep the leaf from starting.
    pub early: [Values; EXACT],
}

/// The cylinder of each that is beside the leaf first.
struct Foremost {
    /// How far ahead of the middle of the body its place beside the leaf begins.
    ahead: Values,
    /// The same of the next cylinder.
    next: Values,
    /// Where that is along the gate line, from where the path crosses it.
    off: Values,
}

impl Batch {
    pub(super) fn empty() -> Self {
        let none = [0.0; SIDE];
        Self {
            points: Points::NONE,
            seeds: [0; SIDE],
            count: 0,
            x0: none,
            slant: none,
            speed: none,
            arrives: none,
            depth: none,
            deep: none,
            stays: none,
            stretch: none,
            shrink: none,
            per_depth: none,
            reach: none,
            beside: none,
            at: none,
            early: [none; EXACT],
        }
    }

    /// Draws the scenarios of a repeat of a block.
    #[inline(always)]
    pub(super) fn draw(
        &mut self,
        (drawing, block): (&Drawing, &Block),
        repeat: usize,
        stops: bool,
    ) {
        block.points(repeat, &mut self.points);
        let points = &self.points;
        self.count = points.count;
        self.seeds = points.seeds;
        self.deep = points.at[4];
        let [when, place, lean, pace, deep] = &points.at;
        for at in 0..SIDE {
            let drawn = drawing.of([when[at], place[at], lean[at], pace[at], deep[at]]);
            self.x0[at] = drawn.x0;
            self.slant[at] = drawn.slant;
            self.speed[at] = drawn.speed;
            self.arrives[at] = drawn.arrives;
            self.depth[at] = drawn.depth;
            self.stays[at] = if stops { drawn.depth } else { EVER };
            self.stretch[at] = drawn.stretch;
            self.shrink[at] = 1.0 / drawn.stretch;
            self.per_depth[at] = drawn.stretch / drawn.speed;
        }
    }

    /// Takes one more scenario, from others.
    pub(super) fn take(&mut self, of: &Self, from: usize) {
        // Both are below the count of places anyway: said so that each access need not be checked.
        let (to, from) = (self.count % SIDE, from % SIDE);
        self.seeds[to] = of.seeds[from];
        self.x0[to] = of.x0[from];
        self.slant[to] = of.slant[from];
        self.speed[to] = of.speed[from];
        self.arrives[to] = of.arrives[from];
        self.depth[to] = of.depth[from];
        self.stays[to] = of.stays[from];
        self.stretch[to] = of.stretch[from];
        self.shrink[to] = of.shrink[from];
        self.per_depth[to] = of.per_depth[from];
        self.reach[to] = of.reach[from];
        self.beside[to] = of.beside[from];
        self.at[to] = of.at[from];
        self.count += 1;
    }

    pub(super) fn drawn(&self, at: usize) -> Drawn {
        Drawn {
            x0: self.x0[at],
            slant: self.slant[at],
            speed: self.speed[at],
            arrives: self.arrives[at],
            depth: self.depth[at],
            stretch: self.stretch[at],
        }
    }

    /// Works out how far each may be touched, and when and where its first cylinder comes beside the leaf. It is clear that
    /// it does where no other comes nearly as soon and where the body does not stay before.
    #[inline(always)]
    pub(super) fn look(&mut self, lane: &Lane, person: &Person, way: usize, slack: f64) {
        let right = lane.right(way);
        let first = self.foremost(person, right, lane.half);
        for at in 0..SIDE {
            let (ahead, per_depth) = (first.ahead[at], self.per_depth[at]);
            let clear =
                smaller((ahead - first.next[at]) * per_depth, self.stays[at] + ahead) > slack;
            self.beside[at] = self.arrives[at] - ahead * per_depth;
            self.at[at] = if clear {
                self.x0[at] + first.off[at]
            } else {
                -EVER
            };
        }
    }

    #[inline(always)]
    fn foremost(&mut self, person: &Person, right: f64, half: f64) -> Foremost {
        let mut first = Foremost {
            ahead: [-EVER; SIDE],
            next: [-EVER; SIDE],
            off: [0.0; SIDE],
        };
        self.reach = [-EVER; SIDE];
        for &part in &person.touchable {
            let part = &person.parts[part];
            let (half, aside) = (part.radius + half, right * part.aside);
            for at in 0..SIDE {
                let slant = self.slant[at];
                let x0 = aside * self.stretch[at];
                let begins = half + (part.ahead - aside * slant) * self.shrink[at];
                let known = first.ahead[at];
                let ahead = begins > known;
                let second = if ahead { known } else { begins };
                first.next[at] = greater(first.next[at], second);
                first.off[at] = if ahead {
                    x0 - half * slant
                } else {
                    first.off[at]
                };
                first.ahead[at] = greater(begins, known);
                let reach = self.x0[at] + x0 + slant.abs() * half + part.radius;
                self.reach[at] = greater(self.reach[at], reach);
            }
        }
        first
    }
}

/// The greater of two, neither of which is none.
#[inline(always)]
pub(super) fn greater(one: f64, other: f64) -> f64 {
    if one > other { one } else { other }
}

/// The smaller of two, neither of which is none.
#[inline(always)]
pub(super) fn smaller(one: f64, other: f64) -> f64 {
    if one < other { one } else { other }
}

impl Profile {
    /// Its place and speed, worked in the same steps at any time.
    #[inline(always)]
    pub(super) fn at(&self, time: f64) -> (f64, f64) {
        let (mut place, mut speed) = (0.0, 0.0);
        for stretch in &self.stretches {
            let gone = greater(time - stretch.from, 0.0);
            let gone = smaller(gone, stretch.until - stretch.from);
            place += gone * (stretch.speed + 0.5 * stretch.rate * gone);
            let now = stretch.speed + stretch.rate * gone;
            speed = if time > stretch.from { now } else { speed };
        }
        (place, speed)
    }
}
