//! Newton's method from the voltages without load downward.
//!
//! Loads of constant power make the balance of currents a convex function of the voltages, and its slope a matrix whose
//! inverse has no negative entry wherever the voltages are at or above the solution. Newton's steps from the voltages
//! without load then fall without ever passing the highest solution (the monotone Newton theorem; Ortega and Rheinboldt,
//! Iterative Solution of Nonlinear Equations in Several Variables, 13.3). So where a pivot is not positive, there is no
//! solution at all: the loads ask for more than the conductors can bring at any voltage.

use super::{Case, Grid, Node, Solved};
use quantity::{Quantity as _, Ratio};
use thiserror::Error;

/// Why a network has no voltages.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Unsolved {
    /// Loads at places that no source reaches.
    #[error("{} loads have no way to any source", at.len())]
    Unfed {
        /// Those places.
        at: Vec<Node>,
    },
    /// A place that should be held has no voltage in this case.
    #[error("a source has no voltage in this case")]
    NoVoltage {
        /// That place.
        at: Node,
    },
    /// The loads ask for more than the conductors can bring at any voltage.
    #[error("the voltage collapses: at most {:.0} % of the loads can be carried", carried.base() * 100.0)]
    Collapse {
        /// Where the voltage has fallen furthest, of the places that draw.
        at: Node,
        /// Share of all loads of constant power or current that could be carried.
        carried: Ratio,
    },
}

/// Steps, at most. They double their digits each time, but at the very limit of what can be carried they only halve the error.
const STEPS: usize = 60;
/// A step shorter than this share of the greatest voltage is the last.
const STILL: f64 = 1e-13;
/// Near the limit of what can be carried rounding may keep steps longer than that: a step shorter than this share that is no
/// shorter than the one before is the last too.
const ROUNDING: f64 = 1e-9;
/// Halvings in the search for what can be carried.
const HALVINGS: usize = 30;

pub(super) fn solve<'g>(grid: &'g Grid, case: &Case) -> Result<Solved<'g>, Unsolved> {
    let at: Vec<Node> = case
        .drawing()
        .map(Node)
        .filter(|node| !grid.is_fed(*node))
        .collect();
    if !at.is_empty() {
        return Err(Unsolved::Unfed { at });
    }
    let held = grid.held_volts(case)?;
    match iterated(grid, case, &held) {
        Ok(volts) => Ok(Solved::new(grid, volts)),
        Err(at) => Err(Unsolved::Collapse {
            at,
            carried: carried(grid, case, &held),
        }),
    }
}

/// The voltage of every node, or the place that fell furthest.
fn iterated(grid: &Grid, case: &Case, held: &[f64]) -> Result<Vec<f64>, Node> {
    let (mut linear, mut side) = grid.linear(held);
    for (node, siemens) in &case.conductances {
        if let Some(row) = grid.row(*node) {
            linear.diagonal[row] += siemens;
        }
    }
    let mut factors = linear.clone();
    let mut volts = side.clone();
    let sound = grid.pattern.eliminate(&mut factors).is_ok();
    grid.pattern.solve(&factors, &mut volts);
    let unloaded = volts.clone();
    let fallen = |volts: &[f64]| fallen(grid, case, volts, &unloaded);
    if !sound {
        return Err(fallen(&volts));
    }
    for (node, amperes) in &case.currents {
        if let Some(row) = grid.row(*node) {
            side[row] -= amperes;
        }
    }
    let powers: Vec<(usize, f64)> = case
        .powers
        .iter()
        .filter_map(|(node, watts)| Some((grid.row(*node)?, *watts)))
        .collect();
    let greatest = Grid::greatest(held).base();
    let mut before = f64::INFINITY;
    for _ in 0..STEPS {
        factors.diagonal.copy_from_slice(&linear.diagonal);
        factors.below.copy_from_slice(&linear.below);
        // J·V′ = J·V − F, where F = G·V − b + P/V and J = G − P/V²: the new voltages at once.
        let mut next = side.clone();
        for (row, watts) in &powers {
            let amperes = watts / volts[*row];
            factors.diagonal[*row] -= amperes / volts[*row];
            next[*row] -= 2.0 * amperes;
        }
        if grid.pattern.eliminate(&mut factors).is_err() {
            return Err(fallen(&volts));
        }
        grid.pattern.solve(&factors, &mut next);
        if next.iter().any(|volts| volts.is_nan() || *volts <= 0.0) {
            return Err(fallen(&next));
        }
        let step = next.iter().zip(&volts).map(|(new, old)| (new - old).abs());
        let longest = step.fold(0.0, f64::max);
        volts = next;
        if longest <= STILL * greatest || (longest <= ROUNDING * greatest && longest >= before) {
            return Ok(spread(grid, held, &volts));
        }
        before = longest;
    }
    Err(fallen(&volts))
}

/// The voltages of all nodes, from those of the rows.
fn spread(grid: &Grid, held: &[f64], rows: &[f64]) -> Vec<f64> {
    (0..held.len())
        .map(|node| grid.row(node).map_or(held[node], |row| rows[row]))
        .collect()
}

/// The place that draws and has lost the largest share of its voltage.
fn fallen(grid: &Grid, case: &Case, volts: &[f64], unloaded: &[f64]) -> Node {
    let left = |row: usize| {
        let share = volts[row] / unloaded[row];
        if share.is_nan() { f64::MAX } else { share }
    };
    let worst = case
        .drawing()
        .filter_map(|node| Some((node, grid.row(node)?)))
        .min_by(|(_, a), (_, b)| left(*a).total_cmp(&left(*b)));
    Node(worst.map_or(0, |(node, _)| node))
}

/// The greatest share of the loads that has a solution, from below.
fn carried(grid: &Grid, case: &Case, held: &[f64]) -> Ratio {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        match iterated(grid, &case.at(middle), held) {
            Ok(_) => low = middle,
            Err(_) => high = middle,
        }
    }
    Ratio::from_base(low)
}
