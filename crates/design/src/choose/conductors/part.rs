//! One part of the circuits as the search asks it: whether a set of conductors keeps every voltage.

use super::bound::Row;
use super::ladder::Ladder;
use super::search::Circuit;
use crate::circuit::{Hour, Part, Trial};
use quantity::{Quantity as _, Resistance, Voltage};

/// Voltages nearer than this share of themselves count as equal.
const EQUAL: f64 = 1e-9;
/// Volts that are given away in what rules sets out, so that rounding rules out none that holds.
const SLACK: f64 = 1e-7;

/// A part with the runs between each taker and its source.
pub(crate) struct PartCircuit {
    trial: Trial,
    /// Nothing where there are rings or several sources.
    ways: Option<Vec<Vec<usize>>>,
    /// Hours in the order in which they are tried: what failed last comes first.
    order: Vec<usize>,
}

impl PartCircuit {
    pub(crate) fn new(part: &Part<'_>, trial: Trial) -> Self {
        Self {
            ways: part.ways(),
            order: (0..trial.hours.len()).collect(),
            trial,
        }
    }

    pub(crate) fn hours(&self) -> &[Hour] {
        &self.trial.hours
    }

    /// The voltage at each watched taker of an hour, with the conductors that were set last.
    pub(crate) fn voltages(&self, hour: &Hour) -> Option<Vec<Voltage>> {
        self.trial.voltages(hour)
    }

    /// Gives each run a resistance.
    pub(crate) fn set(&mut self, ohms: &[f64]) -> bool {
        let mut each = ohms.iter().enumerate();
        each.all(|(run, ohms)| {
            let set = self.trial.set(run, Resistance::from_base(*ohms));
            set.is_ok()
        })
    }

    fn holds(&self, hour: &Hour) -> bool {
        let Some(voltages) = self.trial.voltages(hour) else {
            return false;
        };
        let watched = hour.watched.iter().zip(voltages);
        let mut watched = watched;
        watched.all(|((_, least), volts)| volts.base() >= least.base() * (1.0 - EQUAL))
    }
}

impl Circuit for PartCircuit {
    fn keeps(&mut self, set: &[f64]) -> bool {
        if !self.set(set) {
            return false;
        }
        let fails = |hour: &usize| !self.holds(&self.trial.hours[*hour]);
        match self.order.iter().position(fails) {
            Some(at) => {
                self.order[..=at].rotate_right(1);
                false
            }
            None => true,
        }
    }

    fn rows(&mut self, ladders: &[Ladder]) -> Option<Vec<Row>> {
        let Some(ways) = self.ways.clone() else {
            return Some(Vec::new());
        };
        let thickest = |ladder: &Ladder| ladder.thickest().map_or(0.0, |rung| rung.ohms);
        let ohms: Vec<f64> = ladders.iter().map(thickest).collect();
        if !self.set(&ohms) {
            return None;
        }
        let mut rows = Vec::new();
        for hour in &self.trial.hours {
            let (voltages, currents) = self.trial.at_best(hour)?;
            for ((taker, least), volts) in hour.watched.iter().zip(voltages) {
                let in_hand = volts.base() - least.base() * (1.0 - EQUAL) + SLACK;
                if in_hand < 0.0 {
                    return None;
                }
                let runs = ways[*taker].iter();
                rows.push(Row {
                    runs: runs
                        .map(|run| (*run, currents[*run].base().abs()))
                        .collect(),
                    in_hand,
                });
            }
        }
        Some(rows)
    }

    fn is_monotone(&self) -> bool {
        self.ways.is_some() && !self.trial.has_resistances()
    }
}
