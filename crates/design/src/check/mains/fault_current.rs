//! The current of a dead fault at the end of a mains circuit, by a measured loop or through warm conductors.

use super::residual::{Found, residual};
use crate::asking::{Asking, pick, read};
use crate::circuit::conductor::{of_size, resistance};
use crate::outcome::Halt;
use formula::mains::FaultLoop;
use quantity::{Current, Quantity as _, Ratio, Resistance, Voltage};
use site::{Cable, Circuit, Site, Supply};

/// Cold conductors show no more than this share of what they have warm.
const COLD: f64 = 0.8;

/// What both code bases ask of a circuit.
pub(super) struct Read<'s> {
    pub(super) circuit: &'s Circuit,
    pub(super) breaker: Current,
    pub(super) fault: Current,
    pub(super) measured: Option<Resistance>,
    pub(super) residual: Found,
}

/// Reads what both code bases ask of a circuit, at so much of its nominal voltage.
pub(super) fn facts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
    (circuit, cable): (&'s Circuit, Result<&'s Cable, Halt>),
    low: f64,
) -> Result<Read<'s>, Halt> {
    let breaker = read!(asking, circuit.breaker);
    let voltage = read!(asking, circuit.to_earth);
    let measured = asking.read_if_there(
        &circuit.origin,
        "measured_loop",
        circuit.measured_loop.as_ref(),
    );
    let residual = residual(asking, site, supply, circuit);
    let fault = match measured {
        Some(cold) => voltage.map(|voltage| voltage * low / (cold / COLD)),
        None => computed(asking, circuit, cable, (voltage, low)),
    };
    Ok(Read {
        circuit,
        breaker: breaker?,
        fault: fault?,
        measured,
        residual: residual?,
    })
}

/// The fault current through warm conductors, where nobody has measured the loop.
fn computed<'s>(
    asking: &mut Asking<'s>,
    circuit: &'s Circuit,
    cable: Result<&'s Cable, Halt>,
    (voltage, low): (Result<Voltage, Halt>, f64),
) -> Result<Current, Halt> {
    let upstream = read!(asking, circuit.panel_loop);
    let protective = pick!(asking, circuit.protective);
    let cable = cable?;
    let length = read!(asking, cable.length);
    let line = resistance(asking, cable);
    let back = of_size(asking, cable, protective);
    let loop_ = FaultLoop {
        voltage: voltage?,
        low: Ratio::from_base(low),
        upstream: upstream?,
        line: line?,
        protective: back?,
        length: length?,
    };
    Ok(asking.work(&loop_)?.fault_current)
}
