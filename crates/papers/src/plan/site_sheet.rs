//! The sheet of the whole site: each gate as a whole, and what stands away from it.

use super::equipment::{self, Placed, View};
use super::layers::Layers;
use super::tags::Tags;
use super::window::Window;
use super::{far, gate, gate_sheet, ground, guards, lane};
use crate::foot;
use draw::{Point, Scene};
use quantity::Quantity as _;
use site::Site;

/// Distance under which names share a label (m).
const NEAR: f64 = 3.0;

/// Distance from the gate that is told (m).
const REMARKABLE: f64 = 5.0;

/// Letters in a line of a list.
const LETTERS: usize = 68;

/// How far the view of a camera is drawn (m).
const VIEW: f64 = 8.0;

/// The whole site; what the windows of the gates' own sheets show is left to them, enclosures apart.
pub(super) fn scene(site: &Site, windows: &[Window]) -> Scene {
    let mut scene = Scene::new("Plan of the site", site.site.unit_system())
        .describe("The whole site from above, road side below: gates, lanes, ways on foot, where the property ends, enclosures, and what stands away from the gates.");
    let layers = Layers::add_to(&mut scene);
    let mut tags = Tags::default();
    let whole = Window::whole();
    lane::draw(&mut scene, &layers, site, &whole);
    foot::draw_lines(&mut scene, layers.notes, (site, &whole));
    for gate in &site.gate {
        gate::draw_leaves(&mut scene, &layers, gate);
        let name = format!("gate {}, on its own sheet", gate.id);
        tags.add(gate_sheet::middle(gate), name);
    }
    let is_far = |thing: &Placed| !windows.iter().any(|window| window.shows(thing.at));
    let shown = |thing: &Placed| thing.is_enclosure || is_far(thing);
    let view = View {
        window: &whole,
        far: VIEW,
    };
    equipment::draw(&mut scene, &layers, &mut tags, site, &view, shown);
    let alone = |at| !windows.iter().any(|window| window.shows(at));
    guards::draw(&mut scene, &layers, &mut tags, site, alone);
    guards::remark(&mut scene, site, alone);
    let middle = site.gate.first().map(gate_sheet::middle);
    let units = scene.units;
    tags.place(&mut scene, layers.notes, NEAR, |at| {
        let middle = middle.filter(|middle| middle.distance(at).base() > REMARKABLE)?;
        Some(far::where_it_is(middle, at, units).replace(", ", ",\n"))
    });
    ground::far_sides(&mut scene, &layers, site);
    if site.gate.is_empty() {
        let unplaced = equipment::unplaced(site);
        far::list_unplaced(&mut scene, &layers, (Point::origin(), LETTERS), &unplaced);
    }
    scene
}
