//! A world of a leaf that rises made ready, and which scenario a number stands for.

use super::super::course::{Control, Course};
use super::super::device::Direction;
use super::super::field::Field;
use super::super::glance::hit_with;
use super::super::harm::Bounds;
use super::super::path::{Case, Path};
use super::super::person::Person;
use super::super::profile::Profile;
use super::super::scenario::{Class, Outcome, Scenario, Way};
use super::super::sequence::{Block, Draw, Family, Habit, WIDE, families};
use super::super::sweep::{Bin, Sweep, each, glance_with, sweep_with};
use super::super::swing::{
    Covered, Skin, Slab, Swung, Toward, case, check_case, outcome, scenario,
};
use super::super::turning::is_asked;
use super::super::watch::{fields, person};
use super::lift::Lifted;
use super::world::{RisingLeaf, RisingPass, RisingWorld, TurningLeaf};
use formula::OutOfReach;
use quantity::Quantity as _;
use std::num::NonZeroUsize;

/// A world of a leaf that rises, ready to be asked.
#[derive(Debug, Clone)]
pub struct RisingWalk {
    pub(super) lanes: Vec<RisingLane>,
    pub(super) slant: f64,
}

/// The leaf in plain numbers of one pass.
#[derive(Debug, Clone, Copy)]
pub(super) enum Shape {
    /// With where its pivot line is, and the signs of its own directions.
    Turning {
        swung: Swung,
        pivot: f64,
        height: f64,
        along: f64,
        upward: f64,
    },
    Lifting(Lifted),
}

/// One pass in plain numbers, in the plan as it is.
#[derive(Debug, Clone)]
pub(super) struct RisingLane {
    pub shape: Shape,
    /// Half the thickness of the leaf.
    pub half: f64,
    pub profile: Profile,
    pub unhindered: Course,
    pub control: Control,
    pub bounds: Bounds,
    pub skin: Skin,
    pub people: Vec<Person>,
    /// Lower and upper end of each cylinder of each body.
    pub heights: Vec<Vec<(f64, f64)>>,
    pub fields: Vec<Field>,
    /// From where to where the leaf reaches along the gate line.
    pub along: (f64, f64),
    /// From where to where nobody is.
    pub housing: Option<(f64, f64)>,
}

impl RisingWorld {
    /// Checks the world and makes it ready; refuses what makes no sense with the name of the input.
    pub fn lower(&self) -> Result<RisingWalk, OutOfReach> {
        self.check()?;
        let lanes = self.passes.iter().map(|pass| RisingLane::new(self, pass));
        Ok(RisingWalk {
            lanes: lanes.collect::<Result<_, _>>()?,
            slant: self.greatest_slant.base(),
        })
    }
}

impl RisingLane {
    fn new(world: &RisingWorld, pass: &RisingPass) -> Result<Self, OutOfReach> {
        let direction = pass.direction;
        let profile = Profile::new(&pass.plan)?;
        let (shape, thickness, length, along) = match world.leaf {
            RisingLeaf::Turning(leaf) => {
                let (length, heel) = (leaf.length.base(), leaf.heel.base());
                let shape = turning(&leaf, direction, profile.travel);
                let pivot = leaf.pivot.base();
                let along = match leaf.toward {
                    Toward::Greater => (pivot + heel, pivot + length),
                    Toward::Smaller => (pivot - length, pivot - heel),
                };
                (shape, leaf.thickness, length, along)
            }
            RisingLeaf::Lifting(leaf) => {
                let (start, way) = match direction {
                    Direction::Closing => (leaf.closed.base() + profile.travel, -1.0),
                    Direction::Opening => (leaf.closed.base(), 1.0),
                };
                let along = (leaf.from.base(), leaf.to.base());
                let lifted = Lifted {
                    from: along.0,
                    to: along.1,
                    start,
                    way,
                    tall: leaf.tall.base(),
                };
                let length = along.1 - along.0;
                (Shape::Lifting(lifted), leaf.thickness, length, along)
            }
        };
        let covered = Covered {
            length,
            bare: world.bare_stiffness.base(),
            edges: world.edges.iter().collect(),
            drive: world.drive.as_ref(),
            bodies: &world.bodies,
            any_height: true,
            heft: world.heft.as_ref(),
            measured: world.measured.iter().collect(),
        };
        let (beams, scanners) = (&world.beams, &world.scanners);
        let fields = fields(&pass.plan, beams, scanners, direction);
        let bodies = world.bodies.iter();
        let heights = world.bodies.iter().map(|body| {
            let parts = body.parts.iter();
            parts
                .map(|part| (part.bottom.base(), part.top.base()))
                .collect()
        });
        Ok(Self {
            shape,
            half: 0.5 * thickness.base(),
            unhindered: Course::unhindered(&profile),
            control: Control::new(&world.controller, pass.plan.acceleration.base()),
            bounds: Bounds::new(&world.limits),
            skin: Skin::over(&covered, direction),
            people: bodies
                .map(|body| person(body, (beams, scanners), direction, &fields))
                .collect(),
            heights: heights.collect(),
            fields,
            along,
            housing: world.housing.map(|(from, to)| (from.base(), to.base())),
            profile,
        })
    }

    /// The case that a number stands for.
    pub(super) fn drawn(&self, family: &Family, draw: &Draw, slant: f64) -> Case {
        self.placed(family, draw.point(), slant)
    }

    /// The case that a point of the unit cube stands for.
    pub(super) fn placed(
        &self,
        family: &Family,
        [when, place, lean, pace, deep]: [f64; WIDE],
        slant: f64,
    ) -> Case {
        let person = &self.people[family.body];
        let (slowest, fastest) = person.speeds.unwrap_or((1.0, 1.0));
        let speed = slowest + pace * (fastest - slowest);
        let slant = slant * (2.0 * lean - 1.0);
        let through = speed / (1.0 + slant * slant).sqrt();
        let half = person.reach + self.half;
        let depth = half * (2.0 * deep - 1.0);
        let earliest = match family.habit {
            Habit::Follow => 0.0,
            _ => -2.0 * half / through,
        };
        let enters = earliest + when * (self.profile.end - earliest);
        Case {
            body: family.body,
            way: usize::from(family.way == Way::Out),
            path: match family.habit {
                Habit::Cross | Habit::Follow => Path::Cross,
                Habit::Stop => Path::Stop(depth),
                Habit::Stand | Habit::Lean => Path::Stand(depth),
            },
            x0: self.along.0 + place * (self.along.1 - self.along.0),
            slant,
            speed,
            arrives: enters + half / through,
        }
    }
}

fn turning(leaf: &TurningLeaf, direction: Direction, travel: f64) -> Shape {
    let length = leaf.length.base();
    let (below, above) = (-leaf.below.base(), leaf.above.base());
    let (start, upward, low, high) = match direction {
        Direction::Opening => (0.0, 1.0, below, above),
        Direction::Closing => (-travel / length, -1.0, -above, -below),
    };
    let slab = Slab {
        from: leaf.heel.base(),
        to: length,
        low,
        high,
    };
    Shape::Turning {
        swung: Swung::new(slab, length, start),
        pivot: leaf.pivot.base(),
        height: leaf.height.base(),
        along: match leaf.toward {
            Toward::Greater => 1.0,
            Toward::Smaller => -1.0,
        },
        upward,
    }
}

impl RisingWalk {
    fn work(&self, family: &Family, block: &Block, bin: &mut Bin) {
        each(block, bin, |draw| self.ends(family, draw));
    }
}

is_asked!(RisingWalk, slant);
