//! What devices that stay where they are report of a body on its path.

use super::body::{Body, Cylinder, MOST_PARTS};
use super::device::{Beam, Direction, Scanner};
use super::field::Field;
use super::harm::{Feel, Spring};
use super::path::{Case, Going, Line, going, line};
use super::person::Person;
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

/// When the devices have the leaf told to stop.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Said {
    Never,
    KeepsShut,
    At(f64),
}

impl<'a> Walker<'a> {
    /// With the sign of the right-hand side of one who goes in, along x.
    pub(super) fn new(case: &'a Case, person: &'a Person, right: f64) -> Self {
        let stretch = (1.0 + case.slant * case.slant).sqrt();
        let right = if case.way == 0 { right } else { -right };
        let shrink = 1.0 / stretch;
        let mut walker = Self {
            case,
            person,
            going: going(case, stretch),
            lines: [Line { x0: 0.0, lead: 0.0 }; MOST_PARTS],
        };
        for (at, part) in walker.lines.iter_mut().zip(&person.parts) {
            *at = line(part, right, case.x0, case.slant, stretch, shrink);
        }
        walker
    }

    /// What the devices report that the body has entered by a time, up to one that keeps the leaf from starting.
    pub(super) fn reports(&self, fields: &[Field], by: f64) -> Reports {
        let deepest = self.going.depth_at(by) + ENTERED;
        let mut reports = Reports {
            entered: [0.0; MOST_REPORTS],
            said: [0.0; MOST_REPORTS],
            count: 0,
            shut: false,
        };
        for look in &self.person.looks[self.case.way] {
            if look.from > deepest {
                break;
            }
            match self.report_of(fields, look.device, deepest) {
                Report::KeepsShut => {
                    reports.shut = true;
                    break;
                }
                Report::Nothing => {}
                Report::At { entered, said } => {
                    reports.entered[reports.count] = entered;
                    reports.said[reports.count] = said;
                    reports.count += 1;
                }
            }
        }
        reports
    }

    /// The earliest report of the devices that the body has entered by a time. A device is asked only where it may be the
    /// first to report, or keep the leaf from starting: of the first few devices it is given before when they surely do
    /// neither, and the one of them with the least of these times is asked first, so that others need not be.
    pub(super) fn first_report(&self, fields: &[Field], by: f64, early: &[f64]) -> Said {
        let deepest = self.going.depth_at(by) + ENTERED;
        let looks = &self.person.looks[self.case.way];
        let known = early.iter().enumerate();
        let least = known.min_by(|(_, one), (_, other)| one.total_cmp(other));
        let likely = least.map_or(0, |(at, _)| at);
        let others = (0..looks.len()).filter(|at| *at != likely);
        let mut first = EVER;
        for at in std::iter::once(likely).chain(others) {
            let Some(look) = looks.get(at) else { break };
            if look.from > deepest {
                continue;
            }
            let from = self.going.comes_to(look.from) + look.response;
            if from.max(early.get(at).copied().unwrap_or(-EVER)) >= first {
                continue;
            }
            match self.report_of(fields, look.device, deepest) {
                Report::KeepsShut => return Said::KeepsShut,
                Report::Nothing => {}
                Report::At { said, .. } => first = first.min(said),
            }
        }
        if first < EVER {
            Said::At(first)
        } else {
            Said::Never
        }
    }

    /// What one device reports of a body that gets so deep.
    pub(super) fn report_of(&self, fields: &[Field], device: usize, deepest: f64) -> Report {
        let (case, going, field) = (self.case, &self.going, &fields[device]);
        let mut runs = [(0.0, 0.0); MOST_PARTS];
        let mut count = 0;
        for &(at, radius) in &self.person.seen[device] {
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
        report(&mut runs[..count], field.response)
    }

    /// Whether a device sees the body where it stands.
    pub(super) fn is_seen_standing(&self, fields: &[Field]) -> bool {
        let (case, stays) = (self.case, self.going.stays);
        self.person.looks[case.way].iter().any(|look| {
            let field = &fields[look.device];
            let mut seen = self.person.seen[look.device].iter();
            seen.any(|&(at, radius)| {
                let line = self.lines[at];
                field.holds(case.way, line.x0, case.slant, radius, stays + line.lead)
            })
        })
    }
}

impl Walker<'_> {
    /// Where a cylinder is in the plan at a time.
    pub(super) fn place(&self, part: usize, time: f64) -> (f64, f64) {
        let line = self.lines[part];
        let depth = self.going.depth_at(time) + line.lead;
        (line.x0 + depth * self.case.slant, self.side() * depth)
    }

    /// How fast it goes along x at a time.
    pub(super) fn speed_at(&self, time: f64) -> f64 {
        let going = &self.going;
        let halts = going.arrives + going.stays * going.per_depth;
        if going.stands || time > halts {
            return 0.0;
        }
        going.pace * self.case.slant
    }

    /// Sign of the depth along y.
    pub(super) fn side(&self) -> f64 {
        if self.case.way == 0 { 1.0 } else { -1.0 }
    }
}

/// A body as the devices that act in a direction see it; what feels it is left open.
pub(super) fn person(
    body: &Body,
    seeing: (&[Beam], &[Scanner]),
    direction: Direction,
    fields: &[Field],
) -> Person {
    let spring = Spring {
        soft: 0.0,
        way: 0.0,
        hard: 0.0,
    };
    let feel = |_: &Cylinder| Feel {
        spring,
        after: Vec::new(),
    };
    Person::seen(body, seeing, direction, fields, &feel)
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
