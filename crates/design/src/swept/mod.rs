//! From a site to what its vehicles sweep: rigs with axles and couplings, the ways in and out, all that stands there, and
//! the ground under them.

mod course;
mod over;
mod place;
mod rig;
mod shown;

pub(crate) use course::{Way, ways};
pub(crate) use over::{Over, over};
pub(crate) use place::{Things, things};
pub(crate) use rig::{Rolling, rolling};
pub use shown::{ShownLane, ShownNearest, ShownSweep, shown};

use site::{Lane, Site, Vehicle, VehicleKind};

/// Between looks along the way (m).
pub(crate) const STEP: f64 = 0.01;

/// Room beside what is swept where a vehicle states none (m).
pub(crate) const USUAL_MARGIN: f64 = 0.3;

/// The vehicle is as wide as a lane matters to: not a motorcycle or a bicycle.
pub(crate) fn is_wide(vehicle: &Vehicle) -> bool {
    !matches!(
        vehicle.kind,
        Some(VehicleKind::Motorcycle | VehicleKind::Bicycle)
    )
}

/// The gate that a lane leads through.
pub(crate) fn gate_of<'s>(site: &'s Site, lane: &Lane) -> Option<&'s site::Gate> {
    match &lane.gate {
        Some(name) => site.gate.iter().find(|gate| gate.id == *name),
        None if site.gate.len() == 1 => site.gate.first(),
        None => None,
    }
}

/// Vehicles that drive a lane: fire engines only those that are let.
pub(crate) fn drivers<'s>(site: &'s Site, lane: &'s Lane) -> impl Iterator<Item = &'s Vehicle> {
    site.vehicle.iter().filter(|vehicle| {
        let engine = vehicle.fire_apparatus == Some(true);
        is_wide(vehicle) && !(engine && lane.fire_lane == Some(false))
    })
}
