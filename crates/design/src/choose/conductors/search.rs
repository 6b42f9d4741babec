//! The cheapest set of conductors that keeps every voltage, and the proof that none is cheaper.
//!
//! Branch and bound. A set is tried run by run, those that carry most first. What is open yet costs at least what the
//! prices of `bound` say, and at least the cheapest conductor of each run that keeps every voltage with the thickest
//! everywhere else. A whole set is tested by the voltages themselves, so that the currents of electronics, which rise as
//! voltages fall, are counted as they are: the rows only rule out what surely fails.

use super::bound::{Bound, Row, bound, cheapest, whole};
use super::ladder::Ladder;
use super::walk::{MOST, Walk};

/// What is asked of the circuit itself.
pub(crate) trait Circuit {
    /// Every voltage is kept with these rungs, one a run.
    fn keeps(&mut self, set: &[f64]) -> bool;
    /// What must be so whatever is chosen among these ladders; nothing where some voltage cannot be kept at all.
    fn rows(&mut self, ladders: &[Ladder]) -> Option<Vec<Row>>;
    /// A thicker conductor never lowers a voltage.
    fn is_monotone(&self) -> bool;
}

/// The cheapest set that was found.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Found {
    /// The offer taken for each run.
    pub(crate) offers: Vec<usize>,
    pub(crate) cost: u64,
    /// No set costs less than this.
    pub(crate) bound: u64,
    /// Sets and beginnings of sets that were looked at.
    pub(crate) looked_at: usize,
}

/// Rounds of leaving out rungs that are too dear.
const ROUNDS: usize = 4;

/// Finds the cheapest set; nothing where even the thickest conductors keep too little.
pub(crate) fn search(ladders: &[Ladder], circuit: &mut dyn Circuit) -> Option<Found> {
    if ladders.iter().any(|ladder| ladder.thickest().is_none()) {
        return None;
    }
    let monotone = circuit.is_monotone();
    let thickest: Vec<usize> = vec![0; ladders.len()];
    if !circuit.keeps(&ohms(ladders, &thickest)) {
        return None;
    }
    let mut best = thinned(ladders, circuit, thickest);
    let mut left = ladders.to_vec();
    let mut least = 0.0f64;
    let mut prices = None;
    for _ in 0..ROUNDS {
        let Some(rows) = circuit.rows(&left) else {
            // No set among what is cheap enough keeps every voltage.
            return Some(told(ladders, &best, cost(ladders, &best), 0));
        };
        let found = bound(&left, &rows, whole(cost(ladders, &best)));
        least = least.max(found.least);
        if let Some(filled) = filled(&left, &rows, &found, circuit) {
            let filled = in_whole(ladders, &left, &filled);
            let filled = thinned(ladders, circuit, filled);
            if cost(ladders, &filled) < cost(ladders, &best) {
                best = filled;
            }
        }
        let before: usize = left.iter().map(|ladder| ladder.rungs().len()).sum();
        leave_out(&mut left, &found, whole(cost(ladders, &best)) - 1.0);
        prices = Some((rows, found));
        if left.iter().any(|ladder| ladder.thickest().is_none()) {
            return Some(told(ladders, &best, cost(ladders, &best), 0));
        }
        let after: usize = left.iter().map(|ladder| ladder.rungs().len()).sum();
        if before == after {
            break;
        }
        prices = None;
    }
    let (rows, prices) = match prices {
        Some(both) => both,
        None => match circuit.rows(&left) {
            Some(rows) => {
                let found = bound(&left, &rows, whole(cost(ladders, &best)));
                (rows, found)
            }
            None => return Some(told(ladders, &best, cost(ladders, &best), 0)),
        },
    };
    let mut walk = Walk::new(&left, &rows, &prices, circuit, cost(ladders, &best));
    walk.from(0, 0);
    let (complete, looked_at) = (walk.left > 0, MOST - walk.left);
    if let Some(set) = walk.best.take() {
        best = in_whole(ladders, &left, &set);
    }
    let cost = cost(ladders, &best);
    let bound = if complete && monotone {
        cost
    } else {
        up(least).min(cost)
    };
    Some(told(ladders, &best, bound, looked_at))
}

/// The least whole cost that is not below a bound.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the bound is not below zero and far below 2^53"
)]
fn up(least: f64) -> u64 {
    (least - 1e-6).ceil().max(0.0) as u64
}

fn told(ladders: &[Ladder], set: &[usize], bound: u64, looked_at: usize) -> Found {
    let offer = |(ladder, rung): (&Ladder, &usize)| ladder.rungs()[*rung].offer;
    Found {
        offers: ladders.iter().zip(set).map(offer).collect(),
        cost: cost(ladders, set),
        bound,
        looked_at,
    }
}

pub(super) fn cost(ladders: &[Ladder], set: &[usize]) -> u64 {
    let each = ladders.iter().zip(set);
    each.map(|(ladder, rung)| ladder.rungs()[*rung].cost).sum()
}

pub(super) fn ohms(ladders: &[Ladder], set: &[usize]) -> Vec<f64> {
    let each = ladders.iter().zip(set);
    each.map(|(ladder, rung)| ladder.rungs()[*rung].ohms)
        .collect()
}

/// The numbers of the same rungs on the whole ladders.
fn in_whole(ladders: &[Ladder], left: &[Ladder], set: &[usize]) -> Vec<usize> {
    let each = ladders.iter().zip(left).zip(set);
    each.map(|((whole, left), rung)| {
        let offer = left.rungs()[*rung].offer;
        let same = whole.rungs().iter().position(|rung| rung.offer == offer);
        same.unwrap_or(0)
    })
    .collect()
}

/// Makes one run after another thinner as long as every voltage is kept, what saves most first.
fn thinned(ladders: &[Ladder], circuit: &mut dyn Circuit, mut set: Vec<usize>) -> Vec<usize> {
    let mut open: Vec<usize> = (0..ladders.len()).collect();
    loop {
        let saves = |run: &usize| {
            let rungs = ladders[*run].rungs();
            let now = rungs[set[*run]].cost;
            rungs.get(set[*run] + 1).map(|next| now - next.cost)
        };
        open.retain(|run| saves(run).is_some());
        let Some(at) = (0..open.len()).max_by_key(|at| saves(&open[*at])) else {
            return set;
        };
        let run = open[at];
        set[run] += 1;
        if !circuit.keeps(&ohms(ladders, &set)) {
            set[run] -= 1;
            open.swap_remove(at);
        }
    }
}

/// What each run would take at the prices, made thicker where volts are short until every voltage is kept.
fn filled(
    ladders: &[Ladder],
    rows: &[Row],
    prices: &Bound,
    circuit: &mut dyn Circuit,
) -> Option<Vec<usize>> {
    let mut set: Vec<usize> = ladders
        .iter()
        .zip(&prices.ohm)
        .map(|(ladder, price)| at_price(ladder, *price))
        .collect();
    loop {
        let lost = |row: &Row| -> f64 {
            let of = |(run, amps): &(usize, f64)| amps * excess(ladders, *run, set[*run]);
            row.runs.iter().map(of).sum::<f64>() - row.in_hand
        };
        let worst = rows
            .iter()
            .max_by(|a, b| lost(a).total_cmp(&lost(b)))
            .filter(|row| lost(row) > 1e-12);
        let all: Vec<(usize, f64)> = (0..ladders.len()).map(|run| (run, 1.0)).collect();
        let among = match worst {
            Some(row) => &row.runs,
            None if circuit.keeps(&ohms(ladders, &set)) => return Some(set),
            None => &all,
        };
        let gain = |run: usize, amps: f64| {
            let rungs = ladders[run].rungs();
            let (now, next) = (rungs[set[run]], rungs[set[run] - 1]);
            amps * (now.ohms - next.ohms) / (whole(next.cost - now.cost) + 1e-9)
        };
        let (run, _) = among
            .iter()
            .filter(|(run, _)| set[*run] > 0)
            .max_by(|a, b| gain(a.0, a.1).total_cmp(&gain(b.0, b.1)))?;
        set[*run] -= 1;
    }
}

fn at_price(ladder: &Ladder, price: f64) -> usize {
    let total = |rung: &super::ladder::Rung| whole(rung.cost) + price * rung.ohms;
    (0..ladder.rungs().len())
        .min_by(|a, b| total(&ladder.rungs()[*a]).total_cmp(&total(&ladder.rungs()[*b])))
        .unwrap_or(0)
}

pub(super) fn excess(ladders: &[Ladder], run: usize, rung: usize) -> f64 {
    let rungs = ladders[run].rungs();
    rungs[rung].ohms - rungs[0].ohms
}

/// Leaves out each rung with which no set can cost so little.
fn leave_out(ladders: &mut [Ladder], prices: &Bound, most: f64) {
    for (ladder, price) in ladders.iter_mut().zip(&prices.ohm) {
        let (least, _) = cheapest(ladder, *price);
        let thickest = ladder.thickest().map_or(0.0, |rung| rung.ohms);
        ladder.keep(|rung| {
            let more = whole(rung.cost) + price * (rung.ohms - thickest) - least;
            prices.least + more <= most + 1e-6
        });
    }
}

#[cfg(test)]
#[path = "search_tests.rs"]
mod tests;
