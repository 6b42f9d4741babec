//! The voltages and currents of one case.

use super::{Branch, Grid, Node};
use quantity::{Current, Power, Quantity as _, Voltage};

/// Voltages and currents in one case.
#[derive(Debug, Clone)]
pub struct Solved<'g> {
    grid: &'g Grid,
    volts: Vec<f64>,
}

impl<'g> Solved<'g> {
    pub(super) fn new(grid: &'g Grid, volts: Vec<f64>) -> Self {
        Self { grid, volts }
    }

    /// Voltage between the poles at a place; zero where no source reaches.
    #[must_use]
    pub fn voltage(&self, node: Node) -> Voltage {
        Voltage::from_base(self.volts[node.0])
    }

    /// Current in a branch, from its first place to its second.
    #[must_use]
    pub fn current(&self, branch: Branch) -> Current {
        Current::from_base(self.amperes(branch.0))
    }

    fn amperes(&self, branch: usize) -> f64 {
        let joined = self.grid.branches[branch];
        (self.volts[joined.from] - self.volts[joined.to]) / joined.ohms
    }

    /// Current that a place sends into its branches, all together: what a source gives, less what draws right at it.
    #[must_use]
    pub fn given(&self, node: Node) -> Current {
        let mut amperes = 0.0;
        for (at, branch) in self.grid.branches.iter().enumerate() {
            if branch.from == node.0 {
                amperes += self.amperes(at);
            }
            if branch.to == node.0 {
                amperes -= self.amperes(at);
            }
        }
        Current::from_base(amperes)
    }

    /// Power that the conductors turn into heat.
    #[must_use]
    pub fn lost(&self) -> Power {
        let of = |at: usize| {
            let amperes = self.amperes(at);
            amperes * amperes * self.grid.branches[at].ohms
        };
        Power::from_base((0..self.grid.branches.len()).map(of).sum())
    }
}
