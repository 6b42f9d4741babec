//! How little any set can cost: a price on every volt that is lost, raised where volts are short.
//!
//! With a price on what each run loses, every run takes its own cheapest conductor, cost and losses together, and the
//! sum, less what the volts in hand are worth, is at most the cost of any set that keeps every voltage (Lagrangian
//! relaxation; Geoffrion 1974). The prices are raised and lowered step by step towards the highest such sum.

use super::ladder::Ladder;

/// One voltage that must be kept: the ohms of each run beyond its thickest, by these amperes, lose at most the volts in hand.
#[derive(Debug, Clone)]
pub(crate) struct Row {
    /// Run, amperes.
    pub(crate) runs: Vec<(usize, f64)>,
    /// Volts in hand with the thickest conductor everywhere.
    pub(crate) in_hand: f64,
}

/// The prices found.
#[derive(Debug, Clone)]
pub(super) struct Bound {
    /// What no set can cost less than.
    pub(super) least: f64,
    /// For each run, cost of an ohm beyond its thickest.
    pub(super) ohm: Vec<f64>,
    /// What the volts in hand are worth, all rows together.
    pub(super) worth: f64,
}

/// Steps of the search for prices.
const STEPS: usize = 400;
/// Steps without a better bound after which they are halved.
const PATIENCE: usize = 12;

/// The best prices, with what some set costs that keeps every voltage.
pub(super) fn bound(ladders: &[Ladder], rows: &[Row], known: f64) -> Bound {
    let mut prices = vec![0.0; rows.len()];
    let mut best = at(ladders, rows, &prices).0;
    let (mut stride, mut waited) = (1.0, 0);
    for _ in 0..STEPS {
        let (found, over) = at(ladders, rows, &prices);
        if found.least > best.least {
            best = found.clone();
            waited = 0;
        } else {
            waited += 1;
            if waited == PATIENCE {
                (stride, waited) = (stride * 0.6, 0);
            }
        }
        // A row that is kept at no price does not move.
        let moves = |price: f64, over: f64| price > 0.0 || over > 0.0;
        let squares: f64 = prices
            .iter()
            .zip(&over)
            .filter(|(price, over)| moves(**price, **over))
            .map(|(_, over)| over * over)
            .sum();
        let short = known - found.least;
        if squares <= 1e-18 || short <= 1e-6 || stride < 1e-5 {
            break;
        }
        for (price, over) in prices.iter_mut().zip(&over) {
            *price = (*price + stride * short * over / squares).max(0.0);
        }
    }
    best
}

/// The sum at some prices, and by how much each row is then overdrawn.
fn at(ladders: &[Ladder], rows: &[Row], prices: &[f64]) -> (Bound, Vec<f64>) {
    let mut ohm = vec![0.0; ladders.len()];
    for (row, price) in rows.iter().zip(prices) {
        for (run, amperes) in &row.runs {
            ohm[*run] += price * amperes;
        }
    }
    let mut sum = 0.0;
    let excess: Vec<f64> = ladders
        .iter()
        .zip(&ohm)
        .map(|(ladder, price)| {
            let (cost, excess) = cheapest(ladder, *price);
            sum += cost;
            excess
        })
        .collect();
    let over = rows
        .iter()
        .map(|row| {
            let lost: f64 = row.runs.iter().map(|(run, amps)| amps * excess[*run]).sum();
            lost - row.in_hand
        })
        .collect();
    let worth: f64 = rows
        .iter()
        .zip(prices)
        .map(|(row, p)| row.in_hand * p)
        .sum();
    let bound = Bound {
        least: sum - worth,
        ohm,
        worth,
    };
    (bound, over)
}

/// The least cost with its losses, and the ohms beyond the thickest that go with it.
pub(super) fn cheapest(ladder: &Ladder, price: f64) -> (f64, f64) {
    let thickest = ladder.thickest().map_or(0.0, |rung| rung.ohms);
    let mut least = (f64::INFINITY, 0.0);
    for rung in ladder.rungs() {
        let excess = rung.ohms - thickest;
        let cost = whole(rung.cost) + price * excess;
        if cost < least.0 {
            least = (cost, excess);
        }
    }
    least
}

/// A cost as a number to reckon with; costs are far below what a double holds exactly.
#[allow(clippy::cast_precision_loss, reason = "costs stay far below 2^53")]
pub(super) fn whole(cost: u64) -> f64 {
    cost as f64
}
