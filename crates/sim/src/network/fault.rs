//! What a dead short would draw: the network as it is seen from one place, by the theorem of Thévenin.

use super::{Case, Grid, Node, Unsolved};
use quantity::{Current, Quantity as _, Resistance, Voltage};

/// A place seen from its own terminals: a voltage behind a resistance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fault {
    /// Voltage with nothing connected.
    pub open: Voltage,
    /// Resistance of everything between the sources and this place, both conductors.
    pub resistance: Resistance,
}

impl Fault {
    /// Current into a dead short; without end where a source without resistance stands at the place itself.
    #[must_use]
    pub fn current(&self) -> Current {
        self.open / self.resistance
    }
}

pub(super) fn at(grid: &Grid, node: Node, sources: &Case) -> Result<Fault, Unsolved> {
    let held = grid.held_volts(sources)?;
    let Some(row) = grid.row(node.0) else {
        if grid.is_fed(node) {
            let open = Voltage::from_base(held[node.0]);
            return Ok(Fault {
                open,
                resistance: Resistance::from_base(0.0),
            });
        }
        return Err(Unsolved::Unfed { at: vec![node] });
    };
    let (mut factors, mut open) = grid.linear(&held);
    let mut one = vec![0.0; open.len()];
    one[row] = 1.0;
    if grid.pattern.eliminate(&mut factors).is_err() {
        return Err(Unsolved::Unfed { at: vec![node] });
    }
    grid.pattern.solve(&factors, &mut open);
    grid.pattern.solve(&factors, &mut one);
    Ok(Fault {
        open: Voltage::from_base(open[row]),
        resistance: Resistance::from_base(one[row]),
    })
}
