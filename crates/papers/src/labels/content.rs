//! What the labels say.

use crate::view::DocumentView;
use design::wiring::fed;
use site::{Cable, Id, Site};

/// The words of one label.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Wording {
    /// What it names.
    pub(super) head: String,
    /// What else it says.
    pub(super) lines: Vec<String>,
    /// What its code says.
    pub(super) code: String,
}

/// Every label: cable ends, then things, then fuses, then the papers.
pub(super) fn all(site: &Site, document: &DocumentView) -> Vec<Wording> {
    let mut labels: Vec<Wording> = site
        .cable
        .iter()
        .flat_map(|cable| ends(site, cable))
        .collect();
    labels.extend(things(site));
    labels.extend(fuses(site));
    labels.push(papers(site, document));
    labels
}

/// The two ends of a cable.
fn ends(site: &Site, cable: &Cable) -> [Wording; 2] {
    let place = |thing: &Id| match enclosure_of(site, thing) {
        Some(enclosure) => format!("{thing} in {enclosure}"),
        None => thing.to_string(),
    };
    let end = |here: &Id, there: &Id, number: u8| Wording {
        head: cable.id.to_string(),
        lines: vec![
            format!("at {}", place(here)),
            format!("to {}", place(there)),
        ],
        code: format!(
            "{}; cable {} end {number} of 2; at {here}, to {there}",
            site.site.name, cable.id
        ),
    };
    [
        end(&cable.from, &cable.to, 1),
        end(&cable.to, &cable.from, 2),
    ]
}

/// The enclosure that something is mounted in.
fn enclosure_of<'s>(site: &'s Site, thing: &Id) -> Option<&'s Id> {
    let devices = site.device.iter().map(|one| (&one.id, &one.enclosure));
    let supplies = site.supply.iter().map(|one| (&one.id, &one.enclosure));
    let batteries = site.battery.iter().map(|one| (&one.id, &one.enclosure));
    devices
        .chain(supplies)
        .chain(batteries)
        .find(|(id, _)| *id == thing)
        .and_then(|(_, enclosure)| enclosure.as_ref())
}

/// Operators, devices, supplies, batteries, enclosures and disconnects.
fn things(site: &Site) -> Vec<Wording> {
    let label = |id: &Id, what: String, fuse: Option<&Id>, fed_by: Option<&Id>| {
        let fed = match (fed_by, fuse) {
            (Some(source), Some(fuse)) => Some(format!("fed by {source}, fuse {fuse}")),
            (Some(source), None) => Some(format!("fed by {source}")),
            (None, Some(fuse)) => Some(format!("fuse {fuse}")),
            (None, None) => None,
        };
        Wording {
            head: id.to_string(),
            code: format!("{}; {id}; {what}", site.site.name),
            lines: std::iter::once(what).chain(fed).collect(),
        }
    };
    let fuse_to = |id: &Id| {
        let mut cables = site.cable.iter().filter(|cable| cable.to == *id);
        cables.find_map(|cable| cable.fuse.as_ref())
    };
    let mut labels = Vec::new();
    for one in &site.operator {
        labels.push(label(
            &one.id,
            format!("operator of {}", one.gate),
            fuse_to(&one.id),
            one.supply.as_ref(),
        ));
    }
    for one in &site.device {
        let fuse = one.fuse.as_ref().or_else(|| fuse_to(&one.id));
        labels.push(label(
            &one.id,
            one.kind.to_string(),
            fuse,
            one.supply.as_ref(),
        ));
    }
    for one in &site.supply {
        labels.push(label(
            &one.id,
            one.kind.to_string(),
            fuse_to(&one.id),
            one.fed_by.as_ref(),
        ));
    }
    for one in &site.battery {
        labels.push(label(&one.id, "battery".to_owned(), None, None));
    }
    for one in &site.enclosure {
        labels.push(label(&one.id, "enclosure".to_owned(), None, None));
    }
    for one in &site.disconnect {
        let of: Vec<String> = one.of.iter().map(ToString::to_string).collect();
        labels.push(label(
            &one.id,
            format!("switches off {}", of.join(", ")),
            None,
            None,
        ));
    }
    labels
}

/// What each fuse feeds.
fn fuses(site: &Site) -> Vec<Wording> {
    let units = site.site.unit_system();
    let of = |fed: &design::wiring::Fed<'_>| {
        let feeds: Vec<String> = fed.feeds.iter().map(ToString::to_string).collect();
        let rated = fed.fuse.rated_current.as_ref();
        let rated = rated.map_or_else(String::new, |rated| {
            format!(" {}", quantity::print(rated.nominal(), units))
        });
        Wording {
            head: format!("{}{rated}", fed.fuse.id),
            lines: vec![format!("feeds {}", feeds.join(", "))],
            code: format!(
                "{}; fuse {}{rated}; feeds {}",
                site.site.name,
                fed.fuse.id,
                feeds.join(", ")
            ),
        }
    };
    fed(site).iter().map(of).collect()
}

/// For the papers that are kept at the gate.
fn papers(site: &Site, document: &DocumentView) -> Wording {
    Wording {
        head: format!("revision {}", document.revision),
        lines: vec![
            site.site.name.to_string(),
            format!("papers of {}", document.date),
        ],
        code: format!(
            "{}; papers of {}; revision {}; file {}",
            site.site.name, document.date, document.revision, document.fingerprint
        ),
    }
}
