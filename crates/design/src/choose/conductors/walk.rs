//! The walk through all sets that may be cheaper than the best one known, run by run.

use super::bound::{Bound, Row, cheapest, whole};
use super::ladder::{Ladder, Rung};
use super::search::{Circuit, excess, ohms};

/// Beginnings of sets that are looked at, at most.
pub(super) const MOST: usize = 400_000;
/// A test by the voltages themselves counts as so many.
const A_TEST: usize = 40;
/// Sets that failed, kept to rule out thinner ones.
const FAILED: usize = 400;

/// The walk through all sets.
pub(super) struct Walk<'a> {
    ladders: &'a [Ladder],
    prices: &'a Bound,
    circuit: &'a mut dyn Circuit,
    /// Runs in the order in which they are decided.
    order: Vec<usize>,
    /// For each run, the rows that it stands in, with its amperes.
    within: Vec<Vec<(usize, f64)>>,
    /// For each place in the order, what all from there on cost at least at the prices.
    rest: Vec<f64>,
    /// Rungs chosen; the thickest for runs that are open.
    set: Vec<usize>,
    /// Volts left in each row.
    in_hand: Vec<f64>,
    /// What the chosen ones cost at the prices.
    priced: f64,
    /// Cost that must be undercut.
    known: u64,
    /// The cheapest set that was found on the way.
    pub(super) best: Option<Vec<usize>>,
    failed: Vec<Vec<usize>>,
    /// Beginnings of sets that may still be looked at.
    pub(super) left: usize,
}

impl<'a> Walk<'a> {
    pub(super) fn new(
        ladders: &'a [Ladder],
        rows: &'a [Row],
        prices: &'a Bound,
        circuit: &'a mut dyn Circuit,
        known: u64,
    ) -> Self {
        let mut within = vec![Vec::new(); ladders.len()];
        for (at, row) in rows.iter().enumerate() {
            for (run, amperes) in &row.runs {
                within[*run].push((at, *amperes));
            }
        }
        let mut order: Vec<usize> = (0..ladders.len()).collect();
        order.sort_by_key(|run| std::cmp::Reverse(within[*run].len()));
        let least = |run: &usize| cheapest(&ladders[*run], prices.ohm[*run]).0;
        let mut rest = vec![0.0; ladders.len() + 1];
        for (at, run) in order.iter().enumerate().rev() {
            rest[at] = rest[at + 1] + least(run);
        }
        Self {
            ladders,
            prices,
            circuit,
            order,
            within,
            rest,
            set: vec![0; ladders.len()],
            in_hand: rows.iter().map(|row| row.in_hand).collect(),
            priced: 0.0,
            known,
            best: None,
            failed: Vec::new(),
            left: MOST,
        }
    }

    /// Decides the runs from a place in the order on, after so much has been spent.
    pub(super) fn from(&mut self, at: usize, spent: u64) {
        let Some(&run) = self.order.get(at) else {
            return self.test(spent);
        };
        let price = self.prices.ohm[run];
        let ladders = self.ladders;
        let rungs = ladders[run].rungs();
        let mut choices: Vec<(f64, usize)> = (0..rungs.len())
            .map(|rung| {
                (
                    whole(rungs[rung].cost) + price * excess(ladders, run, rung),
                    rung,
                )
            })
            .collect();
        choices.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (priced, rung) in choices {
            if self.left == 0 {
                return;
            }
            let least = self.priced + priced + self.rest[at + 1] - self.prices.worth;
            if least > whole(self.known) - 1.0 + 1e-6 {
                return;
            }
            self.left -= 1;
            let ohms = excess(ladders, run, rung);
            if !self.take(run, ohms) {
                continue;
            }
            self.priced += priced;
            self.set[run] = rung;
            let spent = spent + rungs[rung].cost;
            if self.least_of_open(at + 1, spent) < self.known {
                self.from(at + 1, spent);
            }
            self.priced -= priced;
            self.set[run] = 0;
            self.give_back(run, ohms);
        }
    }

    /// Takes the volts that a run loses; not where a row has too few.
    fn take(&mut self, run: usize, ohms: f64) -> bool {
        let short = |(row, amperes): &(usize, f64)| self.in_hand[*row] < amperes * ohms - SLACK;
        if self.within[run].iter().any(short) {
            return false;
        }
        for (row, amperes) in &self.within[run] {
            self.in_hand[*row] -= amperes * ohms;
        }
        true
    }

    fn give_back(&mut self, run: usize, ohms: f64) {
        for (row, amperes) in &self.within[run] {
            self.in_hand[*row] += amperes * ohms;
        }
    }

    /// What a set costs at least: each open run with its cheapest conductor that keeps every row by itself.
    fn least_of_open(&self, at: usize, spent: u64) -> u64 {
        let mut sum = spent;
        for run in &self.order[at..] {
            let rows = self.within[*run].iter();
            let room = rows
                .filter(|(_, amperes)| *amperes > 0.0)
                .map(|(row, amperes)| (self.in_hand[*row] + SLACK) / amperes)
                .fold(f64::INFINITY, f64::min);
            let rungs = self.ladders[*run].rungs();
            let fits = |rung: &&Rung| rung.ohms - rungs[0].ohms <= room;
            sum += rungs.iter().rev().find(fits).map_or(0, |rung| rung.cost);
        }
        sum
    }

    /// Asks the circuit itself about a whole set.
    fn test(&mut self, spent: u64) {
        if spent >= self.known || self.is_thinner_than_failed() {
            return;
        }
        self.left = self.left.saturating_sub(A_TEST);
        if self.circuit.keeps(&ohms(self.ladders, &self.set)) {
            self.known = spent;
            self.best = Some(self.set.clone());
        } else if self.circuit.is_monotone() && self.failed.len() < FAILED {
            self.failed.push(self.set.clone());
        }
    }

    /// No run is thicker than in a set that failed.
    fn is_thinner_than_failed(&self) -> bool {
        let thinner = |failed: &Vec<usize>| failed.iter().zip(&self.set).all(|(a, b)| b >= a);
        self.failed.iter().any(thinner)
    }
}

/// Volts by which rounding may be off.
const SLACK: f64 = 1e-9;
