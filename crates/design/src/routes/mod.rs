//! The ways of a site: what each costs, which ground bars it, and the cheapest set that reaches everything, with its proof.

mod ascent;
mod ground;
mod steiner;
mod tree;

pub(crate) use ground::{Ground, course, outline, pieces};
pub(crate) use steiner::{Cheapest, cheapest, joined};

/// A way between two points.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Edge {
    /// The points at its ends.
    pub(crate) ends: [usize; 2],
    /// What it costs, in hundredths.
    pub(crate) cost: u64,
}

impl Edge {
    /// The other end.
    fn across(&self, from: usize) -> usize {
        if self.ends[0] == from {
            self.ends[1]
        } else {
            self.ends[0]
        }
    }
}

/// Points and the ways between them.
#[derive(Debug, Clone)]
pub(crate) struct Net {
    /// The ways.
    pub(crate) edges: Vec<Edge>,
    /// For each point, whether it must be reached.
    pub(crate) wanted: Vec<bool>,
    /// The ways at each point.
    at: Vec<Vec<usize>>,
}

impl Net {
    /// A net of points and ways.
    pub(crate) fn new(edges: Vec<Edge>, wanted: Vec<bool>) -> Self {
        let mut at = vec![Vec::new(); wanted.len()];
        for (index, edge) in edges.iter().enumerate() {
            for end in edge.ends {
                at[end].push(index);
            }
        }
        Self { edges, wanted, at }
    }

    /// The points that must be reached.
    fn goals(&self) -> impl Iterator<Item = usize> {
        (0..self.wanted.len()).filter(|point| self.wanted[*point])
    }
}

/// More than any sum of costs.
const ENDLESS: u64 = u64::MAX;
