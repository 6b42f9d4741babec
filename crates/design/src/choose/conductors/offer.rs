//! What may lie in place of a cable: entries of the parts files, or standard sizes of the same make.

use formula::power::metal_area;
use quantity::{Area, Awg, ConductorSize, Quantity as _};
use site::{Cable, Device, Operator, Site, SourceFile, load, part_names};

/// A cable that may be chosen, and the conductors that it may have, what is there first.
#[derive(Debug, Clone)]
pub(crate) struct Spot {
    /// Number among the cables of the site.
    pub(crate) cable: usize,
    pub(crate) offers: Vec<Cable>,
}

/// The entries for cables in the parts files, each read for its own sake.
pub(super) fn entries(parts: &[SourceFile]) -> Vec<Cable> {
    let head = "[site]\nname = \"parts\"\ncode_basis = \"us\"\n".to_owned();
    let tables = part_names(parts, "cable").into_iter().map(|name| {
        let name = toml::Value::String(name);
        format!("[[cable]]\nid = {name}\npart = {name}\nfrom = \"a\"\nto = \"b\"\n")
    });
    let text = std::iter::once(head).chain(tables).collect();
    let file = SourceFile {
        name: "parts".to_owned(),
        text,
    };
    load(file, parts.to_vec())
        .site
        .map_or_else(Vec::new, |site| site.cable)
}

impl Spot {
    /// The cable as it is, and each entry that may lie in its place.
    pub(super) fn among(site: &Site, cable: usize, entries: &[Cable]) -> Self {
        let today = &site.cable[cable];
        let sheet = entries.iter().find(|entry| entry.part == today.part);
        let like = entries
            .iter()
            .filter(|entry| entry.part != today.part && may_replace(entry, today, sheet))
            .map(|entry| bought_as(today, entry));
        Self::that_fits(site, cable, like.collect())
    }

    /// The cable as it is, and the same with each larger standard size.
    pub(crate) fn of_standard_sizes(site: &Site, cable: usize) -> Self {
        let today = &site.cable[cable];
        let larger = today.size.map(larger_than).unwrap_or_default();
        let like = larger.into_iter().map(|size| Cable {
            size: Some(size),
            ..today.clone()
        });
        Self::that_fits(site, cable, like.collect())
    }

    /// Leaves out what is too thick for the terminals at its ends; what is there stays where nothing else is left.
    fn that_fits(site: &Site, cable: usize, others: Vec<Cable>) -> Self {
        let today = &site.cable[cable];
        let largest = largest_at_ends(site, today);
        let fits = |cable: &Cable| match (cable.size, largest) {
            (Some(size), Some(largest)) => metal_area(size) <= largest * 1.000_001,
            _ => true,
        };
        let mut offers: Vec<Cable> = std::iter::once(today.clone()).chain(others).collect();
        let others_fit = offers.iter().skip(1).any(fits);
        let mut first = true;
        offers.retain(|offer| {
            let stays = std::mem::take(&mut first) && !others_fit;
            stays || fits(offer)
        });
        Self { cable, offers }
    }
}

/// An entry carries the same, has as many cores of the same metal and make or more, its sizes are counted the same way, and
/// it stands a place as hot.
fn may_replace(entry: &Cable, today: &Cable, sheet: Option<&Cable>) -> bool {
    let same_sizes = matches!(
        (entry.size, today.size),
        (
            Some(ConductorSize::Gauge(_)),
            Some(ConductorSize::Gauge(_)) | None
        ) | (
            Some(ConductorSize::Metric(_)),
            Some(ConductorSize::Metric(_)) | None
        )
    );
    let hot = |cable: &Cable| cable.hottest.as_ref().map(quantity::Measured::nominal);
    let as_hot = match (hot(entry), sheet.and_then(hot)) {
        (Some(entry), Some(sheet)) => entry >= sheet,
        _ => true,
    };
    let same_or_unsaid = today.insulation.is_none() || entry.insulation == today.insulation;
    same_sizes
        && as_hot
        && same_or_unsaid
        && entry.carries == today.carries
        && entry.cores >= today.cores
        && entry.metal == today.metal
        && entry.stranding == today.stranding
}

/// The cable bought as another entry: what is written of this run on this site stays with it.
fn bought_as(today: &Cable, entry: &Cable) -> Cable {
    let own_hottest = today.hottest.filter(|_| !today.origin.from_part("hottest"));
    Cable {
        id: today.id.clone(),
        from: today.from.clone(),
        to: today.to.clone(),
        length: today.length,
        route: today.route.clone(),
        fuse: today.fuse.clone(),
        cores_per_pole: today.cores_per_pole,
        crossed: today.crossed,
        hottest: own_hottest.or(entry.hottest),
        note: today.note.clone(),
        origin: today.origin.clone(),
        ..entry.clone()
    }
}

/// The largest metal that the terminals at both ends take.
fn largest_at_ends(site: &Site, cable: &Cable) -> Option<Area> {
    let ends = [&cable.from, &cable.to];
    let device = |device: &&Device| ends.contains(&&device.id);
    let operator = |operator: &&Operator| ends.contains(&&operator.id);
    let devices = site.device.iter().filter(device);
    let operators = site.operator.iter().filter(operator);
    devices
        .map(|device| device.largest_conductor)
        .chain(operators.map(|operator| operator.largest_conductor))
        .flatten()
        .map(metal_area)
        .reduce(|one, other| if other < one { other } else { one })
}

/// Sizes in which cables are sold, as common practice has them.
const GAUGES: [i8; 14] = [22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -3];
/// Metric ones, in mm².
const METRIC: [f64; 15] = [
    0.34, 0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0,
];

fn larger_than(size: ConductorSize) -> Vec<ConductorSize> {
    match size {
        ConductorSize::Gauge(gauge) => GAUGES
            .into_iter()
            .filter(|number| *number < gauge.number())
            .filter_map(Awg::new)
            .map(ConductorSize::Gauge)
            .collect(),
        ConductorSize::Metric(area) => METRIC
            .into_iter()
            .map(|square| Area::from_base(square * 1e-6))
            .filter(|other| *other > area * 1.001)
            .map(ConductorSize::Metric)
            .collect(),
    }
}
