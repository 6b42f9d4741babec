//! The sheet of one gate: what stands around it, as large as the paper allows.

use super::equipment::{self, Placed, View};
use super::layers::Layers;
use super::tags::Tags;
use super::window::{Reach, Window};
use super::{far, gate, ground, guards, lane, measures};
use draw::{DrawError, Point, Scene, Sheet};
use quantity::{Length, Quantity as _};
use site::{Gate, Site};

/// Distance under which names share a label (m).
const NEAR: f64 = 0.5;

/// How far the view of a camera is drawn (m).
const VIEW: f64 = 3.0;

/// How far the sheet may reach beyond the gate, the most first: as much is shown as costs no scale.
const REACHES: [Reach; 6] = [
    Reach {
        side: 2.0,
        depth: 1.6,
    },
    Reach {
        side: 1.0,
        depth: 1.6,
    },
    Reach {
        side: 2.0,
        depth: 1.3,
    },
    Reach {
        side: 2.0,
        depth: 1.0,
    },
    Reach {
        side: 1.0,
        depth: 1.0,
    },
    Reach::LEAST,
];

/// Sheets whose window is less wide than this times its height have room for a list beside the window.
const NARROW: f64 = 1.4;

/// Letters in a line of a list beside the window, and in one below the run-back.
const FEW_LETTERS: usize = 48;
const MANY_LETTERS: usize = 72;

/// The part of the site that the sheet shows: the least at the largest scale, and whatever else then fits.
pub(super) fn window(site: &Site, gate: &Gate, sheet: &Sheet) -> Result<Window, DrawError> {
    let points = points(site, gate);
    let of = |reach| Window::of_gate(gate, &points, reach);
    let least = of(Reach::LEAST);
    let drawn = sheet.lay_out(&scene(site, gate, &least))?;
    for reach in REACHES {
        let window = of(reach);
        let wider = sheet.lay_out(&scene(site, gate, &window))?;
        if wider.scale() == drawn.scale() && wider.without_room().is_empty() {
            return Ok(window);
        }
    }
    Ok(least)
}

/// Everything that may stand on the sheet.
pub(super) fn points(site: &Site, gate: &Gate) -> Vec<Point> {
    let posts = gate.post.iter().filter_map(|post| post.at.as_ref());
    let stops = gate.stop.iter().filter_map(|stop| stop.at.as_ref());
    let own = posts.chain(stops).map(ground::seen_from_above);
    let guards = guards::points(site);
    let all = equipment::points(site).into_iter().chain(guards);
    all.chain(own).collect()
}

/// One gate and what stands around it.
pub(super) fn scene(site: &Site, gate: &Gate, window: &Window) -> Scene {
    let title = format!("Plan of gate {}", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "The {} gate {} from above, road side below, property above: leaf closed and open, posts, foundations, devices, beams and loops, with the lengths that matter.",
        gate.kind, gate.id
    ));
    let layers = Layers::add_to(&mut scene);
    let mut tags = Tags::default();
    ground::sides(&mut scene, &layers, window);
    lane::draw(&mut scene, &layers, site, window);
    ground::draw(&mut scene, &layers, site, window);
    gate::draw(&mut scene, &layers, &mut tags, gate, window);
    let shown = |thing: &Placed| window.shows(thing.at);
    let view = View { window, far: VIEW };
    equipment::draw(&mut scene, &layers, &mut tags, site, &view, shown);
    guards::draw(&mut scene, &layers, &mut tags, site, |at| window.shows(at));
    guards::remark(&mut scene, site, |at| window.shows(at));
    measures::draw(&mut scene, &layers, site, gate, window);
    tags.place(&mut scene, layers.notes, NEAR, |_| None);
    draw_lists(&mut scene, &layers, site, gate, window);
    scene
}

/// What stands beyond the sheet, and on the first gate's sheet what has no place at all.
fn draw_lists(scene: &mut Scene, layers: &Layers, site: &Site, gate: &Gate, window: &Window) {
    let middle = middle(gate);
    let beyond: Vec<Placed> = equipment::placed(site)
        .into_iter()
        .filter(|thing| !window.shows(thing.at))
        .collect();
    let lines = far::lines(&beyond, middle, scene.units);
    let (wide, high) = (window.right - window.left, window.above - window.below);
    let (left, letters) = if wide < NARROW * high {
        (window.right + 0.1 * wide, FEW_LETTERS)
    } else {
        (2.3 * middle.x.base(), MANY_LETTERS)
    };
    let place = |share: f64| {
        let y = window.below * share;
        let at = Point::new(Length::from_base(left), Length::from_base(y));
        (at, letters)
    };
    ground::list(
        scene,
        layers,
        place(0.45),
        "Beyond this sheet, see the site plan (from the middle of the opening):",
        &lines,
    );
    if site.gate.first().is_some_and(|first| first.id == gate.id) {
        let unplaced = equipment::unplaced(site);
        far::list_unplaced(scene, layers, place(-0.55), &unplaced);
    }
}

/// The middle of the opening.
pub(crate) fn middle(gate: &Gate) -> Point {
    let opening = gate.clear_opening.as_ref();
    let middle = opening.map_or(0.0, |opening| opening.nominal().base() / 2.0);
    Point::new(Length::from_base(middle), Length::from_base(0.0))
}
