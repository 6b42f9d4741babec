//! One scenario under a leaf that rises, exactly: what sees the body, when the leaf stops, whether and where it touches.

use super::super::course::Course;
use super::super::evaluate::{Found, IN_POST, PARTS};
use super::super::harm::Struck;
use super::super::path::Case;
use super::super::profile::{EVER, Stretch};
use super::super::report::Reports;
use super::super::scenario::Class;
use super::super::swing::{Against, Hit, Motion, RunsBack, pressed, run_back};
use super::super::watch::Walker;
use super::arm::{self, Crate};
use super::lane::{RisingLane, Shape};
use super::lift::Below;

/// So much thicker than the leaf the housing of its drive is on each side at least, in meters.
pub(super) const HOUSED: f64 = 1e-6;

/// The first touch of a course.
#[derive(Clone, Copy)]
struct First {
    part: usize,
    hit: Hit,
}

/// A time in which a cylinder is in the thickness of the leaf, and how it goes along the gate line.
struct Passing {
    from: f64,
    until: f64,
    /// Where it is at a time, and its speed.
    when: f64,
    x: f64,
    speed: f64,
}

fn harmless(class: Class) -> Found {
    Found { class, touch: None }
}

impl RisingLane {
    /// What comes of a case.
    pub(super) fn run(&self, case: &Case) -> Found {
        let walker = Walker::new(case, &self.people[case.body], 1.0);
        let last = self.leaves(&walker);
        let first = self.first_touch(&walker, self.unhindered.stretches(), -EVER);
        let by = first.map_or(last, |first| first.hit.time);
        let reports = walker.reports(&self.fields, by);
        if reports.shut {
            return harmless(Class::Untouched);
        }
        let said = reports.first(EVER).map(|said| said + self.control.reaction);
        match said {
            Some(command) if command < by => {
                let course = Course::commanded(&self.profile, &self.control, command);
                match self.first_touch(&walker, course.stretches(), command) {
                    None => harmless(Class::Untouched),
                    Some(first) => self.judged(&walker, &first, &course, &reports),
                }
            }
            _ => first.map_or(harmless(Class::Untouched), |first| {
                self.judged(&walker, &first, &self.unhindered, &reports)
            }),
        }
    }

    /// When the last cylinder has left the thickness of the leaf.
    fn leaves(&self, walker: &Walker) -> f64 {
        walker.going.leaves(self.half + walker.person.reach)
    }

    fn first_touch(&self, walker: &Walker, course: &[Stretch], after: f64) -> Option<First> {
        let mut first: Option<First> = None;
        for part in 0..walker.person.parts.len() {
            for mut passing in self.passings(walker, part).into_iter().flatten() {
                let known = first.map_or(EVER, |known| known.hit.time);
                passing.until = passing.until.min(known);
                if passing.from.max(after) >= passing.until {
                    continue;
                }
                if let Some(hit) = self.touch(walker, part, &passing, course, after) {
                    first = Some(First { part, hit });
                    break;
                }
            }
        }
        first
    }

    /// Times in which a cylinder is in the thickness of the leaf: going, standing.
    fn passings(&self, walker: &Walker, part: usize) -> [Option<Passing>; 2] {
        let (going, line) = (&walker.going, walker.lines[part]);
        let half = walker.person.parts[part].radius + self.half;
        let stays = going.stays + line.lead;
        let moving = (!going.stands && stays > -half).then(|| Passing {
            from: going.arrives + (-half - line.lead) * going.per_depth,
            until: going.arrives + (half.min(stays) - line.lead) * going.per_depth,
            when: going.arrives - line.lead * going.per_depth,
            x: line.x0,
            speed: going.pace * walker.case.slant,
        });
        let standing = (stays.abs() < half).then(|| {
            let from = if going.stands {
                -1.0
            } else {
                going.arrives + going.stays * going.per_depth
            };
            Passing {
                from,
                until: EVER,
                when: from,
                x: line.x0 + stays * walker.case.slant,
                speed: 0.0,
            }
        });
        [moving, standing]
    }

    fn touch(
        &self,
        walker: &Walker,
        part: usize,
        passing: &Passing,
        course: &[Stretch],
        after: f64,
    ) -> Option<Hit> {
        let radius = walker.person.parts[part].radius;
        let (bottom, top) = self.heights[walker.case.body][part];
        match &self.shape {
            Shape::Turning {
                swung,
                pivot,
                height,
                along,
                upward,
            } => {
                let of = Crate {
                    from: passing.from,
                    until: passing.until,
                    when: passing.when,
                    at: (
                        along * (passing.x - pivot),
                        upward * (0.5 * (bottom + top) - height),
                    ),
                    speed: along * passing.speed,
                    wide: radius,
                    tall: 0.5 * (top - bottom),
                };
                arm::first(swung, course, &of, after)
            }
            Shape::Lifting(lifted) => {
                let (from, until) = passing.between(lifted.from - radius, lifted.to + radius)?;
                let of = Below {
                    from,
                    until,
                    bottom,
                    top,
                    x: passing.x + passing.speed * (from - passing.when),
                    speed: passing.speed,
                };
                lifted.first(course, &of, after)
            }
        }
    }

    fn judged(&self, walker: &Walker, first: &First, course: &Course, reports: &Reports) -> Found {
        let hit = &first.hit;
        let (place, speed) = course.at(hit.time);
        if hit.time <= 0.0 || hit.lever * speed <= 0.0 || self.parts(walker, hit, place, speed) {
            return harmless(Class::MetTheSide);
        }
        if self.is_in_housing(walker, hit.time) {
            return harmless(Class::Untouched);
        }
        let share = match self.shape {
            Shape::Turning { .. } => self.skin.share(hit.along.hypot(hit.across)),
            Shape::Lifting(_) => 1.0,
        };
        let (x, y) = walker.place(first.part, hit.time);
        let meets = self.meets(walker, first, place);
        let (gap, room) = self.under(hit, place, meets.1);
        let struck = Struck {
            time: hit.time,
            part: first.part,
            x,
            y: walker.side() * y,
            meets: Some(meets),
            gap,
            room,
            command: reports
                .first(hit.time)
                .map(|said| said + self.control.reaction),
        };
        if speed > 0.0 {
            let body = walker.case.body;
            let feel = self
                .skin
                .feel(body, first.part, hit.along, share, hit.out >= 0.0);
            let motion = Motion {
                profile: &self.profile,
                control: &self.control,
                delay: 0.0,
            };
            let against = Against {
                feel: &feel,
                skin: &self.skin,
                share,
                sinks: self.deepest(hit, place, self.profile.travel),
                speed,
                left: self.profile.travel - place,
            };
            pressed(motion, &self.bounds, &against, struck)
        } else {
            let stretches = course.stretches();
            let rests = stretches[stretches.len() - 1].place;
            let back = RunsBack {
                speed: speed.abs(),
                goes: (place - rests).max(0.0),
                sinks: self.deepest(hit, place, rests),
                share,
            };
            run_back(&self.bounds, &self.skin, &back, struck)
        }
    }

    /// Whether leaf and body go apart at a touch: a body that comes into the thickness of the leaf may do so beside it.
    fn parts(&self, walker: &Walker, hit: &Hit, place: f64, speed: f64) -> bool {
        let Shape::Turning { swung, along, .. } = &self.shape else {
            return false;
        };
        let (sin, cos) = (swung.start + place * swung.turn).sin_cos();
        let walks = along * walker.speed_at(hit.time) * (hit.ahead * cos - hit.out * sin);
        walks - hit.lever * speed * swung.turn > PARTS
    }

    /// Whether a part of the body is where the housing of the drive is.
    fn is_in_housing(&self, walker: &Walker, time: f64) -> bool {
        let Some((from, to)) = self.housing else {
            return false;
        };
        (0..walker.person.parts.len()).any(|at| {
            let radius = walker.person.parts[at].radius;
            let (x, y) = walker.place(at, time);
            y.abs() < radius + self.half + HOUSED
                && x + radius > from + IN_POST
                && x - radius < to - IN_POST
        })
    }

    fn deepest(&self, hit: &Hit, place: f64, goes_to: f64) -> f64 {
        match &self.shape {
            Shape::Turning { swung, .. } => swung.deepest(hit, place, goes_to),
            Shape::Lifting(_) => f64::INFINITY,
        }
    }

    /// Where leaf and body meet, seen from the road: x and height.
    fn meets(&self, walker: &Walker, first: &First, place: f64) -> (f64, f64) {
        let hit = &first.hit;
        match &self.shape {
            Shape::Turning {
                swung,
                pivot,
                height,
                along,
                upward,
            } => {
                let (sin, cos) = (swung.start + place * swung.turn).sin_cos();
                let x = hit.along * cos - hit.across * sin;
                let z = hit.along * sin + hit.across * cos;
                (pivot + along * x, height + upward * z)
            }
            Shape::Lifting(lifted) => (
                (lifted.from + hit.along).clamp(lifted.from, lifted.to),
                self.heights[walker.case.body][first.part].1,
            ),
        }
    }

    /// Height of the touched place above the ground, and room below the body: it gives way down to the gap up to which
    /// a body counts as crushed. Where the leaf goes up against the body there is nothing beyond.
    fn under(&self, hit: &Hit, place: f64, height: f64) -> (f64, f64) {
        if let Shape::Turning { swung, upward, .. } = &self.shape {
            let (sin, cos) = (swung.start + place * swung.turn).sin_cos();
            if upward * (hit.ahead * sin + hit.out * cos) > 1e-9 {
                return (f64::INFINITY, f64::INFINITY);
            }
        }
        let height = height.max(0.0);
        (height, (height - self.bounds.gap).max(0.0))
    }
}

impl Passing {
    /// The part of its time in which it is between two places.
    fn between(&self, low: f64, high: f64) -> Option<(f64, f64)> {
        if self.speed.abs() < 1e-12 {
            let within = self.x > low && self.x < high;
            return within.then_some((self.from, self.until));
        }
        let at = |x: f64| self.when + (x - self.x) / self.speed;
        let (one, other) = (at(low), at(high));
        let from = self.from.max(one.min(other));
        let until = self.until.min(one.max(other));
        (from < until).then_some((from, until))
    }
}
