//! What carries and guides a leaf: wheels and track, trolleys, guides, hinges.

use super::layers::Layers;
use super::member::{self, Part};
use super::named;
use super::panel::Panel;
use super::{Standing, length, meters, place, symbols};
use draw::{Figure, Fill, Ink, Placement, Point, Scene};
use quantity::Quantity as _;
use site::{Gate, GateKind, Leaf, PostRole};

/// Where wheels are drawn from the ends of a leaf when their spacing is not given, as a share of its length.
const USUAL_INSET: f64 = 0.1;

/// How far hinges are drawn from the edges of a leaf when their spacing is not given, as a share of its height.
const USUAL_HINGES: f64 = 0.15;

/// Draws what carries and guides a leaf.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, gate: &Gate, leaf: &Leaf, panel: &Panel) {
    match gate.kind {
        GateKind::TrackSlide => {
            draw_wheels(scene, layers, gate, panel);
            draw_guides(scene, layers, gate, panel);
        }
        GateKind::CantileverSlide => {
            draw_trolleys(scene, layers, gate, leaf, panel);
            draw_guides(scene, layers, gate, panel);
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => draw_hinges(scene, layers, leaf, panel),
        GateKind::VerticalLift => draw_guides(scene, layers, gate, panel),
        GateKind::VerticalPivot | GateKind::BarrierArm => {}
    }
}

/// Where the wheels of a track slide stand along x, and whether that is known.
pub(super) fn wheels(gate: &Gate, panel: &Panel) -> ([f64; 2], bool) {
    let spacing = gate
        .wheels
        .as_ref()
        .and_then(|wheels| meters(wheels.spacing.as_ref()));
    let half = spacing.map_or(panel.length * (0.5 - USUAL_INSET), |spacing| spacing / 2.0);
    let middle = panel.length / 2.0;
    (
        [panel.x(middle - half), panel.x(middle + half)],
        spacing.is_some(),
    )
}

fn draw_wheels(scene: &mut Scene, layers: &Layers, gate: &Gate, panel: &Panel) {
    let Some(wheels_of_gate) = &gate.wheels else {
        scene.remark("The wheels are not described and not drawn.");
        return;
    };
    let (places, known) = wheels(gate, panel);
    let title = wheels_of_gate.count.map_or_else(
        || "wheel".to_owned(),
        |count| format!("one of {count} wheels"),
    );
    if !known {
        scene.remark("Where the wheels stand is not given; they are drawn a tenth of the leaf from its ends.");
    } else if wheels_of_gate.count.is_some_and(|count| count > 2) {
        scene.remark("Of the wheels, the foremost and the rearmost are drawn.");
    }
    let clearance = 0.0_f64.max(panel.lower_edge(places[0]) - track_level(gate, panel, places[0]));
    for x in places {
        let track = panel.lower_edge(x) - clearance;
        draw_wheel(
            scene,
            layers,
            (title.as_str(), meters(wheels_of_gate.diameter.as_ref())),
            place(x, track),
        );
    }
}

/// The level of the track at a distance along the gate: under the leaf by its clearance.
fn track_level(gate: &Gate, panel: &Panel, x: f64) -> f64 {
    let clearance = gate
        .leaf
        .first()
        .and_then(|leaf| meters(leaf.ground_clearance.as_ref()));
    panel.lower_edge(x) - clearance.unwrap_or(0.0)
}

/// A wheel that rolls on a point.
fn draw_wheel(
    scene: &mut Scene,
    layers: &Layers,
    (title, diameter): (&str, Option<f64>),
    under: Point,
) {
    match diameter {
        Some(diameter) => {
            let center = under.moved(length(0.0), length(diameter / 2.0));
            let figure = Figure::circle(center, length(diameter / 2.0), Fill::Solid(Ink::Paper));
            scene.add_titled(layers.running, title, figure);
            let hub = Figure::circle(center, length(diameter / 10.0), Fill::Solid(Ink::Black));
            scene.add(layers.running, hub);
        }
        None => scene.add_titled(
            layers.running,
            title,
            Placement::new(symbols::wheel(), under),
        ),
    }
}

/// Trolleys inside the lower rail: the front one where it stands, the rear one behind it by their spacing.
fn draw_trolleys(scene: &mut Scene, layers: &Layers, gate: &Gate, leaf: &Leaf, panel: &Panel) {
    let places = trolleys(gate);
    if places.is_empty() {
        scene.remark("Where the trolleys stand is not given; they are not drawn.");
    } else if places.len() == 1 {
        scene.remark("The spacing of the trolleys is not given; the front one alone is drawn.");
    }
    let rail = member::rail(leaf, Part::BottomRail, panel.height).map_or(0.1, |rail| rail.depth);
    let diameter = gate
        .wheels
        .as_ref()
        .and_then(|wheels| meters(wheels.diameter.as_ref()));
    for (x, title) in places.into_iter().zip(["front trolley", "rear trolley"]) {
        let rail_bottom = panel.lower_edge(x);
        let drop = diameter.map_or(0.0, |diameter| (rail - diameter) / 2.0);
        let clearance = meters(leaf.ground_clearance.as_ref()).unwrap_or(0.0);
        let half = diameter.unwrap_or(rail) * 0.75;
        let bracket = Figure::rectangle(
            place(x - half, rail_bottom - clearance),
            place(x + half, rail_bottom),
            Fill::Solid(Ink::Tint),
        );
        if clearance > 0.0 {
            scene.add_titled(layers.running, format!("bracket of the {title}"), bracket);
        }
        draw_wheel(
            scene,
            layers,
            (title, diameter),
            place(x, rail_bottom + drop),
        );
    }
}

/// Where the trolleys of a cantilever slide stand along x: front, rear.
pub(super) fn trolleys(gate: &Gate) -> Vec<f64> {
    let Some(wheels) = &gate.wheels else {
        return Vec::new();
    };
    let front = wheels.front_at.as_ref().map(|at| at.nominal().base());
    let rear = front
        .zip(meters(wheels.spacing.as_ref()))
        .map(|(front, spacing)| front + spacing);
    front.into_iter().chain(rear).collect()
}

/// Guides at their places, or at the guide posts.
fn draw_guides(scene: &mut Scene, layers: &Layers, gate: &Gate, panel: &Panel) {
    let guide = gate.guide.as_ref();
    let listed: Vec<f64> = guide.map_or_else(Vec::new, |guide| {
        guide.at.iter().map(|at| at.nominal().base()).collect()
    });
    let mut at_posts: Vec<f64> = gate
        .post
        .iter()
        .filter(|post| post.role == PostRole::Guide)
        .filter_map(|post| post.at.as_ref())
        .map(|at| at.x.nominal().base())
        .collect();
    at_posts.sort_by(f64::total_cmp);
    at_posts.dedup_by(|one, other| (*one - *other).abs() < 0.05);
    if gate.kind == GateKind::VerticalLift {
        return draw_rails(scene, layers, gate, panel);
    }
    if listed.is_empty() && !at_posts.is_empty() {
        scene.remark("Where the guides stand is not given; they are drawn at the guide posts.");
    }
    let Some(height) = guide.and_then(|guide| meters(guide.height.as_ref())) else {
        scene.remark("The height of the guides is not given; they are not drawn.");
        return;
    };
    for x in if listed.is_empty() { at_posts } else { listed } {
        let at = place(x, panel.lower_edge(x) - panel.lower_edge(0.0) + height);
        scene.add_titled(
            layers.running,
            "guide",
            Placement::new(symbols::guide(), at),
        );
    }
}

/// The upright rails of a lift beside its leaf, as long as the track is said to be.
fn draw_rails(scene: &mut Scene, layers: &Layers, gate: &Gate, panel: &Panel) {
    let Some(long) = gate
        .track
        .as_ref()
        .and_then(|track| meters(track.length.as_ref()))
    else {
        scene.remark("The length of the upright rails is not given; they are not drawn.");
        return;
    };
    let (left, right) = panel.span();
    for x in [left, right] {
        let foot = place(x, panel.lower_edge(x));
        scene.add_titled(
            layers.running,
            "rail",
            Figure::line(foot, foot.moved(length(0.0), length(long))),
        );
    }
}

fn draw_hinges(scene: &mut Scene, layers: &Layers, leaf: &Leaf, panel: &Panel) {
    let (ups, known) = hinges(leaf, panel);
    if !known {
        scene.remark(format!(
            "Where the hinges of {} sit is not given; two are drawn near its edges.",
            named(leaf)
        ));
    }
    for up in ups {
        scene.add_titled(
            layers.running,
            "hinge",
            Placement::new(symbols::hinge(), panel.at(panel.length, up)),
        );
    }
}

/// Heights of the hinges above the lower edge, and whether their spacing is known.
pub(super) fn hinges(leaf: &Leaf, panel: &Panel) -> (Vec<f64>, bool) {
    let hinges = leaf.hinges.as_ref();
    let spacing = hinges.and_then(|hinges| meters(hinges.spacing.as_ref()));
    let count = hinges
        .and_then(|hinges| hinges.count)
        .unwrap_or(2)
        .clamp(2, 6);
    let reach = spacing.unwrap_or(panel.height * (1.0 - 2.0 * USUAL_HINGES));
    let lowest = (panel.height - reach) / 2.0;
    let step = reach / f64::from(count - 1);
    let ups = (0..count)
        .map(|index| lowest + step * f64::from(index))
        .collect();
    (ups, spacing.is_some())
}

/// The ground track under the way of a track slide, as long as it is said to be or as the travel asks.
pub(super) fn draw_track(scene: &mut Scene, layers: &Layers, gate: &Gate, leaves: &[Standing<'_>]) {
    let Some((_, Some(panel))) = leaves.first() else {
        return;
    };
    if gate.kind != GateKind::TrackSlide {
        return;
    }
    let (left, right) = panel.span();
    let needed = right + meters(gate.travel.as_ref()).unwrap_or(0.0);
    let long = gate
        .track
        .as_ref()
        .and_then(|track| meters(track.length.as_ref()));
    if long.is_none() {
        scene
            .remark("The length of the track is not given; it is drawn under the way of the leaf.");
    }
    let end = long.map_or(needed, |long| left + long);
    let ends = [left, end].map(|x| place(x, track_level(gate, panel, x)));
    scene.add_titled(
        layers.running,
        "ground track",
        Figure::line(ends[0], ends[1]),
    );
}
