//! A world of leaves that swing made ready, and which scenario a number stands for.

use super::super::device::{Direction, Spot};
use super::super::evaluate::Found;
use super::super::field::Field;
use super::super::glance::hit_with;
use super::super::harm::Bounds;
use super::super::path::{Case, Path};
use super::super::person::Person;
use super::super::scenario::{Behavior, Class, Outcome, Scenario, Touch, Way};
use super::super::sequence::{Block, Draw, Family, Habit, WIDE, families};
use super::super::sweep::{Bin, Sweep, glance_with, sweep_with};
use super::super::turning::is_asked;
use super::super::watch::{fields, person};
use super::wing::Wing;
use super::world::{SwingPass, SwingWorld};
use formula::OutOfReach;
use quantity::{Force, Length, Quantity as _, Ratio, Time, Velocity};
use std::num::NonZeroUsize;

/// A world of leaves that swing, ready to be asked.
#[derive(Debug, Clone)]
pub struct SwingWalk {
    pub(super) lanes: Vec<SwingLane>,
    /// Greatest angle of a path to the way through the gate.
    pub(super) lean: f64,
}

/// One pass in plain numbers, in the plan as it is.
#[derive(Debug, Clone)]
pub(super) struct SwingLane {
    pub wings: Vec<Wing>,
    pub reaction: f64,
    pub bounds: Bounds,
    pub people: Vec<Person>,
    pub fields: Vec<Field>,
    /// When all leaves stand.
    pub end: f64,
    /// Smallest and greatest x and y that a leaf comes to.
    pub area: [(f64, f64); 2],
}

impl SwingWorld {
    /// Checks the world and makes it ready; refuses what makes no sense with the name of the input.
    pub fn lower(&self) -> Result<SwingWalk, OutOfReach> {
        self.check()?;
        let lanes = self.passes.iter().map(|pass| SwingLane::new(self, pass));
        Ok(SwingWalk {
            lanes: lanes.collect::<Result<_, _>>()?,
            lean: self.greatest_slant.base().atan(),
        })
    }
}

impl SwingLane {
    fn new(world: &SwingWorld, pass: &SwingPass) -> Result<Self, OutOfReach> {
        let direction: Direction = pass.direction;
        let wings = pass.turns.iter().enumerate();
        let wings = wings
            .map(|(at, turn)| Wing::new(world, direction, at, turn))
            .collect::<Result<Vec<_>, _>>()?;
        let (beams, scanners) = (&world.beams, &world.scanners);
        let fields = fields(&pass.turns[0].plan, beams, scanners, direction);
        let bodies = world.bodies.iter();
        Ok(Self {
            reaction: world.controller.reaction.base(),
            bounds: Bounds::new(&world.limits),
            people: bodies
                .map(|body| person(body, (beams, scanners), direction, &fields))
                .collect(),
            fields,
            end: wings.iter().map(Wing::end).fold(0.0, f64::max),
            area: area(&wings),
            wings,
        })
    }

    /// The case that a number stands for: it comes to, stops at or stands in a place of the area that the leaves sweep, or
    /// near to it.
    pub(super) fn drawn(&self, family: &Family, draw: &Draw, lean: f64) -> Case {
        self.placed(family, draw.point(), lean)
    }

    /// The case that a point of the unit cube stands for.
    pub(super) fn placed(
        &self,
        family: &Family,
        [when, along, angle, pace, across]: [f64; WIDE],
        lean: f64,
    ) -> Case {
        let person = &self.people[family.body];
        let (slowest, fastest) = person.speeds.unwrap_or((1.0, 1.0));
        let speed = slowest + pace * (fastest - slowest);
        let slant = (lean * (2.0 * angle - 1.0)).tan();
        let within = |(low, high): (f64, f64), at: f64| {
            low - person.reach + at * (high - low + 2.0 * person.reach)
        };
        let (x, y) = (within(self.area[0], along), within(self.area[1], across));
        let depth = if family.way == Way::In { y } else { -y };
        let earliest = match family.habit {
            Habit::Follow => 0.0,
            _ => -2.0 * person.reach / speed,
        };
        let comes = earliest + when * (self.end - earliest);
        Case {
            body: family.body,
            way: usize::from(family.way == Way::Out),
            path: match family.habit {
                Habit::Cross | Habit::Follow => Path::Cross,
                Habit::Stop => Path::Stop(depth),
                Habit::Stand | Habit::Lean => Path::Stand(depth),
            },
            x0: x - depth * slant,
            slant,
            speed,
            arrives: comes - depth * (1.0 + slant * slant).sqrt() / speed,
        }
    }
}

/// The smallest and greatest x and y of the leaves on their ways.
fn area(wings: &[Wing]) -> [(f64, f64); 2] {
    let mut area = [(f64::INFINITY, f64::NEG_INFINITY); 2];
    for wing in wings {
        for step in 0..=64 {
            let place = wing.profile.travel * f64::from(step) / 64.0;
            for (x, y) in wing.corners(place) {
                for (span, at) in area.iter_mut().zip([x, y]) {
                    *span = (span.0.min(at), span.1.max(at));
                }
            }
        }
    }
    area
}

/// A scenario in the plain numbers of a plan.
pub(in super::super) fn case(scenario: &Scenario) -> Case {
    Case {
        body: scenario.body,
        way: usize::from(scenario.way == Way::Out),
        path: match scenario.behavior {
            Behavior::Cross => Path::Cross,
            Behavior::Stop(depth) => Path::Stop(depth.base()),
            Behavior::Stand(depth) => Path::Stand(depth.base()),
        },
        x0: scenario.crosses_at.base(),
        slant: scenario.slant.base(),
        speed: scenario.speed.base(),
        arrives: scenario.arrives.base(),
    }
}

/// The scenario that a case in the plain numbers of a plan is.
pub(in super::super) fn scenario(pass: usize, case: &Case) -> Scenario {
    Scenario {
        pass,
        body: case.body,
        way: if case.way == 0 { Way::In } else { Way::Out },
        behavior: match case.path {
            Path::Cross => Behavior::Cross,
            Path::Stop(depth) => Behavior::Stop(Length::from_base(depth)),
            Path::Stand(depth) => Behavior::Stand(Length::from_base(depth)),
        },
        crosses_at: Length::from_base(case.x0),
        slant: Ratio::from_base(case.slant),
        speed: Velocity::from_base(case.speed),
        arrives: Time::from_base(case.arrives),
    }
}

/// What came of a case in the plain numbers of a plan.
pub(in super::super) fn outcome(way: usize, found: &Found) -> Outcome {
    let touch = found.touch.map(|(struck, harm)| Touch {
        time: Time::from_base(struck.time),
        part: struck.part,
        at: Spot {
            x: Length::from_base(struck.x),
            y: Length::from_base(if way == 0 { struck.y } else { -struck.y }),
        },
        speed: Velocity::from_base(harm.speed),
        gap: Length::from_base(struck.gap),
        room: Length::from_base(struck.room),
        travel: Length::from_base(harm.travel),
        force: Force::from_base(harm.force),
        limit: Force::from_base(harm.limit),
        lasts: harm.lasts.is_finite().then(|| Time::from_base(harm.lasts)),
        rests: harm.rests.is_finite().then(|| Time::from_base(harm.rests)),
    });
    Outcome {
        class: found.class,
        touch,
    }
}

/// Refuses a case that makes no sense.
pub(in super::super) fn check_case(case: &Case, people: &[Person]) -> Result<(), OutOfReach> {
    if case.body >= people.len() {
        return Err(OutOfReach::new("body", "this is one of the bodies"));
    }
    let still = matches!(case.path, Path::Stand(_));
    if !case.is_finite() || !(still || case.speed > 0.0) {
        return Err(OutOfReach::new(
            "speed",
            "a body that goes has a speed above zero, and each value is a number",
        ));
    }
    Ok(())
}

is_asked!(SwingWalk, lean);
