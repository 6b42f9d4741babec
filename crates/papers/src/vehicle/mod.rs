//! Vehicles in the gate, to scale over loops and beams: from above and from the side, each at the place where the leaf
//! would come down between its parts.

mod layers;
mod plan;
mod side;

use crate::sheets::{Planned, north, sheet_name};
use design::vehicle::{ShownVehicle, shown};
use draw::{North, Point, ScaleChoice, Scene};
use quantity::{Length, Quantity as _};
use sim::vehicle::{Part, PartName};
use site::{Device, Gate, Site};

/// The drawings of the vehicles that a site expects at a gate; none where no vehicle is described or nothing watches.
pub(crate) fn planned(site: &Site, gate: &Gate) -> Vec<Planned> {
    let (vehicles, missing) = shown(site, gate);
    let Some(first) = vehicles.first() else {
        return Vec::new();
    };
    if first.holding.is_empty() && first.not_holding.is_empty() {
        return Vec::new();
    }
    let sheets = [
        (
            "vehicles-plan",
            plan::scene((site, gate), &vehicles),
            north(site),
        ),
        (
            "vehicles-side",
            side::scene((site, gate), &vehicles),
            North::NotSeenFromAbove,
        ),
    ];
    let planned = sheets.map(|(name, mut scene, north)| {
        remark(&mut scene, &missing);
        Planned {
            name: sheet_name(site, gate, name),
            scene,
            north,
            scale: ScaleChoice::LargestThatFits,
            half: false,
        }
    });
    planned.into()
}

fn remark(scene: &mut Scene, missing: &[String]) {
    scene.remark(
        "Each vehicle has stopped with the open space over its drawbar at the gate line, or else with its middle there, its front toward the property. A device holds the leaf there if it sees the vehicle and keeps the leaf from starting to close.",
    );
    scene.remark(
        "What detects vehicles protects property and counts for nobody on foot. The longest trailer and the highest chassis are driven over the loops and through the beams before the gate is handed over.",
    );
    if !missing.is_empty() {
        scene.remark(format!(
            "Not drawn, since measures are missing: {}.",
            missing.join(", ")
        ));
    }
}

/// The devices that could see a vehicle.
fn watching<'s>(site: &'s Site, vehicle: &ShownVehicle) -> Vec<&'s Device> {
    let known = |device: &&Device| {
        let mut names = vehicle.holding.iter().chain(&vehicle.not_holding);
        names.any(|name| device.id == *name.as_str())
    };
    site.device.iter().filter(known).collect()
}

/// From where to where into the property a part of a vehicle reaches (m).
fn stretch(vehicle: &ShownVehicle, part: &Part) -> (f64, f64) {
    let front = vehicle.front.base();
    (front - part.to.base(), front - part.from.base())
}

/// From where to where into the property all vehicles reach (m).
fn reach(vehicles: &[ShownVehicle]) -> (f64, f64) {
    let ends = vehicles.iter().flat_map(|vehicle| {
        let parts = vehicle.outline.parts.iter();
        parts.map(move |part| stretch(vehicle, part))
    });
    ends.fold((0.0, 0.0), |(low, high): (f64, f64), (from, to)| {
        (low.min(from), high.max(to))
    })
}

/// What a part of a vehicle is, for whoever points at it.
fn title(vehicle: &ShownVehicle, part: &Part) -> String {
    let what = match part.name {
        PartName::Body => "body",
        PartName::Drawbar => "drawbar",
        PartName::Trailer => "trailer",
        PartName::Tail => "what hangs out behind",
    };
    format!("{what} of {}", vehicle.id)
}

/// What holds the leaf: `held by loop-in; beam-near does not hold it`.
fn held(vehicle: &ShownVehicle) -> String {
    let holding = if vehicle.holding.is_empty() {
        "nothing holds the leaf here".to_owned()
    } else {
        format!("held by {}", vehicle.holding.join(", "))
    };
    if vehicle.not_holding.is_empty() {
        return holding;
    }
    format!("{holding}; not by {}", vehicle.not_holding.join(", "))
}

fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x), Length::from_base(y))
}
