//! Any kind of leaf behind one face: a world that is given, and one that is ready to be asked.

use super::account::Account;
use super::body::Body;
use super::control::{Controller, Limits};
use super::device::{Beam, ContactEdge, Direction, ForceSensing, Scanner};
use super::lane::Walk;
use super::prove::{Margin, Proof, Verdict, halved};
use super::rising::{RisingWalk, RisingWorld};
use super::scenario::{Outcome, Scenario};
use super::sequence::Family;
use super::sweep::Sweep;
use super::swing::{SwingWalk, SwingWorld};
use super::world::World;
use crate::Plan;
use formula::OutOfReach;
use quantity::{Quantity, Time};
use std::num::NonZeroUsize;

/// A world with a leaf of any kind.
#[derive(Debug, Clone)]
pub enum AnyWorld {
    /// A leaf that slides.
    Sliding(World),
    /// One or two leaves that swing.
    Swinging(SwingWorld),
    /// A leaf that rises.
    Rising(RisingWorld),
}

/// A world with a leaf of any kind, ready to be asked.
#[derive(Debug, Clone)]
pub enum AnyWalk {
    /// A leaf that slides.
    Sliding(Walk),
    /// One or two leaves that swing.
    Swinging(SwingWalk),
    /// A leaf that rises.
    Rising(RisingWalk),
}

/// A device of a world, by its place in its list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Device {
    /// A beam.
    Beam(usize),
    /// A field of a scanner.
    Scanner(usize),
    /// A contact edge.
    Edge(usize),
    /// The drive's own sensing.
    Drive,
}

/// Reads what every world has.
macro_rules! every {
    ($of:expr, $world:ident => $what:expr) => {
        match $of {
            AnyWorld::Sliding($world) => $what,
            AnyWorld::Swinging($world) => $what,
            AnyWorld::Rising($world) => $what,
        }
    };
}

/// Asks the walk, whatever its kind.
macro_rules! each {
    ($of:expr, $walk:ident => $what:expr) => {
        match $of {
            AnyWalk::Sliding($walk) => $what,
            AnyWalk::Swinging($walk) => $what,
            AnyWalk::Rising($walk) => $what,
        }
    };
}

impl AnyWorld {
    /// Checks the world and makes it ready; refuses what makes no sense with the name of the input.
    pub fn lower(&self) -> Result<AnyWalk, OutOfReach> {
        match self {
            Self::Sliding(world) => world.lower().map(AnyWalk::Sliding),
            Self::Swinging(world) => world.lower().map(AnyWalk::Swinging),
            Self::Rising(world) => world.lower().map(AnyWalk::Rising),
        }
    }

    /// Beams.
    pub fn beams(&mut self) -> &mut Vec<Beam> {
        every!(self, world => &mut world.beams)
    }

    /// Fields.
    pub fn scanners(&mut self) -> &mut Vec<Scanner> {
        every!(self, world => &mut world.scanners)
    }

    /// The drive's own sensing.
    pub fn drive(&mut self) -> &mut Option<ForceSensing> {
        every!(self, world => &mut world.drive)
    }

    /// The controller.
    pub fn controller(&mut self) -> &mut Controller {
        every!(self, world => &mut world.controller)
    }

    /// What a touch may do.
    pub fn limits(&mut self) -> &mut Limits {
        every!(self, world => &mut world.limits)
    }

    /// The people.
    pub fn bodies(&self) -> &[Body] {
        every!(self, world => &world.bodies)
    }

    /// The direction of a pass.
    pub fn direction(&self, pass: usize) -> Option<Direction> {
        every!(self, world => world.passes.get(pass).map(|pass| pass.direction))
    }

    /// Plans of every pass, and of every leaf in it.
    pub fn plans(&mut self) -> Vec<&mut Plan> {
        match self {
            Self::Sliding(world) => world.passes.iter_mut().map(|pass| &mut pass.plan).collect(),
            Self::Rising(world) => world.passes.iter_mut().map(|pass| &mut pass.plan).collect(),
            Self::Swinging(world) => {
                let turns = world.passes.iter_mut().flat_map(|pass| &mut pass.turns);
                turns.map(|turn| &mut turn.plan).collect()
            }
        }
    }

    /// Contact edges.
    pub fn edges(&mut self) -> Vec<&mut ContactEdge> {
        match self {
            Self::Sliding(world) => world.edges.iter_mut().collect(),
            Self::Swinging(world) => world.edges.iter_mut().map(|one| &mut one.edge).collect(),
            Self::Rising(world) => world.edges.iter_mut().map(|one| &mut one.edge).collect(),
        }
    }

    /// Beams and fields, to be looked at.
    pub fn seeing(&self) -> (&[Beam], &[Scanner]) {
        every!(self, world => (&world.beams, &world.scanners))
    }

    /// What a touch may do, to be looked at.
    pub fn bounds(&self) -> &Limits {
        every!(self, world => &world.limits)
    }

    /// Every device.
    pub fn devices(&self) -> Vec<Device> {
        let counts = every!(self, world => (world.beams.len(), world.scanners.len(), world.edges.len(), world.drive.is_some()));
        let beams = (0..counts.0).map(Device::Beam);
        let scanners = (0..counts.1).map(Device::Scanner);
        let edges = (0..counts.2).map(Device::Edge);
        let drive = counts.3.then_some(Device::Drive);
        beams.chain(scanners).chain(edges).chain(drive).collect()
    }

    /// The world with one device that reports nothing; a contact edge that reports nothing is still soft.
    #[must_use]
    pub fn without(&self, device: Device) -> Self {
        let mut world = self.clone();
        every!(&mut world, world => match device {
            Device::Beam(at) if at < world.beams.len() => drop(world.beams.remove(at)),
            Device::Scanner(at) if at < world.scanners.len() => drop(world.scanners.remove(at)),
            Device::Edge(at) if at < world.edges.len() => drop(world.edges.remove(at)),
            Device::Drive => world.drive = None,
            _ => {}
        });
        world
    }

    /// Whether every family is proved, looking at so many boxes at most in each part.
    pub fn is_proved(&self, most: u64, threads: NonZeroUsize) -> Result<bool, OutOfReach> {
        let walk = self.lower()?;
        let proofs = walk.prove_all(most, threads);
        Ok(proofs.iter().all(|proof| proof.verdict == Verdict::Proved))
    }

    /// Halves the way between two values so often and says up to where everything is proved. The value has to make things
    /// worse from the first to the last.
    pub fn margin<Q: Quantity>(
        &self,
        between: (Q, Q),
        halvings: u32,
        set: &dyn Fn(&mut Self, Q),
        effort: (u64, NonZeroUsize),
    ) -> Result<Margin<Q>, OutOfReach> {
        halved(between, halvings, &|value| {
            let mut world = self.clone();
            set(&mut world, value);
            world.is_proved(effort.0, effort.1)
        })
    }
}

impl AnyWalk {
    /// The families in their order.
    pub fn families(&self) -> Vec<Family> {
        each!(self, walk => walk.families())
    }

    /// The scenario that a number stands for.
    pub fn scenario(&self, seed: u64) -> Scenario {
        each!(self, walk => walk.scenario(seed))
    }

    /// What comes of a scenario; refuses a pass or a body that is not there, and numbers that are none.
    pub fn evaluate(&self, scenario: &Scenario) -> Result<Outcome, OutOfReach> {
        each!(self, walk => walk.evaluate(scenario))
    }

    /// The course of a scenario, with frames at such a step from just before the body can be touched to a while after.
    pub fn account(&self, scenario: &Scenario, step: Time) -> Result<Account, OutOfReach> {
        each!(self, walk => walk.account(scenario, step))
    }

    /// Works the scenarios with the numbers from zero up to a count, on so many threads; tells how many are done.
    pub fn sweep(&self, count: u64, threads: NonZeroUsize, done: &(dyn Fn(u64) + Sync)) -> Sweep {
        each!(self, walk => walk.sweep(count, threads, done))
    }

    /// Works the first so many scenarios of each family; the numbers are those of [`AnyWalk::sweep`].
    pub fn glance(&self, each: u64) -> Sweep {
        each!(self, walk => walk.glance(each))
    }

    /// The families of which one of the first so many scenarios ends badly.
    pub fn hit(&self, each: u64) -> Vec<Family> {
        each!(self, walk => walk.hit(each))
    }

    /// Families that are proved: those who follow are among those who cross.
    pub fn provable(&self) -> Vec<Family> {
        each!(self, walk => walk.provable())
    }

    /// Proves or refutes one family, looking at so many boxes at most in each of the fixed parts of its space.
    pub fn prove(
        &self,
        family: &Family,
        most: u64,
        threads: NonZeroUsize,
    ) -> Result<Proof, OutOfReach> {
        each!(self, walk => walk.prove(family, most, threads))
    }

    /// Proves or refutes every family.
    pub fn prove_all(&self, most: u64, threads: NonZeroUsize) -> Vec<Proof> {
        each!(self, walk => walk.prove_all(most, threads))
    }
}
