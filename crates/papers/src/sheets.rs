//! Every drawing of a site on its sheet: plans, elevations, sections, plots.

use crate::{
    camera, compose, curves, detector, elevation, foot, foundation, hazard, heat, mounting, net,
    plan, power, queue, radio, shelter, swept, vehicle, walk, ways,
};
use design::walk::KeptWalk;
use draw::{DrawError, Drawing, North, Orientation, Paper, ScaleChoice, Scene, Sheet, TitleBlock};
use quantity::{Quantity as _, Ratio};
use site::{CodeBasis, Gate, Site};

/// What the title block says besides the site's own name and revision.
#[derive(Debug, Clone)]
pub struct Imprint {
    /// Date of issue, in words.
    pub date: String,
    /// The caution along the lower edge.
    pub caution: String,
}

/// A drawing with the name of its file.
#[derive(Debug, Clone)]
pub struct NamedDrawing {
    /// Name without ending: `gate-plan`.
    pub name: String,
    /// The sheet.
    pub drawing: Drawing,
}

/// A pattern at full size, with the name of its file.
#[derive(Debug, Clone)]
pub struct Template {
    /// Name without ending: `template-pad`.
    pub name: String,
    /// The pages to print.
    pub pages: Vec<Drawing>,
    /// The whole pattern on one sheet, for CAD.
    pub whole: Drawing,
}

/// The templates of every set of anchors, on letter (US) or A4 (EU) paper at full size.
pub fn templates(site: &Site, imprint: &Imprint) -> Result<Vec<Template>, DrawError> {
    foundation::templates(site, imprint)
}

/// A scene on one sheet, as large as it fits.
pub(crate) fn whole(site: &Site, imprint: &Imprint, scene: &Scene) -> Result<Drawing, DrawError> {
    sheet(site, imprint, String::new(), north(site)).lay_out(scene)
}

/// A scene that is to go on a sheet, with the name of its file.
pub(crate) struct Planned {
    pub(crate) name: String,
    pub(crate) scene: Scene,
    pub(crate) north: North,
    pub(crate) scale: ScaleChoice,
    /// Half a sheet is enough: two of them go on one sheet of the pack.
    pub(crate) half: bool,
}

/// The drawings of a site on tabloid (US) or A3 (EU) paper: the plan of each gate, one of the whole site where
/// something stands farther away, the ways of people on foot, lanes and what vehicles sweep there, each gate from the
/// front and cut across, where it can catch somebody, vehicles in it and what sees them, its foundations, how it moves as
/// curves, the queue before it, power and data as diagrams, each enclosure with its layout and its warmth, each camera with what it sees, the ways in the ground;
/// what is small on paper of half that size.
pub fn drawings(site: &Site, imprint: &Imprint) -> Result<Vec<NamedDrawing>, DrawError> {
    laid_out(site, imprint, &beside_plans(site, &[]), None)
}

/// What is drawn besides the plans, in order, with what was kept of walks; it is the same whatever the title block says.
pub(crate) fn beside_plans(site: &Site, walks: &[KeptWalk]) -> Vec<Planned> {
    let mut planned: Vec<Planned> = foot::planned(site).into_iter().collect();
    planned.extend(swept::planned(site));
    for gate in &site.gate {
        planned.extend(upright(site, gate));
        planned.extend(hazard::planned(site, gate));
        planned.extend(vehicle::planned(site, gate));
        planned.extend(detector::planned(site, gate));
        planned.extend(walk::planned(site, gate, walks));
    }
    let foundations = foundation::planned(site);
    let (small, large): (Vec<Planned>, Vec<Planned>) =
        foundations.into_iter().partition(|planned| planned.half);
    planned.extend(large);
    planned.extend(small);
    for gate in &site.gate {
        planned.extend(mountings(site, gate));
        planned.extend(plots(site, gate));
    }
    planned.extend(queue::planned(site));
    planned.extend(power::planned(site));
    planned.extend(shelter::planned(site));
    planned.extend(heat::planned(site));
    planned.extend(camera::planned(site));
    planned.extend(net::planned(site));
    planned.extend(radio::planned(site));
    planned.extend(ways::planned(site));
    planned
}

/// A scene on a sheet of its own.
pub(crate) fn on_a_sheet(
    site: &Site,
    imprint: &Imprint,
    planned: &Planned,
) -> Result<NamedDrawing, DrawError> {
    let sheet = sheet(site, imprint, "1 of 1".to_owned(), planned.north.clone());
    Ok(NamedDrawing {
        name: planned.name.clone(),
        drawing: sheet.scale(planned.scale.clone()).lay_out(&planned.scene)?,
    })
}

/// The plans of a site and what is drawn besides them, each on its sheet.
pub(crate) fn laid_out(
    site: &Site,
    imprint: &Imprint,
    beside: &[Planned],
    since: Option<&Site>,
) -> Result<Vec<NamedDrawing>, DrawError> {
    let trial = sheet(site, imprint, String::new(), north(site));
    let mut plans = plan::planned(site, &trial)?;
    if let Some(before) = since {
        plans = clouded(site, before, plans, &plan::planned(before, &trial)?);
    }
    let all: Vec<&Planned> = plans.iter().chain(beside).collect();
    numbered(site, imprint, &all)
}

/// Drawings that belong together, numbered from one.
pub(crate) fn on_its_sheets(
    site: &Site,
    imprint: &Imprint,
    planned: &[Planned],
) -> Result<Vec<NamedDrawing>, DrawError> {
    numbered(site, imprint, &planned.iter().collect::<Vec<_>>())
}

fn numbered(
    site: &Site,
    imprint: &Imprint,
    all: &[&Planned],
) -> Result<Vec<NamedDrawing>, DrawError> {
    let count = all.len();
    let on_its_sheet = |(index, planned): (usize, &&Planned)| {
        let number = format!("{} of {count}", index + 1);
        let mut sheet = sheet(site, imprint, number, planned.north.clone());
        if planned.half {
            sheet.paper = half(sheet.paper);
        }
        Ok(NamedDrawing {
            name: planned.name.clone(),
            drawing: sheet.scale(planned.scale.clone()).lay_out(&planned.scene)?,
        })
    };
    all.iter().enumerate().map(on_its_sheet).collect()
}

/// Drawings with clouds around what is not as it was on those of an earlier issue.
pub(crate) fn clouded(
    site: &Site,
    before: &Site,
    now: Vec<Planned>,
    then: &[Planned],
) -> Vec<Planned> {
    let (since, revision) = (compose::revision(before), compose::revision(site));
    now.into_iter()
        .map(|planned| {
            let old = then.iter().find(|old| old.name == planned.name);
            let scene = planned
                .scene
                .clouded(old.map(|old| &old.scene), &since, &revision);
            Planned { scene, ..planned }
        })
        .collect()
}

/// A gate seen from the front, and cut across.
fn upright(site: &Site, gate: &Gate) -> Vec<Planned> {
    let elevation = ("gate-elevation", Some(elevation::scene(site, gate)));
    let section = ("gate-section", elevation::section(site, gate));
    let planned = |(name, scene): (&str, Option<Scene>)| {
        Some(Planned {
            name: sheet_name(site, gate, name),
            scene: scene?,
            north: North::NotSeenFromAbove,
            scale: ScaleChoice::LargestThatFits,
            half: false,
        })
    };
    [elevation, section]
        .into_iter()
        .filter_map(planned)
        .collect()
}

/// The mounting of each swing operator.
fn mountings(site: &Site, gate: &Gate) -> impl Iterator<Item = Planned> {
    let scenes = mounting::scenes(site, gate).into_iter();
    scenes.map(|(operator, scene)| Planned {
        name: format!("mounting-{operator}"),
        scene,
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::LargestThatFits,
        half: true,
    })
}

/// The plots of a gate, without scale.
fn plots(site: &Site, gate: &Gate) -> impl Iterator<Item = Planned> {
    let scenes = curves::scenes(site, gate).into_iter();
    scenes.map(|(name, scene)| Planned {
        name: sheet_name(site, gate, &name),
        scene,
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: true,
    })
}

/// The name of a gate's sheet; the gate is named where there are more of them.
pub(crate) fn sheet_name(site: &Site, gate: &Gate, what: &str) -> String {
    if site.gate.len() == 1 {
        what.to_owned()
    } else {
        format!("{what}-{}", gate.id)
    }
}

/// The paper of half the size, of which two lie on the larger.
fn half(paper: Paper) -> Paper {
    match paper {
        Paper::Letter | Paper::Tabloid => Paper::Letter,
        Paper::A4 | Paper::A3 => Paper::A4,
    }
}

fn sheet(site: &Site, imprint: &Imprint, sheet_number: String, north: North) -> Sheet {
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
    Sheet::new(paper, Orientation::Landscape, north, title_block)
}

pub(crate) fn north(site: &Site) -> North {
    match site.place.as_ref().and_then(|place| place.north.as_ref()) {
        Some(north) => North::Toward {
            direction: quantity::Angle::from_base(north.nominal().base()),
            caption: String::new(),
        },
        None => North::NotMeasured,
    }
}
