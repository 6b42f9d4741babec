//! One scenario, exactly: what sees the body, when the leaf stops, whether and where it touches first.

use super::contact::{self, End, Piece};
use super::course::Course;
use super::harm::{Harm, Struck, harm};
use super::lane::Lane;
use super::path::{Case, Going, Line};
use super::person::Part;
use super::profile::{EVER, Stretch};
use super::scenario::Class;
use super::watch::{Said, Walker};

/// What is nearer than this is left to the search, in meters and seconds: far more than rounding does.
pub(super) const CLEAR: f64 = 1e-9;

/// So far a path may run into what stands opposite, in meters: what rounding does.
pub(super) const IN_POST: f64 = 1e-9;

/// Leaf and body that go apart faster than this do not come to touch, in meters a second: far more than rounding does, and
/// than the steps do that end where hardly anything is between the two.
pub(super) const PARTS: f64 = 1e-4;

/// What comes of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Found {
    pub class: Class,
    pub touch: Option<(Struck, Harm)>,
}

impl Found {
    pub(super) fn harmless(class: Class) -> Self {
        Self { class, touch: None }
    }
}

/// The first touch of a course.
#[derive(Clone, Copy)]
pub(super) struct First {
    pub hit: contact::Hit,
    pub part: usize,
    pub x: f64,
    pub y: f64,
}

/// What the leaf may get to.
struct Near {
    /// A bit for each cylinder.
    parts: u32,
    /// How far from the end of the way of the leaf one of them may be touched.
    reach: f64,
    /// When the last of them is gone.
    last: f64,
}

impl Lane {
    /// What comes of a case.
    pub(super) fn run(&self, case: &Case) -> Found {
        let person = &self.people[case.body];
        let walker = self.walker(case);
        let half = person.reach + self.half;
        let until = walker.going.leaves(half);
        // Nobody can be touched whom the leaf, if nothing stopped it, would not get to before they are gone.
        if self.left_at(until) > case.x0 + case.slant.abs() * half + person.reach {
            return Found::harmless(Class::Untouched);
        }
        self.at_once(&walker)
            .unwrap_or_else(|| self.searched(&walker, &[]))
    }

    pub(super) fn walker<'a>(&'a self, case: &'a Case) -> Walker<'a> {
        Walker::new(case, &self.people[case.body], self.right(0))
    }

    /// What comes of one who goes, searched for the first touch; it may be given before when the first few devices surely
    /// do not report.
    pub(super) fn searched(&self, walker: &Walker, early: &[f64]) -> Found {
        let Some(near) = self.near(walker) else {
            return Found::harmless(Class::Untouched);
        };
        if let Some(first) = self.met_at_rest(walker, &near) {
            let shut = walker.reports(&self.fields, first.hit.time).shut;
            let class = if shut {
                Class::Untouched
            } else {
                Class::MetTheSide
            };
            return Found::harmless(class);
        }
        match walker.first_report(&self.fields, near.last, early) {
            Said::KeepsShut => Found::harmless(Class::Untouched),
            Said::At(said) if said + self.control.reaction < near.last => {
                self.told(walker, &near, said + self.control.reaction)
            }
            _ if self.is_beside(walker, EVER) => Found::harmless(Class::MetTheSide),
            _ => match self.first_touch(walker, near.parts, self.unhindered.stretches(), -EVER) {
                Some(first) => self.unseen(walker, &first),
                None => Found::harmless(Class::Untouched),
            },
        }
    }

    /// What comes of one who meets a leaf that is told to stop at a time.
    fn told(&self, walker: &Walker, near: &Near, command: f64) -> Found {
        let stands = self.profile.stands_at(command, self.control.stopping);
        if command < self.profile.end && self.profile.travel - stands > near.reach + CLEAR {
            return Found::harmless(Class::Untouched);
        }
        if self.is_beside(walker, command) {
            return Found::harmless(Class::MetTheSide);
        }
        let course = Course::commanded(&self.profile, &self.control, command);
        match self.first_touch(walker, near.parts, course.stretches(), -EVER) {
            None => Found::harmless(Class::Untouched),
            Some(first) if first.hit.time < command => self.unseen(walker, &first),
            Some(first) => self.judged(walker, &first, &course, Some(command)),
        }
    }

    /// A touch before anything stops the leaf; what the body had come to by then may still stop it.
    fn unseen(&self, walker: &Walker, first: &First) -> Found {
        let reports = walker.reports(&self.fields, first.hit.time);
        if reports.shut {
            return Found::harmless(Class::Untouched);
        }
        let said = reports.first(first.hit.time);
        let command = said.map(|said| said + self.control.reaction);
        self.judged(walker, first, &self.unhindered, command)
    }

    /// The cylinders that the leaf gets to before they are gone, if nothing stops it.
    fn near(&self, walker: &Walker) -> Option<Near> {
        let mut near = Near {
            parts: 0,
            reach: -EVER,
            last: -EVER,
        };
        let half = walker.person.reach + self.half;
        let at_last = self.left_at(walker.going.leaves(half));
        for &at in &walker.person.touchable {
            let (part, line) = (&walker.person.parts[at], walker.lines[at]);
            let half = part.radius + self.half;
            let reach = line.x0 + walker.case.slant.abs() * half + part.radius;
            if at_last > reach {
                continue;
            }
            let until = walker.going.leaves(half - line.lead);
            if self.left_at(until) <= reach {
                near.parts |= 1 << at;
                near.reach = near.reach.max(reach);
                near.last = near.last.max(until);
            }
        }
        (near.parts != 0).then_some(near)
    }

    /// How far it is from the edge of the leaf to its end, at a time, if nothing stops it.
    fn left_at(&self, time: f64) -> f64 {
        self.profile.travel - self.profile.place_at(time)
    }

    /// Where one touches the leaf before it starts.
    fn met_at_rest(&self, walker: &Walker, near: &Near) -> Option<First> {
        if near.reach < self.profile.travel - CLEAR {
            return None;
        }
        let rest = &self.unhindered.stretches()[..1];
        self.first_touch(walker, near.parts, rest, -EVER)
    }

    /// Place of the leaf at a time of a case that nothing touches before.
    pub(super) fn place_in(&self, case: &Case, time: f64) -> f64 {
        let command = match self.walker(case).first_report(&self.fields, EVER, &[]) {
            Said::KeepsShut => return 0.0,
            Said::Never => EVER,
            Said::At(said) => said + self.control.reaction,
        };
        if command < time {
            Course::commanded(&self.profile, &self.control, command)
                .at(time)
                .0
        } else {
            self.profile.place_at(time)
        }
    }

    /// First touch in a course, from a time on.
    pub(super) fn first_touch(
        &self,
        walker: &Walker,
        near: u32,
        course: &[Stretch],
        after: f64,
    ) -> Option<First> {
        let end = End {
            half: self.half,
            start: self.profile.travel,
        };
        let mut first: Option<First> = None;
        for &at in walker
            .person
            .touchable
            .iter()
            .filter(|&&at| near & (1 << at) != 0)
        {
            let (part, line) = (&walker.person.parts[at], walker.lines[at]);
            for mut piece in self
                .pieces(walker.case, &walker.going, part, line)
                .into_iter()
                .flatten()
            {
                piece.until = piece.until.min(first.map_or(EVER, |known| known.hit.time));
                if piece.from.max(after) >= piece.until {
                    continue;
                }
                if let Some(hit) = contact::first(course, end, &piece, after) {
                    let gone = hit.time - piece.from;
                    first = Some(First {
                        hit,
                        part: at,
                        x: piece.x + piece.vx * gone,
                        y: piece.y + piece.vy * gone,
                    });
                    break;
                }
            }
        }
        first
    }

    /// What a touch does, or whether it is one of the leaf's at all.
    pub(super) fn judged(
        &self,
        walker: &Walker,
        first: &First,
        course: &Course,
        command: Option<f64>,
    ) -> Found {
        let hit = first.hit;
        let (place, speed) = course.at(hit.time);
        if hit.side || hit.time <= 0.0 || speed <= 0.0 {
            return Found::harmless(Class::MetTheSide);
        }
        let part = &walker.person.parts[first.part];
        let struck = Struck {
            time: hit.time,
            part: first.part,
            x: first.x,
            y: first.y,
            meets: None,
            gap: self.profile.travel - place + self.room,
            room: first.x - part.radius + self.room,
            command,
        };
        // Nobody can be in the post: a path that runs through it is none.
        if struck.room < -IN_POST {
            return Found::harmless(Class::Untouched);
        }
        let harm = harm(
            &self.profile,
            &self.control,
            &self.bounds,
            &part.feel,
            &struck,
        );
        Found {
            class: harm.class,
            touch: Some((struck, harm)),
        }
    }

    /// The pieces of a cylinder's path beside or before the leaf: moving, standing.
    fn pieces(&self, case: &Case, going: &Going, part: &Part, line: Line) -> [Option<Piece>; 2] {
        let half = part.radius + self.half;
        let piece = |from: f64, until: f64, y: f64, pace: f64| Piece {
            from,
            until,
            x: line.x0 + y * case.slant,
            y,
            vx: pace * case.slant,
            vy: pace,
            radius: part.radius,
        };
        let stays = going.stays + line.lead;
        let moving = (!going.stands && stays > -half).then(|| {
            let from = going.arrives + (-half - line.lead) * going.per_depth;
            let last = half.min(stays);
            let until = going.arrives + (last - line.lead) * going.per_depth;
            piece(from, until, -half, going.pace)
        });
        let standing = (stays.abs() < half).then(|| {
            let from = if going.stands {
                -1.0
            } else {
                going.arrives + going.stays * going.per_depth
            };
            piece(from, EVER, stays, 0.0)
        });
        [moving, standing]
    }
}
