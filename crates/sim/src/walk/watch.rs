//! What devices that stay where they are report of a body on its path.

use super::body::{Body, Cylinder, MOST_PARTS};
use super::device::{Beam, Direction, Scanner};
use super::field::Field;
use super::harm::{Feel, Spring};
use super::path::{Case, Going, Line, line};
use super::person::{Part, Person, cut, found};
use super::profile::EVER;
use super::report::{MOST_REPORTS, Report, Reports, report};
use super::world::Pass;
use crate::Plan;
use quantity::Quantity as _;

/// A device that is farther ahead than this is not entered, in meters: far more than rounding does.
const ENTERED: f64 = 1e-6;

/// A body on its path through the gate line at y = 0, seen along x.
pub(super) struct Walker<'a> {
    pub case: &'a Case,
    pub person: &'a Person,
    pub going: Going,
    pub lines: [Line; MOST_PARTS],
}

impl<'a> Walker<'a> {
    pub(super) fn new(case: &'a Case, person: &'a Person) -> Self {
        let stretch = (1.0 + case.slant * case.slant).sqrt();
        let (right, shrink) = (if case.way == 0 { 1.0 } else { -1.0 }, 1.0 / stretch);
        let mut lines = [Line { x0: 0.0, lead: 0.0 }; MOST_PARTS];
        for (at, part) in lines.iter_mut().zip(&person.parts) {
            *at = line(part, right, case.x0, case.slant, stretch, shrink);
        }
        Self {
            case,
            person,
            going: super::path::going(case, stretch),
            lines,
        }
    }

    /// What the devices report that the body has entered by a time; nothing where one of them keeps the leaf from starting.
    pub(super) fn reports(&self, fields: &[Field], by: f64) -> Option<Reports> {
        let (case, going) = (self.case, &self.going);
        let deepest = going.depth_at(by) + ENTERED;
        let mut reports = Reports {
            entered: [0.0; MOST_REPORTS],
            said: [0.0; MOST_REPORTS],
            count: 0,
        };
        for (field, seen) in fields.iter().zip(&self.person.seen) {
            let mut runs = [(0.0, 0.0); MOST_PARTS];
            let mut count = 0;
            for &(at, radius) in seen {
                let line = self.lines[at];
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
}

impl Walker<'_> {
    /// Where a cylinder is in the plan at a time.
    pub(super) fn place(&self, part: usize, time: f64) -> (f64, f64) {
        let line = self.lines[part];
        let depth = self.going.depth_at(time) + line.lead;
        (line.x0 + depth * self.case.slant, self.side() * depth)
    }

    /// Sign of the depth along y.
    pub(super) fn side(&self) -> f64 {
        if self.case.way == 0 { 1.0 } else { -1.0 }
    }
}

/// A body as the devices that act in a direction see it.
pub(super) fn person(
    body: &Body,
    beams: &[Beam],
    scanners: &[Scanner],
    direction: Direction,
) -> Person {
    let parts: Vec<Part> = body.parts.iter().map(part).collect();
    let beams = beams.iter().filter(|beam| beam.guards.contains(&direction));
    let scanners = scanners
        .iter()
        .filter(|field| field.guards.contains(&direction));
    let reach = parts
        .iter()
        .map(|part| part.ahead.hypot(part.aside) + part.radius);
    Person {
        touchable: Vec::new(),
        seen: beams
            .map(|beam| cut(body, beam))
            .chain(scanners.map(|field| found(body, field)))
            .collect(),
        // Nothing is said of where it is unseen.
        seen_from: [f64::NEG_INFINITY; 2],
        reach: reach.fold(0.0, f64::max),
        speeds: body
            .speeds
            .map(|speeds| (speeds.from.base(), speeds.to.base())),
        parts,
    }
}

fn part(of: &Cylinder) -> Part {
    let spring = Spring {
        soft: 0.0,
        way: 0.0,
        hard: 0.0,
    };
    Part {
        ahead: of.ahead.base(),
        aside: of.aside.base(),
        radius: of.radius.base(),
        feel: Feel {
            spring,
            after: Vec::new(),
        },
    }
}

/// The fields of the devices that act in a direction.
pub(super) fn fields(
    plan: &Plan,
    beams: &[Beam],
    scanners: &[Scanner],
    direction: Direction,
) -> Vec<Field> {
    // A way that ends at x = 0 sees the plan as it is.
    let plain = Pass {
        direction: Direction::Closing,
        plan: *plan,
        edge: plan.travel,
        opposing: None,
    };
    let beams = beams.iter().filter(|beam| beam.guards.contains(&direction));
    let scanners = scanners
        .iter()
        .filter(|field| field.guards.contains(&direction));
    beams
        .map(|beam| Field::new(&plain, &[beam.from, beam.to], beam.response.base()))
        .chain(scanners.map(|field| Field::new(&plain, &field.corners, field.response.base())))
        .collect()
}
