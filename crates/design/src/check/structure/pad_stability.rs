//! A pad under its loads: tipping, pressure under its edge, and sliding.

use super::pad_loads::{PadLoad, Way, loads, ways};
use super::soil;
use crate::asking::{Asking, read};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::standing::{PadBearing, PadOverturning, PadSliding, SoilValues};
use formula::{Evidence, Source};
use quantity::{Force, Length, MassDensity, Pressure, Quantity as _, Torque};
use site::{Foundation, Site};

/// Factor against tipping and sliding.
pub(super) const FACTOR: f64 = 1.5;
/// Density of concrete in kg/m³: 150 lb/ft³, and 110 lb/ft³ where it is lightweight.
const DENSITY: (f64, f64) = (2402.8, 1762.0);

pub(super) static STABLE: Source = Source {
    work: "IBC 1807.2.3: safety of 1.5 against overturning and sliding under nominal loads; concrete of 150 lb/ft³, or 110 lb/ft³ where it is lightweight",
    clause: "",
    evidence: Evidence::Seen,
    seen: "calculations for a freestanding sign in a city archive: https://archives.ci.zephyrhills.fl.us/WebLink/0/doc/166215/Page9.aspx",
};

/// A pad with the ground under it.
pub(crate) struct Pad {
    pub(crate) length: Length,
    pub(crate) width: Length,
    pub(crate) depth: Length,
    pub(super) density: MassDensity,
    pub(super) bearing: Pressure,
    /// Missing where a slab holds it.
    pub(super) sliding: Option<SoilValues>,
}

/// The pad with what pushes on it.
pub(crate) fn facts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
) -> Result<(Pad, Vec<PadLoad>), Halt> {
    let pad = pad(asking, site, foundation);
    let loads = loads(asking, site, foundation);
    Ok((pad?, loads?))
}

/// Everything that is asked of a pad under its loads, frost aside; nothing where nothing pushes on it.
pub(crate) fn compared(
    asking: &mut Asking<'_>,
    pad: &Pad,
    loads: &[PadLoad],
) -> Result<Vec<Comparison>, Halt> {
    match decisive(pad, loads) {
        (Some(hardest), Some(strongest)) => {
            resisted(asking, pad, (&hardest, strongest)).map(|(all, _)| all)
        }
        _ => Ok(Vec::new()),
    }
}

/// The load that tips hardest, the way it does, and the one that pushes hardest.
pub(super) fn decisive<'l>(
    pad: &Pad,
    loads: &'l [PadLoad],
) -> (Option<Way<'l>>, Option<&'l PadLoad>) {
    let hardest = loads
        .iter()
        .flat_map(|load| ways(load, [pad.length, pad.width, pad.depth]))
        .max_by(|one, two| one.leverage().total_cmp(&two.leverage()));
    let strongest = loads
        .iter()
        .max_by(|one, two| one.force.base().total_cmp(&two.force.base()));
    (hardest, strongest)
}

/// Tipping, pressure and sliding, with the weight and moments of the pad.
pub(super) fn resisted(
    asking: &mut Asking<'_>,
    pad: &Pad,
    (hardest, strongest): (&Way<'_>, &PadLoad),
) -> Result<(Vec<Comparison>, Used), Halt> {
    let (mut all, used) = tips(asking, pad, hardest)?;
    all.extend(slides(asking, pad, strongest)?);
    Ok((all, used))
}

fn pad<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
) -> Result<Pad, Halt> {
    let length = read!(asking, foundation.length);
    let width = read!(asking, foundation.width);
    let depth = read!(asking, foundation.depth);
    let bearing = soil::bearing(asking, site);
    let sliding = if foundation.held_at_grade == Some(true) {
        Ok(None)
    } else {
        soil::against_sliding(asking, site).map(Some)
    };
    let light = foundation.lightweight == Some(true);
    Ok(Pad {
        length: length?,
        width: width?,
        depth: depth?,
        density: MassDensity::from_base(if light { DENSITY.1 } else { DENSITY.0 }),
        bearing: bearing?,
        sliding: sliding?,
    })
}

/// Weight, tipping moment and moment that resists it.
pub(super) type Used = (Force, Torque, Torque);

fn tips(
    asking: &mut Asking<'_>,
    pad: &Pad,
    way: &Way<'_>,
) -> Result<(Vec<Comparison>, Used), Halt> {
    let tipping = asking.work(&PadOverturning {
        length: way.length,
        width: way.width,
        thickness: pad.depth,
        density: pad.density,
        weight_on_top: Force::from_base(0.0),
        force: way.load.force,
        height: way.height,
        moment: way.load.moment,
    })?;
    let mut all = vec![Comparison::at_most(
        Labeled::new(
            "moment that tips it, with the factor 1.5",
            tipping.overturning * FACTOR,
        ),
        Labeled::new("moment that its weight resists", tipping.resisting),
    )];
    // A pad that tips presses with nothing but its edge: there is no pressure to give then.
    let pressed = asking.work_if_in_reach(&PadBearing {
        weight: tipping.weight,
        moment: tipping.overturning,
        length: way.length,
        width: way.width,
        allowed: pad.bearing,
    });
    all.extend(pressed.map(|pressed| {
        Comparison::at_most(
            Labeled::new("pressure under its edge", pressed.greatest),
            Labeled::new("pressure that the soil may carry", pad.bearing),
        )
    }));
    Ok((
        all,
        (tipping.weight, tipping.overturning, tipping.resisting),
    ))
}

fn slides(asking: &mut Asking<'_>, pad: &Pad, load: &PadLoad) -> Result<Option<Comparison>, Halt> {
    let Some(soil) = pad.sliding.filter(|_| load.force.base() > 0.0) else {
        return Ok(None);
    };
    let area = pad.length * pad.width;
    let weight = pad.density.base() * (area * pad.depth).base() * 9.806_65;
    let slide = asking.work(&PadSliding {
        weight: Force::from_base(weight),
        area,
        friction: soil.friction,
        cohesion: soil.cohesion,
        force: load.force,
    })?;
    Ok(Some(Comparison::at_most(
        Labeled::new(
            "push that slides it, with the factor 1.5",
            load.force * FACTOR,
        ),
        Labeled::new("resistance of the soil under it", slide.resistance),
    )))
}
