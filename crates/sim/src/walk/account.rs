//! The course of one scenario for whoever wants to see it: which device saw the body when, and where all are at a time.

use super::course::Course;
use super::device::Spot;
use super::lane::{Lane, Walk};
use super::path::Case;
use super::profile::EVER;
use super::report::Report;
use super::scenario::{Outcome, Scenario, Touch};
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Time};

/// What one device does in a scenario.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Sight {
    /// It does not see the body, or not long enough, or only when the leaf has not started.
    Nothing,
    /// It sees the body when the leaf would start, and keeps it from starting.
    KeepsShut,
    /// It sees the body.
    Reports {
        /// When the body comes into its field or beam.
        entered: Time,
        /// When its output changes.
        said: Time,
    },
}

/// The course of one scenario.
#[derive(Debug, Clone)]
pub struct Account {
    /// What comes of it.
    pub outcome: Outcome,
    /// What each beam, and after them each field, that acts in this pass does.
    pub sights: Vec<Sight>,
    /// When braking begins; never where nothing sees or feels the body.
    pub command: Option<Time>,
    /// Where the edge of the leaf and the middle of the body are, at equal steps of time.
    pub frames: Vec<Frame>,
}

/// Where all are at one time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// Time since the leaf started.
    pub time: Time,
    /// Where the leaf's edge that goes ahead is.
    pub edge: Length,
    /// Where the middle of the body is.
    pub body: Spot,
}

impl Walk {
    /// The course of a scenario, with frames at such a step from just before the body can be touched to a while after.
    pub fn account(&self, scenario: &Scenario, step: Time) -> Result<Account, OutOfReach> {
        let outcome = self.evaluate(scenario)?;
        if step.base().is_nan() || step.base() < 1e-3 {
            return Err(OutOfReach::new("step", "frames are 1 ms apart or more"));
        }
        let lane = &self.lanes[scenario.pass];
        let case = lane.case(scenario);
        let scene = lane.scene(&case);
        let sights: Vec<Sight> = (0..lane.fields.len())
            .map(|device| sight(&lane.report_of(&scene, device, EVER)))
            .collect();
        let starts = !sights.contains(&Sight::KeepsShut);
        let command = starts.then(|| lane.command(&case, &sights)).flatten();
        let course = match command {
            _ if !starts => None,
            Some(command) => Some(Course::commanded(&lane.profile, &lane.control, command)),
            None => Some(lane.unhindered),
        };
        let frames = lane.frames(&case, course.as_ref(), outcome.touch, step.base());
        Ok(Account {
            outcome,
            sights,
            command: command.map(Time::from_base),
            frames,
        })
    }
}

fn sight(report: &Report) -> Sight {
    match report {
        Report::Nothing => Sight::Nothing,
        Report::KeepsShut => Sight::KeepsShut,
        Report::At { entered, said } => Sight::Reports {
            entered: Time::from_base(*entered),
            said: Time::from_base(*said),
        },
    }
}

impl Lane {
    /// When braking begins: by the touch where there is one, else by the first report.
    fn command(&self, case: &Case, sights: &[Sight]) -> Option<f64> {
        if let Some((_, harm)) = self.run(case).touch {
            return harm.command;
        }
        let said = |sight: &Sight| match sight {
            Sight::Reports { said, .. } => Some(said.base() + self.control.reaction),
            _ => None,
        };
        sights.iter().filter_map(said).reduce(f64::min)
    }

    fn frames(
        &self,
        case: &Case,
        course: Option<&Course>,
        touch: Option<Touch>,
        step: f64,
    ) -> Vec<Frame> {
        let scene = self.scene(case);
        let half = self.half + self.people[case.body].reach;
        let from = if scene.going.stands {
            0.0
        } else {
            (scene.going.comes_to(-half) - 1.0).min(0.0)
        };
        let last = touch.map_or_else(|| scene.going.leaves(half), |touch| touch.time.base() + 3.0);
        let until = last.clamp(from + step, self.profile.end + 3.0);
        let mut frames = Vec::new();
        let mut time = from;
        while time <= until && frames.len() < MOST_FRAMES {
            let place = course.map_or(0.0, |course| course.at(time).0);
            let depth = scene.going.depth_at(time);
            let x = case.x0 + depth * case.slant;
            frames.push(Frame {
                time: Time::from_base(time),
                edge: self.spot(0, self.profile.travel - place, 0.0).x,
                body: self.spot(case.way, x, depth),
            });
            time += step;
        }
        frames
    }
}

/// The most frames of one account.
const MOST_FRAMES: usize = 20_000;
