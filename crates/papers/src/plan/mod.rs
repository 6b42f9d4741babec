//! The plans of a site, seen from above: what stands where, to scale.
//!
//! Each gate has a sheet of its own; what lies farther away is on a plan of the whole site. Only what the site file
//! gives a position is drawn; the rest is listed on the sheet, so that nobody takes an empty spot for a clear one.

mod equipment;
mod far;
mod gate;
mod gate_sheet;
mod ground;
mod lane;
mod layers;
mod measures;
mod site_sheet;
mod symbols;
mod tags;
mod window;

use draw::{DrawError, Drawing, North, Orientation, Paper, Scene, Sheet, TitleBlock};
use equipment::Placed;
use quantity::Quantity as _;
use site::{CodeBasis, Gate, Site};
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

/// The plans of a site on tabloid (US) or A3 (EU) paper: one for each gate, and one of the whole site where something
/// stands farther away.
pub fn plans(site: &Site, imprint: &Imprint) -> Result<Vec<Plan>, DrawError> {
    let trial = sheet(site, imprint, String::new());
    let mut scenes: Vec<(String, Scene)> = Vec::new();
    let mut windows: Vec<Window> = Vec::new();
    for gate in &site.gate {
        let window = gate_sheet::window(site, gate, &trial)?;
        let scene = gate_sheet::scene(site, gate, &window);
        scenes.push((gate_sheet_name(site, gate), scene));
        windows.push(window);
    }
    let is_far = |thing: &Placed| !windows.iter().any(|window| window.shows(thing.at));
    if scenes.is_empty() || equipment::placed(site).iter().any(is_far) {
        scenes.push(("site-plan".to_owned(), site_sheet::scene(site, &windows)));
    }
    let count = scenes.len();
    let laid_out = |(index, (name, scene)): (usize, (String, Scene))| {
        let number = format!("{} of {count}", index + 1);
        Ok(Plan {
            name,
            drawing: sheet(site, imprint, number).lay_out(&scene)?,
        })
    };
    scenes.into_iter().enumerate().map(laid_out).collect()
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

fn north(site: &Site) -> North {
    match site.place.as_ref().and_then(|place| place.north.as_ref()) {
        Some(north) => North::Toward {
            direction: quantity::Angle::from_base(north.nominal().base()),
            caption: String::new(),
        },
        None => North::NotMeasured,
    }
}
