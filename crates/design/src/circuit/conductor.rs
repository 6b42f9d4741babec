//! What a cable's conductor resists, at the hottest that it gets.

use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::power::{
    Coating, ConductorClass, ConductorResistance, Iec60228Resistance, Metal, NecTable8Resistance,
    Stranding,
};
use quantity::{ConductorSize, ResistancePerLength, Word as _};
use site::Cable;

/// Resistance of one conductor for each unit of length: the nominal one, or that of the printed table where that is larger.
pub(crate) fn resistance<'s>(
    asking: &mut Asking<'s>,
    cable: &'s Cable,
) -> Result<ResistancePerLength, Halt> {
    let size = pick!(asking, cable.size);
    of_size(asking, cable, size)
}

/// The same of a conductor of another size in the cable, such as its protective one.
pub(crate) fn of_size<'s>(
    asking: &mut Asking<'s>,
    cable: &'s Cable,
    size: Result<ConductorSize, Halt>,
) -> Result<ResistancePerLength, Halt> {
    let metal = pick!(asking, cable.metal);
    let stranding = pick!(asking, cable.stranding);
    let temperature = read!(asking, cable.hottest);
    let words = (
        Metal::from_word(metal?.word()),
        Stranding::from_word(stranding?.word()),
    );
    let (Some(metal), Some(stranding)) = words else {
        return asking.refuse("no resistance is printed for this metal or make of conductor");
    };
    let (size, temperature) = (size?, temperature?);
    let nominal = asking
        .work(&ConductorResistance {
            size,
            metal,
            stranding,
            temperature,
        })?
        .resistance;
    if metal != Metal::Copper {
        return Ok(nominal);
    }
    let table = asking
        .work_if_in_reach(&NecTable8Resistance {
            size,
            stranding,
            coating: Coating::Uncoated,
            temperature,
        })
        .map(|gives| gives.resistance);
    let limit = asking
        .work_if_in_reach(&Iec60228Resistance {
            size,
            class: ConductorClass::FixedPlain,
            temperature,
        })
        .map(|gives| gives.resistance);
    let larger = |known: ResistancePerLength, other: ResistancePerLength| {
        if other > known { other } else { known }
    };
    Ok([table, limit].into_iter().flatten().fold(nominal, larger))
}
