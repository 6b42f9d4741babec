//! The plan of a gate for the screen, in parts: what lies still, what stands, the leaves; without words and lengths.

use super::equipment;
use super::gate;
use super::gate_sheet;
use super::layers::Layers;
use super::tags::Tags;
use super::window::{Reach, Window};
use super::{ground, guards, lane};
use draw::{Point, Scene};
use quantity::{Length, Quantity as _};
use site::{Gate, Site};

/// How far beyond the gate the screen shows at first.
const AT_FIRST: Reach = Reach {
    side: 0.35,
    depth: 1.3,
};

/// Two opposite corners of what the screen shows at first.
pub(crate) fn corners(site: &Site, gate: &Gate) -> (Point, Point) {
    let window = Window::of_gate(gate, &gate_sheet::points(site, gate), AT_FIRST);
    let at = |x, y| Point::new(Length::from_base(x), Length::from_base(y));
    (
        at(window.left, window.below),
        at(window.right, window.above),
    )
}

/// Lanes, foundations, and what was there before.
pub(crate) fn ground(site: &Site) -> Scene {
    let (mut scene, layers) = empty(site);
    let window = Window::whole();
    lane::draw_lines(&mut scene, &layers, site, &window);
    ground::draw(&mut scene, &layers, site, &window);
    for gate in &site.gate {
        gate::draw_near(&mut scene, &layers, gate, &window);
    }
    scene
}

/// Posts and positive stops of a gate, the bollards and covers of the site.
pub(crate) fn standing(site: &Site, gate: &Gate) -> Scene {
    let (mut scene, layers) = empty(site);
    let mut tags = Tags::default();
    gate::draw_posts(&mut scene, &layers, &mut tags, gate);
    guards::draw(&mut scene, &layers, &mut tags, site, |_| true);
    scene
}

/// The leaves of a gate, closed and open.
pub(crate) fn leaves(site: &Site, gate: &Gate) -> Scene {
    let (mut scene, layers) = empty(site);
    gate::draw_leaves(&mut scene, &layers, gate);
    scene
}

/// What devices reach: beams with their other ends, loops, edges, fields, the sides of cameras' views.
pub(crate) fn reach(site: &Site) -> Scene {
    let (mut scene, layers) = empty(site);
    let window = Window::whole();
    let view = equipment::View {
        window: &window,
        far: 8.0,
    };
    equipment::draw_reaches(&mut scene, &layers, site, &view);
    scene
}

/// A symbol, what it is, and where it stands, for everything that has a place of its own.
pub(crate) fn symbols(site: &Site) -> Vec<(String, draw::Placement)> {
    let placed = equipment::placed(site);
    let pairs = placed.into_iter().map(equipment::Placed::into_symbol);
    pairs.collect()
}

fn empty(site: &Site) -> (Scene, Layers) {
    let mut scene = Scene::new("", site.site.unit_system());
    let layers = Layers::add_to(&mut scene);
    (scene, layers)
}
