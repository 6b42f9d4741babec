//! Voltages and currents in a network of two-wire circuits: supplies, fuses, cables, splices and loads, as trees or rings.
//!
//! A node stands for both poles at one place, a branch for both conductors between two places. That holds wherever the
//! two conductors of a circuit run together; a return that goes another way is another network.
//!
//! ```
//! use quantity::{Quantity as _, Resistance, Voltage, Current};
//! use sim::network::{Case, Draw, Network};
//! let mut network = Network::new();
//! let supply = network.held();
//! let reader = network.node();
//! network.join(supply, reader, Resistance::from_base(2.0))?;
//! let mut case = Case::new();
//! case.hold(supply, Voltage::from_base(12.0))?;
//! case.draw(reader, Draw::Current(Current::from_base(0.5)))?;
//! let grid = network.prepared();
//! let solved = grid.solve(&case)?;
//! assert!((solved.voltage(reader).base() - 11.0).abs() < 1e-12);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod case;
mod factor;
mod fault;
mod grid;
mod newton;
mod solved;

pub use case::{Case, Draw};
pub use fault::Fault;
pub use grid::Grid;
pub use newton::Unsolved;
pub use solved::Solved;

use formula::OutOfReach;
use quantity::{Quantity as _, Resistance};

/// A place in a network.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Node(usize);

impl Node {
    /// Its number, counted from zero in the order of making.
    #[must_use]
    pub fn index(self) -> usize {
        self.0
    }
}

/// Both conductors between two places.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Branch(usize);

/// The two ends of a branch and what it resists, in ohms.
#[derive(Debug, Clone, Copy)]
struct Joined {
    from: usize,
    to: usize,
    ohms: f64,
}

/// Places, and what joins them.
#[derive(Debug, Clone, Default)]
pub struct Network {
    /// For each node, whether something holds its voltage.
    held: Vec<bool>,
    branches: Vec<Joined>,
}

impl Network {
    /// A network with nothing in it.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// A place whose voltage follows from what flows.
    pub fn node(&mut self) -> Node {
        self.held.push(false);
        Node(self.held.len() - 1)
    }

    /// A place that a source holds at a voltage. A source that gives way has its resistance in a branch behind such a place.
    pub fn held(&mut self) -> Node {
        self.held.push(true);
        Node(self.held.len() - 1)
    }

    /// Joins two places by the resistance of both conductors together.
    ///
    /// # Errors
    /// The resistance is not above zero, or the two are one place.
    pub fn join(
        &mut self,
        from: Node,
        to: Node,
        loop_resistance: Resistance,
    ) -> Result<Branch, OutOfReach> {
        let ohms = checked(loop_resistance)?;
        if from == to {
            return Err(OutOfReach::new(
                "to",
                "a conductor joins two different places",
            ));
        }
        self.branches.push(Joined {
            from: from.0,
            to: to.0,
            ohms,
        });
        Ok(Branch(self.branches.len() - 1))
    }

    /// The network made ready to be solved, as often as wanted.
    #[must_use]
    pub fn prepared(self) -> Grid {
        Grid::new(self.held, self.branches)
    }
}

/// A resistance in ohms that a branch may have.
fn checked(resistance: Resistance) -> Result<f64, OutOfReach> {
    let ohms = resistance.base();
    if ohms > 0.0 && ohms.is_finite() {
        Ok(ohms)
    } else {
        Err(OutOfReach::new(
            "resistance",
            "a conductor has a resistance above zero",
        ))
    }
}
