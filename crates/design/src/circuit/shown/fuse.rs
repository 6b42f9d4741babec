//! Fuses with what they feed, and cables that leave a source without one.

use super::part::Worst;
use super::source::between;
use super::{ShownCable, ShownLoad, Worked, asking, nominal};
use crate::circuit::parts::Place;
use crate::circuit::{CASES, Circuits, Part, PowerCase, Run, State, Takes};
use quantity::{Current, Quantity as _, Voltage};
use site::{Cable, Fuse, Id};

/// A fuse, or what does its work.
#[derive(Debug, Clone)]
pub struct ShownFuse {
    /// Its mark.
    pub id: String,
    /// What it is, in words.
    pub what: String,
    /// The site holds an entry for it, not only its name.
    pub described: bool,
    /// Enclosure in which it is mounted.
    pub enclosure: Option<String>,
    /// The fuse before it.
    pub behind: Option<String>,
    /// Current that it carries for good.
    pub rated: Option<Current>,
    /// Greatest voltage that it breaks.
    pub voltage: Option<Voltage>,
    /// Greatest current that it breaks.
    pub breaks: Option<Current>,
    /// The source before it.
    pub source: String,
    /// What it feeds: `reader-entry by w-06`.
    pub feeds: Vec<String>,
    /// The conductors behind it, each size once.
    pub conductors: Vec<String>,
    /// A conductor behind it has no size.
    pub size_missing: bool,
    /// The greatest current through it in any case, its own cables and those of the fuses behind it; none where that is not
    /// known.
    pub carries: Option<Current>,
    /// Current of its own cables in each case.
    own: Option<Vec<Current>>,
}

/// A cable that leaves a source without a fuse.
#[derive(Debug, Clone)]
pub struct Unfused {
    /// The cable.
    pub cable: ShownCable,
    /// The source.
    pub from: String,
    /// What it feeds.
    pub to: String,
}

/// The name of the fuse of a run: its cable's own, else that of the device at its end.
pub(super) fn name<'s>(part: &Part<'s>, run: &Run<'s>) -> Option<&'s Id> {
    let at_end = || {
        part.takers.iter().find_map(|taker| match taker.takes {
            Takes::Device(device) if taker.place == run.to => device.fuse.as_ref(),
            _ => None,
        })
    };
    run.cable.fuse.as_ref().or_else(at_end)
}

/// The fuse of the nearest run before one that has none: what a joint or a device passes on is behind it.
fn before<'s>(part: &Part<'s>, run: &Run<'s>) -> Option<&'s Id> {
    let mut place = run.from;
    for _ in &part.runs {
        let earlier = part.runs.iter().find(|other| other.to == place)?;
        if let Some(name) = name(part, earlier) {
            return Some(name);
        }
        place = earlier.from;
    }
    None
}

/// Every fuse that is described or named.
pub(super) fn all(circuits: &Circuits<'_>, loads: &[ShownLoad]) -> Vec<ShownFuse> {
    let mut fuses: Vec<ShownFuse> = circuits.site.fuse.iter().map(described).collect();
    for (number, part) in circuits.parts.iter().enumerate() {
        let through = through(circuits, part);
        for (at, run) in part.runs.iter().enumerate() {
            let Some(name) = name(part, run) else {
                if let Some(before) = before(part, run) {
                    let fuse = named(&mut fuses, before.as_str());
                    fuse.reaches(run.cable, &fed(loads, number, run));
                }
                continue;
            };
            let own = through.as_ref().map(|through| &through[at]);
            let fuse = named(&mut fuses, name.as_str());
            if fuse.source.is_empty() {
                fuse.source = source_of(circuits, part);
            }
            fuse.takes_on(run.cable, own, &fed(loads, number, run));
        }
    }
    for battery in &circuits.site.battery {
        let supply = battery.supply.as_ref();
        let cable = supply.and_then(|supply| between(circuits, &battery.id, supply));
        if let Some((cable, name)) = cable.and_then(|cable| Some((cable, cable.fuse.as_ref()?))) {
            let fuse = named(&mut fuses, name.as_str());
            fuse.source = battery.id.to_string();
            let given = supply.and_then(|supply| given_at_end(circuits, supply));
            fuse.takes_on(cable, given.as_ref(), &[]);
        }
    }
    let carried: Vec<Option<Current>> = (0..fuses.len())
        .map(|at| carried(&fuses, at, CASES.len()))
        .collect();
    for (fuse, carried) in fuses.iter_mut().zip(carried) {
        fuse.carries = carried;
    }
    fuses
}

/// What the batteries of a supply give in each case: all of it at their end, nothing while the supply itself does.
fn given_at_end(circuits: &Circuits<'_>, supply: &Id) -> Option<Vec<Current>> {
    let source = circuits.source(supply)?;
    let end = circuits.battery_end(source, &mut asking(circuits)).ok()??;
    let of = |case: &PowerCase| match case {
        PowerCase::BatteryEnd => end.given,
        _ => Current::from_base(0.0),
    };
    Some(CASES.iter().map(of).collect())
}

fn described(fuse: &Fuse) -> ShownFuse {
    ShownFuse {
        id: fuse.id.to_string(),
        what: fuse
            .kind
            .map_or_else(|| "fuse".to_owned(), |kind| kind.to_string()),
        described: true,
        enclosure: fuse.enclosure.as_ref().map(ToString::to_string),
        behind: fuse.behind.as_ref().map(ToString::to_string),
        rated: nominal(fuse.rated_current.as_ref()),
        voltage: nominal(fuse.rated_voltage.as_ref()),
        breaks: nominal(fuse.breaking_current.as_ref()),
        ..ShownFuse::only_named(fuse.id.as_str())
    }
}

fn named<'f>(fuses: &'f mut Vec<ShownFuse>, name: &str) -> &'f mut ShownFuse {
    let known = fuses.iter().position(|fuse| fuse.id == name);
    let at = known.unwrap_or_else(|| {
        fuses.push(ShownFuse::only_named(name));
        fuses.len() - 1
    });
    &mut fuses[at]
}

impl ShownFuse {
    fn only_named(name: &str) -> Self {
        Self {
            id: name.to_owned(),
            what: "named only".to_owned(),
            described: false,
            enclosure: None,
            behind: None,
            rated: None,
            voltage: None,
            breaks: None,
            source: String::new(),
            feeds: Vec::new(),
            conductors: Vec::new(),
            size_missing: false,
            carries: None,
            own: Some(vec![Current::from_base(0.0); CASES.len()]),
        }
    }

    /// Adds a cable with the current through it in each case.
    fn takes_on(&mut self, cable: &Cable, through: Option<&Vec<Current>>, fed: &[String]) {
        self.own = match (self.own.take(), through) {
            (Some(own), Some(through)) => {
                Some(own.iter().zip(through).map(|(a, b)| *a + *b).collect())
            }
            _ => None,
        };
        self.reaches(cable, fed);
    }

    /// Adds a cable behind it.
    fn reaches(&mut self, cable: &Cable, fed: &[String]) {
        if fed.is_empty() {
            self.feeds.push(format!("{} by {}", cable.to, cable.id));
        }
        self.feeds.extend_from_slice(fed);
        match ShownCable::of(cable).size {
            Some(size) if !self.conductors.contains(&size) => self.conductors.push(size),
            Some(_) => {}
            None => self.size_missing = true,
        }
    }
}

/// What a run feeds: the taker at its end, or the joint.
fn fed(loads: &[ShownLoad], number: usize, run: &Run<'_>) -> Vec<String> {
    let cable = run.cable.id.to_string();
    let here = |load: &&ShownLoad| {
        load.at.is_some_and(|(part, _)| part == number) && load.cable.as_ref() == Some(&cable)
    };
    let loads = loads.iter().filter(here);
    loads
        .map(|load| format!("{} by {cable}", load.id))
        .collect()
}

/// The first source of a part.
fn source_of(circuits: &Circuits<'_>, part: &Part<'_>) -> String {
    let source = part.places.iter().find_map(|place| match place {
        Place::Source(at) => circuits.sources.get(*at),
        Place::End => None,
    });
    source
        .map(|source| source.id().to_string())
        .unwrap_or_default()
}

/// The current through each run in each case; nothing where facts are missing.
fn through<'s>(circuits: &Circuits<'s>, part: &Part<'s>) -> Option<Vec<Vec<Current>>> {
    let states = Worst::of(circuits, part).states(None)?;
    let mut all = vec![vec![Current::from_base(0.0); CASES.len()]; part.runs.len()];
    for (case, state) in states.iter().enumerate() {
        match state {
            Worked::Apart => {}
            Worked::Known(State::Stands { through, .. }) => {
                for (run, current) in all.iter_mut().zip(through) {
                    run[case] = Current::from_base(current.base().abs());
                }
            }
            Worked::Unknown | Worked::Known(State::Collapses { .. }) => return None,
        }
    }
    Some(all)
}

/// The greatest current through a fuse and all behind it; a circle of fuses has none.
fn carried(fuses: &[ShownFuse], at: usize, depth: usize) -> Option<Current> {
    let sums = sums(fuses, at, depth)?;
    sums.into_iter().reduce(|a, b| if b > a { b } else { a })
}

fn sums(fuses: &[ShownFuse], at: usize, depth: usize) -> Option<Vec<Current>> {
    let depth = depth.checked_sub(1)?;
    let mut sum = fuses[at].own.clone()?;
    for (other, fuse) in fuses.iter().enumerate() {
        if other != at && fuse.behind.as_ref() == Some(&fuses[at].id) {
            let behind = sums(fuses, other, depth)?;
            sum = sum.iter().zip(&behind).map(|(a, b)| *a + *b).collect();
        }
    }
    Some(sum)
}

/// Cables that leave a source, a battery or a panel without a fuse.
pub(super) fn unfused(circuits: &Circuits<'_>) -> Vec<Unfused> {
    let mut unfused = Vec::new();
    for part in &circuits.parts {
        for run in &part.runs {
            let at_source = matches!(part.places[run.from], Place::Source(_));
            if at_source && name(part, run).is_none() {
                unfused.push(of(run.cable));
            }
        }
    }
    let site = circuits.site;
    let batteries = site.battery.iter().map(|it| (&it.id, it.supply.as_ref()));
    let panels = site
        .solar_panel
        .iter()
        .map(|it| (&it.id, it.supply.as_ref()));
    for (id, supply) in batteries.chain(panels) {
        let cable = supply.and_then(|supply| between(circuits, id, supply));
        unfused.extend(cable.filter(|cable| cable.fuse.is_none()).map(of));
    }
    unfused
}

fn of(cable: &Cable) -> Unfused {
    Unfused {
        cable: ShownCable::of(cable),
        from: cable.from.to_string(),
        to: cable.to.to_string(),
    }
}
