//! What the plan of ways says in words.

use quantity::{Quantity as _, UnitSystem, print};
use site::{Conduit, Site, Way};

/// Name of a way, its conduits with their cover, and a word on how it is dug.
pub(super) fn of_way(site: &Site, way: &Way) -> String {
    let units = site.site.unit_system();
    let conduits = way.conduits.iter();
    let laid = conduits.filter_map(|id| site.conduit.iter().find(|one| one.id == *id));
    let mut lines = vec![way.id.to_string()];
    lines.extend(laid.map(|conduit| deep(conduit, units)));
    if way.by_hand == Some(true) {
        lines.push("by hand near marks".to_owned());
    }
    lines.join("\n")
}

fn deep(conduit: &Conduit, units: UnitSystem) -> String {
    match &conduit.burial_depth {
        Some(depth) => format!("{}, {} deep", conduit.id, print(depth.nominal(), units)),
        None => format!("{}, depth not known", conduit.id),
    }
}

/// Each conduit with its size and its cables: `c-01, PVC-40 1: w-01`.
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
    format!("{}{size}: {inside}", conduit.id)
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
