//! The heat of a short in a conductor for as long as its fuse takes to open.

use crate::asking::{Asking, pick, read};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::power::{AdiabaticWithstand, Metal};
use quantity::{Quantity as _, Temperature, Word as _, celsius};
use site::{Cable, Fuse, Insulation};

/// Longest time, in seconds, over which the heat of a short stays in the metal.
const SHORT: f64 = 5.0;

/// The heat of a short for as long as the fuse takes; nothing to compare where it takes so long that heat flows off.
pub(super) fn heat<'s>(
    asking: &mut Asking<'s>,
    cable: &'s Cable,
    fuse: &'s Fuse,
) -> Result<Option<Comparison>, Halt> {
    let time = read!(asking, fuse.opens_within);
    let current = read!(asking, fuse.opens_at);
    let size = pick!(asking, cable.size);
    let metal = pick!(asking, cable.metal);
    let insulation = pick!(asking, cable.insulation);
    let initial = read!(asking, cable.insulation_rating);
    let (time, current, size) = (time?, current?, size?);
    let (metal, insulation, initial) = (metal?, insulation?, initial?);
    let Some(metal) = Metal::from_word(metal.word()) else {
        return asking.refuse("no figure is known for a short in this metal");
    };
    if time.base() > SHORT {
        return Ok(None);
    }
    let stands = asking.work(&AdiabaticWithstand {
        size,
        metal,
        initial,
        limit: limit(insulation),
        current,
        time,
    })?;
    Ok(Some(Comparison::at_most(
        Labeled::new("time in which the fuse opens", time),
        Labeled::new("time that the insulation stands", stands.longest),
    )))
}

/// What insulation stands for a moment.
fn limit(insulation: Insulation) -> Temperature {
    match insulation {
        Insulation::Thermoplastic => celsius(160.0),
        Insulation::Thermosetting => celsius(250.0),
    }
}
