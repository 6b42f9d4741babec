//! What the plan of ways says in words.

use quantity::{Quantity as _, print};
use site::{Conduit, Site, Way};

/// The conduits of a way, with their cover where it is not the usual one, and a word on how it is dug; its own name where
/// nothing lies in it.
pub(super) fn of_way(site: &Site, way: &Way, usual: Option<&str>) -> String {
    let conduits = way.conduits.iter();
    let laid = conduits.filter_map(|id| site.conduit.iter().find(|one| one.id == *id));
    let mut lines: Vec<String> = laid
        .map(|conduit| match deep(site, conduit) {
            Some(depth) if usual == Some(&depth) => conduit.id.to_string(),
            Some(depth) => format!("{}, {depth} deep", conduit.id),
            None => format!("{}, depth not known", conduit.id),
        })
        .collect();
    if lines.is_empty() {
        lines.push(way.id.to_string());
    }
    if way.by_hand == Some(true) {
        lines.push("by hand near marks".to_owned());
    }
    lines.join("\n")
}

fn deep(site: &Site, conduit: &Conduit) -> Option<String> {
    let depth = conduit.burial_depth.as_ref()?;
    Some(print(depth.nominal(), site.site.unit_system()))
}

/// The cover that more conduits have than any other; nothing where no two have the same.
pub(super) fn usual_depth(site: &Site) -> Option<String> {
    let mut depths: Vec<(usize, String)> = Vec::new();
    let ways = site.way.iter().flat_map(|way| &way.conduits);
    let laid = ways.filter_map(|id| site.conduit.iter().find(|one| one.id == *id));
    for depth in laid.filter_map(|conduit| deep(site, conduit)) {
        match depths.iter_mut().find(|(_, known)| *known == depth) {
            Some((count, _)) => *count += 1,
            None => depths.push((1, depth)),
        }
    }
    // Of depths that are as frequent, the one that comes first in the file.
    let most = depths.iter().map(|(count, _)| *count).max()?;
    let (count, depth) = depths.into_iter().find(|(count, _)| *count == most)?;
    (count > 1).then_some(depth)
}

/// Each conduit with its ways, its size and its cables: `c-01 in way-02, PVC-40 1: w-01`.
pub(super) fn contents(site: &Site) -> Vec<String> {
    site.conduit.iter().map(|one| content(site, one)).collect()
}

fn content(site: &Site, conduit: &Conduit) -> String {
    let cables = site
        .cable
        .iter()
        .filter(|cable| cable.route.contains(&conduit.id));
    let names: Vec<&str> = cables.map(|cable| cable.id.as_str()).collect();
    let inside = if names.is_empty() {
        "empty".to_owned()
    } else {
        names.join(", ")
    };
    let size = size(site, conduit);
    let ways = site
        .way
        .iter()
        .filter(|way| way.conduits.contains(&conduit.id));
    let ways: Vec<&str> = ways.map(|way| way.id.as_str()).collect();
    let ways = if ways.is_empty() {
        String::new()
    } else {
        format!(" in {}", ways.join(", "))
    };
    format!("{}{ways}{size}: {inside}", conduit.id)
}

fn size(site: &Site, conduit: &Conduit) -> String {
    let kind = conduit.kind.map(|kind| kind.to_string());
    let trade = conduit.trade_size.as_ref().map(ToString::to_string);
    let bore = conduit
        .bore
        .as_ref()
        .map(|bore| format!("{} inside", print(bore.nominal(), site.site.unit_system())));
    let parts: Vec<String> = [kind, trade, bore].into_iter().flatten().collect();
    if parts.is_empty() {
        String::new()
    } else {
        format!(", {}", parts.join(" "))
    }
}

/// How long the ways taken are together, from their corners.
pub(super) fn together(site: &Site, ways: &[(&Way, f64)]) -> String {
    let taken = ways.iter().filter(|(way, _)| !way.conduits.is_empty());
    let sum: f64 = taken.map(|(_, length)| length).sum();
    let length = quantity::Length::from_base(sum);
    format!(
        "Ways with conduits are {} long together; measure each as dug, before it is filled.",
        print(length, site.site.unit_system())
    )
}
