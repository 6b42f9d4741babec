//! Bollards and covers on the plan.

use super::gate::nominal;
use super::ground::seen_from_above;
use super::layers::Layers;
use super::tags::Tags;
use draw::{Figure, Fill, Hatch, Placement, Point, Scene};
use quantity::{Angle, Length, Quantity as _};
use site::{Bollard, Cover, Id, Section, SectionShape, Site};

/// Width that a bollard is drawn with where nobody has said (m).
const USUAL_WIDTH: f64 = 0.15;

/// Every point where a bollard or a cover is.
pub(super) fn points(site: &Site) -> Vec<Point> {
    let bollards = site.bollard.iter().filter_map(|it| it.at.as_ref());
    let covers = site.cover.iter().filter_map(|it| it.at.as_ref());
    bollards.chain(covers).map(seen_from_above).collect()
}

/// Draws the bollards and covers that a sheet shows, with their names.
pub(super) fn draw(
    scene: &mut Scene,
    layers: &Layers,
    tags: &mut Tags,
    site: &Site,
    shown: impl Fn(Point) -> bool,
) {
    for bollard in &site.bollard {
        let at = bollard.at.as_ref().map(seen_from_above);
        if let Some(at) = at.filter(|at| shown(*at)) {
            draw_bollard(scene, layers, bollard, at);
            tags.add(at, bollard.id.to_string());
        }
    }
    for cover in &site.cover {
        let at = cover.at.as_ref().map(seen_from_above);
        if let Some(at) = at.filter(|at| shown(*at)) {
            draw_cover(scene, layers, tags, cover, at);
        }
    }
}

/// Says what the bollards that a sheet shows guard.
pub(super) fn remark(scene: &mut Scene, site: &Site, shown: impl Fn(Point) -> bool) {
    let here = |bollard: &&Bollard| {
        let at = bollard.at.as_ref().map(seen_from_above);
        !bollard.guards.is_empty() && at.is_some_and(&shown)
    };
    let duties = site.bollard.iter().filter(here).map(|bollard| {
        let guarded: Vec<&str> = bollard.guards.iter().map(Id::as_str).collect();
        format!("{} guards {}", bollard.id, guarded.join(", "))
    });
    let duties: Vec<String> = duties.collect();
    if !duties.is_empty() {
        scene.remark(format!("Bollards: {}.", duties.join("; ")));
    }
}

fn draw_bollard(scene: &mut Scene, layers: &Layers, bollard: &Bollard, at: Point) {
    let wide = nominal(bollard.diameter.as_ref())
        .or_else(|| bollard.section.as_ref().map(width))
        .unwrap_or_else(|| {
            scene.remark(format!(
                "Bollard {} is drawn 150 mm wide; its diameter is not given.",
                bollard.id
            ));
            Length::from_base(USUAL_WIDTH)
        });
    let circle = Figure::circle(at, wide / 2.0, Fill::Hatched(hatch()));
    scene.add_titled(layers.bollards, format!("bollard {}", bollard.id), circle);
}

/// Level lines close together: a bollard.
fn hatch() -> Hatch {
    Hatch {
        angle: Angle::from_base(0.0),
        spacing: Length::from_base(0.0007),
        crossed: false,
    }
}

/// Width of a section seen from above; a pipe's by its nominal size.
fn width(section: &Section) -> Length {
    match section.shape() {
        SectionShape::Hss { depth, .. }
        | SectionShape::Tube { depth, .. }
        | SectionShape::Flat { depth, .. } => depth,
        SectionShape::RoundTube { diameter, .. } | SectionShape::Rod { diameter } => diameter,
        SectionShape::Pipe { nominal } => nominal,
    }
}

fn draw_cover(scene: &mut Scene, layers: &Layers, tags: &mut Tags, cover: &Cover, at: Point) {
    let symbol = Placement::new(super::symbols::cover(), at);
    scene.add_titled(layers.devices, format!("cover {}", cover.id), symbol);
    let wheels = cover.under_wheels == Some(true);
    let name = if wheels {
        format!("{}, under wheels", cover.id)
    } else {
        cover.id.to_string()
    };
    tags.add(at, name);
}
