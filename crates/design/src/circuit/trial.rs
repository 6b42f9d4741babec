//! A part made ready for other conductors to be tried in it: the hours that decide, and the voltages that follow.

use super::lower::{CHAIN, Lowered, Lowering};
use super::state::at_battery_end;
use super::{CASES, Circuits, How, Part, PowerCase, Run, Taker};
use crate::asking::Asking;
use crate::outcome::Halt;
use formula::OutOfReach;
use quantity::{Current, Quantity as _, Resistance, Voltage};
use sim::network::{Case, Draw, Node, Unsolved};
use site::Cable;

/// An hour in which the voltage at some takers is watched.
#[derive(Debug, Clone)]
pub(crate) struct Hour {
    pub(crate) case: PowerCase,
    /// Takers by number, each with the least voltage at which it works.
    pub(crate) watched: Vec<(usize, Voltage)>,
    draws: Vec<Draw>,
    /// Each held place with its voltage.
    held: Vec<(Node, Voltage)>,
}

/// A part in which conductors can be exchanged, every value at its bad end.
pub(crate) struct Trial {
    /// The hours that decide: no other can be worse for what is watched.
    pub(crate) hours: Vec<Hour>,
    lowered: Lowered,
    /// Where each taker stands.
    at: Vec<Node>,
}

impl Trial {
    /// Makes a part ready; watched is each taker that has a least voltage.
    pub(crate) fn of<'s>(
        circuits: &Circuits<'s>,
        asking: &mut Asking<'s>,
        part: &Part<'s>,
        least: &[Option<Voltage>],
    ) -> Result<Self, Halt> {
        let lowered = Lowering::new(circuits, asking, How::BadEnd).parts(&[part], CHAIN);
        let ended = at_battery_end(circuits, asking, part);
        let (lowered, ended) = (lowered?, ended?);
        if ended.is_some_and(|volts| volts.base() <= 0.0) {
            return asking.refuse("the voltage collapses with the battery at its end");
        }
        let node = |taker: &Taker<'_>| lowered.nodes[0][taker.place];
        let mut trial = Self {
            hours: Vec::new(),
            at: part.takers.iter().map(node).collect(),
            lowered,
        };
        for (taker, least) in least.iter().enumerate() {
            if let Some(least) = least {
                trial.watch(part, (taker, *least), ended);
            }
        }
        for hour in &trial.hours {
            let case = asking.in_reach(trial.case(hour, true))?;
            if let Err(Unsolved::Unfed { .. } | Unsolved::NoVoltage { .. }) =
                trial.lowered.grid.solve(&case)
            {
                return asking.refuse("no source reaches this circuit");
            }
        }
        Ok(trial)
    }

    /// Watches a taker in every hour that none is worse than.
    fn watch(&mut self, part: &Part<'_>, (taker, least): (usize, Voltage), ended: Option<Voltage>) {
        let mut hours: Vec<Hour> = Vec::new();
        for case in CASES {
            let Some(hour) = self.hour(part, taker, case, ended) else {
                continue;
            };
            if !hours.iter().any(|other| other.is_as_bad_as(&hour)) {
                hours.retain(|other| !hour.is_as_bad_as(other));
                hours.push(hour);
            }
        }
        for mut hour in hours {
            let like = |other: &&mut Hour| other.is_as_bad_as(&hour) && hour.is_as_bad_as(other);
            if let Some(same) = self.hours.iter_mut().find(like) {
                same.watched.push((taker, least));
            } else {
                hour.watched.push((taker, least));
                self.hours.push(hour);
            }
        }
    }

    /// A case in which a taker draws its own greatest; nothing for the battery's end where there is no battery.
    fn hour(
        &self,
        part: &Part<'_>,
        taker: usize,
        case: PowerCase,
        ended: Option<Voltage>,
    ) -> Option<Hour> {
        let held = match case {
            PowerCase::BatteryEnd => {
                let ended = ended?;
                let all = self.lowered.held.iter();
                all.map(|(node, _)| (*node, ended)).collect()
            }
            _ => self.lowered.held.clone(),
        };
        let own = part.takers[taker].takes.id();
        let asks = part.takers.iter().zip(&self.lowered.asks[0]);
        let draws = asks
            .map(|(other, asks)| asks.draw(case, other.takes.id() == own))
            .collect();
        Some(Hour {
            case,
            watched: Vec::new(),
            draws,
            held,
        })
    }

    fn case(&self, hour: &Hour, with_resistances: bool) -> Result<Case, OutOfReach> {
        let mut case = Case::new();
        for (node, voltage) in &hour.held {
            case.hold(*node, *voltage)?;
        }
        for (node, draw) in self.at.iter().zip(&hour.draws) {
            if with_resistances || !matches!(draw, Draw::Resistance(_)) {
                case.draw(*node, *draw)?;
            }
        }
        Ok(case)
    }

    /// Gives a run another resistance.
    pub(crate) fn set(&mut self, run: usize, resistance: Resistance) -> Result<(), OutOfReach> {
        let branch = self.lowered.branches[0][run];
        self.lowered.grid.set(branch, resistance)
    }

    /// The voltage at each watched taker of an hour; none where it collapses.
    pub(crate) fn voltages(&self, hour: &Hour) -> Option<Vec<Voltage>> {
        self.solved(hour, true).map(|(voltages, _)| voltages)
    }

    /// The same without what is a resistance, with the current in each run: no voltage can be higher, no current of a tree
    /// lower, with thinner conductors and everything drawing.
    pub(crate) fn at_best(&self, hour: &Hour) -> Option<(Vec<Voltage>, Vec<Current>)> {
        self.solved(hour, false)
    }

    fn solved(&self, hour: &Hour, with_resistances: bool) -> Option<(Vec<Voltage>, Vec<Current>)> {
        let case = self.case(hour, with_resistances).ok()?;
        let solved = self.lowered.grid.solve(&case).ok()?;
        let watched = hour.watched.iter();
        let voltages = watched
            .map(|(taker, _)| solved.voltage(self.at[*taker]))
            .collect();
        let branches = self.lowered.branches[0].iter();
        Some((
            voltages,
            branches.map(|branch| solved.current(*branch)).collect(),
        ))
    }

    /// Something in it is a resistance: a thicker conductor to it lets it draw more from what it shares.
    pub(crate) fn has_resistances(&self) -> bool {
        let mut draws = self.hours.iter().flat_map(|hour| &hour.draws);
        draws.any(|draw| matches!(draw, Draw::Resistance(_)))
    }
}

/// What a run would resist, its fuse with it, with another cable in its place.
pub(crate) fn resistance_with<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    run: &Run<'s>,
    cable: &'s Cable,
) -> Result<Resistance, Halt> {
    Lowering::new(circuits, asking, How::BadEnd).resistance(&Run { cable, ..*run })
}

impl Hour {
    /// Nothing draws less than in the other and no source holds more, so that no voltage is higher.
    fn is_as_bad_as(&self, other: &Self) -> bool {
        let held = self.held.iter().zip(&other.held);
        let draws = self.draws.iter().zip(&other.draws);
        let (mut held, mut draws) = (held, draws);
        held.all(|(a, b)| a.1 <= b.1) && draws.all(|(a, b)| is_no_less(*a, *b))
    }
}

fn is_no_less(one: Draw, other: Draw) -> bool {
    match (one, other) {
        (Draw::Power(one), Draw::Power(other)) => one >= other,
        (Draw::Current(one), Draw::Current(other)) => one >= other,
        (Draw::Resistance(one), Draw::Resistance(other)) => one <= other,
        (_, Draw::Power(other)) => other.base() <= 0.0,
        (_, Draw::Current(other)) => other.base() <= 0.0,
        (_, Draw::Resistance(_)) => false,
    }
}

impl<'s> Part<'s> {
    /// For each taker, the runs between it and its source, if there is one way only: no rings, one source.
    pub(crate) fn ways(&self) -> Option<Vec<Vec<usize>>> {
        let sources: Vec<usize> = (0..self.places.len())
            .filter(|place| matches!(self.places[*place], super::parts::Place::Source(_)))
            .collect();
        let [source] = sources.as_slice() else {
            return None;
        };
        let mut way: Vec<Option<Vec<usize>>> = vec![None; self.places.len()];
        way[*source] = Some(Vec::new());
        let mut left: Vec<usize> = (0..self.runs.len()).collect();
        while let Some(at) = left.iter().position(|run| {
            let run = &self.runs[*run];
            way[run.from].is_some() || way[run.to].is_some()
        }) {
            let number = left.swap_remove(at);
            let run = &self.runs[number];
            let (near, far) = match (&way[run.from], &way[run.to]) {
                (Some(_), Some(_)) => return None,
                (Some(near), None) => (near.clone(), run.to),
                (None, Some(near)) => (near.clone(), run.from),
                (None, None) => continue,
            };
            way[far] = Some([near, vec![number]].concat());
        }
        self.takers
            .iter()
            .map(|taker| way[taker.place].clone())
            .collect()
    }

    /// The run that ends at a taker.
    pub(crate) fn run_to(&self, taker: usize) -> Option<&Run<'s>> {
        let place = self.takers[taker].place;
        self.runs
            .iter()
            .find(|run| run.to == place)
            .or_else(|| self.runs.iter().find(|run| run.from == place))
            .filter(|_| matches!(self.places[place], super::parts::Place::End))
    }
}
