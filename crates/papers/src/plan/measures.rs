//! The lengths that matter on the plan of a gate: along it, across it, and of its swing leaves.

use super::gate::{Turning, nominal, zero};
use super::ground::seen_from_above;
use super::layers::Layers;
use super::rows::{self, FIRST_ROW, NEXT_ROW, Stretch};
use super::window::Window;
use draw::{Dimension, DimensionLine, Point, Scene};
use quantity::{Angle, Length, Quantity as _};
use site::{Device, DeviceKind, Gate, PostRole, Site};

/// From an open leaf to its dimension (mm).
const BESIDE_LEAF: f64 = 11.0;

/// Draws the dimensions of a gate.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, site: &Site, gate: &Gate, window: &Window) {
    draw_along(scene, layers, gate, window);
    draw_leaves(scene, layers, gate);
    let columns = [
        (
            "beams before and behind the leaf",
            beam_distances(site, gate, window),
        ),
        (
            "loops before and behind the leaf",
            loop_distances(site, gate, window),
        ),
    ];
    let mut away = FIRST_ROW;
    for (what, distances) in columns {
        if distances.len() > 1 {
            draw_across(scene, layers, window, what, (&distances, away));
            away += 2.0 * NEXT_ROW;
        }
    }
}

/// Opening, travel, run-back, posts and slide leaf, in as few rows as they take without overlapping.
fn draw_along(scene: &mut Scene, layers: &Layers, gate: &Gate, window: &Window) {
    let lowest = Point::new(zero(), Length::from_base(window.below));
    rows::draw(scene, layers.dimensions, (zero(), lowest), along(gate));
}

/// What is measured along the gate, the most important first.
fn along(gate: &Gate) -> Vec<Stretch> {
    let number = |length| nominal(length).map(|length: Length| length.base());
    let opening = number(gate.clear_opening.as_ref());
    let slides = gate.travel.is_some() || gate.run_back.is_some();
    let leaf = gate
        .leaf
        .first()
        .filter(|_| slides)
        .and_then(|leaf| number(leaf.length.as_ref()));
    let after = |what, from: Option<f64>, length: Option<f64>| {
        from.zip(length).map(|(from, length)| Stretch {
            what,
            from,
            to: from + length,
        })
    };
    [
        after("clear opening", Some(0.0), opening),
        after("run-back", opening, number(gate.run_back.as_ref())),
        posts(gate),
        after("travel", leaf, number(gate.travel.as_ref())),
        after("leaf", Some(0.0), leaf),
    ]
    .into_iter()
    .flatten()
    .filter(|stretch| stretch.to > stretch.from)
    .collect()
}

/// From the center of the first of the gate's own posts to that of the last.
fn posts(gate: &Gate) -> Option<Stretch> {
    let places: Vec<f64> = gate
        .post
        .iter()
        .filter(|post| post.role != PostRole::Device)
        .filter_map(|post| post.at.as_ref())
        .map(|at| at.x.nominal().base())
        .collect();
    let from = places.iter().copied().reduce(f64::min)?;
    let to = places.iter().copied().reduce(f64::max)?;
    Some(Stretch {
        what: "posts, center to center",
        from,
        to,
    })
}

/// The length of each swing leaf, along its open position and inside its arc.
fn draw_leaves(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    for (index, leaf) in gate.leaf.iter().enumerate() {
        let Some((turning, turn)) =
            Turning::of(gate, index, leaf).and_then(|it| it.turn.map(|turn| (it, turn)))
        else {
            continue;
        };
        let tip = turning
            .hinge
            .toward(Angle::from_base(turning.closed + turn), turning.length);
        let inside = -BESIDE_LEAF.copysign(turn) / 1000.0;
        let line = DimensionLine::Away(Length::from_base(inside));
        scene.add_titled(
            layers.dimensions,
            format!("length of leaf {}", leaf.id),
            Dimension::aligned([turning.hinge, tip], line),
        );
    }
}

/// A column of dimensions from road to property.
fn draw_across(
    scene: &mut Scene,
    layers: &Layers,
    window: &Window,
    what: &str,
    (distances, away): (&[f64], f64),
) {
    let left = Length::from_base(window.left);
    let points: Vec<Point> = distances
        .iter()
        .map(|y| Point::new(left, Length::from_base(*y)))
        .collect();
    let line = DimensionLine::Beyond(Point::new(left, zero()), Length::from_base(-away / 1000.0));
    scene.add_titled(layers.dimensions, what, Dimension::vertical(points, line));
}

/// Devices of this gate of some kinds.
fn of_kinds<'a>(
    site: &'a Site,
    gate: &'a Gate,
    kinds: &'a [DeviceKind],
) -> impl Iterator<Item = &'a Device> {
    site.device
        .iter()
        .filter(|device| kinds.contains(&device.kind) && device.gate.as_ref() == Some(&gate.id))
}

/// The leaf's plane and the crossing of each beam that stands off it.
fn beam_distances(site: &Site, gate: &Gate, window: &Window) -> Vec<f64> {
    let crosses = [DeviceKind::ThroughBeam, DeviceKind::Reflective];
    let across = of_kinds(site, gate, &crosses)
        .filter_map(|device| device.at.as_ref())
        .filter(|at| window.shows_position(at))
        .map(|at| at.y.nominal().base());
    in_order(across)
}

/// The leaf's plane and both edges of each loop.
fn loop_distances(site: &Site, gate: &Gate, window: &Window) -> Vec<f64> {
    let across = of_kinds(site, gate, &[DeviceKind::Loop])
        .filter_map(|device| device.at.as_ref().zip(device.to.as_ref()))
        .filter(|(at, _)| window.shows_position(at))
        .flat_map(|(at, to)| [at, to].map(|end| seen_from_above(end).y.base()))
        .collect::<Vec<f64>>();
    in_order(across.into_iter())
}

/// Distances from road to property with the leaf's plane among them; those nearer than 20 mm count as one.
fn in_order(distances: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut all: Vec<f64> = distances.chain([0.0]).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| (*a - *b).abs() < 0.02);
    all
}
