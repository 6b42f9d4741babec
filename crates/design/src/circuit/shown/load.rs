//! What takes power: voltage and current in each case, and whether it gets its least voltage.

use super::part::Worst;
use super::{Worked, asking, missing};
use crate::asking::End;
use crate::circuit::{CASES, Circuits, Part, State, Takes, states};
use quantity::{Current, Measured, Quantity as _, Voltage};
use site::{DeviceKind, SupplyKind};

/// What takes power, by the form of its symbol.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LoadKind {
    /// A gate operator.
    Motor,
    /// A lock or its release.
    Coil,
    /// A light.
    Lamp,
    /// A heater.
    Heater,
    /// Anything with electronics.
    Electronics,
    /// A supply that is fed by another one.
    Supply,
}

/// Voltage and current of a load in one case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Moment {
    /// It gets its power.
    Stands {
        /// Voltage at its terminals.
        voltage: Voltage,
        /// Current that it draws.
        current: Current,
    },
    /// The conductors cannot bring what is asked of them.
    Collapses,
}

/// Whether a load gets its least voltage in its worst moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LoadStanding {
    /// It does, tolerances included.
    Holds,
    /// It does at the values as written and not at the bad end of their tolerances.
    NotSure,
    /// It does not.
    TooLow,
    /// It has no least voltage: a heater only gets less warm.
    NoLeast,
    /// Facts are missing.
    Unknown,
}

/// Something that takes power by one cable.
#[derive(Debug, Clone)]
pub struct ShownLoad {
    /// Its name.
    pub id: String,
    /// What it is, in words.
    pub what: String,
    /// What it is, by the form of its symbol.
    pub kind: LoadKind,
    /// The source that it names.
    pub source: String,
    /// The cable that brings its power; none where both sit in one enclosure, or none is written.
    pub cable: Option<String>,
    /// No cable is written between it and its source, and they sit in different places.
    pub without_cable: bool,
    /// Another cable brings it power too; each is taken to carry all of its current, and the sum counts it once.
    pub again: bool,
    /// Each case in turn.
    pub moments: Vec<Worked<Moment>>,
    /// Least voltage at which it works.
    pub least: Option<Voltage>,
    /// The lowest voltage that it gets in any case, drawing its own greatest current.
    pub lowest: Option<Voltage>,
    /// The greatest current that it draws in any case.
    pub greatest: Option<Current>,
    /// Whether that is enough.
    pub standing: LoadStanding,
    /// The facts that keep it from being worked, or from being judged.
    pub missing: Vec<String>,
    /// Its part among those of the circuits, and its number there.
    pub(super) at: Option<(usize, usize)>,
}

/// Everything that takes power, part by part, then what has no cable.
pub(super) fn all(circuits: &Circuits<'_>) -> Vec<ShownLoad> {
    let mut loads = Vec::new();
    for (number, part) in circuits.parts.iter().enumerate() {
        let worst = Worst::of(circuits, part);
        let together = worst.states(None);
        for (at, taker) in part.takers.iter().enumerate() {
            let mut load = bare(taker.takes);
            let brought = part.runs.iter().find(|run| run.to == taker.place);
            load.cable = brought.map(|run| run.cable.id.to_string());
            load.again = taker.again;
            load.at = Some((number, at));
            if let Some(together) = &together {
                load.moments = together.iter().map(|state| of_one(state, at)).collect();
            }
            judge(circuits, &worst, at, &mut load);
            loads.push(load);
        }
    }
    for takes in &circuits.without_cable {
        let mut load = bare(*takes);
        load.without_cable = true;
        load.missing.push(format!("a cable to {}", takes.id()));
        loads.push(load);
    }
    loads
}

/// A load of which nothing is worked yet.
fn bare(takes: Takes<'_>) -> ShownLoad {
    let (what, kind) = match takes {
        Takes::Operator(_) => ("gate operator".to_owned(), LoadKind::Motor),
        Takes::Device(device) => (device.kind.to_string(), by_form(device.kind)),
        Takes::Supply(supply) => (
            match supply.kind {
                SupplyKind::Direct => "power supply, input".to_owned(),
                kind => kind.to_string(),
            },
            LoadKind::Supply,
        ),
        Takes::Heater(_) => ("heater of the enclosure".to_owned(), LoadKind::Heater),
    };
    ShownLoad {
        id: takes.id().to_string(),
        what,
        kind,
        source: takes.fed_by().map(ToString::to_string).unwrap_or_default(),
        cable: None,
        without_cable: false,
        again: false,
        moments: vec![Worked::Unknown; CASES.len()],
        least: None,
        lowest: None,
        greatest: None,
        standing: LoadStanding::Unknown,
        missing: Vec::new(),
        at: None,
    }
}

fn by_form(kind: DeviceKind) -> LoadKind {
    match kind {
        DeviceKind::Lock => LoadKind::Coil,
        DeviceKind::WarningLight => LoadKind::Lamp,
        _ => LoadKind::Electronics,
    }
}

/// One taker in one case.
fn of_one(state: &Worked<State<'_>>, taker: usize) -> Worked<Moment> {
    match state {
        Worked::Apart => Worked::Apart,
        Worked::Unknown => Worked::Unknown,
        Worked::Known(State::Collapses { .. }) => Worked::Known(Moment::Collapses),
        Worked::Known(State::Stands { at, drawn, .. }) => Worked::Known(Moment::Stands {
            voltage: at[taker],
            current: drawn[taker],
        }),
    }
}

/// Its own worst moment, and whether it gets its least voltage then.
fn judge<'s>(circuits: &Circuits<'s>, worst: &Worst<'_, 's>, at: usize, load: &mut ShownLoad) {
    let takes = worst.part.takers[at].takes;
    let mut asking = asking(circuits);
    let least = takes.least();
    let value = least.and_then(|(_, value)| value);
    load.least =
        least.and_then(|(key, value)| asking.read_at((takes.origin(), key), value, End::High).ok());
    load.missing = missing(&asking);
    load.missing.extend(worst.missing.iter().cloned());
    let Some(states) = worst.states(Some(takes.id())) else {
        return;
    };
    let whole = !states.iter().any(|state| matches!(state, Worked::Unknown));
    let known = states.iter().filter_map(|state| match state {
        Worked::Known(state) => Some(state.clone()),
        Worked::Unknown | Worked::Apart => None,
    });
    let known: Vec<State<'_>> = known.collect();
    let greatest = greatest(&known, at);
    let worst_voltage = lowest(&known, at);
    let too_low = match (worst_voltage, load.least) {
        (Some(worst), Some(least)) => worst < least,
        _ => false,
    };
    if whole || too_low {
        (load.lowest, load.greatest) = (worst_voltage, greatest);
    }
    load.standing = match (load.lowest, load.least) {
        (Some(_), Some(_)) if !too_low => LoadStanding::Holds,
        (Some(_), Some(_)) if holds_as_written(circuits, (worst.part, at), value) => {
            LoadStanding::NotSure
        }
        (Some(_), Some(_)) => LoadStanding::TooLow,
        (Some(_), None) if least.is_none() => LoadStanding::NoLeast,
        _ => LoadStanding::Unknown,
    };
}

/// It gets its least voltage at the values as written.
fn holds_as_written<'s>(
    circuits: &Circuits<'s>,
    (part, at): (&Part<'s>, usize),
    least: Option<&Measured<Voltage>>,
) -> bool {
    let own = Some(part.takers[at].takes.id());
    let states = states(circuits, &mut asking(circuits), part, own).ok();
    let lowest = states.and_then(|states| lowest(&states, at));
    match (lowest, least) {
        (Some(lowest), Some(least)) => lowest >= least.nominal(),
        _ => false,
    }
}

fn lowest(states: &[State<'_>], taker: usize) -> Option<Voltage> {
    let voltages = states.iter().map(|state| state.voltage(taker));
    voltages.reduce(|a, b| if b < a { b } else { a })
}

fn greatest(states: &[State<'_>], taker: usize) -> Option<Current> {
    let currents = states.iter().filter_map(|state| match state {
        State::Stands { drawn, .. } => Some(drawn[taker]),
        State::Collapses { .. } => None,
    });
    currents
        .filter(|current| current.base().is_finite())
        .reduce(|a, b| if b > a { b } else { a })
}
