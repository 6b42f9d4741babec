//! What comes of a block of scenarios of one family: first who is gone before the leaf can come or walks into its side, then
//! whom the devices that are met first save, and one by one who is left.
//!
//! What is decided for many is decided with twice the slack of [`Lane::run`], so that each by itself ends the same.

#![allow(
    clippy::inline_always,
    clippy::needless_range_loop,
    reason = "only what is inlined, and goes over all by one number, is worked in wide registers"
)]

use super::batch::{Batch, EXACT, Values, greater, smaller};
use super::evaluate::CLEAR;
use super::lane::{Lane, Walk};
use super::passed::Passed;
use super::person::{Look, Person};
use super::profile::EVER;
use super::scenario::{Class, Way};
use super::sequence::{Block, Draw, Drawing, Family, Habit, REPEATS, SIDE};
use super::standing::Stood;
use super::sweep::Bin;
use super::wide::wide;

/// Twice the slack of what works one scenario.
pub(super) const SLACK: f64 = 2.0 * CLEAR;

/// So much before a report that is worked for many the one that is worked by itself may be, in seconds: far more than it is.
const BEFORE: f64 = 1e-6;

/// How each ends, as far as it is decided.
type Ended = [Option<Class>; SIDE];

/// A block of a family that is worked.
struct Sieve<'a> {
    lane: &'a Lane,
    family: &'a Family,
    person: &'a Person,
    way: usize,
    stops: bool,
    half: f64,
}

/// Bounds of the first report of each.
struct Told {
    /// No device reports before.
    earliest: Values,
    /// One has reported then.
    latest: Values,
    /// One surely keeps the leaf from starting where this is above zero.
    shut: Values,
}

impl Walk {
    /// How the scenario of a number ends, by itself.
    pub(super) fn ends(&self, family: &Family, draw: &Draw) -> (Class, Option<f64>) {
        let lane = &self.lanes[family.pass];
        let found = lane.run(&lane.drawn(family, draw, self.slant));
        (found.class, found.touch.map(|(_, harm)| harm.severity))
    }

    /// Works a block.
    pub(super) fn work(&self, family: &Family, block: &Block, bin: &mut Bin) {
        let lane = &self.lanes[family.pass];
        let drawing = lane.drawing(family, self.slant);
        let sieve = Sieve::new(lane, family, &drawing);
        let (mut batch, mut left) = (Batch::empty(), Batch::empty());
        let draw = (&drawing, block);
        for repeat in 0..REPEATS {
            if matches!(family.habit, Habit::Stand | Habit::Lean) {
                sieve.stood(draw, repeat, &mut batch, bin);
                continue;
            }
            let look = &mut batch;
            let ended = wide(
                #[inline(always)]
                || sieve.first_look(draw, repeat, look),
            );
            let mut counts = [0; Class::ALL.len()];
            for (at, ended) in ended.iter().enumerate().take(batch.count) {
                if let Some(class) = *ended {
                    counts[class as usize] += 1;
                    continue;
                }
                left.take(&batch, at);
                if left.count == SIDE {
                    sieve.rest(&mut left, bin);
                }
            }
            for class in Class::ALL {
                bin.count_many(repeat, class, counts[class as usize]);
            }
        }
        sieve.rest(&mut left, bin);
    }
}

impl<'a> Sieve<'a> {
    fn new(lane: &'a Lane, family: &'a Family, drawing: &Drawing) -> Self {
        Self {
            lane,
            family,
            person: &lane.people[family.body],
            way: usize::from(family.way == Way::Out),
            stops: family.habit == Habit::Stop,
            half: drawing.half,
        }
    }

    /// Who is gone before the leaf can come, and who walks into its side before a device may have stopped it.
    #[inline(always)]
    fn first_look(&self, draw: (&Drawing, &Block), repeat: usize, batch: &mut Batch) -> Ended {
        batch.draw(draw, repeat, self.stops);
        batch.look(self.lane, self.person, self.way, SLACK);
        let profile = &self.lane.profile;
        let seen_from = self.person.seen_from(self.way).min(EVER);
        let back = self.lane.control.back.map_or(0.0, |back| back.distance);
        let mut ended = [None; SIDE];
        for (at, ended) in ended.iter_mut().enumerate() {
            let (arrives, per_depth) = (batch.arrives[at], batch.per_depth[at]);
            let until = if self.stops {
                EVER
            } else {
                arrives + self.half * per_depth
            };
            let at_last = profile.travel - profile.at(until).0;
            let (seen, beside) = (arrives + seen_from * per_depth, batch.beside[at]);
            let lost = if seen < beside { back } else { 0.0 };
            let left = profile.travel - profile.at(smaller(seen, beside)).0 + lost;
            let gone = at_last - batch.reach[at];
            let past = smaller(batch.at[at] - left, seen);
            *ended = class(gone, past);
        }
        ended
    }

    /// Works those who are left, and forgets them.
    fn rest(&self, left: &mut Batch, bin: &mut Bin) {
        let known = &mut *left;
        let ended = wide(
            #[inline(always)]
            || self.second_look(known),
        );
        self.one_by_one(left, &ended, bin);
        left.count = 0;
    }

    /// Works those who stand there.
    fn stood(&self, draw: (&Drawing, &Block), repeat: usize, batch: &mut Batch, bin: &mut Bin) {
        let drawn = &mut *batch;
        let stood = wide(
            #[inline(always)]
            || {
                drawn.draw(draw, repeat, self.stops);
                if self.family.habit == Habit::Lean {
                    self.lane.lean_all(self.person, self.way, drawn);
                }
                Stood::of(self.lane, self.person, self.way, drawn)
            },
        );
        for at in 0..batch.count {
            if greater(stood.clear[at], stood.seen[at]) > 0.0 {
                bin.count_many(repeat, Class::Untouched, 1);
                continue;
            }
            let case = batch.drawn(at).case(self.family);
            let walker = self.lane.walker(&case);
            let found = if stood.unseen[at] > 0.0 {
                self.lane.come_to(&walker)
            } else {
                self.lane.stood(&walker)
            };
            let severity = found.touch.map(|(_, harm)| harm.severity);
            bin.count(batch.seeds[at], repeat, found.class, severity);
        }
    }

    fn one_by_one(&self, batch: &Batch, ended: &Ended, bin: &mut Bin) {
        let looks = self.person.looks[self.way].len().min(EXACT);
        for (at, ended) in ended.iter().enumerate().take(batch.count) {
            let seed = batch.seeds[at];
            let (class, severity) = ended.map_or_else(
                || {
                    let case = batch.drawn(at).case(self.family);
                    let early = [0, 1, 2].map(|look: usize| batch.early[look][at]);
                    let walker = self.lane.walker(&case);
                    let found = self.lane.searched(&walker, &early[..looks]);
                    (found.class, found.touch.map(|(_, harm)| harm.severity))
                },
                |class| (class, None),
            );
            bin.count(seed, Block::repeat_of(seed), class, severity);
        }
    }

    /// Whom a device saves that is met first, and who walks into the side of a leaf that is told to stop.
    #[inline(always)]
    fn second_look(&self, batch: &mut Batch) -> Ended {
        let told = self.told(batch);
        let (profile, control) = (&self.lane.profile, &self.lane.control);
        let pause = control.back.map_or(0.0, |back| back.pause);
        let travel = profile.travel;
        let mut ended = [None; SIDE];
        for (at, ended) in ended.iter_mut().enumerate() {
            let beside = batch.beside[at];
            let (place, speed) = profile.at(told.latest[at] + control.reaction);
            let stands = place + speed * speed / (2.0 * control.stopping);
            let saved = greater(told.shut[at], travel - stands - batch.reach[at]);
            // Who may touch the leaf before it starts is left.
            let later = greater(travel - batch.reach[at], beside);
            let command = told.earliest[at] + control.reaction;
            let (place, speed) = profile.at(smaller(beside, command));
            let gone = greater(beside - command, 0.0);
            let stops = speed / control.stopping;
            let braked = smaller(gone, stops);
            let place = place + braked * (speed - 0.5 * control.stopping * braked);
            let past = smaller(batch.at[at] - travel + place, told.earliest[at]);
            let past = smaller(past, stops + pause - gone);
            *ended = class(smaller(saved, later), past);
        }
        ended
    }

    #[inline(always)]
    fn told(&self, batch: &mut Batch) -> Told {
        let mut told = Told {
            earliest: [EVER; SIDE],
            latest: [EVER; SIDE],
            shut: [-EVER; SIDE],
        };
        let mut passed = Passed::NONE;
        for (at, look) in self.person.looks[self.way].iter().enumerate() {
            if at < EXACT {
                let mut said = [EVER; SIDE];
                for &(part, radius) in &self.person.seen[look.device] {
                    self.passed(batch, look, (part, radius), &mut passed);
                    self.seen(batch, look, (part, radius), &passed, (&mut said, &mut told));
                }
                for number in 0..SIDE {
                    told.earliest[number] = smaller(told.earliest[number], said[number]);
                    batch.early[at][number] = said[number] - BEFORE;
                }
            } else {
                for at in 0..SIDE {
                    let from = batch.arrives[at] + look.from * batch.per_depth[at];
                    told.earliest[at] = smaller(told.earliest[at], from + look.response);
                }
            }
        }
        told
    }

    /// Where a cylinder of each goes through what a device looks at.
    #[inline(always)]
    fn passed(
        &self,
        batch: &Batch,
        look: &Look,
        (part, radius): (usize, f64),
        passed: &mut Passed,
    ) {
        let aside = self.lane.right(self.way) * self.person.parts[part].aside;
        match self.lane.fields[look.device].sides(self.way) {
            [side, _] => passed.through(batch, side, aside, radius),
            sides => {
                *passed = Passed::NONE;
                for side in sides {
                    passed.add(batch, side, aside, radius);
                }
            }
        }
    }

    /// What a device that sees a cylinder says.
    #[inline(always)]
    fn seen(
        &self,
        batch: &Batch,
        look: &Look,
        (part, radius): (usize, f64),
        passed: &Passed,
        (each, told): (&mut Values, &mut Told),
    ) {
        let (field, part) = (&self.lane.fields[look.device], &self.person.parts[part]);
        let aside = self.lane.right(self.way) * part.aside;
        let begins = field.begins[self.way] - radius;
        for at in 0..SIDE {
            let lead = (part.ahead - aside * batch.slant[at]) * batch.shrink[at];
            let (arrives, per_depth) = (batch.arrives[at], batch.per_depth[at]);
            let stays = batch.stays[at];
            let clean = smaller(EVER - passed.enters[at], passed.leaves[at] + EVER);
            let last = passed.leaves[at] - lead;
            let first = if clean > 0.0 {
                passed.enters[at]
            } else {
                begins - SLACK
            };
            let first = first - lead;
            let said = arrives + first * per_depth + look.response;
            let said = if first <= stays + SLACK { said } else { EVER };
            let until = if last < stays {
                arrives + last * per_depth
            } else {
                EVER
            };
            let sure = smaller(smaller(clean, stays - first), until - said);
            each[at] = smaller(each[at], said);
            let latest = if smaller(sure, said) > SLACK {
                said
            } else {
                EVER
            };
            told.latest[at] = smaller(told.latest[at], latest);
            let shut = smaller(sure, smaller(-said, until));
            told.shut[at] = greater(told.shut[at], shut);
        }
    }
}

/// How one ends, by how surely: where both are above the slack, the first counts.
#[inline(always)]
fn class(untouched: f64, past: f64) -> Option<Class> {
    if untouched > SLACK {
        Some(Class::Untouched)
    } else if past > SLACK {
        Some(Class::MetTheSide)
    } else {
        None
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::super::control::Answer;
    use super::super::demo::{full, trial};
    use super::super::sweep::each;
    use super::*;

    #[test]
    fn many_side_by_side_end_as_each_by_itself() {
        let mut stops = full();
        stops.controller.answer = Answer::Stop;
        stops.greatest_slant = quantity::Quantity::from_base(8.0);
        for (world, rows) in [(trial(0.08), 40), (full(), 8), (stops, 8)] {
            let walk = world.lower().unwrap();
            let families = walk.families();
            for (at, family) in families.iter().enumerate() {
                let (mut many, mut one) = (Bin::EMPTY, Bin::EMPTY);
                for row in 0..rows {
                    let block = (row * families.len() + at) as u64;
                    let block = Block::new(block, 1024 - row as u64, families.len());
                    walk.work(family, &block, &mut many);
                    each(&block, &mut one, |draw| walk.ends(family, draw));
                }
                assert_eq!(many, one, "{family:?}");
            }
        }
    }
}
