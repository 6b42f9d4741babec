//! Vehicles in the gate from the side: how high each part is over the ground, and at which heights beams and loops see.

use super::layers::Layers;
use super::{at, held, reach, stretch, title, watching};
use crate::plan::tags::broken;
use design::vehicle::ShownVehicle;
use draw::{
    Anchor, Dimension, DimensionLine, Figure, Fill, Ink, Label, LayerId, Point, Scene, Text,
    TextHeight,
};
use quantity::{Length, Measured, Quantity as _};
use sim::vehicle::PartName;
use site::{Device, DeviceKind, Gate, Position, Site};

/// Clear ground before and behind the vehicles (m).
const BEFORE: f64 = 1.0;
/// Between one strip and the next (m).
const BETWEEN: f64 = 3.0;
/// How large the spot of a beam is drawn, and how deep and thick a loop (m).
const BEAM: f64 = 0.12;
const LOOP: (f64, f64) = (-0.22, -0.1);

/// Strips that stand side by side.
const COLUMNS: usize = 2;
/// Letters in a line of the words over a strip.
const LINE: usize = 56;

/// One vehicle's strip: where its gate line and its ground lie on the drawing.
struct Strip<'v> {
    vehicle: &'v ShownVehicle,
    gate: f64,
    ground: f64,
}

/// The scene of the vehicles of a gate.
pub(super) fn scene((site, gate): (&Site, &Gate), vehicles: &[ShownVehicle]) -> Scene {
    let title = format!("Vehicles at gate {}, from the side", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "Each vehicle that is expected, stopped in the gate, from its right side, the road at the left: the heights of its parts, of the beams and of the closed leaf, and how far the loops reach.",
    );
    let layers = Layers::add_to(&mut scene);
    let (left, right) = reach(vehicles);
    let span = (left - BEFORE, right + BEFORE);
    let parts = vehicles.iter().flat_map(|vehicle| &vehicle.outline.parts);
    let leaf = gate.leaf.first();
    let up = |length: Option<&Measured<Length>>| length.map_or(0.0, |it| it.nominal().base());
    let leaf_ends = leaf.map(|leaf| {
        let from = up(leaf.ground_clearance.as_ref());
        (from, from + up(leaf.height.as_ref()))
    });
    let highest = parts
        .map(|part| part.top.base())
        .chain(leaf_ends.map(|ends| ends.1))
        .fold(0.0, f64::max);
    for (index, vehicle) in vehicles.iter().enumerate() {
        let count = |number: usize| f64::from(u32::try_from(number).unwrap_or(0));
        let strip = Strip {
            vehicle,
            gate: count(index % COLUMNS) * (span.1 - span.0 + BETWEEN),
            ground: -count(index / COLUMNS) * (highest + 1.4 * BETWEEN),
        };
        strip.draw_ground(&mut scene, &layers, span);
        strip.draw_parts(&mut scene, &layers);
        if let Some(ends) = leaf_ends {
            strip.draw_leaf(&mut scene, &layers, ends);
        }
        for device in watching(site, vehicle) {
            strip.draw_device(&mut scene, &layers, device, span);
        }
        strip.draw_words(&mut scene, &layers, (span.0, highest));
    }
    scene.remark("The ground is drawn level. Seen from the right side of the lane: the road at the left, the property at the right; devices stand at their heights wherever they are across the lane.");
    scene
}

impl Strip<'_> {
    fn at(&self, along: f64, up: f64) -> Point {
        at(self.gate + along, self.ground + up)
    }

    fn draw_ground(&self, scene: &mut Scene, layers: &Layers, (left, right): (f64, f64)) {
        let line = Figure::line(self.at(left, 0.0), self.at(right, 0.0));
        scene.add_titled(layers.ground, "finished surface", line);
    }

    fn draw_parts(&self, scene: &mut Scene, layers: &Layers) {
        let mut ends: Vec<f64> = Vec::new();
        for part in &self.vehicle.outline.parts {
            let (from, to) = stretch(self.vehicle, part);
            let fill = match part.name {
                PartName::Tail => Fill::Open,
                _ => Fill::Solid(Ink::Tint),
            };
            let low = self.at(from, part.bottom.base());
            let high = self.at(to, part.top.base());
            let figure = Figure::rectangle(low, high, fill);
            scene.add_titled(layers.of(part.name), title(self.vehicle, part), figure);
            ends.extend([from, to]);
        }
        ends.sort_by(f64::total_cmp);
        ends.dedup_by(|one, other| (*one - *other).abs() < 1e-6);
        let points: Vec<Point> = ends.iter().map(|along| self.at(*along, 0.0)).collect();
        let line = DimensionLine::Away(Length::from_base(-0.011));
        let what = format!("lengths of {}", self.vehicle.id);
        scene.add_titled(layers.dimensions, what, Dimension::horizontal(points, line));
    }

    fn draw_leaf(&self, scene: &mut Scene, layers: &Layers, (from, to): (f64, f64)) {
        let line = Figure::line(self.at(0.0, from), self.at(0.0, to));
        scene.add_titled(layers.leaf, "where the leaf closes", line);
    }

    /// A beam as a spot, a loop as a bar in the ground, a scanner's field as a line.
    fn draw_device(
        &self,
        scene: &mut Scene,
        layers: &Layers,
        device: &Device,
        (left, right): (f64, f64),
    ) {
        let Some(from) = device.at.as_ref() else {
            return;
        };
        let along = |at: &Position| at.y.nominal().base();
        let (one, other) = (along(from), device.to.as_ref().map_or(along(from), along));
        let shown = |along: f64| (left..=right).contains(&along);
        let middle = f64::midpoint(one, other);
        if !shown(middle) {
            return;
        }
        let (layer, fill) = self.standing(layers, device);
        let title = format!("{} {}", device.kind, device.id);
        let named = match device.kind {
            DeviceKind::Loop => {
                let low = self.at(one.min(other).max(left), LOOP.0);
                let high = self.at(one.max(other).min(right), LOOP.1);
                scene.add_titled(layer, title, Figure::rectangle(low, high, fill));
                low.middle(high)
            }
            DeviceKind::AreaScanner => {
                let up = from.z.nominal().base();
                let corners = device.field.iter().map(along);
                let ends = corners.fold((one, one), |(low, high), y| (low.min(y), high.max(y)));
                let ends = (ends.0.max(left), ends.1.min(right));
                let line = Figure::line(self.at(ends.0, up), self.at(ends.1, up));
                scene.add_titled(layer, title, line);
                self.at(f64::midpoint(ends.0, ends.1), up)
            }
            _ => {
                let spot = self.at(middle, from.z.nominal().base());
                let circle = Figure::circle(spot, Length::from_base(BEAM), fill);
                scene.add_titled(layer, title, circle);
                spot
            }
        };
        let height = draw::dimension_text(from.z.nominal(), scene.units);
        let words = match device.kind {
            DeviceKind::Loop => device.id.to_string(),
            _ => format!("{} {height} up", device.id),
        };
        scene.add(layers.notes, Label::new(named, words));
    }

    /// The layer of a device, and how it is filled: black where it holds the leaf.
    fn standing(&self, layers: &Layers, device: &Device) -> (LayerId, Fill) {
        let holds = |name: &String| device.id == *name.as_str();
        if self.vehicle.holding.iter().any(holds) {
            (layers.holding, Fill::Solid(Ink::Black))
        } else {
            (layers.not_holding, Fill::Solid(Ink::Paper))
        }
    }

    fn draw_words(&self, scene: &mut Scene, layers: &Layers, (left, highest): (f64, f64)) {
        let height = TextHeight::Paper(Length::from_base(0.003));
        let held = broken(&held(self.vehicle), LINE);
        for (up, words, height) in [
            (1.8, self.vehicle.what.clone(), height),
            (1.15, held, TextHeight::ordinary()),
        ] {
            let text = Text::new(self.at(left, highest + up), words);
            scene.add(layers.notes, text.height(height).anchor(Anchor::Start));
        }
    }
}
