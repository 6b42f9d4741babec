//! The plan of the ways in the ground: trenches and bores with their conduits and depths, pull points, ends, what was
//! buried before, and ground to keep off. What reaches far from the gates is on a sheet of its own.

mod layers;
mod words;

use crate::plan::tags::Tags;
use crate::plan::window::Window;
use crate::plan::{around_people, middle, seen_from_above};
use crate::sheets::{Planned, north};
use draw::{Figure, Fill, Label, LayerId, Point, ScaleChoice, Scene};
use layers::Layers;
use quantity::{Length, Quantity as _};
use site::{Id, Position, Site, Way, WayPoint};

/// Points farther than this from the middle of every opening are on the sheet of the whole site (m).
const REACH: f64 = 12.0;
/// Clear ground around what is drawn (m).
const MARGIN: f64 = 1.5;
/// Distance under which names share a label (m).
const NEAR: f64 = 0.4;
/// Half the side of a pit, and the radius of an end, as drawn (m).
const MARK: f64 = 0.22;

/// The plans of the ways: the one around the gates, and the one of the whole site where ways reach farther.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let placed: Vec<Point> = site.way_point.iter().filter_map(at).collect();
    if placed.is_empty() || site.way.is_empty() {
        return Vec::new();
    }
    let near: Vec<Point> = placed
        .iter()
        .copied()
        .filter(|at| is_near(site, *at))
        .collect();
    let mut sheets = Vec::new();
    if !near.is_empty() {
        let title = "Ways in the ground, around the gate";
        sheets.push(sheet(
            site,
            "ways-plan",
            title,
            &Window::around(site, &near, MARGIN),
            1.0,
        ));
    }
    if near.len() < placed.len() {
        let title = "Ways in the ground, whole site";
        let window = Window::around(site, &placed, 4.0 * MARGIN);
        sheets.push(sheet(site, "ways-plan-site", title, &window, 4.0));
    }
    sheets
}

/// One sheet; marks are so many times as large as around a gate.
fn sheet(site: &Site, name: &str, title: &str, window: &Window, size: f64) -> Planned {
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "The ground from above: trenches and bores with the conduits in them and how deep they lie, pull points, where ways end, what was buried before, and ground to keep off.",
    );
    let notes = around_people(&mut scene, site, window);
    let layers = Layers::add_to(&mut scene);
    keep_off(&mut scene, (layers.keep_off, notes), (site, window));
    buried(&mut scene, (layers.buried, notes), (site, window));
    let whole = size > 1.0;
    let mut tags = Tags::default();
    let usual = words::usual_depth(site);
    let mut ways = Vec::new();
    for way in &site.way {
        let corners = corners(site, way);
        let hidden = whole && corners.iter().all(|at| is_near(site, *at));
        let shown = drawn(&mut scene, layers.of(way), &corners, (window, &way.id));
        if let Some(at) = shown.filter(|_| !hidden) {
            tags.add(at, words::of_way(site, way, usual.as_deref()));
        }
        ways.push((way, length(&corners)));
    }
    points(&mut scene, &layers, &mut tags, (site, window, size));
    tags.place(&mut scene, notes, NEAR, |_| None);
    if let Some(depth) = usual {
        scene.remark(format!(
            "Conduits lie {depth} deep where nothing else is said."
        ));
    }
    if !whole {
        scene.remark(format!(
            "Conduits and their cables: {}.",
            words::contents(site).join("; ")
        ));
    }
    scene.remark(words::together(site, &ways));
    scene.remark("Have buried lines marked before the first cut. Local codes and the authority having jurisdiction prevail.");
    Planned {
        name: name.to_owned(),
        scene,
        north: north(site),
        scale: ScaleChoice::LargestThatFits,
        half: false,
    }
}

/// Ways, pits, what was buried before and ground to keep off, for the screen: without words.
pub(crate) fn on_screen(site: &Site) -> Scene {
    let mut scene = Scene::new("", site.site.unit_system());
    let layers = Layers::add_to(&mut scene);
    let window = Window::whole();
    let notes = layers.ends;
    keep_off(&mut scene, (layers.keep_off, notes), (site, &window));
    buried(&mut scene, (layers.buried, notes), (site, &window));
    for way in &site.way {
        drawn(
            &mut scene,
            layers.of(way),
            &corners(site, way),
            (&window, &way.id),
        );
    }
    points(
        &mut scene,
        &layers,
        &mut Tags::default(),
        (site, &window, 1.0),
    );
    scene
}

fn at(point: &WayPoint) -> Option<Point> {
    point.at.as_ref().map(seen_from_above)
}

fn is_near(site: &Site, at: Point) -> bool {
    let gates = site.gate.iter().map(middle);
    gates
        .map(|gate| gate.distance(at).base())
        .any(|away| away <= REACH)
}

/// The corners of a way; none where an end has no place.
fn corners(site: &Site, way: &Way) -> Vec<Point> {
    let end = |id: &Id| {
        site.way_point
            .iter()
            .find(|point| point.id == *id)
            .and_then(at)
    };
    let (Some(from), Some(to)) = (end(&way.from), end(&way.to)) else {
        return Vec::new();
    };
    let between = way.via.iter().map(seen_from_above);
    std::iter::once(from).chain(between).chain([to]).collect()
}

fn length(corners: &[Point]) -> f64 {
    let pieces = corners.iter().zip(corners.iter().skip(1));
    pieces.map(|(from, to)| from.distance(*to).base()).sum()
}

/// Draws a line through corners as far as the sheet shows it; the middle of its longest piece comes back.
fn drawn(
    scene: &mut Scene,
    layer: LayerId,
    corners: &[Point],
    (window, title): (&Window, &Id),
) -> Option<Point> {
    let pieces = corners.iter().zip(corners.iter().skip(1));
    let shown: Vec<(Point, Point)> = pieces
        .filter_map(|(from, to)| window.cut(*from, *to))
        .collect();
    for (from, to) in &shown {
        scene.add_titled(layer, title.as_str(), Figure::line(*from, *to));
    }
    let long = |piece: &&(Point, Point)| piece.0.distance(piece.1).base();
    let longest = shown
        .iter()
        .max_by(|one, other| long(one).total_cmp(&long(other)));
    longest.map(|(from, to)| from.middle(*to))
}

/// Pits where a cover says so, else rings where a way ends or forks.
fn points(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    (site, window, size): (&Site, &Window, f64),
) {
    let mark = Length::from_base(MARK * size);
    for cover in &site.cover {
        let (Some(pit), Some(at)) = (&cover.pit, &cover.at) else {
            continue;
        };
        let at = seen_from_above(at);
        if window.cut(at, at).is_none() {
            continue;
        }
        let corners = (at.moved(-mark, -mark), at.moved(mark, mark));
        let square = Figure::rectangle(corners.0, corners.1, Fill::Open);
        scene.add_titled(layers.pits, pit.name.as_str(), square);
        if size <= 1.0 || !is_near(site, at) {
            tags.add(at, pit.name.as_str());
        }
    }
    for point in &site.way_point {
        let Some(at) = at(point).filter(|at| window.cut(*at, *at).is_some()) else {
            continue;
        };
        if point.serves.is_empty() {
            continue;
        }
        let ring = Figure::circle(at, mark * 0.6, Fill::Open);
        scene.add_titled(layers.ends, point.id.as_str(), ring);
        if size <= 1.0 || !is_near(site, at) {
            let serves: Vec<&str> = point.serves.iter().map(Id::as_str).collect();
            tags.add(
                at,
                crate::plan::tags::broken(&serves.join(", "), crate::plan::tags::LINE),
            );
        }
    }
}

fn outline(corners: &[Position]) -> Vec<Point> {
    corners.iter().map(seen_from_above).collect()
}

fn keep_off(
    scene: &mut Scene,
    (layer, notes): (LayerId, LayerId),
    (site, window): (&Site, &Window),
) {
    for ground in &site.keep_off {
        let mut corners = outline(&ground.outline);
        corners.extend(corners.first().copied());
        let what = ground
            .what
            .as_ref()
            .map_or(ground.id.as_str(), |what| what.as_str());
        if let Some(at) = drawn(scene, layer, &corners, (window, &ground.id)) {
            let words = format!("keep off: {what}");
            scene.add(
                notes,
                Label::new(
                    at,
                    crate::plan::tags::broken(&words, crate::plan::tags::LINE),
                ),
            );
        }
    }
}

fn buried(scene: &mut Scene, (layer, notes): (LayerId, LayerId), (site, window): (&Site, &Window)) {
    for line in &site.buried {
        let what = line
            .what
            .as_ref()
            .map_or(line.id.as_str(), |what| what.as_str());
        if let Some(at) = drawn(scene, layer, &outline(&line.line), (window, &line.id)) {
            let words = format!("buried: {what}");
            scene.add(
                notes,
                Label::new(
                    at,
                    crate::plan::tags::broken(&words, crate::plan::tags::LINE),
                ),
            );
        }
    }
}
