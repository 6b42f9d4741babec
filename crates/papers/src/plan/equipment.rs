//! Operators, devices, enclosures, supplies and panels on the plan.

use super::ground::seen_from_above;
use super::layers::Layers;
use super::symbols;
use draw::{Figure, Fill, Label, LayerId, Placement, Point, Scene, Symbol};
use quantity::{Angle, Quantity as _};
use site::{Device, DeviceKind, Position, Site};

/// Draws everything that has a position; gives back the names of what has none and is not inside an enclosure.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, site: &Site) -> Vec<String> {
    let mut unplaced = Vec::new();
    for enclosure in &site.enclosure {
        let title = format!("enclosure {}", enclosure.id);
        let placed = put(
            scene,
            layers,
            layers.enclosures,
            symbols::enclosure(),
            enclosure.at.as_ref(),
            &title,
            enclosure.id.as_str(),
        );
        note_unplaced(&mut unplaced, placed, enclosure.id.as_str());
    }
    for operator in &site.operator {
        let title = format!("operator {}", operator.id);
        let placed = put(
            scene,
            layers,
            layers.devices,
            symbols::operator(),
            operator.at.as_ref(),
            &title,
            operator.id.as_str(),
        );
        note_unplaced(&mut unplaced, placed, operator.id.as_str());
    }
    for supply in &site.supply {
        let title = format!("{} {}", supply.kind, supply.id);
        let placed = put(
            scene,
            layers,
            layers.devices,
            symbols::supply(),
            supply.at.as_ref(),
            &title,
            supply.id.as_str(),
        );
        note_unplaced(
            &mut unplaced,
            placed || supply.enclosure.is_some(),
            supply.id.as_str(),
        );
    }
    for panel in &site.solar_panel {
        let title = format!("solar panel {}", panel.id);
        let placed = put(
            scene,
            layers,
            layers.devices,
            symbols::solar_panel(),
            panel.at.as_ref(),
            &title,
            panel.id.as_str(),
        );
        note_unplaced(&mut unplaced, placed, panel.id.as_str());
    }
    for device in &site.device {
        let placed = draw_device(scene, layers, device);
        note_unplaced(
            &mut unplaced,
            placed || device.enclosure.is_some(),
            device.id.as_str(),
        );
    }
    unplaced
}

fn note_unplaced(unplaced: &mut Vec<String>, placed: bool, id: &str) {
    if !placed {
        unplaced.push(id.to_owned());
    }
}

/// Puts a symbol with its name; says whether it has a position.
fn put(
    scene: &mut Scene,
    layers: &Layers,
    layer: LayerId,
    symbol: Symbol,
    at: Option<&Position>,
    title: &str,
    id: &str,
) -> bool {
    let Some(at) = at.map(seen_from_above) else {
        return false;
    };
    scene.add_titled(layer, title, Placement::new(symbol, at));
    scene.add(layers.notes, Label::new(at, id));
    true
}

fn draw_device(scene: &mut Scene, layers: &Layers, device: &Device) -> bool {
    let Some(at) = device.at.as_ref().map(seen_from_above) else {
        return false;
    };
    let other = device.to.as_ref().map(seen_from_above);
    let title = format!("{} {}", device.kind, device.id);
    if let Some(other) = other {
        draw_reach(scene, layers, device.kind, at, other, &title);
    }
    if device.kind == DeviceKind::Loop && other.is_some() {
        let middle = other.map_or(at, |other| at.middle(other));
        scene.add(layers.notes, Label::new(middle, device.id.to_string()));
        return true;
    }
    let symbol =
        Placement::new(symbols::device(device.kind), at).rotation(looking(device, at, other));
    scene.add_titled(layers.devices, title.as_str(), symbol);
    if let (DeviceKind::ThroughBeam, Some(other)) = (device.kind, other) {
        let back =
            Placement::new(symbols::device(device.kind), other).rotation(other.direction_to(at));
        scene.add_titled(layers.devices, format!("{title}, other end"), back);
    }
    scene.add(layers.notes, Label::new(at, device.id.to_string()));
    true
}

/// The beam, strip or loop between the two ends of a device.
fn draw_reach(
    scene: &mut Scene,
    layers: &Layers,
    kind: DeviceKind,
    at: Point,
    other: Point,
    title: &str,
) {
    match kind {
        DeviceKind::Loop => scene.add_titled(
            layers.loops,
            title,
            Figure::rectangle(at, other, Fill::Open),
        ),
        DeviceKind::ThroughBeam | DeviceKind::Reflective | DeviceKind::ContactEdge => {
            scene.add_titled(layers.beams, title, Figure::line(at, other));
        }
        _ => {}
    }
}

/// Which way a device looks: as the site says, or else toward its other end.
fn looking(device: &Device, at: Point, other: Option<Point>) -> Angle {
    match (&device.facing, other) {
        (Some(facing), _) => facing.nominal(),
        (None, Some(other)) if other.distance(at).base() > 0.0 => at.direction_to(other),
        _ => Angle::from_base(0.0),
    }
}
