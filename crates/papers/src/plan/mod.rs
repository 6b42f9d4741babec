//! The plans of a site, seen from above: what stands where, to scale.
//!
//! Each gate has a sheet of its own; what lies farther away is on a plan of the whole site. Only what the site file
//! gives a position is drawn; the rest is listed on the sheet, so that nobody takes an empty spot for a clear one.

pub(crate) mod equipment;
mod far;
pub(crate) mod gate;
mod gate_sheet;
mod ground;
mod guards;
mod lane;
mod layers;
mod measures;
pub(crate) mod on_screen;
pub(crate) mod rows;
mod site_sheet;
pub(crate) mod symbols;
pub(crate) mod tags;
pub(crate) mod window;

use crate::sheets::{Planned, north, sheet_name};
use draw::{DrawError, LayerId, Point, ScaleChoice, Scene, Sheet};
use equipment::{Placed, View};
pub(crate) use far::where_it_is;
pub(crate) use gate_sheet::middle;
pub(crate) use ground::seen_from_above;
use layers::Layers;
use site::{Gate, Site};
use tags::Tags;
use window::{Reach, Window};

/// Distance under which names of what watches share a label (m).
const NEAR: f64 = 0.5;

/// The plans of a site: one for each gate, and one of the whole site where something stands farther away.
pub(crate) fn planned(site: &Site, sheet: &Sheet) -> Result<Vec<Planned>, DrawError> {
    let mut planned: Vec<Planned> = Vec::new();
    let mut windows: Vec<Window> = Vec::new();
    for gate in &site.gate {
        let window = gate_sheet::window(site, gate, sheet)?;
        planned.push(Planned {
            name: sheet_name(site, gate, "gate-plan"),
            scene: gate_sheet::scene(site, gate, &window),
            north: north(site),
            scale: ScaleChoice::LargestThatFits,
            half: false,
        });
        windows.push(window);
    }
    let is_far = |thing: &Placed| !windows.iter().any(|window| window.shows(thing.at));
    let hidden = |at: &Point| !windows.iter().any(|window| window.shows(*at));
    let guards_far = guards::points(site).iter().any(hidden);
    if planned.is_empty() || guards_far || equipment::placed(site).iter().any(is_far) {
        planned.push(Planned {
            name: "site-plan".to_owned(),
            scene: site_sheet::scene(site, &windows),
            north: north(site),
            scale: ScaleChoice::LargestThatFits,
            half: false,
        });
    }
    Ok(planned)
}

/// Draws what the hazard zones of a gate lie among, from above: leaves closed and open, posts, bollards, what stands
/// near, and on which side the road lies; the layer of the words comes back.
pub(crate) fn around_zones(
    scene: &mut Scene,
    tags: &mut Tags,
    (site, gate): (&Site, &Gate),
    points: &[Point],
) -> LayerId {
    let layers = Layers::add_to(scene);
    let window = Window::of_gate(gate, points, Reach::LEAST);
    ground::sides(scene, &layers, &window);
    gate::draw(scene, &layers, tags, gate, &window);
    guards::draw(scene, &layers, tags, site, |at| window.shows(at));
    layers.notes
}

/// Draws what people on foot meet, from above: lanes, leaves closed and open, posts, what stands near, and on which side
/// the road lies; the layer of the words comes back.
pub(crate) fn around_people(scene: &mut Scene, site: &Site, window: &Window) -> LayerId {
    let layers = Layers::add_to(scene);
    ground::sides(scene, &layers, window);
    lane::draw(scene, &layers, site, window);
    for gate in &site.gate {
        gate::draw(scene, &layers, &mut Tags::default(), gate, window);
    }
    layers.notes
}

/// Draws what a vehicle meets in a gate, from above: lanes, leaves, posts, and what watches there with its name.
pub(crate) fn around_vehicles(
    scene: &mut Scene,
    (site, gate): (&Site, &Gate),
    window: &Window,
    watching: &[&str],
) {
    let layers = Layers::add_to(scene);
    let mut tags = Tags::default();
    lane::draw_lines(scene, &layers, site, window);
    gate::draw_leaves(scene, &layers, gate);
    gate::draw_posts(scene, &layers, &mut Tags::default(), gate);
    let view = View { window, far: 0.0 };
    let shown = |thing: &Placed| watching.contains(&thing.name.as_str());
    equipment::draw(scene, &layers, &mut tags, site, &view, shown);
    tags.place(scene, layers.notes, NEAR, |_| None);
}

/// Draws what a vehicle meets in a lane, from above: leaves, posts, bollards, boxes and pedestals, fences and walls,
/// without names.
pub(crate) fn around_lane(scene: &mut Scene, (site, gate): (&Site, &Gate)) {
    let layers = Layers::add_to(scene);
    let window = Window::whole();
    gate::draw_leaves(scene, &layers, gate);
    gate::draw_posts(scene, &layers, &mut Tags::default(), gate);
    gate::draw_near(scene, &layers, gate, &window);
    guards::draw(scene, &layers, &mut Tags::default(), site, |_| true);
    let view = View {
        window: &window,
        far: 0.0,
    };
    let stands = |thing: &Placed| thing.is_enclosure || stands_apart(site, &thing.name);
    equipment::draw(scene, &layers, &mut Tags::default(), site, &view, stands);
}

/// The device stands on a pedestal or a pole of its own, where drivers work it.
fn stands_apart(site: &Site, name: &str) -> bool {
    use site::DeviceKind::{Intercom, Keypad, Reader};
    site.device
        .iter()
        .any(|device| device.id == *name && matches!(device.kind, Reader | Keypad | Intercom))
}
