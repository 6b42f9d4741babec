//! One scenario, exactly: what sees the body, when the leaf stops, whether and where it touches first.

use super::body::MOST_PARTS;
use super::contact::{self, End, Piece};
use super::course::Course;
use super::harm::{Harm, Struck, harm};
use super::lane::Lane;
use super::person::{Part, Person};
use super::profile::EVER;
use super::scenario::Class;

/// The most devices of one pass that see something.
const MOST_REPORTS: usize = 16;

/// What a body does, with depths in its own direction.
#[derive(Debug, Clone, Copy)]
pub(super) enum Path {
    Cross,
    Stop(f64),
    Stand(f64),
}

/// A scenario in the plain numbers of its pass.
#[derive(Debug, Clone, Copy)]
pub(super) struct Case {
    pub body: usize,
    pub way: usize,
    pub path: Path,
    pub x0: f64,
    pub slant: f64,
    pub speed: f64,
    pub arrives: f64,
}

impl Case {
    pub(super) fn is_finite(&self) -> bool {
        let depth = match self.path {
            Path::Cross => 0.0,
            Path::Stop(depth) | Path::Stand(depth) => depth,
        };
        [self.x0, self.slant, self.speed, self.arrives, depth]
            .iter()
            .all(|value| value.is_finite() && value.abs() < 1e6)
    }
}

/// What comes of it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Found {
    pub class: Class,
    pub touch: Option<(Struck, Harm)>,
}

impl Found {
    fn harmless(class: Class) -> Self {
        Self { class, touch: None }
    }
}

/// How the depth of a body's middle goes with time.
#[derive(Debug, Clone, Copy)]
struct Going {
    arrives: f64,
    /// Speed through the gate, and one over it.
    pace: f64,
    /// Depth at which it stays.
    stays: f64,
    stands: bool,
}

impl Going {
    /// When it first comes to a depth.
    fn comes_to(&self, depth: f64) -> f64 {
        if self.stands {
            if depth <= self.stays { -EVER } else { EVER }
        } else if depth <= self.stays {
            self.arrives + depth / self.pace
        } else {
            EVER
        }
    }

    /// When it is last at a depth or before it.
    fn leaves(&self, depth: f64) -> f64 {
        if self.stands {
            if depth < self.stays { -EVER } else { EVER }
        } else if depth < self.stays {
            self.arrives + depth / self.pace
        } else {
            EVER
        }
    }
}

/// The line of one cylinder: where it crosses the gate line, and how far its depth is ahead of the body's.
#[derive(Debug, Clone, Copy)]
struct Line {
    x0: f64,
    lead: f64,
}

/// Line of a cylinder on a path with a slant; `stretch` is √(1 + slant²).
fn line(part: &Part, right: f64, x0: f64, slant: f64, stretch: f64) -> Line {
    let aside = right * part.aside;
    Line {
        x0: x0 + aside * stretch,
        lead: (part.ahead - aside * slant) / stretch,
    }
}

/// What the devices report: when each saw the body first, and when it said so.
struct Reports {
    entered: [f64; MOST_REPORTS],
    said: [f64; MOST_REPORTS],
    count: usize,
}

impl Reports {
    /// Earliest report of a device that the body had entered by a time.
    fn first(&self, by: f64) -> Option<f64> {
        let mut first: Option<f64> = None;
        for at in 0..self.count {
            if self.entered[at] <= by {
                first = Some(first.map_or(self.said[at], |known| known.min(self.said[at])));
            }
        }
        first
    }
}

impl Lane {
    /// What comes of a case.
    pub(super) fn run(&self, case: &Case) -> Found {
        let person = &self.people[case.body];
        let stretch = (1.0 + case.slant * case.slant).sqrt();
        let going = going(case, stretch);
        if !self.may_touch(case, person, &going) {
            return Found::harmless(Class::Untouched);
        }
        let right = self.right(case.way);
        let mut lines = [Line { x0: 0.0, lead: 0.0 }; MOST_PARTS];
        for (at, part) in lines.iter_mut().zip(&person.parts) {
            *at = line(part, right, case.x0, case.slant, stretch);
        }
        let mut near = 0_u32;
        for &at in &person.touchable {
            let (part, line) = (&person.parts[at], lines[at]);
            let half = part.radius + self.half;
            let until = going.leaves(half - line.lead);
            let reach = line.x0 + case.slant.abs() * half + part.radius;
            if self.profile.travel - self.profile.place_at(until) <= reach {
                near |= 1 << at;
            }
        }
        if near == 0 {
            return Found::harmless(Class::Untouched);
        }
        let Some(reports) = self.reports(case, person, &going, &lines) else {
            return Found::harmless(Class::Untouched);
        };
        self.touch(case, person, &going, &lines, near, &reports)
    }

    /// Whether the leaf, if nothing stopped it, would get as far as the body before the body is gone.
    fn may_touch(&self, case: &Case, person: &Person, going: &Going) -> bool {
        let half = person.reach + self.half;
        let until = going.leaves(half);
        let reach = case.x0 + case.slant.abs() * half + person.reach;
        until > 0.0 && self.profile.travel - self.profile.place_at(until) <= reach
            || until > -EVER && self.profile.travel <= reach
    }

    /// What the devices report; nothing where one of them keeps the leaf from starting.
    fn reports(
        &self,
        case: &Case,
        person: &Person,
        going: &Going,
        lines: &[Line; MOST_PARTS],
    ) -> Option<Reports> {
        let mut reports = Reports {
            entered: [0.0; MOST_REPORTS],
            said: [0.0; MOST_REPORTS],
            count: 0,
        };
        for (field, seen) in self.fields.iter().zip(&person.seen) {
            let mut runs = [(0.0, 0.0); MOST_PARTS];
            let mut count = 0;
            for &(at, radius) in seen {
                let line = lines[at];
                if let Some((first, last)) = field.passed(case.way, line.x0, case.slant, radius) {
                    let from = going.comes_to(first - line.lead);
                    let until = going.leaves(last - line.lead);
                    if from < EVER && from <= until {
                        runs[count] = (from, until);
                        count += 1;
                    }
                }
            }
            match report(&mut runs[..count], field.response) {
                Report::KeepsShut => return None,
                Report::Nothing => {}
                Report::At { entered, said } => {
                    reports.entered[reports.count] = entered;
                    reports.said[reports.count] = said;
                    reports.count += 1;
                }
            }
        }
        Some(reports)
    }

    fn touch(
        &self,
        case: &Case,
        person: &Person,
        going: &Going,
        lines: &[Line; MOST_PARTS],
        near: u32,
        reports: &Reports,
    ) -> Found {
        let command = reports.first(EVER).map(|said| said + self.control.reaction);
        let commanded;
        let course = match command {
            Some(at) if at < self.profile.end => {
                commanded = Course::commanded(&self.profile, &self.control, at);
                &commanded
            }
            _ => &self.unhindered,
        };
        let end = End {
            half: self.half,
            start: self.profile.travel,
        };
        let mut first: Option<(contact::Hit, usize, f64, f64)> = None;
        for &at in person.touchable.iter().filter(|&&at| near & (1 << at) != 0) {
            let (part, line) = (&person.parts[at], lines[at]);
            for mut piece in self.pieces(case, going, part, line).into_iter().flatten() {
                piece.until = piece.until.min(first.map_or(EVER, |(hit, ..)| hit.time));
                if piece.from >= piece.until {
                    continue;
                }
                if let Some(hit) = contact::first(course.stretches(), end, &piece) {
                    let gone = hit.time - piece.from;
                    let (x, y) = (piece.x + piece.vx * gone, piece.y + piece.vy * gone);
                    if first.is_none_or(|(known, ..)| hit.time < known.time) {
                        first = Some((hit, at, x, y));
                    }
                    break;
                }
            }
        }
        let Some((hit, at, x, y)) = first else {
            return Found::harmless(Class::Untouched);
        };
        let (place, speed) = course.at(hit.time);
        if hit.side || hit.time <= 0.0 || speed <= 0.0 {
            return Found::harmless(Class::MetTheSide);
        }
        let seen = reports.first(hit.time);
        let part = &person.parts[at];
        let struck = Struck {
            time: hit.time,
            part: at,
            x,
            y,
            gap: self.profile.travel - place + self.room,
            room: x - part.radius + self.room,
            command: seen.map(|said| said + self.control.reaction),
        };
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
            let from = going.arrives + (-half - line.lead) / going.pace;
            let last = half.min(stays);
            let until = going.arrives + (last - line.lead) / going.pace;
            piece(from, until, -half, going.pace)
        });
        let standing = (stays.abs() < half).then(|| {
            let from = if going.stands {
                -1.0
            } else {
                going.arrives + going.stays / going.pace
            };
            piece(from, EVER, stays, 0.0)
        });
        [moving, standing]
    }
}

fn going(case: &Case, stretch: f64) -> Going {
    let (stays, stands) = match case.path {
        Path::Cross => (EVER, false),
        Path::Stop(depth) => (depth, false),
        Path::Stand(depth) => (depth, true),
    };
    Going {
        arrives: case.arrives,
        pace: case.speed / stretch,
        stays,
        stands,
    }
}

enum Report {
    Nothing,
    KeepsShut,
    At { entered: f64, said: f64 },
}

/// What one device says of the times at which it sees parts of the body: times that touch are one.
fn report(runs: &mut [(f64, f64)], response: f64) -> Report {
    runs.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    let mut at = 0;
    while at < runs.len() {
        let (entered, mut left) = runs[at];
        at += 1;
        while at < runs.len() && runs[at].0 <= left {
            left = left.max(runs[at].1);
            at += 1;
        }
        let said = entered + response;
        if said > left {
            continue;
        }
        if said > 0.0 {
            return Report::At { entered, said };
        }
        if left > 0.0 {
            return Report::KeepsShut;
        }
    }
    Report::Nothing
}
