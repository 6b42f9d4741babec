//! A world made ready: plain numbers for each pass, so that a scenario costs nanoseconds.

use super::course::{Control, Course};
use super::device::Spot;
use super::evaluate::Found;
use super::field::Field;
use super::harm::Bounds;
use super::path::{Case, Path};
use super::person::Person;
use super::profile::Profile;
use super::reach::{Hold, holds};
use super::scenario::{Behavior, Outcome, Scenario, Touch, Way};
use super::world::{Pass, World};
use formula::OutOfReach;
use quantity::{Force, Length, Quantity as _, Time, Velocity};

/// A world that is ready to be asked.
#[derive(Debug, Clone)]
pub struct Walk {
    pub(super) lanes: Vec<Lane>,
    pub(super) slant: f64,
}

/// One pass in plain numbers. Local places count from where the edge stands at the end, against its motion.
#[derive(Debug, Clone)]
pub(super) struct Lane {
    pub profile: Profile,
    pub unhindered: Course,
    pub control: Control,
    pub bounds: Bounds,
    /// Half the thickness of the leaf.
    pub half: f64,
    /// Room between the edge at the end and what is opposite.
    pub room: f64,
    pub people: Vec<Person>,
    pub fields: Vec<Field>,
    /// What holds an arm that reaches through the leaf.
    pub holds: Vec<Hold>,
    sign: f64,
    end: f64,
}

impl World {
    /// Checks the world and makes it ready; refuses what makes no sense with the name of the input.
    pub fn lower(&self) -> Result<Walk, OutOfReach> {
        self.check()?;
        let lanes = self.passes.iter().map(|pass| Lane::new(self, pass));
        Ok(Walk {
            lanes: lanes.collect::<Result<_, _>>()?,
            slant: self.greatest_slant.base(),
        })
    }
}

impl Lane {
    fn new(world: &World, pass: &Pass) -> Result<Self, OutOfReach> {
        let profile = Profile::new(&pass.plan)?;
        let acts = |guards: &[super::device::Direction]| guards.contains(&pass.direction);
        let beams = world.beams.iter().filter(|beam| acts(&beam.guards));
        let scanners = world.scanners.iter().filter(|field| acts(&field.guards));
        let fields: Vec<Field> = beams
            .map(|beam| Field::new(pass, &[beam.from, beam.to], beam.response.base()))
            .chain(scanners.map(|field| Field::new(pass, &field.corners, field.response.base())))
            .collect();
        let people = world.bodies.iter();
        Ok(Self {
            unhindered: Course::unhindered(&profile),
            profile,
            control: Control::new(&world.controller, pass.plan.acceleration.base()),
            bounds: Bounds::new(&world.limits),
            half: 0.5 * world.leaf.thickness.base(),
            room: pass.room_at_end().max(0.0),
            people: people
                .map(|body| Person::new(world, pass, body, &fields))
                .collect(),
            fields,
            holds: holds(world, pass),
            sign: pass.sign(),
            end: pass.edge_at_end(),
        })
    }

    /// A pass in which local places are those of the plan, and the body is all that counts.
    pub(super) fn plain(
        (profile, control): (Profile, Control),
        bounds: Bounds,
        people: &[Person],
        fields: &[Field],
    ) -> Self {
        Self {
            unhindered: Course::unhindered(&profile),
            profile,
            control,
            bounds,
            half: 0.0,
            room: 0.0,
            people: people.to_vec(),
            fields: fields.to_vec(),
            holds: Vec::new(),
            sign: 1.0,
            end: 0.0,
        }
    }

    /// The sign of a body's right-hand side along the local axis.
    pub(super) fn right(&self, way: usize) -> f64 {
        if way == 0 { self.sign } else { -self.sign }
    }

    pub(super) fn case(&self, scenario: &Scenario) -> Case {
        let path = match scenario.behavior {
            Behavior::Cross => Path::Cross,
            Behavior::Stop(depth) => Path::Stop(depth.base()),
            Behavior::Stand(depth) => Path::Stand(depth.base()),
        };
        Case {
            body: scenario.body,
            way: usize::from(scenario.way == Way::Out),
            path,
            x0: self.sign * (scenario.crosses_at.base() - self.end),
            slant: self.sign * scenario.slant.base(),
            speed: scenario.speed.base(),
            arrives: scenario.arrives.base(),
        }
    }

    pub(super) fn scenario(&self, pass: usize, case: &Case) -> Scenario {
        let behavior = match case.path {
            Path::Cross => Behavior::Cross,
            Path::Stop(depth) => Behavior::Stop(Length::from_base(depth)),
            Path::Stand(depth) => Behavior::Stand(Length::from_base(depth)),
        };
        Scenario {
            pass,
            body: case.body,
            way: if case.way == 0 { Way::In } else { Way::Out },
            behavior,
            crosses_at: Length::from_base(self.end + self.sign * case.x0),
            slant: quantity::Ratio::from_base(self.sign * case.slant),
            speed: Velocity::from_base(case.speed),
            arrives: Time::from_base(case.arrives),
        }
    }

    pub(super) fn spot(&self, way: usize, x: f64, y: f64) -> Spot {
        Spot {
            x: Length::from_base(self.end + self.sign * x),
            y: Length::from_base(if way == 0 { y } else { -y }),
        }
    }

    pub(super) fn outcome(&self, way: usize, found: &Found) -> Outcome {
        let touch = found.touch.map(|(struck, harm)| Touch {
            time: Time::from_base(struck.time),
            part: struck.part,
            at: self.spot(way, struck.x, struck.y),
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
}

impl Walk {
    /// What comes of a scenario; refuses a pass or a body that is not there, and numbers that are none.
    pub fn evaluate(&self, scenario: &Scenario) -> Result<Outcome, OutOfReach> {
        let lane = self
            .lanes
            .get(scenario.pass)
            .ok_or_else(|| OutOfReach::new("pass", "this is one of the leaf's ways"))?;
        if scenario.body >= lane.people.len() {
            return Err(OutOfReach::new("body", "this is one of the bodies"));
        }
        let case = lane.case(scenario);
        let still = matches!(case.path, Path::Stand(_));
        if !case.is_finite() || !(still || case.speed > 0.0) {
            return Err(OutOfReach::new(
                "speed",
                "a body that goes has a speed above zero, and each value is a number",
            ));
        }
        Ok(lane.outcome(case.way, &lane.run(&case)))
    }
}
