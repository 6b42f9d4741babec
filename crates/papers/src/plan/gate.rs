//! One gate on the plan: leaf closed and open, posts, stops, what stands near, and the lengths that matter.

use super::ground::{around, seen_from_above};
use super::layers::Layers;
use super::symbols;
use draw::{Dimension, DimensionLine, Figure, Fill, Ink, Label, Placement, Point, Scene};
use quantity::{Angle, Length, Measured, Quantity};
use site::{Gate, GateKind, Leaf, PostRole, SwingSide};
use std::f64::consts::PI;

/// Draws a gate.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    draw_surroundings(scene, layers, gate);
    match gate.kind {
        GateKind::SingleSwing | GateKind::DoubleSwing => draw_swing(scene, layers, gate),
        GateKind::TrackSlide | GateKind::CantileverSlide => draw_slide(scene, layers, gate),
        GateKind::VerticalPivot | GateKind::VerticalLift | GateKind::BarrierArm => {
            draw_standing(scene, layers, gate)
        }
    }
    draw_posts(scene, layers, gate);
    draw_dimensions(scene, layers, gate);
}

fn draw_surroundings(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    for thing in &gate.nearby {
        let (Some(from), Some(to)) = (&thing.from, &thing.to) else {
            continue;
        };
        let (from, to) = (seen_from_above(from), seen_from_above(to));
        scene.add_titled(
            layers.surroundings,
            thing.what.to_string(),
            Figure::line(from, to),
        );
        scene.add(
            layers.notes,
            Label::new(from.middle(to), thing.what.to_string()),
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

fn draw_posts(scene: &mut Scene, layers: &Layers, gate: &Gate) {
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
        scene.add(layers.notes, Label::new(at, post.id.to_string()));
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

fn draw_dimensions(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    let paper = |millimeters: f64| DimensionLine::Away(Length::from_base(millimeters / 1000.0));
    if let Some(opening) = nominal(gate.clear_opening.as_ref()) {
        let ends = [Point::origin(), Point::new(opening, zero())];
        let words = format!(
            "clear opening {}",
            draw::dimension_text(opening, scene.units)
        );
        scene.add_titled(
            layers.dimensions,
            "clear opening",
            Dimension::horizontal(ends, paper(-24.0)).words([words]),
        );
    }
    if let Some(travel) = nominal(gate.travel.as_ref()) {
        let leaf_end = gate
            .leaf
            .first()
            .and_then(|leaf| nominal(leaf.length.as_ref()));
        if let Some(start) = leaf_end {
            let ends = [
                Point::new(start, zero()),
                Point::new(start + travel, zero()),
            ];
            let words = format!("travel {}", draw::dimension_text(travel, scene.units));
            scene.add_titled(
                layers.dimensions,
                "travel",
                Dimension::horizontal(ends, paper(-32.0)).words([words]),
            );
        }
    }
}

fn nominal<Q: Quantity>(measured: Option<&Measured<Q>>) -> Option<Q> {
    measured.map(Measured::nominal)
}

fn zero() -> Length {
    Length::from_base(0.0)
}
