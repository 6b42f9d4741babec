//! The conductors of a site decided, part by part, and the voltages that follow in the whole site.

use super::cost::Costs;
use super::ladder::{Ladder, Rung};
use super::offer::Spot;
use super::part::PartCircuit;
use super::search::{Circuit as _, search};
use crate::asking::{Asking, End, Lack};
use crate::circuit::{Circuits, Part, PowerCase, Run, Source, Takes, Trial, resistance_with};
use crate::outcome::Halt;
use formula::power::metal_area;
use quantity::{Quantity as _, Voltage};
use site::{Cable, Id, Site, Supply, SupplyKind};
use std::cmp::Ordering;

/// What is to be decided.
pub(crate) struct Plan<'a> {
    pub(crate) site: &'a Site,
    pub(crate) spots: Vec<Spot>,
    pub(crate) costs: Costs,
    /// Offers that are not to be taken, by spot and offer.
    pub(crate) banned: Vec<(usize, usize)>,
}

/// What was decided.
#[derive(Debug, Clone, Default)]
pub(crate) struct Decided {
    /// For each spot, the offer.
    pub(crate) chosen: Vec<usize>,
    /// Cost of what was decided.
    pub(crate) cost: u64,
    /// No set costs less.
    pub(crate) bound: u64,
    /// Sets and beginnings of sets that were looked at.
    pub(crate) looked_at: usize,
    /// Spots of parts that no set mends: they stay as they are.
    pub(crate) stuck: Vec<usize>,
    /// Spots of parts that cannot be worked, for something is missing: they stay as they are.
    pub(crate) unworked: Vec<usize>,
    /// A thicker conductor may lower a voltage somewhere: rings, or loads that are resistances.
    pub(crate) uneven: bool,
}

/// The lowest voltage of something that takes power, over one of its cables.
#[derive(Debug, Clone)]
pub(crate) struct Reached {
    pub(crate) id: Id,
    /// The last cable before it.
    pub(crate) cable: Option<Id>,
    pub(crate) least: Voltage,
    pub(crate) volts: Voltage,
    pub(crate) case: PowerCase,
}

impl Reached {
    pub(crate) fn is_kept(&self) -> bool {
        self.volts.base() >= self.least.base() * (1.0 - 1e-9)
    }
}

/// The parts whose conductors are decided here: those at low voltage.
pub(crate) fn at_low_voltage<'c, 's>(
    circuits: &'c Circuits<'s>,
) -> impl Iterator<Item = &'c Part<'s>> {
    let is_mains = |source: &Source<'_>| matches!(source, Source::Supply(supply) if supply.kind == SupplyKind::Mains);
    circuits.parts.iter().filter(move |part| {
        let sources = circuits.sources.iter().enumerate();
        !sources
            .filter(|(at, _)| part.holds(*at))
            .any(|(_, source)| is_mains(source))
    })
}

/// The numbers of the cables that a site's low-voltage circuits run over, in the order of the site.
pub(crate) fn cables(site: &Site, circuits: &Circuits<'_>) -> Vec<usize> {
    let within = |cable: &Cable| {
        let mut runs = at_low_voltage(circuits).flat_map(|part| &part.runs);
        runs.any(|run| run.cable.id == cable.id)
    };
    let all = site.cable.iter().enumerate();
    all.filter(|(_, cable)| within(cable))
        .map(|(at, _)| at)
        .collect()
}

/// The least voltage at which each taker of a part works; nothing for a supply that no other supply feeds.
pub(crate) fn least<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    part: &Part<'s>,
) -> Result<Vec<Option<Voltage>>, Halt> {
    let mut all = Vec::new();
    let mut whole = Ok(());
    for taker in &part.takers {
        let from_mains =
            matches!(taker.takes, Takes::Supply(supply) if !is_converter(site, supply));
        let Some((key, value)) = taker.takes.least().filter(|_| !from_mains) else {
            all.push(None);
            continue;
        };
        match asking.read_at((taker.takes.origin(), key), value, End::High) {
            Ok(least) => all.push(Some(least)),
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| all)
}

/// It is fed by another supply than the mains.
fn is_converter(site: &Site, supply: &Supply) -> bool {
    let before = |other: &&Supply| supply.fed_by.as_ref() == Some(&other.id);
    let before = site.supply.iter().find(before);
    before.is_some_and(|before| before.kind != SupplyKind::Mains)
}

/// A part made ready to be asked.
pub(crate) fn ready<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    part: &Part<'s>,
) -> Result<PartCircuit, Halt> {
    let least = least(asking, circuits.site, part);
    let Ok(least) = least else {
        // What else is missing is told with it.
        let none = vec![None; part.takers.len()];
        let _ = Trial::of(circuits, asking, part, &none);
        return Err(Halt);
    };
    let trial = Trial::of(circuits, asking, part, &least)?;
    Ok(PartCircuit::new(part, trial))
}

/// The lowest voltage at each taker of a part.
pub(crate) fn reached(part: &Part<'_>, ready: &PartCircuit) -> Vec<Reached> {
    let mut all: Vec<(usize, Reached)> = Vec::new();
    for hour in ready.hours() {
        let voltages = ready.voltages(hour);
        for (at, (taker, least)) in hour.watched.iter().enumerate() {
            let volts = voltages.as_ref().map(|volts| volts[at]);
            let volts = volts.unwrap_or(Voltage::from_base(0.0));
            let found = Reached {
                id: part.takers[*taker].takes.id().clone(),
                cable: part.run_to(*taker).map(|run| run.cable.id.clone()),
                least: *least,
                volts,
                case: hour.case,
            };
            match all.iter_mut().find(|(known, _)| known == taker) {
                Some((_, known)) if volts < known.volts => *known = found,
                Some(_) => {}
                None => all.push((*taker, found)),
            }
        }
    }
    all.into_iter().map(|(_, reached)| reached).collect()
}

/// The lowest voltages of a whole site, and the lines that parts lack.
pub(crate) fn voltages(site: &Site) -> (Vec<Reached>, Vec<String>) {
    let circuits = Circuits::of(site);
    let (mut all, mut lines) = (Vec::new(), Vec::new());
    for part in at_low_voltage(&circuits) {
        let mut asking = Asking::new(site.site.unit_system());
        match ready(&mut asking, &circuits, part) {
            Ok(ready) => all.extend(reached(part, &ready)),
            Err(Halt) => lacking(&asking, &mut lines),
        }
    }
    (all, lines)
}

/// What an answer lacks, as lines to write.
fn lacking(asking: &Asking<'_>, lines: &mut Vec<String>) {
    let line = |lack: &Lack<'_>| format!("in {}: {}", lack.origin.path, lack.line());
    let mut found: Vec<String> = asking.lacks.iter().map(line).collect();
    if let (Some(beyond), true) = (&asking.beyond, found.is_empty()) {
        found.push(beyond.reach.why.clone());
    }
    for line in found {
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
}

impl Plan<'_> {
    /// The site with these offers in it.
    pub(crate) fn site_with(&self, chosen: &[usize]) -> Site {
        let mut site = self.site.clone();
        for (spot, offer) in self.spots.iter().zip(chosen) {
            site.cable[spot.cable] = spot.offers[*offer].clone();
        }
        site
    }

    /// The site with the thickest offer everywhere.
    pub(crate) fn thickest(&self) -> Site {
        self.at_the_end_of(|a, b| a.total_cmp(&b))
    }

    /// The site with the thinnest offer everywhere.
    pub(crate) fn thinnest(&self) -> Site {
        self.at_the_end_of(|a, b| b.total_cmp(&a))
    }

    fn at_the_end_of(&self, order: fn(f64, f64) -> Ordering) -> Site {
        let area = |cable: &Cable| cable.size.map_or(0.0, |size| metal_area(size).base());
        let last = |(at, spot): (usize, &Spot)| {
            let allowed = |offer: &usize| !self.banned.contains(&(at, *offer));
            (0..spot.offers.len())
                .filter(allowed)
                .max_by(|a, b| order(area(&spot.offers[*a]), area(&spot.offers[*b])))
                .unwrap_or(0)
        };
        let chosen: Vec<usize> = self.spots.iter().enumerate().map(last).collect();
        self.site_with(&chosen)
    }

    /// Decides every part, with what it feels of the others taken from a context: what batteries leave, what converters draw.
    pub(crate) fn decided(&self, context: &Site) -> Decided {
        let circuits = Circuits::of(context);
        let mut decided = Decided {
            chosen: vec![0; self.spots.len()],
            ..Decided::default()
        };
        for part in at_low_voltage(&circuits) {
            let spots: Vec<usize> = part.runs.iter().filter_map(|run| self.spot(run)).collect();
            if spots.is_empty() || spots.len() != part.runs.len() {
                continue;
            }
            if self.part(&circuits, part, &spots, &mut decided).is_err() {
                let cost: u64 = spots.iter().map(|spot| self.costs.each[*spot][0]).sum();
                decided.cost += cost;
                decided.bound += cost;
            }
        }
        decided
    }

    fn part<'s>(
        &'s self,
        circuits: &Circuits<'s>,
        part: &Part<'s>,
        spots: &[usize],
        decided: &mut Decided,
    ) -> Result<(), Halt> {
        let mut asking = Asking::new(self.site.site.unit_system());
        let Ok(mut circuit) = ready(&mut asking, circuits, part) else {
            decided.unworked.extend(spots);
            return Err(Halt);
        };
        let ladders: Vec<Ladder> = part
            .runs
            .iter()
            .zip(spots)
            .map(|(run, spot)| self.ladder(circuits, run, *spot))
            .collect();
        decided.uneven |= !circuit.is_monotone();
        let Some(found) = search(&ladders, &mut circuit) else {
            decided.stuck.extend(spots);
            return Err(Halt);
        };
        for (spot, offer) in spots.iter().zip(&found.offers) {
            decided.chosen[*spot] = *offer;
        }
        decided.cost += found.cost;
        decided.bound += found.bound;
        decided.looked_at += found.looked_at;
        Ok(())
    }

    fn ladder<'s>(&'s self, circuits: &Circuits<'s>, run: &Run<'s>, spot: usize) -> Ladder {
        let offers = self.spots[spot].offers.iter().enumerate();
        let rung = |(offer, cable): (usize, &'s Cable)| {
            let mut asking = Asking::new(self.site.site.unit_system());
            let with = resistance_with(circuits, &mut asking, run, cable);
            Some(Rung {
                ohms: with.ok()?.base(),
                cost: self.costs.each[spot][offer],
                offer,
            })
        };
        let allowed = offers.filter(|(offer, _)| !self.banned.contains(&(spot, *offer)));
        Ladder::new(allowed.filter_map(rung).collect())
    }

    fn spot(&self, run: &Run<'_>) -> Option<usize> {
        let is = |spot: &Spot| self.site.cable[spot.cable].id == run.cable.id;
        self.spots.iter().position(is)
    }
}
