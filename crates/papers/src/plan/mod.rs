//! The plans of a site, seen from above: what stands where, to scale.
//!
//! Each gate has a sheet of its own; what lies farther away is on a plan of the whole site. Only what the site file
//! gives a position is drawn; the rest is listed on the sheet, so that nobody takes an empty spot for a clear one.

mod equipment;
mod gate;
mod ground;
mod layers;
mod symbols;
mod tags;
mod window;

use draw::{DrawError, Drawing, North, Orientation, Paper, Scene, Sheet, TitleBlock};
use equipment::Placed;
use layers::Layers;
use quantity::Quantity as _;
use site::{CodeBasis, Gate, Site};
use tags::Tags;
use window::Window;

/// What the title block says besides the site's own name and revision.
#[derive(Debug, Clone)]
pub struct Imprint {
    /// Date of issue, in words.
    pub date: String,
    /// The caution along the lower edge.
    pub caution: String,
}

/// A plan with the name of its file.
#[derive(Debug, Clone)]
pub struct Plan {
    /// Name without ending: `gate-plan`.
    pub name: String,
    /// The sheet.
    pub drawing: Drawing,
}

/// Distance under which names share a label on the plan of a gate, and on that of the site (m).
const NEAR_AT_GATE: f64 = 0.5;
const NEAR_ON_SITE: f64 = 3.0;

/// The plans of a site on tabloid (US) or A3 (EU) paper: one for each gate, and one of the whole site where something
/// stands farther away.
pub fn plans(site: &Site, imprint: &Imprint) -> Result<Vec<Plan>, DrawError> {
    let mut scenes: Vec<(String, Scene)> = site
        .gate
        .iter()
        .map(|gate| (gate_sheet_name(site, gate), gate_scene(site, gate)))
        .collect();
    let windows: Vec<Window> = site.gate.iter().map(Window::of_gate).collect();
    let beyond = equipment::placed(site)
        .iter()
        .any(|thing| !windows.iter().any(|window| window.shows(thing.at)));
    if beyond || scenes.is_empty() {
        scenes.push(("site-plan".to_owned(), site_scene(site)));
    }
    let count = scenes.len();
    let sheet = |(index, (name, scene)): (usize, (String, Scene))| {
        let number = format!("{} of {count}", index + 1);
        Ok(Plan {
            name,
            drawing: sheet(site, imprint, number).lay_out(&scene)?,
        })
    };
    scenes.into_iter().enumerate().map(sheet).collect()
}

fn gate_sheet_name(site: &Site, gate: &Gate) -> String {
    if site.gate.len() == 1 {
        "gate-plan".to_owned()
    } else {
        format!("gate-plan-{}", gate.id)
    }
}

fn sheet(site: &Site, imprint: &Imprint, sheet_number: String) -> Sheet {
    let paper = match site.site.code_basis {
        CodeBasis::Us => Paper::Tabloid,
        CodeBasis::Eu => Paper::A3,
    };
    let title_block = TitleBlock {
        site: site.site.name.to_string(),
        date: imprint.date.clone(),
        sheet_number,
        revision: site
            .site
            .revision
            .as_ref()
            .map(ToString::to_string)
            .unwrap_or_default(),
        caution: imprint.caution.clone(),
    };
    Sheet::new(paper, Orientation::Landscape, north(site), title_block)
}

/// One gate and what stands around it.
fn gate_scene(site: &Site, gate: &Gate) -> Scene {
    let window = Window::of_gate(gate);
    let title = format!("Plan of gate {}", gate.id);
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "The {} gate {} from above, road side below, property above: leaf closed and open, posts, foundations, devices, beams and loops, with the lengths that matter.",
        gate.kind, gate.id
    ));
    let layers = Layers::add_to(&mut scene);
    let mut tags = Tags::default();
    ground::draw(&mut scene, &layers, site, &window);
    gate::draw(&mut scene, &layers, &mut tags, gate, &window);
    equipment::draw(&mut scene, &layers, &mut tags, site, &window);
    gate::dimensions(&mut scene, &layers, site, gate, &window);
    ground::sides(&mut scene, &layers, gate, &window);
    tags.place(&mut scene, &layers, NEAR_AT_GATE);
    let beyond: Vec<String> = equipment::placed(site)
        .into_iter()
        .filter(|thing| !window.shows(thing.at))
        .map(|thing| thing.name)
        .collect();
    ground::list(
        &mut scene,
        &layers,
        &window,
        "Beyond this sheet, see the site plan:",
        &beyond,
    );
    if site.gate.first().is_some_and(|first| first.id == gate.id) {
        ground::list(
            &mut scene,
            &layers,
            &window,
            "Not drawn, since no position is given:",
            &equipment::unplaced(site),
        );
    }
    scene
}

/// The whole site: each gate as a whole, and what stands away from it.
fn site_scene(site: &Site) -> Scene {
    let mut scene = Scene::new("Plan of the site", site.site.unit_system())
        .describe("The whole site from above, road side below: gates, lanes, enclosures, and what stands away from the gates.");
    let layers = Layers::add_to(&mut scene);
    let mut tags = Tags::default();
    let windows: Vec<Window> = site.gate.iter().map(Window::of_gate).collect();
    ground::draw(&mut scene, &layers, site, &Window::whole());
    for gate in &site.gate {
        gate::draw_leaves(&mut scene, &layers, gate);
        let middle = gate
            .clear_opening
            .as_ref()
            .map_or(0.0, |opening| opening.nominal().base() / 2.0);
        let at = draw::Point::new(
            quantity::Length::from_base(middle),
            quantity::Length::from_base(0.0),
        );
        tags.add(at, format!("gate {}, on its own sheet", gate.id));
    }
    let far =
        |thing: &Placed| thing.is_enclosure || !windows.iter().any(|window| window.shows(thing.at));
    for thing in equipment::placed(site).into_iter().filter(far) {
        thing.draw(&mut scene, &layers);
        tags.add(thing.at, thing.name);
    }
    tags.place(&mut scene, &layers, NEAR_ON_SITE);
    if site.gate.is_empty() {
        ground::list(
            &mut scene,
            &layers,
            &Window::whole(),
            "Not drawn, since no position is given:",
            &equipment::unplaced(site),
        );
    }
    scene
}

fn north(site: &Site) -> North {
    match site.place.as_ref().and_then(|place| place.north.as_ref()) {
        Some(north) => North::Toward {
            direction: quantity::Angle::from_base(north.nominal().base()),
            caption: String::new(),
        },
        None => North::NotMeasured,
    }
}
