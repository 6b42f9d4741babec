//! What protects at a gate, with its reach: beams from end to end, fields, contact edges, and the drives that sense.

use super::layers::Layers;
use super::seen::Seen;
use crate::plan::equipment::{bar, edge, looking};
use crate::plan::symbols;
use crate::plan::tags::Tags;
use draw::{Figure, Fill, Placement, Point, Scene};
use quantity::{Angle, Length, Quantity as _, UnitSystem};
use site::{Device, DeviceKind, Gate, Position, Site};

/// Ends nearer to each other than this on the drawing are one (m).
const ONE_POINT: f64 = 0.01;

/// The protective devices of a gate; a device that names no gate belongs to the only one.
pub(super) fn protecting<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s Device> {
    let only = site.gate.len() == 1;
    site.device.iter().filter(move |device| {
        let mine = device.gate.as_ref().map_or(only, |name| *name == gate.id);
        mine && device.protection.is_some() && device.kind != DeviceKind::Loop
    })
}

/// Every point of the protective devices and the drives.
pub(super) fn points(site: &Site, gate: &Gate, seen: Seen) -> Vec<Point> {
    let ends = |device: &Device| -> Vec<Point> {
        let ends = [device.at.as_ref(), device.to.as_ref()];
        let ends = ends.into_iter().flatten().chain(&device.field);
        ends.map(|at| seen.position(at)).collect()
    };
    let drives = site.operators_of(gate).filter_map(|it| it.at.as_ref());
    let drives = drives.map(|at| seen.position(at));
    protecting(site, gate)
        .flat_map(ends)
        .chain(drives)
        .collect()
}

/// Draws them with their names.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    (site, gate): (&Site, &Gate),
    seen: Seen,
) {
    for operator in site.operators_of(gate) {
        if let Some(at) = operator.at.as_ref().map(|at| seen.position(at)) {
            let title = format!("operator {}", operator.id);
            let symbol = Placement::new(symbols::operator(), at);
            scene.add_titled(layers.devices, title, symbol);
            tags.add(at, operator.id.to_string());
        }
    }
    for device in protecting(site, gate) {
        match &device.at {
            Some(at) => draw_device(scene, layers, tags, (device, at), seen),
            None => scene.remark(format!(
                "{} is not drawn: its position is not given.",
                device.id
            )),
        }
    }
}

fn draw_device(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    (device, at): (&Device, &Position),
    seen: Seen,
) {
    let title = format!("{} {}", device.kind, device.id);
    let at = seen.position(at);
    let to = device.to.as_ref().map(|to| seen.position(to));
    match (device.kind, to) {
        (DeviceKind::ContactEdge, Some(to)) => {
            let strip = match seen {
                Seen::FromAbove => edge(device, at, to),
                Seen::FromRoad if at.distance(to).base() > ONE_POINT => bar(at, to),
                Seen::FromRoad => line_or_dot(at, to),
            };
            scene.add_titled(layers.edges, title, strip);
            tags.add(at.middle(to), device.id.to_string());
            return;
        }
        (DeviceKind::ThroughBeam | DeviceKind::Reflective, Some(to)) => {
            scene.add_titled(layers.beams, title.as_str(), line_or_dot(at, to));
            if at.distance(to).base() > ONE_POINT {
                let back = if device.kind == DeviceKind::Reflective {
                    symbols::reflector()
                } else {
                    symbols::device(device.kind)
                };
                let back = Placement::new(back, to).rotation(to.direction_to(at));
                scene.add_titled(layers.devices, format!("{title}, other end"), back);
            }
        }
        (DeviceKind::AreaScanner, _) => draw_field(scene, layers, device, at, seen),
        _ => {}
    }
    let turned = match (seen, to) {
        (Seen::FromAbove, _) => looking(device, seen_from_above(device)),
        (Seen::FromRoad, Some(to)) if at.distance(to).base() > ONE_POINT => at.direction_to(to),
        (Seen::FromRoad, _) => Angle::from_base(0.0),
    };
    let symbol = Placement::new(symbols::device(device.kind), at).rotation(turned);
    scene.add_titled(layers.devices, title, symbol);
    tags.add(at, name(device, seen, scene.units));
}

/// The name of a device; seen from the road with the heights of its ends.
fn name(device: &Device, seen: Seen, units: UnitSystem) -> String {
    let up = |at: &Position| draw::dimension_text(at.z.nominal(), units);
    let ends = (device.at.as_ref().map(up), device.to.as_ref().map(up));
    let height = match (seen, ends) {
        (Seen::FromAbove, _) | (_, (None, _)) => return device.id.to_string(),
        (_, (Some(one), Some(other))) if one != other => format!("{one} and {other} up"),
        (_, (Some(one), _)) => format!("{one} up"),
    };
    format!("{} {height}", device.id).replace(' ', "\u{a0}")
}

fn seen_from_above(device: &Device) -> Option<Point> {
    device.to.as_ref().map(|to| Seen::FromAbove.position(to))
}

/// A line, or where it runs toward whoever looks a dot.
fn line_or_dot(at: Point, to: Point) -> Figure {
    if at.distance(to).base() > ONE_POINT {
        Figure::line(at, to)
    } else {
        Figure::circle(at, Length::from_base(0.03), Fill::Open)
    }
}

/// The field by its corners; from above else by range and angle.
fn draw_field(scene: &mut Scene, layers: &Layers, device: &Device, at: Point, seen: Seen) {
    let title = format!("field of {}", device.id);
    let corners: Vec<Point> = device.field.iter().map(|at| seen.position(at)).collect();
    if corners.len() >= 3 {
        let by_x = |one: &Point, other: &Point| one.x.base().total_cmp(&other.x.base());
        let ends = [
            corners.iter().copied().min_by(by_x),
            corners.iter().copied().max_by(by_x),
        ];
        let figure = match (seen, ends) {
            (Seen::FromRoad, [Some(left), Some(right)]) => line_or_dot(left, right),
            _ => Figure::area(corners, Fill::Open),
        };
        scene.add_titled(layers.fields, title, figure);
        return;
    }
    let (Seen::FromAbove, Some(range), Some(angle), Some(facing)) =
        (seen, &device.range, &device.field_angle, &device.facing)
    else {
        return;
    };
    let (range, angle, facing) = (
        range.nominal(),
        angle.nominal().base(),
        facing.nominal().base(),
    );
    let start = Angle::from_base(facing - angle / 2.0);
    let end = Angle::from_base(facing + angle / 2.0);
    let arc = Figure::arc(at, range, start, Angle::from_base(angle));
    scene.add_titled(layers.fields, title.as_str(), arc);
    for side in [start, end] {
        let line = Figure::line(at, at.toward(side, range));
        scene.add_titled(layers.fields, title.as_str(), line);
    }
}
