//! The entry of the price book for what is needed.

use super::need::Wanted;
use quantity::{Length, Measured, Quantity as _};
use site::{Item, Text};

/// The first entry that is the thing itself, or its part, or serves the purpose and fits.
pub(super) fn item<'i>(items: &'i [Item], wanted: &Wanted<'_>) -> Option<&'i Item> {
    match wanted {
        Wanted::Thing { id, part } => items
            .iter()
            .find(|item| named(item, id) || item.what == **id)
            .or_else(|| {
                items
                    .iter()
                    .find(|item| part.is_some_and(|part| named(item, part)))
            }),
        Wanted::Entry(name) => items.iter().find(|item| item.id == **name),
        Wanted::Serving { .. } => items.iter().find(|item| serves(item, wanted)),
    }
}

/// One of the names that an entry goes by.
fn named(item: &Item, name: &str) -> bool {
    item.of.iter().any(|of| *of == *name)
}

fn serves(item: &Item, wanted: &Wanted<'_>) -> bool {
    let Wanted::Serving {
        serves,
        fits,
        conductor,
        diameter,
    } = wanted
    else {
        return false;
    };
    item.serves_as == Some(*serves)
        && agrees(item.fits.as_ref().map(Text::as_str), fits.as_deref())
        && agrees(item.conductor, *conductor)
        && diameter.is_none_or(|diameter| spans(item, diameter))
}

/// An entry that names nothing fits everything; one that names something fits that alone.
fn agrees<T: PartialEq + Copy>(of_item: Option<T>, wanted: Option<T>) -> bool {
    of_item.is_none() || of_item == wanted
}

fn spans(item: &Item, diameter: Length) -> bool {
    let base = |end: Option<Measured<Length>>| end.map(|end| end.nominal().base());
    base(item.least_diameter).is_none_or(|least| diameter.base() >= least - 1e-9)
        && base(item.greatest_diameter).is_none_or(|greatest| diameter.base() <= greatest + 1e-9)
}
