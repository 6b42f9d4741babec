//! The least that a vehicle of the site takes from a loop, as its detector sees it.

use super::electrical::Electrical;
use super::laid::Laid;
use crate::asking::Asking;
use crate::outcome::Halt;
use crate::vehicle::{Sized, sized, usual};
use formula::signal::{LoopAtDetector, LoopOverSteel, LoopVehicleShare};
use quantity::{Length, Quantity as _, Ratio};
use sim::vehicle::{Part, PartName};
use site::Site;

/// What the vehicle that a loop sees worst takes from it.
#[derive(Debug, Clone)]
pub(crate) struct Least {
    /// The vehicle, in words.
    pub(crate) what: String,
    /// Its metal above the wire.
    pub(crate) height: Length,
    /// Share that the detector sees.
    pub(crate) share: Ratio,
    /// How far the frequency rises.
    pub(crate) rise: Ratio,
}

/// The vehicle with broad metal that a loop sees worst; nothing where all that come are motorcycles and bicycles.
pub(crate) fn least_share<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    laid: &Laid,
    of: &Electrical,
) -> Result<Option<Least>, Halt> {
    let mut whole: Result<Vec<(String, Sized)>, Halt> = Ok(Vec::new());
    for vehicle in &site.vehicle {
        let sized = sized(asking, vehicle);
        whole = whole.and_then(|mut whole| {
            whole.push((vehicle.what.to_string(), sized?));
            Ok(whole)
        });
    }
    if site.vehicle.is_empty() {
        let named = |(what, sized): (&str, Sized)| (what.to_owned(), sized);
        whole = usual(asking).map(|all| all.into_iter().map(named).collect());
    }
    let mut least: Option<Least> = None;
    for (what, sized) in whole? {
        let Some(metal) = highest(&sized) else {
            continue;
        };
        let found = taken(asking, laid, of, (what, metal))?;
        if least.as_ref().is_none_or(|least| found.share < least.share) {
            least = Some(found);
        }
    }
    Ok(least)
}

/// The highest broad metal of a vehicle.
fn highest(sized: &Sized) -> Option<Part> {
    let broad = |part: &&Part| part.metal && part.name != PartName::Tail;
    let parts = sized.outline.parts.iter().filter(broad);
    parts
        .max_by(|a, b| a.bottom.base().total_cmp(&b.bottom.base()))
        .copied()
        .filter(|_| !sized.outline.narrow)
}

fn taken(
    asking: &mut Asking<'_>,
    laid: &Laid,
    of: &Electrical,
    (what, metal): (String, Part),
) -> Result<Least, Halt> {
    let height = laid.depth + metal.bottom;
    let least = |one: Length, other: Length| if one < other { one } else { other };
    let over = LoopVehicleShare {
        length: laid.length(),
        width: laid.width(),
        turns: laid.turns,
        inductance: of.over_steel.unwrap_or(of.own),
        metal_length: least(metal.width, laid.length()),
        metal_width: least(metal.to - metal.from, laid.width()),
        height,
    };
    let share = asking.work(&over)?.share;
    let field = match of.steel {
        Some(steel) => {
            let steel = LoopOverSteel {
                length: laid.length(),
                width: laid.width(),
                turns: laid.turns,
                inductance: of.own,
                steel,
                height,
            };
            asking.work(&steel)?.field.base()
        }
        None => 1.0,
    };
    let seen = asking.work(&LoopAtDetector {
        inductance: over.inductance,
        lead_in: of.lead_in,
        share: share * (field * field),
    })?;
    Ok(Least {
        what,
        height,
        share: seen.share_left,
        rise: seen.rise,
    })
}
