//! How a swing operator is mounted, seen from above at its post: hinge line, pins, the leaf closed and open.
//!
//! The hinge line is the origin; to the right is along the closed leaf, upward is the side to which it opens.

use crate::plan::gate::nominal;
use draw::{
    Dimension, DimensionLine, Figure, Fill, Ink, Label, Layer, LayerId, LinePattern, LineWeight,
    Point, Scene, Text,
};
use quantity::{Angle, Length, Measured, Quantity as _};
use site::{Gate, GateKind, Leaf, Mounting, Operator, Site};

/// How far the leaf is drawn beyond its front pin, as a share of the pin's distance.
const BEYOND: f64 = 1.25;

/// The sketches of a gate's swing operators whose pins are known, each with the operator's name.
pub(crate) fn scenes(site: &Site, gate: &Gate) -> Vec<(String, Scene)> {
    if !matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing) {
        return Vec::new();
    }
    let own = site.operators_of(gate);
    own.filter_map(|operator| {
        let pins = Pins::of(gate, operator.mounting.as_ref()?)?;
        Some((operator.id.to_string(), scene(site, gate, operator, &pins)))
    })
    .collect()
}

/// Where the pins are.
struct Pins<'a> {
    mounting: &'a Mounting,
    rear: Point,
    closed: Point,
    /// The front pin with the leaf open, and the angle of travel, where that is known.
    open: Option<(Point, Angle)>,
}

impl<'a> Pins<'a> {
    fn of(gate: &Gate, mounting: &'a Mounting) -> Option<Self> {
        let rear = Point::new(
            -mounting.rear_behind.as_ref()?.nominal(),
            mounting.rear_across.as_ref()?.nominal(),
        );
        let across = mounting.front_across.as_ref()?.nominal();
        let closed = Point::new(nominal(mounting.front_along.as_ref())?, across);
        let turn = nominal(gate.travel_angle.as_ref());
        let open = turn.map(|turn| (closed.turned(Point::origin(), turn), turn));
        Some(Self {
            mounting,
            rear,
            closed,
            open,
        })
    }

    /// The elbow of a folding arm for a place of the front pin; `None` where the arm does not reach or has no parts.
    fn elbow(&self, front: Point) -> Option<Point> {
        let (crank, link) = (
            nominal(self.mounting.crank.as_ref())?.base(),
            nominal(self.mounting.link.as_ref())?.base(),
        );
        let apart = self.rear.distance(front).base();
        let along = (apart * apart + crank * crank - link * link) / (2.0 * apart);
        let aside = crank * crank - along * along;
        (apart > 0.0 && aside >= 0.0).then(|| {
            let direction = self.rear.direction_to(front);
            let square = Angle::from_base(direction.base() + std::f64::consts::FRAC_PI_2);
            let foot = self.rear.toward(direction, Length::from_base(along));
            foot.toward(square, Length::from_base(aside.sqrt()))
        })
    }
}

struct Layers {
    open: LayerId,
    leaf: LayerId,
    drive: LayerId,
    pins: LayerId,
    axis: LayerId,
    wall: LayerId,
    dimensions: LayerId,
    notes: LayerId,
}

fn layers(scene: &mut Scene) -> Layers {
    use LineWeight::{Fine, Heavy, Medium};
    let mut layer = |layer: Layer| scene.layer(layer);
    Layers {
        wall: layer(Layer::new("wall", Medium).ink(Ink::Gray)),
        open: layer(Layer::new("open position", Medium).pattern(LinePattern::Dotted)),
        leaf: layer(Layer::new("leaf, closed", Heavy)),
        axis: layer(Layer::new("way of the front pin", Fine).pattern(LinePattern::DashDot)),
        drive: layer(Layer::new("drive, leaf closed", Medium)),
        pins: layer(Layer::new("pins and hinge line", Medium)),
        dimensions: layer(Layer::new("dimensions", Fine)),
        notes: layer(Layer::new("notes", Fine)),
    }
}

fn scene(site: &Site, gate: &Gate, operator: &Operator, pins: &Pins<'_>) -> Scene {
    let title = format!("Mounting of {}", operator.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "The pins of operator {} seen from above, the hinge line at the origin, the leaf closed to the right and open.",
        operator.id
    ));
    scene.remark("Seen from above; the hinge line is the origin, upward is the side to which the leaf opens. A leaf of the other hand is drawn mirrored.");
    let layers = layers(&mut scene);
    let leaf = gate.leaf.iter().find(|leaf| operator.drives(leaf));
    draw_leaf(&mut scene, &layers, leaf, pins);
    draw_drive(&mut scene, &layers, pins);
    draw_wall(&mut scene, &layers, pins);
    measure(&mut scene, &layers, pins);
    scene
}

/// The part of the leaf near its hinge, closed and open.
fn draw_leaf(scene: &mut Scene, layers: &Layers, leaf: Option<&Leaf>, pins: &Pins<'_>) {
    let thickness = leaf
        .and_then(|leaf| nominal(leaf.thickness.as_ref()))
        .unwrap_or_else(|| {
            scene.remark("The thickness of the leaf is not given; it is drawn 50 mm thick.");
            Length::from_base(0.05)
        });
    let half = thickness / 2.0;
    let end = pins.closed.x * BEYOND;
    let zero = Length::from_base(0.0);
    let corners = [
        Point::new(end, half),
        Point::new(zero, half),
        Point::new(zero, -half),
        Point::new(end, -half),
    ];
    scene.add_titled(layers.leaf, "leaf, closed", Figure::path(corners));
    if let Some((_, turn)) = pins.open {
        let open = corners.map(|corner| corner.turned(Point::origin(), turn));
        scene.add_titled(layers.open, "leaf, open", Figure::path(open));
        let tip = Point::new(end, zero).turned(Point::origin(), turn);
        let words = format!("leaf, open {:.0}°", turn.base().to_degrees());
        scene.add(layers.notes, Label::new(tip, words));
        let radius = Point::origin().distance(pins.closed);
        let start = Point::origin().direction_to(pins.closed);
        let way = Figure::arc(Point::origin(), radius, start, turn);
        scene.add_titled(layers.axis, "way of the front pin", way);
    }
    let named = [
        (Point::origin(), "hinge line"),
        (pins.rear, "rear pin"),
        (pins.closed, "front pin"),
    ];
    for (at, words) in named {
        let radius = Length::from_base(0.008);
        scene.add_titled(
            layers.pins,
            words,
            Figure::circle(at, radius, Fill::Solid(Ink::Black)),
        );
        scene.add(layers.notes, Label::new(at, words));
    }
}

/// The drive between its pins, or the two parts of its arm.
fn draw_drive(scene: &mut Scene, layers: &Layers, pins: &Pins<'_>) {
    let ends = [
        (layers.drive, Some(pins.closed)),
        (layers.open, pins.open.map(|(at, _)| at)),
    ];
    let folds = pins.mounting.crank.is_some() && pins.mounting.link.is_some();
    for (layer, front) in ends {
        let Some(front) = front else { continue };
        match pins.elbow(front) {
            Some(elbow) => {
                let arm = Figure::path([pins.rear, elbow, front]);
                scene.add_titled(layer, "folding arm", arm);
            }
            None if folds => scene.remark("The folding arm does not reach from the drive's axis to the leaf in one of its positions, and is not drawn there."),
            None => scene.add_titled(layer, "drive between its pins", Figure::line(pins.rear, front)),
        }
    }
    if !folds {
        tell_stroke(scene, pins);
    }
}

/// How long the drive is in each position, and what it has.
fn tell_stroke(scene: &mut Scene, pins: &Pins<'_>) {
    let units = scene.units;
    let text = |length| draw::dimension_text(length, units);
    let closed = pins.rear.distance(pins.closed);
    if let Some((open, _)) = pins.open {
        let open = pins.rear.distance(open);
        let stroke = Length::from_base((open - closed).base().abs());
        scene.remark(format!(
            "Between its pins the drive is {} long with the leaf closed and {} open: {} of stroke.",
            text(closed),
            text(open),
            text(stroke)
        ));
    }
    let own = |length: Option<&Measured<Length>>| nominal(length).map(text);
    match (
        own(pins.mounting.shortest.as_ref()),
        own(pins.mounting.longest.as_ref()),
    ) {
        (Some(shortest), Some(longest)) => scene.remark(format!(
            "The drive itself goes from {shortest} drawn in to {longest} run out."
        )),
        _ => scene.remark("How far the drive itself can be drawn in and run out is not given."),
    }
}

fn draw_wall(scene: &mut Scene, layers: &Layers, pins: &Pins<'_>) {
    let Some(across) = nominal(pins.mounting.wall_across.as_ref()) else {
        return;
    };
    let (left, right) = (pins.rear.x * 1.5, pins.closed.x * 0.6);
    let wall = Figure::line(Point::new(left, across), Point::new(right, across));
    scene.add_titled(layers.wall, "wall", wall);
    scene.add(layers.notes, Text::new(Point::new(right, across), "wall"));
}

/// The pins from the hinge line, along and across, and the drive between them.
fn measure(scene: &mut Scene, layers: &Layers, pins: &Pins<'_>) {
    let row = |away: f64| DimensionLine::Away(Length::from_base(away / 1000.0));
    let along = [pins.rear, Point::origin(), pins.closed];
    scene.add_titled(
        layers.dimensions,
        "pins along the leaf",
        Dimension::horizontal(along, row(-12.0)),
    );
    let rear = [Point::origin(), pins.rear];
    scene.add_titled(
        layers.dimensions,
        "rear pin across",
        Dimension::vertical(rear, row(-14.0)),
    );
    let front = [
        Point::new(pins.closed.x, Length::from_base(0.0)),
        pins.closed,
    ];
    scene.add_titled(
        layers.dimensions,
        "front pin across",
        Dimension::vertical(front, row(34.0)),
    );
    if pins.mounting.crank.is_none() {
        let drive = [pins.rear, pins.closed];
        scene.add_titled(
            layers.dimensions,
            "pin to pin, closed",
            Dimension::aligned(drive, row(9.0)),
        );
    }
}
