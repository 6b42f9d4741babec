//! Supplies and cables.

use super::report::Report;
use crate::Id;
use crate::model::{Site, Supply};
use crate::problem::Code;

/// Supplies do not feed each other in a circle.
pub(super) fn feeding_circle(site: &Site, report: &mut Report<'_>) {
    for supply in site
        .supply
        .iter()
        .filter(|supply| feeds_itself(site, supply))
    {
        let what = format!(
            "supply `{}` is fed by itself, directly or through others",
            supply.id
        );
        report.wrong(
            Code::FeedingCircle,
            &supply.origin,
            "fed_by",
            &what,
            "the supply on the side of the mains",
        );
    }
}

/// Going from feeder to feeder leads back to this supply.
fn feeds_itself(site: &Site, supply: &Supply) -> bool {
    let feeder = |id: &Id| site.supply.iter().find(|candidate| candidate.id == *id);
    let mut next = supply.fed_by.as_ref();
    for _ in &site.supply {
        match next {
            Some(id) if *id == supply.id => return true,
            Some(id) => next = feeder(id).and_then(|feeder| feeder.fed_by.as_ref()),
            None => return false,
        }
    }
    false
}

/// A cable leads from one thing to another.
pub(super) fn cable_to_itself(site: &Site, report: &mut Report<'_>) {
    for cable in site.cable.iter().filter(|cable| cable.from == cable.to) {
        let what = format!("both ends of cable `{}` are at `{}`", cable.id, cable.to);
        report.wrong(
            Code::CableToItself,
            &cable.origin,
            "to",
            &what,
            "what is at its second end",
        );
    }
}

/// A cable has the cores that are joined for a pole.
pub(super) fn too_few_cores(site: &Site, report: &mut Report<'_>) {
    for cable in &site.cable {
        let (Some(cores), Some(per_pole)) = (cable.cores, cable.cores_per_pole) else {
            continue;
        };
        if per_pole > cores {
            let what = format!("{per_pole} cores joined for each pole of a cable of {cores}");
            report.wrong(
                Code::TooFewCores,
                &cable.origin,
                "cores_per_pole",
                &what,
                "at most the number of `cores`",
            );
        }
    }
}

/// Power over Ethernet flows over 2 or 4 pairs (IEEE 802.3).
pub(super) fn power_pairs(site: &Site, report: &mut Report<'_>) {
    for cable in &site.cable {
        let Some(pairs) = cable.power_pairs.filter(|pairs| ![2, 4].contains(pairs)) else {
            continue;
        };
        let what = format!("power over Ethernet over {pairs} pairs");
        report.wrong(
            Code::PowerPairs,
            &cable.origin,
            "power_pairs",
            &what,
            "2 or 4",
        );
    }
}
