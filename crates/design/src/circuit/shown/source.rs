//! Where power comes from: what it is rated for and what it gives in each case.

use super::{ShownCable, Twig, Worked, asking, missing, nominal};
use crate::circuit::lower::CHAIN;
use crate::circuit::output::output_of;
use crate::circuit::{CASES, Circuits, PowerCase, Source};
use quantity::{Charge, Current, Power, Voltage};
use site::{CurrentKind, Id, SupplyKind};

/// What a source is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SourceKind {
    /// A branch circuit of the mains.
    Mains,
    /// A power supply fed by the mains, or a converter fed by another supply.
    Supply,
    /// A charge controller.
    Charger,
    /// A battery that feeds something by itself.
    Battery,
}

/// A battery at a supply.
#[derive(Debug, Clone)]
pub struct Store {
    /// Its name.
    pub id: String,
    /// Its voltage.
    pub voltage: Option<Voltage>,
    /// Its rated capacity.
    pub capacity: Option<Charge>,
    /// The cable between it and its supply.
    pub cable: Option<ShownCable>,
    /// The name of the fuse of that cable.
    pub fuse: Option<String>,
}

/// A solar panel at a charge controller.
#[derive(Debug, Clone)]
pub struct Panel {
    /// Its name.
    pub id: String,
    /// Its power at standard test conditions.
    pub power: Option<Power>,
    /// The cable between it and its charge controller.
    pub cable: Option<ShownCable>,
    /// The name of the fuse of that cable.
    pub fuse: Option<String>,
}

/// Where power comes from.
#[derive(Debug, Clone)]
pub struct ShownSource {
    /// Its name.
    pub id: String,
    /// What it is.
    pub kind: SourceKind,
    /// The kind of current that it gives, where that is written.
    pub gives: Option<CurrentKind>,
    /// The source that feeds it.
    pub fed_by: Option<String>,
    /// Its voltage.
    pub voltage: Option<Voltage>,
    /// Current that it gives without end.
    pub rated: Option<Current>,
    /// Current that it gives for a moment.
    pub peak: Option<Current>,
    /// Its batteries.
    pub stores: Vec<Store>,
    /// Its solar panels.
    pub panels: Vec<Panel>,
    /// What hangs on it.
    pub branches: Vec<Twig>,
    /// Current of everything together in each case, charging left out.
    pub given: Vec<Worked<Current>>,
    /// The facts that keep that from being worked.
    pub missing: Vec<String>,
}

impl ShownSource {
    /// The greatest current of everything together in any case; none where it is not known.
    pub fn greatest(&self) -> Option<Current> {
        self.greatest_of(|_| true)
    }

    /// The greatest in the cases in which nothing starts; none where it is not known.
    pub fn lasting(&self) -> Option<Current> {
        self.greatest_of(|case| !case.starts())
    }

    /// It gives more than it is rated for without end, or more for a moment than it can where that is known. What its
    /// battery gives does not count.
    pub fn is_above_rating(&self) -> bool {
        let starts = self.greatest_of(|case| case != PowerCase::BatteryEnd);
        let above = |gives: Option<Current>, can: Option<Current>| match (gives, can) {
            (Some(gives), Some(can)) => gives > can,
            _ => false,
        };
        above(self.lasting(), self.rated) || above(starts, self.peak)
    }

    fn greatest_of(&self, concerns: impl Fn(PowerCase) -> bool) -> Option<Current> {
        let mut greatest: Option<Current> = None;
        for (case, given) in CASES.iter().zip(&self.given) {
            match given {
                _ if !concerns(*case) => {}
                Worked::Known(current) if greatest.is_none_or(|known| *current > known) => {
                    greatest = Some(*current);
                }
                Worked::Unknown => return None,
                Worked::Known(_) | Worked::Apart => {}
            }
        }
        greatest
    }
}

/// Every source with what hangs on it.
pub(super) fn all(circuits: &Circuits<'_>, branches: Vec<Vec<Twig>>) -> Vec<ShownSource> {
    let sources = circuits.sources.iter().zip(branches).enumerate();
    sources
        .map(|(at, (source, branches))| of_one(circuits, at, *source, branches))
        .collect()
}

fn of_one<'s>(
    circuits: &Circuits<'s>,
    at: usize,
    source: Source<'s>,
    branches: Vec<Twig>,
) -> ShownSource {
    let (given, missing) = given(circuits, at, source);
    let mut shown = ShownSource {
        id: source.id().to_string(),
        kind: SourceKind::Battery,
        gives: None,
        fed_by: None,
        voltage: None,
        rated: None,
        peak: None,
        stores: stores(circuits, source),
        panels: panels(circuits, source),
        branches,
        given,
        missing,
    };
    match source {
        Source::Supply(supply) => {
            shown.kind = match supply.kind {
                SupplyKind::Mains => SourceKind::Mains,
                SupplyKind::Direct => SourceKind::Supply,
                SupplyKind::Charger => SourceKind::Charger,
            };
            shown.gives = supply.gives;
            shown.fed_by = supply.fed_by.as_ref().map(ToString::to_string);
            shown.voltage = nominal(supply.voltage.as_ref());
            shown.rated = nominal(supply.rated_current.as_ref());
            shown.peak = nominal(supply.peak_current.as_ref());
        }
        Source::Battery(battery) => shown.voltage = nominal(battery.voltage.as_ref()),
    }
    shown
}

/// Current of everything together in each case, and what keeps it from being worked.
fn given<'s>(
    circuits: &Circuits<'s>,
    at: usize,
    source: Source<'s>,
) -> (Vec<Worked<Current>>, Vec<String>) {
    let mut asking = asking(circuits);
    let usual = output_of(circuits, &mut asking, at, CHAIN).ok();
    let has_battery = source.batteries(circuits.site).next().is_some();
    let ended = has_battery.then(|| circuits.battery_end(at, &mut asking));
    let given = CASES.iter().enumerate().map(|(number, case)| {
        if *case == PowerCase::BatteryEnd {
            return match &ended {
                None => Worked::Apart,
                Some(Ok(Some(end))) => Worked::Known(end.given),
                Some(_) => Worked::Unknown,
            };
        }
        let known = usual.as_ref().and_then(|usual| usual.get(number));
        known.map_or(Worked::Unknown, |(current, _)| Worked::Known(*current))
    });
    (given.collect(), missing(&asking))
}

fn stores<'s>(circuits: &Circuits<'s>, source: Source<'s>) -> Vec<Store> {
    let batteries = source.batteries(circuits.site);
    batteries
        .map(|battery| Store {
            id: battery.id.to_string(),
            voltage: nominal(battery.voltage.as_ref()),
            capacity: nominal(battery.capacity.as_ref()),
            cable: between(circuits, &battery.id, source.id()).map(ShownCable::of),
            fuse: between(circuits, &battery.id, source.id())
                .and_then(|cable| cable.fuse.as_ref())
                .map(ToString::to_string),
        })
        .collect()
}

fn panels(circuits: &Circuits<'_>, source: Source<'_>) -> Vec<Panel> {
    let panels = circuits.site.solar_panel.iter();
    panels
        .filter(|panel| panel.supply.as_ref() == Some(source.id()))
        .map(|panel| Panel {
            id: panel.id.to_string(),
            power: nominal(panel.power.as_ref()),
            cable: between(circuits, &panel.id, source.id()).map(ShownCable::of),
            fuse: between(circuits, &panel.id, source.id())
                .and_then(|cable| cable.fuse.as_ref())
                .map(ToString::to_string),
        })
        .collect()
}

/// The cable between two things, whichever end comes first.
pub(super) fn between<'s>(
    circuits: &Circuits<'s>,
    one: &Id,
    other: &Id,
) -> Option<&'s site::Cable> {
    circuits.site.cable.iter().find(|cable| {
        (cable.from == *one && cable.to == *other) || (cable.from == *other && cable.to == *one)
    })
}
