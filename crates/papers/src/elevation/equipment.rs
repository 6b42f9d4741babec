//! Operators and devices of a gate in the elevation, at their heights.

use super::layers::Layers;
use crate::plan::equipment::bar;
use crate::plan::symbols;
use crate::plan::tags::Tags;
use draw::{Figure, Placement, Point, Scene};
use quantity::{Angle, Quantity as _};
use site::{Device, DeviceKind, Gate, Position, Site};

/// Devices farther from the gate line than this are on the plan alone (m).
const NEAR_LINE: f64 = 0.6;

/// Beams farther from the gate line than this are on the plan alone (m).
const BEAMS: f64 = 2.5;

/// Devices nearer to each other than this share a symbol (m).
const SAME_PLACE: f64 = 0.1;

/// A position seen from the road.
pub(super) fn seen_from_road(position: &Position) -> Point {
    Point::new(position.x.nominal(), position.z.nominal())
}

/// Draws operators and devices.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    site: &Site,
    gate: &Gate,
    span: (f64, f64),
) {
    for operator in site.operators_of(gate) {
        match &operator.at {
            Some(at) => {
                let at = seen_from_road(at);
                let title = format!("operator {}", operator.id);
                scene.add_titled(
                    layers.devices,
                    title,
                    Placement::new(symbols::operator(), at),
                );
                tags.add(at, operator.id.to_string());
            }
            None => scene.remark(format!(
                "Operator {} is not drawn: its position is not given.",
                operator.id
            )),
        }
    }
    let mut drawn: Vec<Point> = Vec::new();
    for device in site
        .device
        .iter()
        .filter(|device| device.gate.as_ref() == Some(&gate.id))
    {
        draw_device(scene, layers, (tags, &mut drawn), device, span);
    }
}

fn draw_device(
    scene: &mut Scene,
    layers: &Layers,
    (tags, drawn): (&mut Tags, &mut Vec<Point>),
    device: &Device,
    (left, right): (f64, f64),
) {
    let Some(at) = &device.at else { return };
    let is_beam = matches!(
        device.kind,
        DeviceKind::ThroughBeam | DeviceKind::Reflective
    );
    let reach = if is_beam { BEAMS } else { NEAR_LINE };
    let x = at.x.nominal().base();
    if at.y.nominal().base().abs() > reach
        || !(left - 1.0..=right + 1.0).contains(&x)
        || device.kind == DeviceKind::Loop
    {
        return;
    }
    let title = format!("{} {}", device.kind, device.id);
    let from = seen_from_road(at);
    let other = device.to.as_ref().map(seen_from_road);
    match (device.kind, other) {
        (DeviceKind::ContactEdge, Some(other)) => {
            scene.add_titled(layers.edges, title, bar(from, other));
            tags.add(from.middle(other), device.id.to_string());
        }
        (_, Some(other)) if is_beam => {
            scene.add_titled(layers.beams, title.as_str(), Figure::line(from, other));
            let symbol = |kind, at: Point, toward: Point| {
                Placement::new(kind, at).rotation(at.direction_to(toward))
            };
            let far = if device.kind == DeviceKind::Reflective {
                symbols::reflector()
            } else {
                symbols::device(device.kind)
            };
            scene.add_titled(
                layers.devices,
                title.as_str(),
                symbol(symbols::device(device.kind), from, other),
            );
            scene.add_titled(
                layers.devices,
                format!("{title}, other end"),
                symbol(far, other, from),
            );
            tags.add(from, device.id.to_string());
        }
        _ => {
            if !drawn
                .iter()
                .any(|known| known.distance(from).base() < SAME_PLACE)
            {
                let symbol = Placement::new(symbols::device(device.kind), from)
                    .rotation(Angle::from_base(0.0));
                scene.add_titled(layers.devices, title, symbol);
                drawn.push(from);
            }
            tags.add(from, device.id.to_string());
        }
    }
}

/// Heights of the beams that are drawn, lowest first, each once (m).
pub(super) fn beam_heights(site: &Site, gate: &Gate) -> Vec<f64> {
    let is_beam = |device: &&Device| {
        matches!(
            device.kind,
            DeviceKind::ThroughBeam | DeviceKind::Reflective
        )
    };
    let of_gate = site
        .device
        .iter()
        .filter(|device| device.gate.as_ref() == Some(&gate.id));
    let places = of_gate
        .filter(is_beam)
        .filter_map(|device| device.at.as_ref());
    let near = places.filter(|at| at.y.nominal().base().abs() <= BEAMS);
    let mut heights: Vec<f64> = near.map(|at| at.z.nominal().base()).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|one, other| (*one - *other).abs() < 0.02);
    heights
}
