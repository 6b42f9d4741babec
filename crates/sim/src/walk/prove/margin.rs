//! How far a value may go before a proof fails, by halving.

use super::Verdict;
use crate::walk::world::World;
use formula::OutOfReach;
use quantity::Quantity;
use std::num::NonZeroUsize;

/// How far a value may go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Margin<Q> {
    /// The farthest value at which everything is proved; none where even the first is not.
    pub holds: Option<Q>,
    /// The nearest value at which something is not proved; none where even the last is.
    pub fails: Option<Q>,
}

impl World {
    /// Whether every family is proved, looking at so many boxes at most in each part.
    pub fn is_proved(&self, most: u64, threads: NonZeroUsize) -> Result<bool, OutOfReach> {
        let walk = self.lower()?;
        Ok(walk
            .prove_all(most, threads)
            .iter()
            .all(|proof| proof.verdict == Verdict::Proved))
    }

    /// Halves the way between two values so often and says up to where everything is proved. The value has to make things
    /// worse from the first to the last.
    pub fn margin<Q: Quantity>(
        &self,
        between: (Q, Q),
        halvings: u32,
        set: &dyn Fn(&mut Self, Q),
        effort: (u64, NonZeroUsize),
    ) -> Result<Margin<Q>, OutOfReach> {
        halved(between, halvings, &|value| {
            let mut world = self.clone();
            set(&mut world, value);
            world.is_proved(effort.0, effort.1)
        })
    }
}

/// Halves the way between two values so often and says up to where something holds.
pub(in super::super) fn halved<Q: Quantity>(
    between: (Q, Q),
    halvings: u32,
    holds: &dyn Fn(Q) -> Result<bool, OutOfReach>,
) -> Result<Margin<Q>, OutOfReach> {
    let holds = |value: f64| holds(Q::from_base(value));
    let (mut good, mut bad) = (between.0.base(), between.1.base());
    if !holds(good)? {
        return Ok(Margin {
            holds: None,
            fails: Some(Q::from_base(good)),
        });
    }
    if holds(bad)? {
        return Ok(Margin {
            holds: Some(Q::from_base(bad)),
            fails: None,
        });
    }
    for _ in 0..halvings {
        let middle = 0.5 * (good + bad);
        if holds(middle)? {
            good = middle;
        } else {
            bad = middle;
        }
    }
    Ok(Margin {
        holds: Some(Q::from_base(good)),
        fails: Some(Q::from_base(bad)),
    })
}
