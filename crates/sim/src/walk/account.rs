//! The course of one scenario for whoever wants to see it: which device saw the body when, and where all are at a time.

use super::course::Course;
use super::device::Spot;
use super::evaluate::Found;
use super::field::Field;
use super::lane::Walk;
use super::profile::EVER;
use super::report::Report;
use super::scenario::{Outcome, Scenario, Touch};
use super::watch::Walker;
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
    /// Where leaf and body meet at the touch, seen from the road: x, and for y the height. Of leaves that rise only.
    pub meets: Option<Spot>,
    /// Where all are at the touch itself.
    pub at_touch: Option<Frame>,
}

/// Where all are at one time.
#[derive(Debug, Clone, PartialEq)]
pub struct Frame {
    /// Time since the leaf started.
    pub time: Time,
    /// Where the leaf is.
    pub leaf: Pose,
    /// Where the middle of the body is.
    pub body: Spot,
}

/// Where a leaf is.
#[derive(Debug, Clone, PartialEq)]
pub enum Pose {
    /// x of the edge of a sliding leaf that goes ahead.
    Edge(Length),
    /// The corners of each leaf that swings, seen from above.
    Above(Vec<[Spot; 4]>),
    /// The corners of a leaf that rises, seen from the road: x, and for y how high they are.
    Front([Spot; 4]),
}

impl Walk {
    /// The course of a scenario, with frames at such a step from just before the body can be touched to a while after.
    pub fn account(&self, scenario: &Scenario, step: Time) -> Result<Account, OutOfReach> {
        let outcome = self.evaluate(scenario)?;
        check_step(step)?;
        let lane = &self.lanes[scenario.pass];
        let case = lane.case(scenario);
        let walker = lane.walker(&case);
        let sights = sights(&walker, &lane.fields);
        let starts = !sights.contains(&Sight::KeepsShut);
        let command = starts
            .then(|| command(&lane.run(&case), &sights, lane.control.reaction))
            .flatten();
        let course = match command {
            _ if !starts => None,
            Some(command) => Some(Course::commanded(&lane.profile, &lane.control, command)),
            None => Some(lane.unhindered),
        };
        let half = lane.half + lane.people[case.body].reach;
        let time = Pictured::of(&walker, half, outcome.touch, lane.profile.end);
        let pictured = |time: f64| {
            let place = course.as_ref().map_or(0.0, |course| course.at(time).0);
            let depth = walker.going.depth_at(time);
            let edge = lane.spot(0, lane.profile.travel - place, 0.0).x;
            (
                Pose::Edge(edge),
                lane.spot(case.way, case.x0 + depth * case.slant, depth),
            )
        };
        Ok(Account {
            outcome,
            sights,
            command: command.map(Time::from_base),
            frames: time.frames(step.base(), pictured),
            meets: None,
            at_touch: at_touch(outcome.touch, pictured),
        })
    }
}

/// What each device does in a scenario.
pub(super) fn sights(walker: &Walker, fields: &[Field]) -> Vec<Sight> {
    (0..fields.len())
        .map(|device| sight(&walker.report_of(fields, device, EVER)))
        .collect()
}

/// When braking begins: as the touch has it where there is one, else by the first report. A leaf that touches on its way
/// back was told before.
pub(super) fn command(found: &Found, sights: &[Sight], reaction: f64) -> Option<f64> {
    let said = |sight: &Sight| match sight {
        Sight::Reports { said, .. } => Some(said.base() + reaction),
        _ => None,
    };
    let told = sights.iter().filter_map(said).reduce(f64::min);
    match &found.touch {
        Some((struck, harm)) => harm
            .command
            .or(told.filter(|command| *command <= struck.time)),
        None => told,
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

/// From when until when a scenario is pictured.
pub(super) struct Pictured {
    from: f64,
    until: f64,
}

impl Pictured {
    /// From just before the body, that can be touched so near to the gate line, may be touched to a while after.
    pub(super) fn of(walker: &Walker, half: f64, touch: Option<Touch>, end: f64) -> Self {
        let going = &walker.going;
        let comes = if going.stands {
            0.0
        } else {
            (going.comes_to(-half) - 1.0).min(0.0)
        };
        let last = touch.map_or_else(|| going.leaves(half), |touch| touch.time.base() + 3.0);
        let from = comes.max(-60.0);
        Self {
            from,
            until: last.clamp(from + 1e-3, (end + 3.0).max(from + 1e-3)),
        }
    }

    /// Pictures at equal steps, with what says where leaf and body are at a time.
    pub(super) fn frames(&self, step: f64, at: impl Fn(f64) -> (Pose, Spot)) -> Vec<Frame> {
        let mut frames = Vec::new();
        let mut time = self.from;
        while time <= self.until && frames.len() < MOST_FRAMES {
            frames.push(frame(time, at(time)));
            time += step;
        }
        frames
    }
}

/// The picture of the touch itself.
pub(super) fn at_touch(touch: Option<Touch>, at: impl Fn(f64) -> (Pose, Spot)) -> Option<Frame> {
    let time = touch?.time.base();
    Some(frame(time, at(time)))
}

fn frame(time: f64, (leaf, body): (Pose, Spot)) -> Frame {
    Frame {
        time: Time::from_base(time),
        leaf,
        body,
    }
}

/// A step between pictures that makes sense.
pub(super) fn check_step(step: Time) -> Result<(), OutOfReach> {
    if step.base().is_nan() || step.base() < 1e-3 {
        return Err(OutOfReach::new("step", "frames are 1 ms apart or more"));
    }
    Ok(())
}

/// Where the middle of a body is, in the plan as it is.
pub(super) fn middle(walker: &Walker, time: f64) -> Spot {
    let depth = walker.going.depth_at(time);
    spot((
        walker.case.x0 + depth * walker.case.slant,
        walker.side() * depth,
    ))
}

/// A place in plain numbers.
pub(super) fn spot((x, y): (f64, f64)) -> Spot {
    Spot {
        x: Length::from_base(x),
        y: Length::from_base(y),
    }
}

/// The most frames of one account.
const MOST_FRAMES: usize = 20_000;
