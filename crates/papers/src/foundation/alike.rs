//! Foundations that are alike share a figure: same shape, same anchors, same conduits, same things on them.

use super::pattern::{Outline, patterns, stubs};
use super::standing::{self, Shape};
use quantity::Quantity as _;
use site::{Foundation, Site};

/// Foundations that share a figure; the first is drawn.
pub(crate) struct Alike<'a> {
    pub(crate) first: &'a Foundation,
    pub(crate) names: Vec<String>,
}

impl Alike<'_> {
    /// The names one after another.
    pub(crate) fn named(&self) -> String {
        self.names.join(", ")
    }
}

/// The foundations that have sizes, those alike together.
pub(crate) fn groups(site: &Site) -> Vec<Alike<'_>> {
    let mut groups: Vec<(String, Alike<'_>)> = Vec::new();
    for foundation in &site.foundation {
        if Outline::of(foundation).is_none() {
            continue;
        }
        let look = look(site, foundation);
        match groups.iter_mut().find(|(known, _)| *known == look) {
            Some((_, group)) => group.names.push(foundation.id.to_string()),
            None => groups.push((
                look,
                Alike {
                    first: foundation,
                    names: vec![foundation.id.to_string()],
                },
            )),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// Everything that a figure of the foundation shows, apart from its name and its place.
fn look(site: &Site, foundation: &Foundation) -> String {
    let hidden = ["id", "at", "note", "poured"];
    let of_site = |key: &str| key.starts_with("anchor") || key.starts_with("stub up");
    let own: Vec<String> = foundation
        .stated(site.site.unit_system())
        .into_iter()
        .filter(|stated| !hidden.contains(&stated.key.as_str()) && !of_site(&stated.key))
        .map(|stated| format!("{} {}", stated.key, stated.text))
        .collect();
    let level = foundation
        .at
        .as_ref()
        .map_or(0.0, |at| at.z.nominal().base());
    let anchors: Vec<String> = patterns(foundation)
        .iter()
        .map(|set| {
            let anchor = set.anchor;
            let sizes = [&anchor.diameter, &anchor.embedment, &anchor.hole_diameter];
            let sizes = sizes.map(|size| size.as_ref().map(|size| size.nominal().base()));
            format!(
                "{:?} {:?} {:?} {:?} {:?}",
                anchor.kind, sizes, set.places, set.plate, anchor.part
            )
        })
        .collect();
    let stands: Vec<String> = standing::on(site, foundation)
        .iter()
        .map(|thing| match thing.shape {
            Shape::Unknown => thing.what.clone(),
            shape => format!("{} {:?} {shape:?}", thing.what, thing.at),
        })
        .collect();
    format!(
        "{own:?} {level:.4} {anchors:?} {:?} {stands:?}",
        stubs(foundation)
    )
}
