//! The lengths and heights that matter in the elevation.

use super::ground::Ground;
use super::layers::Layers;
use super::panel::Panel;
use super::{Standing, equipment, gear, length, meters, motion, place, posts};
use crate::plan::rows::{self, Stretch};
use draw::{Dimension, DimensionLine, Point, Scene};
use quantity::Quantity as _;
use site::{Gate, GateKind, Site};

/// From the drawing to the first column of heights, and from column to column (mm).
const FIRST_COLUMN: f64 = 8.0;
const NEXT_COLUMN: f64 = 10.0;

/// Lengths shorter than this are not measured (m).
const LEAST: f64 = 0.004;

/// Draws the dimensions.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    site: &Site,
    gate: &Gate,
    ground: &Ground,
    leaves: &[Standing<'_>],
    span: (f64, f64),
) {
    let lowest = lowest(site, gate, ground, span);
    let panels: Vec<Panel> = leaves.iter().filter_map(|(_, panel)| *panel).collect();
    let mut stretches = along(gate, &panels);
    stretches.retain(|stretch| stretch.to > stretch.from + LEAST);
    stretches.sort_by(|one, other| (one.to - one.from).total_cmp(&(other.to - other.from)));
    rows::draw(
        scene,
        layers.dimensions,
        (length(ground.level(0.0)), place(span.0, lowest)),
        stretches,
    );
    heights_of_leaf(scene, layers, gate, (ground, leaves), span.0);
    heights_of_the_rest(scene, layers, site, gate, (ground, &panels), span.1);
}

/// The lowest level that is drawn.
fn lowest(site: &Site, gate: &Gate, ground: &Ground, (left, right): (f64, f64)) -> f64 {
    let deep = posts::foundations(site, gate)
        .filter_map(|foundation| posts::foundation_box(foundation, ground))
        .map(|(_, _, foot)| foot);
    let level = ground.level(left).min(ground.level(right)) - 0.1;
    deep.fold(level, f64::min)
}

/// Lengths along the gate.
fn along(gate: &Gate, panels: &[Panel]) -> Vec<Stretch> {
    let stretch = |what, from: f64, to: f64| Stretch { what, from, to };
    let leaf = if gate.kind == GateKind::BarrierArm {
        "arm"
    } else {
        "leaf"
    };
    let mut all = Vec::new();
    let opening = meters(gate.clear_opening.as_ref());
    let slides = matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    let swings = matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing);
    all.extend(opening.map(|opening| stretch("clear opening", 0.0, opening)));
    if let (Some(panel), Some(opening)) = (panels.first(), opening) {
        let (left, right) = panel.span();
        if !swings {
            all.push(stretch("overlap", left, 0.0));
        }
        let tail = gate
            .leaf
            .first()
            .and_then(|leaf| meters(leaf.tail.as_ref()));
        match tail.filter(|_| gate.kind == GateKind::CantileverSlide) {
            Some(tail) => all.push(stretch("tail", right - tail, right)),
            None if !swings => all.push(stretch(beyond(gate.kind), opening, right)),
            None => {}
        }
    }
    all.extend(between(gate, panels));
    all.extend(
        panels
            .iter()
            .map(Panel::span)
            .map(|(left, right)| stretch(leaf, left, right)),
    );
    if let (true, Some(panel)) = (slides, panels.first()) {
        let right = panel.span().1;
        all.extend(
            meters(gate.travel.as_ref()).map(|travel| stretch("travel", right, right + travel)),
        );
        all.extend(wheel_stretch(gate, panel));
    }
    all.extend(posts_stretch(gate));
    all
}

/// What the part of a leaf on the far side of the opening is called.
fn beyond(kind: GateKind) -> &'static str {
    match kind {
        GateKind::VerticalPivot | GateKind::BarrierArm => "to the pivot",
        _ => "overlap",
    }
}

/// The gap between two leaves, and from each leaf to its hinge post.
fn between(gate: &Gate, panels: &[Panel]) -> Vec<Stretch> {
    let mut gaps = Vec::new();
    if let [one, other] = panels {
        let (left, right) = (one.span().1, other.span().0);
        gaps.push(if right < left {
            Stretch {
                what: "leaves overlap",
                from: right,
                to: left,
            }
        } else {
            Stretch {
                what: "gap",
                from: left,
                to: right,
            }
        });
    }
    if !matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing) {
        return gaps;
    }
    for panel in panels {
        let hinge = panel.x(panel.length);
        let faces = gate
            .post
            .iter()
            .filter(|post| posts::is_structural(post))
            .filter_map(|post| {
                let x = post.at.as_ref()?.x.nominal().base();
                let half = posts::width(post) / 2.0;
                Some(if x > hinge { x - half } else { x + half })
            });
        let nearest =
            faces.min_by(|one, other| (one - hinge).abs().total_cmp(&(other - hinge).abs()));
        if let Some(face) = nearest.filter(|face| (face - hinge).abs() < 0.3) {
            gaps.push(Stretch {
                what: "gap",
                from: face.min(hinge),
                to: face.max(hinge),
            });
        }
    }
    gaps
}

fn wheel_stretch(gate: &Gate, panel: &Panel) -> Option<Stretch> {
    let (what, places) = match gate.kind {
        GateKind::TrackSlide => {
            let ([from, to], known) = gear::wheels(gate, panel);
            gate.wheels.as_ref().filter(|_| known)?;
            ("wheels", [from, to])
        }
        GateKind::CantileverSlide => match gear::trolleys(gate)[..] {
            [front, rear] => ("trolleys", [front, rear]),
            _ => return None,
        },
        _ => return None,
    };
    Some(Stretch {
        what,
        from: places[0].min(places[1]),
        to: places[0].max(places[1]),
    })
}

/// From the center of the first of the gate's own posts to that of the last.
fn posts_stretch(gate: &Gate) -> Option<Stretch> {
    let places = || {
        let own = gate.post.iter().filter(|post| posts::is_structural(post));
        own.filter_map(|post| post.at.as_ref())
            .map(|at| at.x.nominal().base())
    };
    let (from, to) = (places().reduce(f64::min)?, places().reduce(f64::max)?);
    Some(Stretch {
        what: "posts, center to center",
        from,
        to,
    })
}

/// A column of heights beside the drawing: negative for the left side.
fn column(
    scene: &mut Scene,
    layers: &Layers,
    what: &str,
    points: Vec<Point>,
    (x, away): (f64, f64),
) {
    let line = DimensionLine::Beyond(place(x, 0.0), length(away / 1000.0));
    scene.add_titled(layers.dimensions, what, Dimension::vertical(points, line));
}

/// Clearance and height of the leaf at its left end, and its upper edge above the ground.
fn heights_of_leaf(
    scene: &mut Scene,
    layers: &Layers,
    gate: &Gate,
    (ground, leaves): (&Ground, &[Standing<'_>]),
    edge: f64,
) {
    let Some((leaf, Some(panel))) = leaves.first() else {
        return;
    };
    let x = panel.span().0;
    let (floor, low) = (ground.level(x), panel.lower_edge(x));
    let mut chain = vec![place(x, floor)];
    if low - floor > LEAST {
        chain.push(place(x, low));
    }
    chain.push(place(x, low + panel.height));
    column(
        scene,
        layers,
        "clearance and height of the leaf",
        chain,
        (edge, -FIRST_COLUMN),
    );
    if low - floor > LEAST {
        let over_all = vec![place(x, floor), place(x, low + panel.height)];
        column(
            scene,
            layers,
            "upper edge of the leaf",
            over_all,
            (edge, -FIRST_COLUMN - NEXT_COLUMN),
        );
    }
    if matches!(gate.kind, GateKind::VerticalPivot | GateKind::BarrierArm) {
        let pivot = motion::pivot(gate, leaf, panel);
        let foot = Point::new(pivot.x, length(ground.level(pivot.x.base())));
        let line = DimensionLine::Away(length(0.012));
        scene.add_titled(
            layers.dimensions,
            "height of the pivot",
            Dimension::vertical([foot, pivot], line),
        );
    }
}

/// Guides, beams, posts and headroom above the ground, each height in a column of its own.
fn heights_of_the_rest(
    scene: &mut Scene,
    layers: &Layers,
    site: &Site,
    gate: &Gate,
    (ground, panels): (&Ground, &[Panel]),
    edge: f64,
) {
    let floor = ground.level(edge);
    let mut heights: Vec<(&str, f64)> = Vec::new();
    heights.extend(
        equipment::beam_heights(site, gate)
            .into_iter()
            .map(|up| ("beam", up)),
    );
    let slides = matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    let guide = gate
        .guide
        .as_ref()
        .filter(|_| slides)
        .and_then(|guide| meters(guide.height.as_ref()));
    heights.extend(guide.map(|up| ("guides", up)));
    let own = gate.post.iter().filter(|post| posts::is_structural(post));
    let mut posts: Vec<f64> = own
        .filter_map(|post| meters(post.height.as_ref()))
        .collect();
    posts.sort_by(f64::total_cmp);
    posts.dedup_by(|one, other| (*one - *other).abs() < LEAST);
    heights.extend(posts.into_iter().map(|up| ("posts", up)));
    if gate.kind == GateKind::VerticalLift {
        let top = panels.first().zip(meters(gate.travel.as_ref()));
        heights.extend(top.map(|(panel, travel)| {
            (
                "under the open leaf",
                panel.lower_edge(0.0) + travel - floor,
            )
        }));
    }
    heights.extend(meters(gate.overhead_room.as_ref()).map(|up| ("free height", up)));
    let mut away = FIRST_COLUMN;
    for (what, up) in heights {
        let words = format!("{what} {}", draw::dimension_text(length(up), scene.units));
        let line = DimensionLine::Beyond(place(edge, 0.0), length(away / 1000.0));
        let ends = [place(edge, floor), place(edge, floor + up)];
        scene.add_titled(
            layers.dimensions,
            what,
            Dimension::vertical(ends, line).words([words]),
        );
        away += NEXT_COLUMN;
    }
}
