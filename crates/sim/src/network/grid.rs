//! A network made ready: who is fed, the order of elimination, and the conductance of each branch.

use super::factor::{Numbers, Pattern};
use super::{Branch, Case, Fault, Joined, Node, Solved, Unsolved};
use formula::OutOfReach;
use quantity::{Resistance, Voltage};

/// A network made ready to be solved.
#[derive(Debug, Clone)]
pub struct Grid {
    pub(super) held: Vec<bool>,
    pub(super) branches: Vec<Joined>,
    /// For each node, its unknown; nothing for one that is held or that no held node reaches.
    pub(super) unknown: Vec<Option<usize>>,
    pub(super) pattern: Pattern,
    /// For each branch between two unknowns, where its entry stands.
    entries: Vec<Option<usize>>,
}

impl Grid {
    pub(super) fn new(held: Vec<bool>, branches: Vec<Joined>) -> Self {
        let fed = fed(&held, &branches);
        let mut count = 0;
        let unknown: Vec<Option<usize>> = held
            .iter()
            .zip(&fed)
            .map(|(held, fed)| {
                let number = (!held && *fed).then_some(count)?;
                count += 1;
                Some(number)
            })
            .collect();
        let between = |branch: &Joined| Some((unknown[branch.from]?, unknown[branch.to]?));
        let pairs: Vec<(usize, usize)> = branches.iter().filter_map(between).collect();
        let pattern = Pattern::new(count, &pairs);
        let entries = branches
            .iter()
            .map(|branch| between(branch).and_then(|(from, to)| pattern.between(from, to)))
            .collect();
        Self {
            held,
            branches,
            unknown,
            pattern,
            entries,
        }
    }

    /// Gives a branch another resistance.
    ///
    /// # Errors
    /// The resistance is not above zero.
    pub fn set(&mut self, branch: Branch, loop_resistance: Resistance) -> Result<(), OutOfReach> {
        self.branches[branch.0].ohms = super::checked(loop_resistance)?;
        Ok(())
    }

    /// A source reaches this place.
    #[must_use]
    pub fn is_fed(&self, node: Node) -> bool {
        self.held[node.0] || self.unknown[node.0].is_some()
    }

    /// Voltages and currents in a case.
    ///
    /// # Errors
    /// A load that no source reaches, a held place without a voltage, or loads that ask for more than the conductors can
    /// bring at any voltage.
    pub fn solve(&self, case: &Case) -> Result<Solved<'_>, Unsolved> {
        super::newton::solve(self, case)
    }

    /// What a dead short at a place would draw, with these sources and no other load.
    ///
    /// # Errors
    /// No source reaches the place, or a held place has no voltage.
    pub fn fault(&self, node: Node, sources: &Case) -> Result<Fault, Unsolved> {
        super::fault::at(self, node, sources)
    }

    /// The conductances between unknowns, and into each from held places times their voltage.
    pub(super) fn linear(&self, volts: &[f64]) -> (Numbers, Vec<f64>) {
        let mut numbers = self.pattern.zeros();
        let mut side = vec![0.0; self.pattern.place.len()];
        for (branch, entry) in self.branches.iter().zip(&self.entries) {
            let siemens = 1.0 / branch.ohms;
            for (one, other) in [(branch.from, branch.to), (branch.to, branch.from)] {
                let Some(row) = self.row(one) else { continue };
                numbers.diagonal[row] += siemens;
                if self.held[other] {
                    side[row] += siemens * volts[other];
                }
            }
            if let Some(entry) = entry {
                numbers.below[*entry] -= siemens;
            }
        }
        (numbers, side)
    }

    /// The row of a node in the order of elimination.
    pub(super) fn row(&self, node: usize) -> Option<usize> {
        self.unknown[node].map(|unknown| self.pattern.place[unknown])
    }

    /// The voltage of each held node in a case, zero elsewhere.
    pub(super) fn held_volts(&self, case: &Case) -> Result<Vec<f64>, Unsolved> {
        let mut volts = vec![0.0; self.held.len()];
        for (node, value) in &case.held {
            volts[*node] = *value;
        }
        let silent = |node: &usize| self.held[*node] && volts[*node] <= 0.0;
        match (0..volts.len()).find(silent) {
            Some(node) => Err(Unsolved::NoVoltage { at: Node(node) }),
            None => Ok(volts),
        }
    }

    /// The greatest voltage that anything holds.
    pub(super) fn greatest(volts: &[f64]) -> Voltage {
        use quantity::Quantity as _;
        Voltage::from_base(volts.iter().copied().fold(0.0, f64::max))
    }
}

/// For each node, whether a held node reaches it.
fn fed(held: &[bool], branches: &[Joined]) -> Vec<bool> {
    let mut near = vec![Vec::new(); held.len()];
    for branch in branches {
        near[branch.from].push(branch.to);
        near[branch.to].push(branch.from);
    }
    let mut fed = held.to_vec();
    let mut next: Vec<usize> = (0..held.len()).filter(|node| held[*node]).collect();
    while let Some(node) = next.pop() {
        for &other in &near[node] {
            if !fed[other] {
                fed[other] = true;
                next.push(other);
            }
        }
    }
    fed
}
