//! The circuits of a site taken apart at the terminals of each source: what lies in one part feels nothing of another.

use super::ends::EndFound;
use super::{Source, Taker, Takes};
use crate::asking::{Asking, Wants};
use crate::outcome::Halt;
use site::{Cable, Carries, Fuse, Id, Site};
use std::cell::OnceCell;
use std::collections::BTreeMap;

/// A cable of a part with the fuse at its beginning.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Run<'s> {
    pub(crate) cable: &'s Cable,
    pub(crate) fuse: Option<&'s Fuse>,
    /// Places at its two ends, the source's side first.
    pub(super) from: usize,
    pub(super) to: usize,
}

/// A place of a part.
#[derive(Debug, Clone, Copy)]
pub(super) enum Place {
    /// Terminals of a source, by its number.
    Source(usize),
    /// A joint, or the end of a cable at what it feeds.
    End,
}

/// Circuits that hang together elsewhere than at terminals whose voltage is held.
#[derive(Debug)]
pub(crate) struct Part<'s> {
    pub(super) places: Vec<Place>,
    pub(crate) runs: Vec<Run<'s>>,
    pub(crate) takers: Vec<Taker<'s>>,
}

/// All circuits of a site.
#[derive(Debug)]
pub(crate) struct Circuits<'s> {
    pub(crate) site: &'s Site,
    pub(crate) sources: Vec<Source<'s>>,
    pub(crate) parts: Vec<Part<'s>>,
    /// What names a source and has neither a cable from it nor a place in its enclosure.
    pub(crate) without_cable: Vec<Takes<'s>>,
    /// For each source, what its batteries leave at their end, once it has been worked.
    pub(super) ends: Vec<OnceCell<EndFound<'s>>>,
}

/// A cable that brings power, with the places at its ends by number.
struct Wire<'s> {
    cable: &'s Cable,
    from: usize,
    to: usize,
    takes: Option<Takes<'s>>,
}

/// Everything laid out before it is taken apart.
struct Layout<'s> {
    site: &'s Site,
    sources: Vec<Source<'s>>,
    places: Vec<Place>,
    joints: BTreeMap<&'s str, usize>,
    /// The first place at which each thing is fed.
    fed_at: BTreeMap<&'s str, usize>,
    wires: Vec<Wire<'s>>,
    takers: Vec<Taker<'s>>,
    without_cable: Vec<Takes<'s>>,
}

impl<'s> Circuits<'s> {
    pub(crate) fn of(site: &'s Site) -> Self {
        let mut layout = Layout::new(site);
        layout.wires();
        layout.takers();
        layout.apart()
    }

    /// The number of the source of that name.
    pub(crate) fn source(&self, name: &Id) -> Option<usize> {
        self.sources.iter().position(|source| source.id() == name)
    }

    /// The number of the source that feeds something.
    pub(crate) fn feeding(&self, asking: &mut Asking<'s>, takes: Takes<'s>) -> Result<usize, Halt> {
        match takes.fed_by().and_then(|name| self.source(name)) {
            Some(source) => Ok(source),
            None => asking.lack(takes.origin(), "supply", Wants::Written("\"supply-24\"")),
        }
    }

    /// The source at whose terminals a run begins.
    pub(crate) fn begins_at(&self, part: &Part<'s>, run: &Run<'s>) -> Option<Source<'s>> {
        part.begins_at(run)
            .and_then(|at| self.sources.get(at).copied())
    }

    /// The enclosure in which a source sits.
    pub(crate) fn enclosure(&self, source: usize) -> Option<&'s Id> {
        self.sources
            .get(source)
            .and_then(|source| source.enclosure())
    }

    /// The parts that a source feeds.
    pub(crate) fn fed_by(&self, source: usize) -> impl Iterator<Item = &Part<'s>> {
        self.parts.iter().filter(move |part| part.holds(source))
    }
}

impl<'s> Part<'s> {
    /// The numbers of the takers of that name.
    pub(crate) fn takers_named<'p>(&'p self, id: &'p Id) -> impl Iterator<Item = usize> + 'p {
        let named = move |(_, taker): &(usize, &Taker<'s>)| taker.takes.id() == id;
        self.takers
            .iter()
            .enumerate()
            .filter(named)
            .map(|(at, _)| at)
    }

    /// The number of the source at whose terminals a run begins.
    pub(crate) fn begins_at(&self, run: &Run<'s>) -> Option<usize> {
        match self.places.get(run.from) {
            Some(Place::Source(source)) => Some(*source),
            _ => None,
        }
    }

    /// What is fed through a run, as the way from its source goes.
    pub(crate) fn behind<'p>(&'p self, run: &Run<'s>) -> impl Iterator<Item = &'p Taker<'s>> {
        let mut reached = vec![false; self.places.len()];
        reached[run.to] = true;
        for _ in &self.runs {
            for other in &self.runs {
                let source = matches!(self.places[other.from], Place::Source(_));
                if reached[other.from] && !source {
                    reached[other.to] = true;
                }
            }
        }
        self.takers.iter().filter(move |taker| reached[taker.place])
    }

    pub(crate) fn holds(&self, source: usize) -> bool {
        self.places
            .iter()
            .any(|place| matches!(place, Place::Source(at) if *at == source))
    }
}

/// Something that takes power from a source, a device fed over a data cable left out.
fn takes_power(layout: &Layout<'_>, takes: Takes<'_>) -> bool {
    takes
        .fed_by()
        .is_some_and(|name| layout.source(name).is_some())
}

impl<'s> Layout<'s> {
    fn new(site: &'s Site) -> Self {
        let sources = Source::all(site);
        let places: Vec<Place> = (0..sources.len()).map(Place::Source).collect();
        Self {
            site,
            sources,
            places,
            joints: BTreeMap::new(),
            fed_at: BTreeMap::new(),
            wires: Vec::new(),
            takers: Vec::new(),
            without_cable: Vec::new(),
        }
    }

    fn source(&self, name: &Id) -> Option<usize> {
        self.sources.iter().position(|source| source.id() == name)
    }

    fn place(&mut self) -> usize {
        self.places.push(Place::End);
        self.places.len() - 1
    }

    /// Everything that takes power: a loop does not, its detector does, in its enclosure.
    fn all(&self) -> Vec<Takes<'s>> {
        let site = self.site;
        let devices = site
            .device
            .iter()
            .filter(|device| device.kind != site::DeviceKind::Loop);
        let all = site.operator.iter().map(Takes::Operator);
        let all = all.chain(devices.map(Takes::Device));
        let all = all.chain(site.supply.iter().map(Takes::Supply));
        all.chain(site.enclosure.iter().map(Takes::Heater))
            .filter(|takes| takes_power(self, *takes))
            .collect()
    }

    /// Lays out each cable that brings power.
    fn wires(&mut self) {
        for joint in &self.site.joint {
            let place = self.place();
            self.joints.insert(joint.id.as_str(), place);
        }
        let all = self.all();
        let powers =
            |cable: &&'s Cable| !matches!(cable.carries, Some(Carries::Data | Carries::LoopLeadIn));
        let mut left: Vec<&'s Cable> = self.site.cable.iter().filter(powers).collect();
        loop {
            let before = left.len();
            left.retain(|cable| !self.laid(cable, &all));
            if left.len() == before {
                return;
            }
        }
    }

    /// Lays out a cable, if it brings power and its beginning is known already.
    fn laid(&mut self, cable: &'s Cable, all: &[Takes<'s>]) -> bool {
        let joint = self.joints.get(cable.to.as_str()).copied();
        let takes = all.iter().copied().find(|takes| *takes.id() == cable.to);
        let source = self.source(&cable.from);
        let from_joint = self.joints.get(cable.from.as_str()).copied();
        let right = |takes: Takes<'s>| takes.fed_by().map(Id::as_str) == Some(cable.from.as_str());
        let from = match (source, from_joint) {
            (Some(source), _) if joint.is_some() || takes.is_some_and(right) => source,
            (None, Some(joint)) => joint,
            (None, None) => match self.passed_on(cable, all, takes) {
                Some(place) => place,
                None => return false,
            },
            _ => return false,
        };
        let to = match (joint, takes) {
            (Some(joint), _) => joint,
            (None, Some(_)) => self.place(),
            (None, None) => return false,
        };
        if joint.is_none() {
            self.fed_at.entry(cable.to.as_str()).or_insert(to);
        }
        self.wires.push(Wire {
            cable,
            from,
            to,
            takes: takes.filter(|_| joint.is_none()),
        });
        true
    }

    /// The place from which a device or an operator passes on the power that it gets, to something on the same source.
    fn passed_on(&self, cable: &Cable, all: &[Takes<'s>], to: Option<Takes<'s>>) -> Option<usize> {
        let before = all.iter().find(|takes| *takes.id() == cable.from)?;
        let alike = before.fed_by().is_some() && before.fed_by() == to?.fed_by();
        let direct = self.fed_at.contains_key(cable.to.as_str());
        let place = self.fed_at.get(cable.from.as_str()).copied();
        place.filter(|_| alike && !direct)
    }

    /// Puts everything that takes power where its cables end, or at its source where both sit in one enclosure.
    fn takers(&mut self) {
        for takes in self.all() {
            let ends: Vec<usize> = self
                .wires
                .iter()
                .filter(|wire| wire.takes.is_some_and(|other| other.id() == takes.id()))
                .map(|wire| wire.to)
                .collect();
            for (at, place) in ends.iter().enumerate() {
                self.takers.push(Taker {
                    takes,
                    place: *place,
                    again: at > 0,
                });
            }
            if ends.is_empty() {
                self.without_wire(takes);
            }
        }
    }

    fn without_wire(&mut self, takes: Takes<'s>) {
        let Some(source) = takes.fed_by().and_then(|name| self.source(name)) else {
            return;
        };
        let enclosure = self.sources[source].enclosure();
        let inside = enclosure.is_some() && enclosure == takes.enclosure();
        let place = Some(source).filter(|_| inside);
        let again = false;
        match place.or_else(|| self.beside(takes)) {
            Some(place) => self.takers.push(Taker {
                takes,
                place,
                again,
            }),
            None => self.without_cable.push(takes),
        }
    }

    /// A heater without a cable of its own hangs on the one that feeds something else in its enclosure.
    fn beside(&self, takes: Takes<'s>) -> Option<usize> {
        if !matches!(takes, Takes::Heater(_)) {
            return None;
        }
        let there = |other: Takes<'s>| {
            other.fed_by() == takes.fed_by() && other.enclosure() == takes.enclosure()
        };
        let mut wires = self.wires.iter();
        wires
            .find(|wire| wire.takes.is_some_and(there))
            .map(|wire| wire.to)
    }

    /// Takes the layout apart at the terminals that are held.
    fn apart(self) -> Circuits<'s> {
        let joins = |place: usize| match self.places[place] {
            Place::Source(at) => self.sources[at].gives_way(),
            Place::End => true,
        };
        let mut group: Vec<usize> = (0..self.places.len()).collect();
        for wire in &self.wires {
            if joins(wire.from) && joins(wire.to) {
                let (keep, gone) = (group[wire.from], group[wire.to]);
                for other in group.iter_mut().filter(|other| **other == gone) {
                    *other = keep;
                }
            }
        }
        let mut parts: BTreeMap<usize, Gathered<'s>> = BTreeMap::new();
        for wire in &self.wires {
            let at = if joins(wire.to) { wire.to } else { wire.from };
            parts.entry(group[at]).or_default().wire(&self, wire);
        }
        for taker in &self.takers {
            parts
                .entry(group[taker.place])
                .or_default()
                .taker(&self, *taker);
        }
        let ends = self.sources.iter().map(|_| OnceCell::new()).collect();
        Circuits {
            site: self.site,
            sources: self.sources,
            parts: parts.into_values().map(Gathered::part).collect(),
            without_cable: self.without_cable,
            ends,
        }
    }

    /// The fuse of a cable: its own, else that of the device at its end.
    fn fuse(&self, wire: &Wire<'s>) -> Option<&'s Fuse> {
        let of_device = match wire.takes {
            Some(Takes::Device(device)) => device.fuse.as_ref(),
            _ => None,
        };
        let name = wire.cable.fuse.as_ref().or(of_device)?;
        self.site.fuse.iter().find(|fuse| fuse.id == *name)
    }
}

/// A part as it is gathered.
#[derive(Default)]
struct Gathered<'s> {
    numbers: BTreeMap<usize, usize>,
    places: Vec<Place>,
    runs: Vec<Run<'s>>,
    takers: Vec<Taker<'s>>,
}

impl<'s> Gathered<'s> {
    fn number(&mut self, layout: &Layout<'s>, place: usize) -> usize {
        *self.numbers.entry(place).or_insert_with(|| {
            self.places.push(layout.places[place]);
            self.places.len() - 1
        })
    }

    fn wire(&mut self, layout: &Layout<'s>, wire: &Wire<'s>) {
        let (from, to) = (self.number(layout, wire.from), self.number(layout, wire.to));
        self.runs.push(Run {
            cable: wire.cable,
            fuse: layout.fuse(wire),
            from,
            to,
        });
    }

    fn taker(&mut self, layout: &Layout<'s>, taker: Taker<'s>) {
        let place = self.number(layout, taker.place);
        self.takers.push(Taker { place, ..taker });
    }

    fn part(self) -> Part<'s> {
        Part {
            places: self.places,
            runs: self.runs,
            takers: self.takers,
        }
    }
}
