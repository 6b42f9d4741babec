//! The current that a cable's conductors carry without end, as a limit for its fuse.

use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::mains::{NecAmpacity, NecSmallConductor, RatedTemperature};
use formula::power::metal_area;
use formula::{Evidence, Source};
use quantity::{Awg, ConductorSize, Current, Quantity as _, celsius};
use site::{Cable, Site};

static SMALL: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "240.4(D)(1) and (2)",
    evidence: Evidence::Memory,
    seen: "recalled: 7 A for 18 AWG, 10 A for 16 AWG",
};

static SMALL_METRIC: Source = Source {
    work: "EN 60204-1",
    clause: "table 6",
    evidence: Evidence::Memory,
    seen: "recalled: 8.5 A for 0.75 mm² and 13 A for 1.5 mm² in a duct; less is taken",
};

static METRIC: Source = Source {
    work: "a metric conductor carries at least what the gauge of no more metal carries",
    clause: "",
    evidence: Evidence::Physics,
    seen: "more metal, less heat",
};

/// Conductors below the tables: least area in mm², amperes.
const SMALLER: [(f64, f64); 4] = [(1.30, 10.0), (0.82, 7.0), (0.75, 6.0), (0.50, 3.0)];
/// Gauges of the table from the thickest down.
const GAUGES: [i8; 9] = [1, 2, 3, 4, 6, 8, 10, 12, 14];

/// What the conductors of a cable carry for good, in the hottest air of the site.
pub(super) fn carries<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    cable: &'s Cable,
) -> Result<Current, Halt> {
    let size = pick!(asking, cable.size);
    let rating = read!(asking, cable.insulation_rating);
    let ambient = read!(asking, site.climate?.hottest);
    let cores = pick!(asking, cable.cores);
    let (size, rating, ambient, cores) = (size?, rating?, ambient?, cores?);
    let square_millimeters = metal_area(size).base() * 1e6;
    let gauge = gauge(size);
    let Some(gauge) = gauge else {
        asking.rest_on(match size {
            ConductorSize::Gauge(_) => &SMALL,
            ConductorSize::Metric(_) => &SMALL_METRIC,
        });
        let known = SMALLER
            .iter()
            .find(|(least, _)| square_millimeters >= *least);
        return match known {
            Some((_, amperes)) => Ok(Current::from_base(*amperes)),
            None => asking.refuse(
                "no current is known here for so thin a conductor; take a supply of limited power",
            ),
        };
    };
    if let ConductorSize::Metric(_) = size {
        asking.rest_on(&METRIC);
    }
    let size = ConductorSize::Gauge(gauge);
    let ampacity = asking
        .work(&NecAmpacity {
            size,
            insulation: rated(rating >= celsius(90.0), rating >= celsius(75.0)),
            terminals: RatedTemperature::Sixty,
            ambient,
            conductors: cores,
        })?
        .ampacity;
    let limit = asking.work_if_in_reach(&NecSmallConductor { size });
    Ok(match limit {
        Some(limit) if limit.largest < ampacity => limit.largest,
        _ => ampacity,
    })
}

fn rated(ninety: bool, seventy_five: bool) -> RatedTemperature {
    match (ninety, seventy_five) {
        (true, _) => RatedTemperature::Ninety,
        (_, true) => RatedTemperature::SeventyFive,
        _ => RatedTemperature::Sixty,
    }
}

/// The thickest gauge of the table with no more metal than the conductor.
fn gauge(size: ConductorSize) -> Option<Awg> {
    let metal = metal_area(size).base();
    GAUGES
        .into_iter()
        .filter_map(Awg::new)
        .find(|gauge| metal_area(ConductorSize::Gauge(*gauge)).base() <= metal * (1.0 + 1e-9))
}
