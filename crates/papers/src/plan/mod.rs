//! The plan of a site, seen from above: what stands where, to scale.
//!
//! Only what the site file gives a position is drawn; the rest is listed in a note on the sheet, so that nobody takes
//! an empty spot for a clear one.

mod equipment;
mod gate;
mod ground;
mod layers;
mod symbols;

use draw::{Drawing, North, Orientation, Paper, Scene, Sheet, TitleBlock};
use layers::Layers;
use quantity::Quantity as _;
use site::{CodeBasis, Site};

/// What the title block says besides the site's own name and revision.
#[derive(Debug, Clone)]
pub struct Imprint {
    /// Date of issue, in words.
    pub date: String,
    /// Which sheet of how many.
    pub sheet_number: String,
    /// The caution along the lower edge.
    pub caution: String,
}

/// The plan of a site, laid out on tabloid (US) or A3 (EU) paper at the largest standard scale that fits.
pub fn plan(site: &Site, imprint: Imprint) -> Result<Drawing, draw::DrawError> {
    let paper = match site.site.code_basis {
        CodeBasis::Us => Paper::Tabloid,
        CodeBasis::Eu => Paper::A3,
    };
    let title_block = TitleBlock {
        site: site.site.name.to_string(),
        date: imprint.date,
        sheet_number: imprint.sheet_number,
        revision: site
            .site
            .revision
            .as_ref()
            .map(ToString::to_string)
            .unwrap_or_default(),
        caution: imprint.caution,
    };
    Sheet::new(paper, Orientation::Landscape, north(site), title_block).lay_out(&scene(site))
}

/// Everything that the plan shows, in site coordinates.
pub fn scene(site: &Site) -> Scene {
    let mut scene = Scene::new("Plan", site.site.unit_system()).describe(description(site));
    let layers = Layers::add_to(&mut scene);
    ground::draw(&mut scene, &layers, site);
    for gate in &site.gate {
        gate::draw(&mut scene, &layers, gate);
    }
    let unplaced = equipment::draw(&mut scene, &layers, site);
    ground::list_unplaced(&mut scene, &layers, &unplaced);
    scene
}

fn description(site: &Site) -> String {
    let gates: Vec<String> = site
        .gate
        .iter()
        .map(|gate| format!("{} {}", gate.kind, gate.id))
        .collect();
    format!(
        "The site from above, road side below, property above: {}, with posts, foundations, devices, enclosures and lanes that have a position.",
        gates.join(", ")
    )
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
