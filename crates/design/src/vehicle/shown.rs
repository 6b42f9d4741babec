//! Vehicles as they stand in a gate, for drawings: at the place where the leaf would come down between their parts, and
//! what sees them there.

use super::{passage, sized};
use crate::asking::Asking;
use quantity::{Length, Quantity as _};
use sim::vehicle::{Facing, Outline, PartName};
use sim::walk::Direction;
use site::{Gate, Site, Vehicle};

/// A vehicle that has stopped in a gate, its front toward the property: with the open space over its drawbar at the gate
/// line, or its middle.
#[derive(Debug, Clone)]
pub struct ShownVehicle {
    /// Its name on the site.
    pub id: String,
    /// What it is, in words.
    pub what: String,
    /// Its boxes.
    pub outline: Outline,
    /// Where its middle is across the lane.
    pub middle: Length,
    /// How far beyond the gate line its front is.
    pub front: Length,
    /// The devices that see it there and keep the leaf from closing, by name.
    pub holding: Vec<String>,
    /// The devices that could see a vehicle and do not see it there, or do not keep the leaf from closing.
    pub not_holding: Vec<String>,
}

impl ShownVehicle {
    fn of<'s>(
        asking: &mut Asking<'s>,
        site: &'s Site,
        gate: &'s Gate,
        vehicle: &'s Vehicle,
    ) -> Option<Self> {
        let sized = sized(asking, vehicle);
        let passage = passage(asking, site, gate, sized).ok()?;
        let world = passage.world;
        let front = at_the_line(&world.outline);
        let middle = world.lane.middle;
        let holding = world.holding(Direction::Closing, Facing::In, middle, front);
        let names = passage.devices.iter().enumerate();
        let (holding, not_holding) = names
            .map(|(at, device)| (holding.contains(&at), device.id.to_string()))
            .partition::<Vec<_>, _>(|(holds, _)| *holds);
        let names = |all: Vec<(bool, String)>| all.into_iter().map(|(_, name)| name).collect();
        Some(Self {
            id: vehicle.id.to_string(),
            what: vehicle.what.to_string(),
            middle,
            front,
            holding: names(holding),
            not_holding: names(not_holding),
            outline: world.outline,
        })
    }
}

/// The front of a vehicle whose drawbar, or else whose middle, is at the gate line.
fn at_the_line(outline: &Outline) -> Length {
    let bar = outline
        .parts
        .iter()
        .find(|part| part.name == PartName::Drawbar);
    bar.map_or(outline.length() / 2.0, |bar| (bar.from + bar.to) / 2.0)
}

/// The vehicles that the site expects, each in the gate, and the names of those that cannot be drawn since facts are
/// missing.
pub fn shown(site: &Site, gate: &Gate) -> (Vec<ShownVehicle>, Vec<String>) {
    let mut asking = Asking::new(site.site.unit_system());
    let (mut drawn, mut missing) = (Vec::new(), Vec::new());
    for vehicle in &site.vehicle {
        match ShownVehicle::of(&mut asking, site, gate, vehicle) {
            Some(shown) if shown.middle.base().is_finite() => drawn.push(shown),
            _ => missing.push(vehicle.id.to_string()),
        }
    }
    (drawn, missing)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::shown;
    use crate::check::testing::site;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        clear_opening = "20 ft"
        travel = "20 ft 6 in"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        height = "6 ft"
        thickness = "2 in"
        ground_clearance = "2 in"
        closed_end = "-3 in"
        [gate.motion]
        cruise_speed = "0.9 ft/s"
        acceleration = "0.8 ft/s²"
        stopping_deceleration = "6 ft/s²"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms"
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        guards = ["closing"]
        at = ["-1 ft", "5 in", "24 in"]
        to = ["21 ft", "5 in", "24 in"]
        detection_capability = "2 in"
        response_time = "40 ms"
        [[vehicle]]
        id = "rig"
        what = "pickup with trailer"
        kind = "vehicle with trailer"
        length = "40 ft"
        width = "8 ft"
        height = "7 ft"
        chassis_height = "1 ft"
        speed = "4 ft/s"
        drawbar_gap = "6 ft"
        towing_length = "18 ft"
        drawbar_height = "18 in"
    "#;

    #[test]
    fn a_trailer_stands_with_its_drawbar_at_the_gate_line_where_a_beam_sees_daylight() {
        let site = site(SITE);
        let (vehicles, missing) = shown(&site, &site.gate[0]);
        assert!(missing.is_empty(), "{missing:?}");
        // 18 ft to the ball and half of 6 ft.
        let front = quantity::Quantity::base(vehicles[0].front);
        assert!((front - 21.0 * 0.3048).abs() < 1e-9, "{front}");
        assert_eq!(vehicles[0].not_holding, ["beam"]);
    }

    #[test]
    fn a_van_stands_with_its_middle_there_and_is_seen() {
        let van = SITE
            .replace("vehicle with trailer", "car")
            .replace("drawbar_gap = \"6 ft\"", "");
        let site = site(&van);
        let (vehicles, _) = shown(&site, &site.gate[0]);
        assert_eq!(vehicles[0].holding, ["beam"]);
    }

    #[test]
    fn one_that_nobody_measured_is_named() {
        let site = site(&SITE.replace("width = \"8 ft\"", ""));
        let (vehicles, missing) = shown(&site, &site.gate[0]);
        assert!(vehicles.is_empty());
        assert_eq!(missing, ["rig"]);
    }
}
