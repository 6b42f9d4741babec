//! What the ground under the site carries: by a report, else by the class of the soil.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use formula::standing::{PresumptiveSoil, Soil, SoilValues};
use formula::{Evidence, Source};
use quantity::{Pressure, PressurePerDepth, Quantity as _, Word as _};
use site::{Climate, CodeBasis, Site, SoilClass};

static EUROPE: Source = Source {
    work: "presumptive soil values of the International Building Code, in place of a soil report",
    clause: "table 1806.2",
    evidence: Evidence::CommonPractice,
    seen: "stands in for local values in Europe; a report or the building authority prevails",
};

static STIFFNESS: Source = Source {
    work: "J. E. Bowles, Foundation Analysis and Design: range of the modulus of subgrade reaction by soil",
    clause: "table 9-1 (4th edition)",
    evidence: Evidence::Seen,
    seen: "the table as an answer in a public forum of a structural program prints it: https://communities.bentley.com/products/ram-staad/f/ram-staad-forum/51249/subgrade-modulus",
};

/// Softest and stiffest of loose to dense sand, in pascals per meter.
const SAND: (f64, f64) = (4.8e6, 128e6);
/// Softest and stiffest of clay.
const CLAY: (f64, f64) = (12e6, 48e6);

/// How a class is written that an investigation has found.
const INVESTIGATED: &str = "\"sand\" once an investigation has shown what it is";

/// Pressure that the soil may carry.
pub(crate) fn bearing<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Pressure, Halt> {
    if known(site, |climate| climate.soil_bearing.is_some()) {
        return read!(asking, site.climate?.soil_bearing);
    }
    by_class(asking, site, "soil_bearing").map(|soil| soil.bearing)
}

/// Sideways pressure that the soil may take for each unit of depth.
pub(crate) fn lateral<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
) -> Result<PressurePerDepth, Halt> {
    if known(site, |climate| climate.soil_lateral.is_some()) {
        return read!(asking, site.climate?.soil_lateral);
    }
    by_class(asking, site, "soil_lateral").map(|soil| soil.lateral)
}

/// How the soil resists sliding, by its class.
pub(crate) fn against_sliding<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
) -> Result<SoilValues, Halt> {
    by_class(asking, site, "soil_class")
}

/// How stiff the soil is under a beam, at least and at most: measured, else the range of its class.
pub(crate) fn stiffness<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
) -> Result<[PressurePerDepth; 2], Halt> {
    if known(site, |climate| climate.soil_stiffness.is_some()) {
        return read!(asking, site.climate?.soil_stiffness).map(|measured| [measured; 2]);
    }
    let range = match class(asking, site)? {
        SoilClass::Sand | SoilClass::Gravel => SAND,
        SoilClass::Clay => CLAY,
        _ => {
            return read!(asking, site.climate?.soil_stiffness).map(|measured| [measured; 2]);
        }
    };
    asking.rest_on(&STIFFNESS);
    Ok([range.0, range.1].map(PressurePerDepth::from_base))
}

fn known(site: &Site, has: impl Fn(&Climate) -> bool) -> bool {
    site.climate.as_ref().is_some_and(has)
}

/// The values of the site's class of soil. A poor soil has none: what it carries is for an investigation to say.
fn by_class<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    wanted: &'static str,
) -> Result<SoilValues, Halt> {
    let class = class(asking, site)?;
    let Some(soil) = Soil::from_word(class.word()) else {
        return match &site.climate {
            Some(climate) if wanted == "soil_bearing" => {
                asking.lack_of::<Pressure>(&climate.origin, wanted)?;
                Err(Halt)
            }
            Some(climate) if wanted == "soil_lateral" => {
                asking.lack_of::<PressurePerDepth>(&climate.origin, wanted)?;
                Err(Halt)
            }
            Some(climate) => {
                asking.lack(&climate.origin, "soil_class", Wants::Written(INVESTIGATED))
            }
            None => Err(Halt),
        };
    };
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&EUROPE);
    }
    asking.work(&PresumptiveSoil { soil })
}

/// The class of the soil as the site has it.
pub(crate) fn class<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<SoilClass, Halt> {
    match &site.climate {
        Some(climate) => asking.pick(&climate.origin, "soil_class", climate.soil_class),
        None => asking.pick(&site.origin, "climate.soil_class", None),
    }
}
