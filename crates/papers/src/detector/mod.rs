//! What sees vehicles at a gate, from above: loops and fields to scale, each with its name, what it does and in which
//! direction of the leaf it is live; fields as chalked, and as their detector is set where that lies elsewhere.

mod layers;
mod live;

use crate::plan::window::Window;
use crate::plan::{around_vehicles, seen_from_above};
use crate::sheets::{Planned, north, sheet_name};
use design::field::ShownField;
use draw::{Figure, Fill, Label, Point, ScaleChoice, Scene};
use layers::Layers;
use live::words;
use quantity::{Length, Quantity as _};
use site::{Device, DeviceKind, Disturbance, Gate, Site};

/// Clear ground around what is shown (m).
const AROUND: f64 = 1.5;

/// The sheet of the detectors of a gate; none where there is none.
pub(crate) fn planned(site: &Site, gate: &Gate) -> Option<Planned> {
    let here = |device: &&Device| {
        let own = device
            .gate
            .as_ref()
            .map_or(site.gate.len() == 1, |name| *name == gate.id);
        own && device.carried_by.is_none() && extent(device).is_some()
    };
    let devices: Vec<&Device> = site.device.iter().filter(here).collect();
    if devices.is_empty() {
        return None;
    }
    Some(Planned {
        name: sheet_name(site, gate, "detectors-plan"),
        scene: scene((site, gate), &devices),
        north: north(site),
        scale: ScaleChoice::LargestThatFits,
        half: false,
    })
}

/// The corners of the ground that a loop or a field takes, in order around it.
fn extent(device: &Device) -> Option<Vec<Point>> {
    match (device.kind, &device.at, &device.to) {
        (DeviceKind::Loop, Some(at), Some(to)) => {
            Some(rectangle(seen_from_above(at), seen_from_above(to)))
        }
        (DeviceKind::AreaScanner, _, _) if device.field.len() > 2 => {
            Some(device.field.iter().map(seen_from_above).collect())
        }
        _ => None,
    }
}

fn rectangle(one: Point, other: Point) -> Vec<Point> {
    vec![
        one,
        Point::new(other.x, one.y),
        other,
        Point::new(one.x, other.y),
    ]
}

fn scene((site, gate): (&Site, &Gate), devices: &[&Device]) -> Scene {
    let title = format!("Detectors of vehicles at gate {}", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "Loops and fields from above, to scale, road side below: what each does when it sees a vehicle, and in which direction of the leaf it is live.",
    );
    let layers = Layers::add_to(&mut scene);
    let window = window(gate, devices);
    around_vehicles(&mut scene, (site, gate), &window, &[]);
    let fields = design::field::shown(site);
    for device in devices {
        let Some(corners) = extent(device) else {
            continue;
        };
        let set = fields.iter().find(|field| device.id == *field.id.as_str());
        draw_set(&mut scene, &layers, set, &corners);
        let layer = layers.of(device);
        let figure = Figure::area(corners.clone(), Fill::Open);
        scene.add_titled(layer, format!("{} {}", device.kind, device.id), figure);
        scene.add(layers.notes, Label::new(right_of(&corners), words(device)));
    }
    draw_disturbances(&mut scene, &layers, devices);
    scene.remark("The road lies below, the property above.");
    scene.remark(
        "What detects vehicles protects property and counts for nobody on foot. The edge of each field is walked with the test board and chalked; the highest chassis and the longest drawbar are driven over each loop.",
    );
    scene
}

/// The field as the detector is set, where the site says how; its corners are told apart from those that were chalked.
fn draw_set(scene: &mut Scene, layers: &Layers, set: Option<&ShownField>, chalked: &[Point]) {
    let Some(set) = set else { return };
    let corners: Vec<Point> = set
        .corners
        .iter()
        .map(|(x, y)| Point::new(*x, *y))
        .collect();
    let lies_elsewhere = !same_side(&corners, chalked);
    let figure = Figure::area(corners.clone(), Fill::Open);
    scene.add_titled(
        layers.set,
        format!("field of {} as it is set", set.id),
        figure,
    );
    if lies_elsewhere {
        let words = format!(
            "{} is set to watch here:\nleft and right are swapped",
            set.id
        );
        scene.add(layers.notes, Label::new(right_of(&corners), words));
    }
}

/// The middles of both lie on the same side of the gate line.
fn same_side(one: &[Point], other: &[Point]) -> bool {
    (middle(one).y.base() > 0.0) == (middle(other).y.base() > 0.0)
}

/// What may pass for a vehicle, once even where several fields lie beside it.
fn draw_disturbances(scene: &mut Scene, layers: &Layers, devices: &[&Device]) {
    let mounts = devices
        .iter()
        .filter_map(|device| device.field_mount.as_ref());
    let mut drawn: Vec<(Point, Point)> = Vec::new();
    for thing in mounts.flat_map(|mount| &mount.disturbance) {
        let ends = (seen_from_above(&thing.from), seen_from_above(&thing.to));
        if !drawn.contains(&ends) {
            draw_disturbance(scene, layers, thing, ends);
            drawn.push(ends);
        }
    }
}

fn draw_disturbance(
    scene: &mut Scene,
    layers: &Layers,
    thing: &Disturbance,
    (from, to): (Point, Point),
) {
    let figure = Figure::rectangle(from, to, Fill::Open);
    scene.add_titled(layers.disturbing, thing.what.as_str(), figure);
    let masked = if thing.masked == Some(true) {
        ", masked"
    } else {
        ""
    };
    let words = format!("{}{masked}", thing.what);
    scene.add(layers.notes, Label::new(from.middle(to), words));
}

/// The middle of the right side of what is shown, where its words stand.
fn right_of(corners: &[Point]) -> Point {
    let right = corners.iter().map(|corner| corner.x.base());
    let right = right.fold(f64::NEG_INFINITY, f64::max);
    Point::new(Length::from_base(right), middle(corners).y)
}

fn middle(corners: &[Point]) -> Point {
    let count = f64::from(u32::try_from(corners.len().max(1)).unwrap_or(1));
    let sum =
        |of: fn(&Point) -> Length| -> f64 { corners.iter().map(|corner| of(corner).base()).sum() };
    Point::new(
        Length::from_base(sum(|point| point.x) / count),
        Length::from_base(sum(|point| point.y) / count),
    )
}

/// The ground that is shown: the opening, and everything that a detector takes or that disturbs it near the gate.
fn window(gate: &Gate, devices: &[&Device]) -> Window {
    let opening = gate.clear_opening.as_ref();
    let opening = opening.map_or(0.0, |opening| opening.nominal().base());
    let all = devices.iter().filter_map(|device| extent(device)).flatten();
    let ends = all.fold(
        (0.0_f64, 0.0_f64, opening, 0.0_f64),
        |(left, low, right, high), point| {
            let (x, y) = (point.x.base(), point.y.base());
            (left.min(x), low.min(y), right.max(x), high.max(y))
        },
    );
    let at = |x: f64, y: f64| Point::new(Length::from_base(x), Length::from_base(y));
    Window::between(
        at(ends.0 - AROUND, ends.1 - AROUND),
        at(ends.2 + AROUND, ends.3 + AROUND),
    )
}
