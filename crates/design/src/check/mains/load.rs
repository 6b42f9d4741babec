//! What hangs on a mains circuit: power supplies at full output, heaters, and operators that run on the mains themselves.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::{Current, Power, Quantity as _, Voltage};
use site::{Enclosure, Operator, Site, Supply};

/// The power supplies that a circuit feeds.
pub(super) fn fed_by<'s>(
    site: &'s Site,
    circuit: &'s Supply,
) -> impl Iterator<Item = &'s Supply> + use<'s> {
    site.supply
        .iter()
        .filter(|supply| supply.fed_by.as_ref() == Some(&circuit.id))
}

/// The operators that run on the circuit themselves.
pub(super) fn motors<'s>(
    site: &'s Site,
    circuit: &'s Supply,
) -> impl Iterator<Item = &'s Operator> + use<'s> {
    site.operator
        .iter()
        .filter(|operator| operator.supply.as_ref() == Some(&circuit.id))
}

/// The enclosures whose heaters it feeds: as written, else those in which one of its power supplies is mounted.
fn heated<'s>(
    site: &'s Site,
    circuit: &'s Supply,
) -> impl Iterator<Item = &'s Enclosure> + use<'s> {
    site.enclosure.iter().filter(move |enclosure| {
        let written = enclosure.climate_control.as_ref();
        match written.and_then(|control| control.heater_supply.as_ref()) {
            Some(feeder) => *feeder == circuit.id,
            None => {
                fed_by(site, circuit).any(|supply| supply.enclosure.as_ref() == Some(&enclosure.id))
            }
        }
    })
}

/// What supplies and heaters draw.
#[derive(Debug, Clone, Copy)]
pub(super) struct Steady {
    /// Apparent power of the power supplies at full output.
    pub(super) supplies: Power,
    /// Power of the heaters.
    pub(super) heaters: Power,
}

impl Steady {
    /// The current at a voltage: power supplies draw more as it falls, heaters less; their power is taken whole.
    pub(super) fn current(self, voltage: Voltage) -> Current {
        Current::from_base((self.supplies.base() + self.heaters.base()) / voltage.base())
    }
}

/// What supplies and heaters of a circuit draw at the most.
pub(super) fn steady<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    circuit: &'s Supply,
) -> Result<Steady, Halt> {
    let mut supplies = Ok(Power::from_base(0.0));
    for supply in fed_by(site, circuit) {
        let most = apparent(asking, site, supply);
        supplies = supplies.and_then(|sum| Ok(sum + most?));
    }
    let mut heaters = Ok(Power::from_base(0.0));
    for enclosure in heated(site, circuit) {
        let heater = read!(asking, enclosure.heater);
        heaters = heaters.and_then(|sum| Ok(sum + heater?));
    }
    Ok(Steady {
        supplies: supplies?,
        heaters: heaters?,
    })
}

/// Apparent power that a power supply takes: at full output, or while its operators start where that is more.
fn apparent<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
) -> Result<Power, Halt> {
    let voltage = read!(asking, supply.voltage);
    let rated = read!(asking, supply.rated_current);
    let efficiency = read!(asking, supply.efficiency);
    let factor = read!(asking, supply.intake?.power_factor);
    let mut starting = Ok(Current::from_base(0.0));
    let driven = |operator: &&Operator| operator.supply.as_ref() == Some(&supply.id);
    for operator in site.operator.iter().filter(driven) {
        let current = read!(asking, operator.starting_current);
        starting = starting.and_then(|sum| Ok(sum + current?));
    }
    let (voltage, rated, starting) = (voltage?, rated?, starting?);
    let (efficiency, factor) = (efficiency?, factor?);
    let most = if starting > rated { starting } else { rated };
    let output: Power = voltage * most;
    Ok(output / (efficiency.base() * factor.base()))
}
