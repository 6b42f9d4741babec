//! One gate on the plan: leaf closed and open, posts, stops, what stands near, and the lengths that matter.

use super::ground::{around, seen_from_above};
use super::layers::Layers;
use super::symbols;
use super::tags::{Tags, broken};
use super::window::Window;
use draw::{Dimension, DimensionLine, Figure, Fill, Ink, Label, Placement, Point, Scene};
use quantity::{Angle, Length, Measured, Quantity};
use site::{DeviceKind, Gate, GateKind, Leaf, PostRole, Site, SwingSide};
use std::f64::consts::PI;

/// Letters in a line of a description.
const LINE: usize = 26;

/// Draws a gate with its posts and what stands near.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    gate: &Gate,
    window: &Window,
) {
    draw_surroundings(scene, layers, gate, window);
    draw_leaves(scene, layers, gate);
    draw_posts(scene, layers, tags, gate);
}

/// Draws the leaves, closed and open.
pub(super) fn draw_leaves(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    match gate.kind {
        GateKind::SingleSwing | GateKind::DoubleSwing => draw_swing(scene, layers, gate),
        GateKind::TrackSlide | GateKind::CantileverSlide => draw_slide(scene, layers, gate),
        GateKind::VerticalPivot | GateKind::VerticalLift | GateKind::BarrierArm => {
            draw_standing(scene, layers, gate);
        }
    }
}

fn draw_surroundings(scene: &mut Scene, layers: &Layers, gate: &Gate, window: &Window) {
    for thing in &gate.nearby {
        let (Some(from), Some(to)) = (&thing.from, &thing.to) else {
            continue;
        };
        let Some((from, to)) = window.cut(seen_from_above(from), seen_from_above(to)) else {
            continue;
        };
        scene.add_titled(
            layers.surroundings,
            thing.what.to_string(),
            Figure::line(from, to),
        );
        scene.add(
            layers.notes,
            Label::new(from.middle(to), broken(thing.what.as_ref(), LINE)),
        );
    }
}

fn draw_slide(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    for leaf in &gate.leaf {
        let Some(length) = nominal(leaf.length.as_ref()) else {
            continue;
        };
        draw_panel(
            scene,
            layers,
            leaf,
            Point::origin(),
            length,
            Angle::from_base(0.0),
            true,
        );
        if let Some(travel) = nominal(gate.travel.as_ref()) {
            let moved = Point::new(travel, zero());
            draw_panel(
                scene,
                layers,
                leaf,
                moved,
                length,
                Angle::from_base(0.0),
                false,
            );
        }
    }
}

fn draw_standing(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    for leaf in &gate.leaf {
        let Some(length) = nominal(leaf.length.as_ref()) else {
            continue;
        };
        draw_panel(
            scene,
            layers,
            leaf,
            Point::origin(),
            length,
            Angle::from_base(0.0),
            true,
        );
    }
}

fn draw_swing(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    for (index, leaf) in gate.leaf.iter().enumerate() {
        let Some(length) = nominal(leaf.length.as_ref()) else {
            continue;
        };
        let hinge_at_origin = gate.kind == GateKind::DoubleSwing && index == 0;
        let Some(hinge) = hinge_line(gate, hinge_at_origin) else {
            continue;
        };
        let closed = if hinge_at_origin { 0.0 } else { PI };
        draw_panel(
            scene,
            layers,
            leaf,
            hinge,
            length,
            Angle::from_base(closed),
            true,
        );
        let (Some(travel), Some(side)) = (nominal(gate.travel_angle.as_ref()), gate.swings) else {
            continue;
        };
        let into_property = side == SwingSide::IntoProperty;
        let turn = if into_property == hinge_at_origin {
            travel.base()
        } else {
            -travel.base()
        };
        draw_panel(
            scene,
            layers,
            leaf,
            hinge,
            length,
            Angle::from_base(closed + turn),
            false,
        );
        let (start, sweep) = if turn < 0.0 {
            (closed + turn, -turn)
        } else {
            (closed, turn)
        };
        let way = Figure::arc(
            hinge,
            length,
            Angle::from_base(start),
            Angle::from_base(sweep),
        );
        scene.add_titled(
            layers.open_position,
            format!("way of the tip of leaf {}", leaf.id),
            way,
        );
    }
}

/// Where a swing leaf turns: at the hinge post on its side if that has a position, else at the edge of the opening.
fn hinge_line(gate: &Gate, at_origin: bool) -> Option<Point> {
    let opening = nominal(gate.clear_opening.as_ref());
    let middle = opening.map_or(0.0, |opening| opening.base() / 2.0);
    let post = gate
        .post
        .iter()
        .filter(|post| post.role == PostRole::Hinge)
        .filter_map(|post| post.at.as_ref())
        .map(seen_from_above)
        .find(|at| (at.x.base() < middle) == at_origin);
    let edge = if at_origin { Some(zero()) } else { opening };
    match (post, edge) {
        (_, Some(edge)) => Some(Point::new(edge, zero())),
        (Some(post), None) => Some(post),
        (None, None) => None,
    }
}

/// A leaf from its hinge or its latching end, in one direction; a line where its thickness is not known.
fn draw_panel(
    scene: &mut Scene,
    layers: &Layers,
    leaf: &Leaf,
    from: Point,
    length: Length,
    direction: Angle,
    closed: bool,
) {
    let end = from.toward(direction, length);
    let figure = match nominal(leaf.thickness.as_ref()) {
        Some(thickness) => {
            let across = Angle::from_base(direction.base() + PI / 2.0);
            let half = thickness / 2.0;
            let corners = [
                from.toward(across, half),
                end.toward(across, half),
                end.toward(across, -half),
                from.toward(across, -half),
            ];
            Figure::area(corners, Fill::Open)
        }
        None => Figure::line(from, end),
    };
    let (layer, state) = if closed {
        (layers.leaves, "closed")
    } else {
        (layers.open_position, "open")
    };
    scene.add_titled(layer, format!("leaf {}, {state}", leaf.id), figure);
}

fn draw_posts(scene: &mut Scene, layers: &Layers, tags: &mut Tags, gate: &Gate) {
    for post in &gate.post {
        let Some(at) = post.at.as_ref().map(seen_from_above) else {
            continue;
        };
        let width = nominal(post.width.as_ref()).unwrap_or_else(|| Length::from_base(0.1));
        let title = format!("{} post {}", post.role, post.id);
        scene.add_titled(
            layers.posts,
            title,
            around(at, width, width, Fill::Solid(Ink::Black)),
        );
        tags.add(at, post.id.to_string());
    }
    for stop in &gate.stop {
        let Some(at) = stop.at.as_ref().map(seen_from_above) else {
            continue;
        };
        scene.add_titled(
            layers.posts,
            format!("positive stop, {} position", stop.end),
            Placement::new(symbols::stop(), at),
        );
    }
}

/// The lengths that matter: opening and travel along the gate, beams before and behind the leaf.
pub(super) fn dimensions(
    scene: &mut Scene,
    layers: &Layers,
    site: &Site,
    gate: &Gate,
    window: &Window,
) {
    let row = |millimeters: f64| {
        let lowest = Point::new(zero(), Length::from_base(window.below));
        DimensionLine::Beyond(lowest, Length::from_base(-millimeters / 1000.0))
    };
    let system = scene.units;
    let said =
        |what: &str, length: Length| format!("{what} {}", draw::dimension_text(length, system));
    if let Some(opening) = nominal(gate.clear_opening.as_ref()) {
        let ends = [Point::origin(), Point::new(opening, zero())];
        scene.add_titled(
            layers.dimensions,
            "clear opening",
            Dimension::horizontal(ends, row(6.0)).words([said("clear opening", opening)]),
        );
    }
    let leaf = gate
        .leaf
        .first()
        .and_then(|leaf| nominal(leaf.length.as_ref()));
    if let (Some(leaf), Some(travel)) = (leaf, nominal(gate.travel.as_ref())) {
        let ends = [Point::new(leaf, zero()), Point::new(leaf + travel, zero())];
        scene.add_titled(
            layers.dimensions,
            "travel",
            Dimension::horizontal(ends, row(6.0)).words([said("travel", travel)]),
        );
    }
    let beams = beam_distances(site, gate, window);
    if beams.len() > 1 {
        let side = DimensionLine::Beyond(
            Point::new(Length::from_base(window.left), zero()),
            Length::from_base(-0.008),
        );
        scene.add_titled(
            layers.dimensions,
            "beams before and behind the leaf",
            Dimension::vertical(beams, side),
        );
    }
}

/// The leaf's plane and the crossing of each beam that stands off it, from the road side to the property side.
fn beam_distances(site: &Site, gate: &Gate, window: &Window) -> Vec<Point> {
    let crosses =
        |kind: DeviceKind| matches!(kind, DeviceKind::ThroughBeam | DeviceKind::Reflective);
    let mut across: Vec<f64> = site
        .device
        .iter()
        .filter(|device| crosses(device.kind) && device.gate.as_ref() == Some(&gate.id))
        .filter_map(|device| device.at.as_ref())
        .filter(|at| window.shows_position(at))
        .map(|at| at.y.nominal().base())
        .chain([0.0])
        .collect();
    across.sort_by(f64::total_cmp);
    across.dedup_by(|a, b| (*a - *b).abs() < 0.02);
    across
        .into_iter()
        .map(|y| Point::new(Length::from_base(window.left), Length::from_base(y)))
        .collect()
}

fn nominal<Q: Quantity>(measured: Option<&Measured<Q>>) -> Option<Q> {
    measured.map(Measured::nominal)
}

fn zero() -> Length {
    Length::from_base(0.0)
}
