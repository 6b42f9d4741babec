//! A lane from above, once for each way: what each vehicle sweeps, the wheel lines and bodies of the one with the least
//! room, and the places of least room.

use super::layers::Layers;
use super::{direction, point, points, tightness};
use crate::plan::around_lane;
use design::swept::{ShownLane, ShownNearest, ShownSweep};
use draw::{Anchor, Figure, Fill, Ink, Label, Point, Scene, Text, TextHeight};
use quantity::{Length, Quantity as _};
use sim::swept::Envelope;
use site::{Gate, Site, WayDirection};

/// Ground that is shown behind the gate line (m).
const BEHIND: f64 = 6.0;
/// Clear ground around the lane's edges and its turn (m).
const AROUND: f64 = 5.0;
/// Between the copies, as a share of the width of one.
const BETWEEN: f64 = 0.12;
/// Places of least room that are named on each copy.
const NAMED: usize = 3;

/// The scene of a lane.
pub(super) fn scene((site, gate): (&Site, &Gate), lane: &ShownLane) -> Scene {
    let title = format!("What the vehicles of {} sweep", lane.called);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "The lane from above, once driving in and once driving out: its edges, the open leaf, posts and bollards, the outermost that each vehicle sweeps, the wheel lines of the one with the least room, and the places where the least is left.",
    );
    Layers::add_to(&mut scene);
    let (low, high) = corners(lane);
    let step = (high.x - low.x).base() * (1.0 + BETWEEN);
    let mut copies = 0.0;
    for way in [WayDirection::In, WayDirection::Out] {
        let sweeps: Vec<(usize, &ShownSweep)> = numbered(lane, way);
        if sweeps.is_empty() {
            continue;
        }
        let mut whole = Scene::new("", scene.units);
        draw_copy(&mut whole, (site, gate), lane, &sweeps);
        let to = low.moved(Length::from_base(copies * step), Length::default());
        scene.take_part(&whole, (low, high), to);
        draw_words(
            &mut scene,
            &sweeps,
            (to, to.moved(high.x - low.x, high.y - low.y)),
        );
        copies += 1.0;
    }
    remark(&mut scene, lane);
    scene
}

/// The sweeps of one way, each with the number of its vehicle.
fn numbered(lane: &ShownLane, way: WayDirection) -> Vec<(usize, &ShownSweep)> {
    let mut names: Vec<&str> = Vec::new();
    let mut found = Vec::new();
    for sweep in &lane.sweeps {
        if !names.contains(&sweep.id.as_str()) {
            names.push(&sweep.id);
        }
        let number = names.iter().position(|name| *name == sweep.id).unwrap_or(0);
        if sweep.direction == way {
            found.push((number, sweep));
        }
    }
    found
}

/// The part of the site that each copy shows: the lane's edges, and as much of the road as the turn takes.
fn corners(lane: &ShownLane) -> (Point, Point) {
    let edges = lane.edges.iter().flatten().copied();
    let (mut low, mut high) = (
        (f64::INFINITY, f64::INFINITY),
        (f64::NEG_INFINITY, f64::NEG_INFINITY),
    );
    let mut take = |x: f64, y: f64| {
        low = (low.0.min(x), low.1.min(y));
        high = (high.0.max(x), high.1.max(y));
    };
    edges.for_each(|at| take(at.x.base(), at.y.base()));
    let (left, right) = (low.0, high.0);
    let mut floor = f64::INFINITY;
    for sweep in &lane.sweeps {
        let sides = sweep.envelope.left.iter().chain(&sweep.envelope.right);
        let near = sides.filter(|at| (left..=right).contains(&at.x.base()));
        floor = near.map(|at| at.y.base()).fold(floor, f64::min);
    }
    let at = |x: f64, y: f64| Point::new(Length::from_base(x), Length::from_base(y));
    let below = if floor.is_finite() {
        floor.min(low.1)
    } else {
        low.1
    };
    // Behind the gate a vehicle is in line: a few steps of it are enough.
    let above = high.1.min(BEHIND);
    (at(left - AROUND, below - 1.0), at(right + AROUND, above))
}

/// The whole copy, uncut.
fn draw_copy(
    whole: &mut Scene,
    (site, gate): (&Site, &Gate),
    lane: &ShownLane,
    sweeps: &[(usize, &ShownSweep)],
) {
    let layers = Layers::add_to(whole);
    let tightest = sweeps
        .iter()
        .min_by(|one, other| tightness(one.1).total_cmp(&tightness(other.1)));
    if let Some((_, sweep)) = tightest {
        let area = Figure::area(outline(&sweep.envelope), Fill::Solid(Ink::Tint));
        whole.add_titled(layers.swept, format!("swept by {}", sweep.id), area);
    }
    around_lane(whole, (site, gate));
    for (side, edge) in ["left", "right"].iter().zip(&lane.edges) {
        let title = format!("{side} edge of {}", lane.called);
        whole.add_titled(layers.edges, title, Figure::path(points(edge)));
    }
    for (number, sweep) in sweeps {
        let layer = Layers::of_vehicle(whole, *number, &sweep.id);
        for side in [&sweep.envelope.left, &sweep.envelope.right] {
            let title = format!(
                "outermost that {} sweeps driving {}",
                sweep.id,
                direction(sweep)
            );
            whole.add_titled(layer, title, Figure::path(points(side)));
        }
    }
    if let Some((_, sweep)) = tightest {
        draw_wheels(whole, &layers, sweep);
    }
    for near in named(sweeps) {
        draw_least(whole, &layers, near);
    }
}

/// Around what is swept.
fn outline(envelope: &Envelope) -> Vec<Point> {
    let back = envelope.right.iter().rev();
    envelope
        .left
        .iter()
        .chain(back)
        .map(|at| point(*at))
        .collect()
}

fn draw_wheels(whole: &mut Scene, layers: &Layers, sweep: &ShownSweep) {
    for line in sweep.envelope.tires.iter().filter(|line| line.len() > 1) {
        // One place in ten is enough for the eye.
        let thin: Vec<Point> = line.iter().step_by(10).map(|at| point(*at)).collect();
        let title = format!("tires of {}", sweep.id);
        whole.add_titled(layers.tires, title, Figure::path(thin));
    }
    for standing in sweep.envelope.standing.iter().step_by(3) {
        for body in &standing.bodies {
            let figure = Figure::area(points(body), Fill::Open);
            whole.add_titled(layers.bodies, format!("{} on its way", sweep.id), figure);
        }
    }
}

/// The places of least room among all vehicles: the least at each thing.
fn named<'l>(sweeps: &[(usize, &'l ShownSweep)]) -> Vec<(&'l ShownSweep, &'l ShownNearest)> {
    let each = sweeps.iter().flat_map(|(_, sweep)| {
        let sweep = *sweep;
        sweep.nearest.iter().map(move |near| (sweep, near))
    });
    let mut all: Vec<_> = each.collect();
    all.sort_by(|one, other| one.1.room.base().total_cmp(&other.1.room.base()));
    let mut kept: Vec<(&ShownSweep, &ShownNearest)> = Vec::new();
    for (sweep, near) in all {
        let again = kept.iter().any(|(_, other)| {
            other.name == near.name || point(other.at).distance(point(near.at)).base() < 1.0
        });
        if !again && kept.len() < NAMED {
            kept.push((sweep, near));
        }
    }
    kept
}

fn draw_least(whole: &mut Scene, layers: &Layers, (sweep, near): (&ShownSweep, &ShownNearest)) {
    let room = draw::dimension_text(near.room.abs(), whole.units);
    let words = match (near.is_edge, near.room.base() < 0.0) {
        (true, false) => format!("tires {room} inside,\n{}", sweep.id),
        (true, true) => format!("tires {room} over,\n{}", sweep.id),
        (false, false) => format!("{room} to {},\n{}", near.name, sweep.id),
        (false, true) => format!("{room} over {},\n{}", near.name, sweep.id),
    };
    let (on, at) = (point(near.on), point(near.at));
    let title = format!("least room of {} beside {}", sweep.id, near.name);
    if on.distance(at).base() > 1e-6 {
        whole.add_titled(layers.least, title, Figure::line(on, at));
    }
    whole.add(layers.notes, Label::new(at, words));
}

/// Which way it is, above; how each vehicle cuts the corner, below the drawing.
fn draw_words(scene: &mut Scene, sweeps: &[(usize, &ShownSweep)], (low, high): (Point, Point)) {
    let layers = Layers::add_to(scene);
    let middle = low.middle(high).x;
    let Some((_, first)) = sweeps.first() else {
        return;
    };
    let share = |share: f64| (high.y - low.y) * share;
    let head = Text::new(
        Point::new(middle, high.y + share(0.02)),
        format!("Driving {}", direction(first)),
    );
    let height = TextHeight::Paper(Length::from_base(0.003));
    scene.add(layers.notes, head.height(height).anchor(Anchor::Middle));
    let lines: Vec<String> = sweeps.iter().map(|(_, sweep)| cut(scene, sweep)).collect();
    let way = direction(first);
    scene.remark(format!("Driving {way}: {}.", lines.join("; ")));
}

/// How a vehicle cuts the corner: `van cuts the corner by 2 ft`.
fn cut(scene: &Scene, sweep: &ShownSweep) -> String {
    let length = |length| draw::dimension_text(length, scene.units);
    format!(
        "{} cuts the corner by {} and sweeps {} at its widest",
        sweep.id,
        length(sweep.envelope.off_tracking),
        length(sweep.envelope.widest)
    )
}

fn remark(scene: &mut Scene, lane: &ShownLane) {
    let mut named: Vec<&str> = Vec::new();
    let mut what: Vec<String> = Vec::new();
    for sweep in &lane.sweeps {
        if !named.contains(&sweep.id.as_str()) {
            named.push(&sweep.id);
            what.push(format!("{} is the {}", sweep.id, sweep.what));
        }
    }
    scene.remark(format!("Vehicles: {}.", what.join("; ")));
    scene.remark(
        "Each vehicle follows the line that leaves it the most room, at walking pace, mirrors counted at every height; tinted is what the one with the least room sweeps, with its tires' lines. Drive the longest one in and out before anything is set in concrete, and tape its wheel marks.",
    );
}
