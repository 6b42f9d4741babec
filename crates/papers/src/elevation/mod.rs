//! Gates seen from the road, and cut across the middle of the leaf: to scale, with the heights and lengths that matter.
//!
//! Only what the site file tells is drawn; what is taken for granted, and what is missing, stands in words on the sheet.

mod equipment;
mod gear;
mod ground;
mod layers;
mod leaf;
mod measures;
mod member;
mod motion;
pub(crate) mod on_screen;
mod panel;
mod posts;
mod section;
mod section_measures;
mod symbols;

use crate::plan::tags::Tags;
use draw::{Figure, Fill, LayerId, Point, Scene};
use ground::Ground;
use layers::Layers;
use panel::Panel;
use quantity::{Length, Measured, Quantity as _};
use site::{Gate, Leaf, Site};

pub(crate) use section::scene as section;

/// Share of the width of the sheet under which names share a label.
const NEAR: f64 = 0.03;

/// A leaf with where it stands; `None` for a leaf whose size is not known.
type Standing<'a> = (&'a Leaf, Option<Panel>);

/// A gate seen from the road side.
pub(crate) fn scene(site: &Site, gate: &Gate) -> Scene {
    let title = format!("Elevation of gate {}", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "The {} gate {} seen from the road side, leaf closed: leaf with its frame, posts, ground, running gear, operator and devices, with heights and lengths; the open position dotted.",
        gate.kind, gate.id
    ));
    scene.remark("Seen from the road side, closed.");
    let layers = Layers::add_to(&mut scene);
    let ground = Ground::of(gate);
    let leaves = standing(&mut scene, gate, &ground);
    let span = span(gate, &leaves);
    let mut tags = Tags::default();
    ground.draw(&mut scene, &layers, span);
    posts::draw_surroundings(&mut scene, &layers, gate, &ground, span);
    posts::draw_foundations(&mut scene, &layers, site, gate, &ground);
    posts::draw(&mut scene, &layers, &mut tags, gate, &ground);
    for (leaf, panel) in &leaves {
        if let Some(panel) = panel {
            leaf::draw(&mut scene, &layers, gate, leaf, panel);
            motion::draw(&mut scene, &layers, gate, leaf, panel);
            gear::draw(&mut scene, &layers, gate, leaf, panel);
        }
    }
    gear::draw_track(&mut scene, &layers, gate, &leaves);
    equipment::draw(&mut scene, &layers, &mut tags, site, gate, span);
    measures::draw(&mut scene, &layers, site, gate, &ground, &leaves, span);
    tags.place(&mut scene, layers.notes, NEAR * (span.1 - span.0), |_| None);
    scene
}

/// Draws what the hazard zones of a gate lie among, from the road: ground, posts, closed leaves, what stands near; the
/// layer of the words comes back.
pub(crate) fn around_zones(scene: &mut Scene, tags: &mut Tags, gate: &Gate) -> LayerId {
    let layers = Layers::add_to(scene);
    let ground = Ground::of(gate);
    let leaves = standing(scene, gate, &ground);
    let span = span(gate, &leaves);
    ground.draw(scene, &layers, span);
    posts::draw_surroundings(scene, &layers, gate, &ground, span);
    posts::draw(scene, &layers, tags, gate, &ground);
    for (leaf, panel) in &leaves {
        if let Some(panel) = panel {
            let outline = Figure::area(panel.outline(), Fill::Open);
            scene.add_titled(layers.leaf, format!("leaf {}, closed", leaf.id), outline);
        }
    }
    layers.notes
}

/// The leaves of a gate with their panels.
fn standing<'a>(scene: &mut Scene, gate: &'a Gate, ground: &Ground) -> Vec<Standing<'a>> {
    if gate.leaf.is_empty() {
        scene.remark("No leaf is described.");
    }
    let leaves = gate.leaf.iter().enumerate();
    leaves
        .map(|(index, leaf)| (leaf, Panel::of(scene, gate, (index, leaf), ground)))
        .collect()
}

/// Clear ground beside what is drawn (m).
const BESIDE: f64 = 0.4;

/// From where to where along the gate the sheet shows.
fn span(gate: &Gate, leaves: &[Standing<'_>]) -> (f64, f64) {
    let opening = meters(gate.clear_opening.as_ref()).unwrap_or(0.0);
    let travel = match gate.kind {
        site::GateKind::TrackSlide | site::GateKind::CantileverSlide => {
            meters(gate.travel.as_ref()).unwrap_or(0.0)
        }
        _ => 0.0,
    };
    let panels = leaves.iter().filter_map(|(_, panel)| panel.as_ref());
    let ends = panels
        .map(Panel::span)
        .flat_map(|(left, right)| [left, right, right + travel]);
    let posts = gate.post.iter().filter(|post| posts::is_structural(post));
    let posts = posts
        .filter_map(|post| post.at.as_ref())
        .map(|at| at.x.nominal().base());
    let all = [0.0, opening].into_iter().chain(ends).chain(posts);
    let (left, right) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), x| {
        (low.min(x), high.max(x))
    });
    (left - BESIDE, right + BESIDE)
}

/// A point of the drawing: to the right and up (m).
fn place(right: f64, up: f64) -> Point {
    Point::new(length(right), length(up))
}

/// A leaf in the middle of a sentence: `the leaf`, `leaf north`.
fn named(leaf: &Leaf) -> String {
    let id = leaf.id.as_str();
    match id {
        "leaf" | "arm" => format!("the {id}"),
        _ if id.starts_with("leaf") || id.starts_with("arm") => id.to_owned(),
        _ => format!("leaf {id}"),
    }
}

fn length(meters: f64) -> Length {
    Length::from_base(meters)
}

/// The nominal value of a length in meters.
fn meters(length: Option<&Measured<Length>>) -> Option<f64> {
    length.map(|length| length.nominal().base())
}
