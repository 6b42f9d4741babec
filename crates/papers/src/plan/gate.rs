//! One gate on the plan: leaf closed and open, posts, stops, what stands near, and the lengths that matter.

use super::ground::{around, seen_from_above};
use super::layers::Layers;
use super::symbols;
use super::tags::{LINE, Tags, broken};
use super::window::Window;
use draw::{Figure, Fill, Ink, Label, Placement, Point, Scene, Text};
use quantity::{Angle, Length, Measured, Quantity};
use site::{Gate, GateKind, Leaf, PostRole, SwingSide};
use std::f64::consts::PI;

/// How far the word beside an open slide leaf stands from it (m).
const BESIDE_LEAF: f64 = 0.4;

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
    draw_words_of_leaves(scene, layers, gate);
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
    for (middle, what) in draw_near(scene, layers, gate, window) {
        scene.add(layers.notes, Label::new(middle, broken(what, LINE)));
    }
}

/// Draws the fixed things near a gate; gives the middle of each and what it is.
pub(super) fn draw_near<'g>(
    scene: &mut Scene,
    layers: &Layers,
    gate: &'g Gate,
    window: &Window,
) -> Vec<(Point, &'g str)> {
    let mut drawn = Vec::new();
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
        drawn.push((from.middle(to), thing.what.as_ref()));
    }
    drawn
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

/// How a swing leaf turns.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Turning {
    /// Its hinge line.
    pub(crate) hinge: Point,
    pub(crate) length: Length,
    /// Direction of the closed leaf from its hinge (rad).
    pub(crate) closed: f64,
    /// How far it turns, counter-clockwise when positive (rad); `None` when nobody has said.
    pub(crate) turn: Option<f64>,
}

impl Turning {
    /// How a leaf of this gate turns; `None` for a gate that doesn't swing or isn't measured.
    pub(crate) fn of(gate: &Gate, index: usize, leaf: &Leaf) -> Option<Self> {
        if !matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing) {
            return None;
        }
        let hinge_at_origin = gate.kind == GateKind::DoubleSwing && index == 0;
        let travel = nominal(gate.travel_angle.as_ref()).zip(gate.swings);
        let turn = travel.map(|(travel, side)| {
            if (side == SwingSide::IntoProperty) == hinge_at_origin {
                travel.base()
            } else {
                -travel.base()
            }
        });
        Some(Self {
            hinge: hinge_line(gate, hinge_at_origin)?,
            length: nominal(leaf.length.as_ref())?,
            closed: if hinge_at_origin { 0.0 } else { PI },
            turn,
        })
    }

    /// The way of the tip.
    fn way(self, turn: f64) -> Figure {
        Figure::arc(
            self.hinge,
            self.length,
            Angle::from_base(self.closed + turn.min(0.0)),
            Angle::from_base(turn.abs()),
        )
    }
}

fn draw_swing(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    for (index, leaf) in gate.leaf.iter().enumerate() {
        let Some(turning) = Turning::of(gate, index, leaf) else {
            continue;
        };
        let (hinge, length) = (turning.hinge, turning.length);
        let closed = Angle::from_base(turning.closed);
        draw_panel(scene, layers, leaf, hinge, length, closed, true);
        let Some(turn) = turning.turn else {
            continue;
        };
        let open = Angle::from_base(turning.closed + turn);
        draw_panel(scene, layers, leaf, hinge, length, open, false);
        scene.add_titled(
            layers.open_position,
            format!("way of the tip of leaf {}", leaf.id),
            turning.way(turn),
        );
    }
}

/// Says beside each open leaf that it is one, and how far it turns.
fn draw_words_of_leaves(scene: &mut Scene, layers: &Layers, gate: &Gate) {
    for (index, leaf) in gate.leaf.iter().enumerate() {
        let said = if let Some(turning) = Turning::of(gate, index, leaf) {
            turning.turn.map(|turn| {
                let middle = Angle::from_base(turning.closed + 0.5 * turn);
                let words = format!("opens {:.0}°", turn.abs().to_degrees());
                (turning.hinge.toward(middle, turning.length * 0.75), words)
            })
        } else {
            nominal(gate.travel.as_ref())
                .zip(nominal(leaf.length.as_ref()))
                .map(|(travel, length)| {
                    let across = travel + length * 0.5;
                    let at = Point::new(across, Length::from_base(BESIDE_LEAF));
                    (at, "leaf, open".to_owned())
                })
        };
        if let Some((at, words)) = said {
            scene.add(layers.notes, Text::new(at, words));
        }
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

/// Draws the posts and positive stops.
pub(super) fn draw_posts(scene: &mut Scene, layers: &Layers, tags: &mut Tags, gate: &Gate) {
    for post in &gate.post {
        let Some(at) = post.at.as_ref().map(seen_from_above) else {
            continue;
        };
        let width = nominal(post.width.as_ref()).unwrap_or_else(|| Length::from_base(0.1));
        let title = format!("{} post {}", post.role, post.id);
        scene.add_titled(
            layers.posts,
            title,
            around(at, width, width, Fill::Solid(Ink::Tint)),
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

/// The nominal value of what was measured.
pub(crate) fn nominal<Q: Quantity>(measured: Option<&Measured<Q>>) -> Option<Q> {
    measured.map(Measured::nominal)
}

/// No length.
pub(super) fn zero() -> Length {
    Length::from_base(0.0)
}
