//! Walks people past the leaf of a gate, as the site describes it: sampled, proved, told in words.
//!
//! [`GateWalk::of`] reads the gate; [`GateWalk::sweep`] works millions of walks; [`GateWalk::prove`] proves or refutes each
//! family of them; [`GateWalk::margins`] says how far a value may go; [`GateWalk::finding`] is the answer with all of it.
//! What [`crate::answers`] says of these questions rests on a first look only: it refutes, and never proves.

mod around;
mod assumption;
mod controller;
mod decided;
mod devices;
mod faces;
mod limits;
mod lower;
mod margins;
mod motion;
mod outcome;
mod people;
mod press;
mod reach;
mod reached;
mod record;
mod rising;
mod seed;
mod shown;
mod staged;
mod start;
mod strip;
mod swing;
mod told;
mod trace;
mod written;

pub use assumption::Assumption;
pub use decided::{FamilyTold, ShareTold, Standing as FamilyStanding, SweepTold, told_together};
pub use margins::{Effort, MarginTold};
pub use record::{Kept, KeptWalk, WalkRecord};
pub use seed::Seed;
pub use shown::{ShownCase, Touched, TouchedSquare};
pub use staged::{Staged, StagedDevice, StagedState, StagedTouch};
pub use told::{Event, Told, grouped};
pub use trace::{Trace, TraceFrame, TraceTouch};

pub(crate) use devices::{Slot, heights, of_gate, senses_people};
pub(crate) use faces::half_width;
pub(crate) use lower::{Judged, Lowered};
pub(crate) use told::capital;

use crate::Finding;
use crate::asking::Asking;
use crate::check::walk::anyone_hit::CHECK;
use crate::figure::Print;
use crate::finding::made;
use crate::outcome::{Halt, Outcome};
use crate::subject::About;
use formula::OutOfReach;
pub use sim::walk::Stop;
use sim::walk::{AnyWalk, AnyWorld, Device, Scenario, Walk, World};
use site::{Gate, Site};

/// A gate that people can be walked past.
#[derive(Debug)]
pub struct GateWalk<'s> {
    site: &'s Site,
    gate: &'s Gate,
    print: Print,
    pub(crate) lowered: Lowered,
    pub(crate) walk: AnyWalk,
    assumptions: Vec<Assumption>,
}

impl<'s> GateWalk<'s> {
    /// Reads a gate; where something is missing or does not fit, the finding that says so.
    pub fn of(site: &'s Site, gate: &'s Gate) -> Result<Self, Box<Finding>> {
        let mut asking = Asking::new(site.site.unit_system());
        Self::read(&mut asking, site, gate).map_err(|_| {
            let answer = |asking: &mut Asking<'s>| {
                Self::read(asking, site, gate).map(|_| Outcome::Rule(false))
            };
            Box::new(made(
                &CHECK,
                About::new(&gate.origin, &gate.id),
                &mut asking,
                &answer,
            ))
        })
    }

    /// Reads a gate through what asks.
    pub(crate) fn read(
        asking: &mut Asking<'s>,
        site: &'s Site,
        gate: &'s Gate,
    ) -> Result<Self, Halt> {
        let lowered = lower::lower(asking, site, gate)?;
        let walk = match lowered.world.lower() {
            Ok(walk) => walk,
            Err(reach) => return asking.beyond_reach("walk test", reach),
        };
        let mut assumptions = assumption::of_the_site(asking);
        assumptions.extend(lowered.defaults.iter().cloned());
        Ok(Self {
            site,
            gate,
            print: asking.print(),
            lowered,
            walk,
            assumptions,
        })
    }

    /// Name of the gate.
    pub fn name(&self) -> &str {
        self.gate.id.as_str()
    }

    /// Everything that the test rests on.
    pub fn assumptions(&self) -> &[Assumption] {
        &self.assumptions
    }

    /// What senses people.
    pub(crate) fn sensing(&self) -> &[devices::Sensing] {
        &self.lowered.sensing
    }

    /// The world.
    pub fn world(&self) -> &AnyWorld {
        &self.lowered.world
    }

    /// The world and the walk of a leaf that slides.
    pub fn sliding(&self) -> Option<(&World, &Walk)> {
        match (&self.lowered.world, &self.walk) {
            (AnyWorld::Sliding(world), AnyWalk::Sliding(walk)) => Some((world, walk)),
            _ => None,
        }
    }

    /// The walk that a seed makes again; refuses one that cannot be worked at this gate.
    pub fn scenario(&self, seed: Seed) -> Result<Scenario, OutOfReach> {
        match seed {
            Seed::Number(number) => Ok(self.walk.scenario(number)),
            Seed::Spelled(scenario) => self.walk.evaluate(&scenario).map(|_| scenario),
        }
    }

    /// How far the touches of this leaf are judged.
    pub(crate) fn judged(&self) -> Judged {
        self.lowered.judged()
    }

    /// The world without some of its devices.
    pub(crate) fn without(&self, slot: &Slot) -> AnyWorld {
        let world = &self.lowered.world;
        match slot {
            Slot::Beam(at) => world.without(Device::Beam(*at)),
            Slot::Scanner(at) => world.without(Device::Scanner(*at)),
            Slot::Edges(all) => all
                .clone()
                .rev()
                .fold(world.clone(), |world, at| world.without(Device::Edge(at))),
            Slot::Left(_) => world.clone(),
        }
    }
}
