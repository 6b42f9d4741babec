//! One scenario, exactly: what sees the body, when the leaf stops, whether and where it touches first.

use super::at_once::Slanted;
use super::body::MOST_PARTS;
use super::contact::{self, End, Piece};
use super::course::Course;
use super::harm::{Harm, Struck, harm};
use super::lane::Lane;
use super::path::{Case, Going, Line, going, line};
use super::person::{Part, Person};
use super::profile::{EVER, Stretch};
use super::report::{MOST_REPORTS, Report, Reports, report};
use super::scenario::Class;

/// A device that is farther ahead than this is not entered, in meters: far more than rounding does.
const ENTERED: f64 = 1e-6;

/// So far a path may run into what stands opposite, in meters: what rounding does.
pub(super) const IN_POST: f64 = 1e-9;

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

/// A case with what follows from it at once.
pub(super) struct Scene<'a> {
    case: &'a Case,
    person: &'a Person,
    pub(super) going: Going,
    lines: [Line; MOST_PARTS],
}

/// The first touch of a course.
#[derive(Clone, Copy)]
struct First {
    hit: contact::Hit,
    part: usize,
    x: f64,
    y: f64,
}

impl Lane {
    /// What comes of a case.
    pub(super) fn run(&self, case: &Case) -> Found {
        let person = &self.people[case.body];
        let stretch = (1.0 + case.slant * case.slant).sqrt();
        let going = going(case, stretch);
        let half = person.reach + self.half;
        let until = going.leaves(half);
        let at_last = self.profile.travel - self.profile.place_at(until);
        let reach = case.x0 + case.slant.abs() * half + person.reach;
        // Nobody can be touched whom the leaf, if nothing stopped it, would not get to before they are gone.
        if at_last > reach {
            return Found::harmless(Class::Untouched);
        }
        let slanted = Slanted {
            case,
            person,
            going,
            stretch,
        };
        self.at_once(&slanted)
            .unwrap_or_else(|| self.searched(case, at_last))
    }

    /// What comes of a case, searched for its first touch; with where the edge is at last if nothing stops the leaf.
    pub(super) fn searched(&self, case: &Case, at_last: f64) -> Found {
        let scene = self.scene(case);
        let (person, going) = (scene.person, scene.going);
        let mut near = 0_u32;
        for &at in &person.touchable {
            let (part, line) = (&person.parts[at], scene.lines[at]);
            let half = part.radius + self.half;
            let reach = line.x0 + case.slant.abs() * half + part.radius;
            if at_last > reach {
                continue;
            }
            let until = going.leaves(half - line.lead);
            if self.profile.travel - self.profile.place_at(until) <= reach {
                near |= 1 << at;
            }
        }
        if near == 0 {
            return Found::harmless(Class::Untouched);
        }
        // A leaf that is told to stop is never ahead of one that is not: who is not touched by that is not touched.
        let unhindered = self.unhindered.stretches();
        let Some(first) = self.first_touch(&scene, near, unhindered, -EVER) else {
            return Found::harmless(Class::Untouched);
        };
        let Some(reports) = self.reports(&scene, first.hit.time) else {
            return Found::harmless(Class::Untouched);
        };
        match reports.first(EVER).map(|said| said + self.control.reaction) {
            Some(command) if command < first.hit.time => {
                let course = Course::commanded(&self.profile, &self.control, command);
                match self.first_touch(&scene, near, course.stretches(), command) {
                    None => Found::harmless(Class::Untouched),
                    Some(first) => self.judged(&scene, &first, &course, &reports),
                }
            }
            _ => self.judged(&scene, &first, &self.unhindered, &reports),
        }
    }

    /// Place of the leaf at a time of a case that nothing touches before.
    pub(super) fn place_in(&self, case: &Case, time: f64) -> f64 {
        let scene = self.scene(case);
        let Some(reports) = self.reports(&scene, EVER) else {
            return 0.0;
        };
        match reports.first(EVER).map(|said| said + self.control.reaction) {
            Some(command) if command < time => {
                Course::commanded(&self.profile, &self.control, command)
                    .at(time)
                    .0
            }
            _ => self.profile.place_at(time),
        }
    }

    pub(super) fn scene<'a>(&'a self, case: &'a Case) -> Scene<'a> {
        let person = &self.people[case.body];
        let stretch = (1.0 + case.slant * case.slant).sqrt();
        let (right, shrink) = (self.right(case.way), 1.0 / stretch);
        let mut lines = [Line { x0: 0.0, lead: 0.0 }; MOST_PARTS];
        for (at, part) in lines.iter_mut().zip(&person.parts) {
            *at = line(part, right, case.x0, case.slant, stretch, shrink);
        }
        Scene {
            case,
            person,
            going: going(case, stretch),
            lines,
        }
    }

    /// What the devices report that the body has entered by a time; nothing where one of them keeps the leaf from starting.
    fn reports(&self, scene: &Scene, by: f64) -> Option<Reports> {
        let deepest = scene.going.depth_at(by) + ENTERED;
        let mut reports = Reports {
            entered: [0.0; MOST_REPORTS],
            said: [0.0; MOST_REPORTS],
            count: 0,
        };
        for device in 0..self.fields.len() {
            match self.report_of(scene, device, deepest) {
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

    /// What one device reports of a body that gets so deep.
    pub(super) fn report_of(&self, scene: &Scene, device: usize, deepest: f64) -> Report {
        let (case, going) = (scene.case, &scene.going);
        let field = &self.fields[device];
        let mut runs = [(0.0, 0.0); MOST_PARTS];
        let mut count = 0;
        for &(at, radius) in &scene.person.seen[device] {
            let line = scene.lines[at];
            if deepest + line.lead < field.begins[case.way] - radius {
                continue;
            }
            if let Some((first, last)) = field.passed(case.way, line.x0, case.slant, radius) {
                let from = going.comes_to(first - line.lead);
                let until = going.leaves(last - line.lead);
                if from < EVER && from <= until {
                    runs[count] = (from, until);
                    count += 1;
                }
            }
        }
        report(&mut runs[..count], field.response)
    }

    /// First touch in a course, from a time on.
    fn first_touch(
        &self,
        scene: &Scene,
        near: u32,
        course: &[Stretch],
        after: f64,
    ) -> Option<First> {
        let end = End {
            half: self.half,
            start: self.profile.travel,
        };
        let mut first: Option<First> = None;
        for &at in scene
            .person
            .touchable
            .iter()
            .filter(|&&at| near & (1 << at) != 0)
        {
            let (part, line) = (&scene.person.parts[at], scene.lines[at]);
            for mut piece in self
                .pieces(scene.case, &scene.going, part, line)
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
    fn judged(&self, scene: &Scene, first: &First, course: &Course, reports: &Reports) -> Found {
        let hit = first.hit;
        let (place, speed) = course.at(hit.time);
        if hit.side || hit.time <= 0.0 || speed <= 0.0 {
            return Found::harmless(Class::MetTheSide);
        }
        let part = &scene.person.parts[first.part];
        let struck = Struck {
            time: hit.time,
            part: first.part,
            x: first.x,
            y: first.y,
            gap: self.profile.travel - place + self.room,
            room: first.x - part.radius + self.room,
            command: reports
                .first(hit.time)
                .map(|said| said + self.control.reaction),
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
