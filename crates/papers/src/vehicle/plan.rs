//! Vehicles in the gate from above: for each a copy of the opening with its loops and beams, side by side.

use super::layers::Layers;
use super::{at, held, reach, stretch, title, watching};
use crate::plan::tags::broken;
use crate::plan::window::Window;
use crate::plan::{around_vehicles, seen_from_above};
use design::vehicle::ShownVehicle;
use draw::{Anchor, Dimension, DimensionLine, Figure, Fill, Ink, Point, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _};
use sim::vehicle::PartName;
use site::{Gate, Site};

/// Clear ground beside what watches, and before and behind the vehicles (m).
const BESIDE: f64 = 0.5;
const BEFORE: f64 = 1.5;
/// Between the copies, as a share of the width of one.
const BETWEEN: f64 = 0.3;
/// Letters in a line of the words under a copy.
const LINE: usize = 26;

/// The scene of the vehicles of a gate.
pub(super) fn scene((site, gate): (&Site, &Gate), vehicles: &[ShownVehicle]) -> Scene {
    let title = format!("Vehicles at gate {}, from above", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "Each vehicle that is expected, stopped in the gate, over the loops and beams: its parts with the open space between them, and what holds the leaf there.",
    );
    let layers = Layers::add_to(&mut scene);
    let (low, high) = corners((site, gate), vehicles);
    let window = Window::between(low, high);
    let step = (high.x - low.x).base() * (1.0 + BETWEEN);
    for (index, vehicle) in vehicles.iter().enumerate() {
        let aside = f64::from(u32::try_from(index).unwrap_or(0)) * step;
        let watching: Vec<&str> = watching(site, vehicle)
            .iter()
            .map(|one| one.id.as_str())
            .collect();
        let mut whole = Scene::new("", scene.units);
        around_vehicles(&mut whole, (site, gate), &window, &watching);
        let to = low.moved(Length::from_base(aside), Length::from_base(0.0));
        scene.take_part(&whole, (low, high), to);
        draw_vehicle(&mut scene, &layers, vehicle, aside);
        draw_words(
            &mut scene,
            &layers,
            vehicle,
            (to, to.moved(high.x - low.x, high.y - low.y)),
        );
    }
    scene
}

/// The part of the site that each copy shows.
fn corners((site, gate): (&Site, &Gate), vehicles: &[ShownVehicle]) -> (Point, Point) {
    let opening = gate.clear_opening.as_ref();
    let opening = opening.map_or(0.0, |opening| opening.nominal().base());
    let (below, above) = reach(vehicles);
    let (below, above) = (below - BEFORE, above + BEFORE);
    let near = |point: &Point| (below..=above).contains(&point.y.base());
    let devices = vehicles
        .first()
        .map_or(Vec::new(), |first| watching(site, first));
    let ends = devices
        .iter()
        .flat_map(|device| [device.at.as_ref(), device.to.as_ref()])
        .flatten()
        .map(seen_from_above)
        .filter(near)
        .map(|point| point.x.base());
    let (left, right) = ends.fold((0.0_f64, opening), |(left, right), x| {
        (left.min(x), right.max(x))
    });
    (at(left - BESIDE, below), at(right + BESIDE, above))
}

fn draw_vehicle(scene: &mut Scene, layers: &Layers, vehicle: &ShownVehicle, aside: f64) {
    let middle = vehicle.middle.base() + aside;
    for part in &vehicle.outline.parts {
        let (from, to) = stretch(vehicle, part);
        let half = part.width.base() / 2.0;
        let fill = match part.name {
            PartName::Tail => Fill::Open,
            _ => Fill::Solid(Ink::Tint),
        };
        let figure = Figure::rectangle(at(middle - half, from), at(middle + half, to), fill);
        scene.add_titled(layers.of(part.name), title(vehicle, part), figure);
    }
    draw_front(scene, layers, vehicle, middle);
    draw_lengths(scene, layers, vehicle, middle);
}

/// A slanted line to each corner of the front: which way the vehicle looks.
fn draw_front(scene: &mut Scene, layers: &Layers, vehicle: &ShownVehicle, middle: f64) {
    let Some(body) = vehicle
        .outline
        .parts
        .iter()
        .find(|part| part.name == PartName::Body)
    else {
        return;
    };
    let (front, half) = (vehicle.front.base(), body.width.base() / 2.0);
    let back = front - 0.6 * half;
    let corners = [
        at(middle - half, back),
        at(middle, front),
        at(middle + half, back),
    ];
    let front = Figure::path(corners);
    scene.add_titled(
        layers.of(PartName::Body),
        format!("front of {}", vehicle.id),
        front,
    );
}

/// The lengths of the parts, in a chain beside the vehicle.
fn draw_lengths(scene: &mut Scene, layers: &Layers, vehicle: &ShownVehicle, middle: f64) {
    let mut ends: Vec<f64> = Vec::new();
    for part in &vehicle.outline.parts {
        let (from, to) = stretch(vehicle, part);
        ends.extend([from, to]);
    }
    ends.sort_by(f64::total_cmp);
    ends.dedup_by(|one, other| (*one - *other).abs() < 1e-6);
    let wide = vehicle.outline.parts.iter().map(|part| part.width.base());
    let side = middle + wide.fold(0.0, f64::max) / 2.0;
    let points: Vec<Point> = ends.iter().map(|y| at(side, *y)).collect();
    let line = DimensionLine::Away(Length::from_base(0.004));
    let chain = Dimension::vertical(points, line);
    scene.add_titled(
        layers.dimensions,
        format!("lengths of {}", vehicle.id),
        chain,
    );
}

/// What it is, above; what holds the leaf, below.
fn draw_words(
    scene: &mut Scene,
    layers: &Layers,
    vehicle: &ShownVehicle,
    (low, high): (Point, Point),
) {
    let middle = low.middle(high).x;
    let height = TextHeight::Paper(Length::from_base(0.003));
    let share = |share: f64| (high.y - low.y) * share;
    let name = broken(&vehicle.what, LINE);
    let lines = f64::from(u32::try_from(name.lines().count()).unwrap_or(1));
    let above = Point::new(middle, high.y + share(0.02 + 0.03 * (lines - 1.0)));
    let below = Point::new(middle, low.y - share(0.05));
    let text = |at, words: String| Text::new(at, words).anchor(Anchor::Middle);
    scene.add(layers.notes, text(above, name).height(height));
    scene.add(layers.notes, text(below, broken(&held(vehicle), LINE)));
}
