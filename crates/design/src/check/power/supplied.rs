//! The supplies that are asked, and what a source can give for a moment.

use crate::asking::{Asking, read};
use crate::check::Round;
use crate::circuit::{Circuits, Source};
use crate::outcome::{Answer, Halt};
use crate::subject::About;
use quantity::Current;
use site::{Site, Supply, SupplyKind};

/// Asks of each supply at low voltage, with its number among the sources.
pub(super) fn each_supply<'s>(
    site: &'s Site,
    round: &mut Round<'s, '_>,
    answer: impl Fn(&mut Asking<'s>, &Circuits<'s>, (&'s Supply, usize)) -> Answer,
) {
    let circuits = Circuits::of(site);
    for (number, source) in circuits.sources.iter().enumerate() {
        if let Source::Supply(supply) = *source
            && supply.kind != SupplyKind::Mains
        {
            round.ask(About::new(&supply.origin, &supply.id), |asking| {
                answer(asking, &circuits, (supply, number))
            });
        }
    }
}

/// Current that a source gives for a moment: what its data sheet says, else what it gives for good.
pub(super) fn momentary<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    source: usize,
) -> Result<Current, Halt> {
    match circuits.sources[source] {
        Source::Supply(supply) => {
            let peak =
                asking.read_if_there(&supply.origin, "peak_current", supply.peak_current.as_ref());
            match peak {
                Some(peak) => Ok(peak),
                None => read!(asking, supply.rated_current),
            }
        }
        Source::Battery(battery) => read!(asking, battery.fault_current),
    }
}
