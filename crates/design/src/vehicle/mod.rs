//! From a site to the world in which a vehicle passes a gate: leaf, motion, lane, detectors, the vehicle as a row of boxes.

mod lane;
mod leaf;
mod outline;
mod seeing;
mod shown;

pub(crate) use lane::{Ground, between, lanes};
pub(crate) use leaf::leaf;
pub(crate) use outline::{Sized, sized, usual};
pub use shown::{ShownVehicle, shown};

use crate::asking::{Asking, read};
use crate::check::drive::operator_of;
use crate::check::motion::cruise_of;
use crate::outcome::Halt;
use sim::vehicle::{Motion, World};
use site::{Gate, Site};

/// A world, and which device of the site each of its detectors is.
pub(crate) struct Passage<'s> {
    pub(crate) world: World,
    pub(crate) devices: Vec<&'s site::Device>,
}

/// The world in which a vehicle passes a gate.
pub(crate) fn passage<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    sized: Result<Sized, Halt>,
) -> Result<Passage<'s>, Halt> {
    let leaf = leaf(asking, gate);
    let motion = motion(asking, site, gate);
    let ground = lane::Ground::of(site, gate);
    let seeing = seeing::seeing(asking, site, gate, &ground, sized.as_ref().ok());
    let width = sized.as_ref().ok().map(|sized| sized.width);
    let lane = lane::lane(asking, site, gate, width);
    let (leaf, motion, seeing, lane, sized) = (leaf?, motion?, seeing?, lane?, sized?);
    let (detectors, devices) = seeing
        .into_iter()
        .map(|seeing| (seeing.detector, seeing.device))
        .unzip();
    Ok(Passage {
        world: World {
            leaf,
            motion,
            detectors,
            lane,
            outline: sized.outline,
        },
        devices,
    })
}

fn motion<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Motion, Halt> {
    let cruise_speed = cruise_of(asking, gate);
    let acceleration = read!(asking, gate.motion?.acceleration);
    let stopping = read!(asking, gate.motion?.stopping_deceleration);
    let reaction = match operator_of(asking, site, gate) {
        Ok(operator) => read!(asking, operator.reaction_time),
        Err(halt) => Err(halt),
    };
    Ok(Motion {
        cruise_speed: cruise_speed?,
        acceleration: acceleration?,
        stopping: stopping?,
        reaction: reaction?,
    })
}
