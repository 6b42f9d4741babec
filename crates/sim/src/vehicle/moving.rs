//! Up to which speed no drive is touched, however it stops, starts and backs.

use super::intervals::Intervals;
use super::outline::Facing;
use super::world::{SLACK, World};
use crate::walk::Direction;
use formula::OutOfReach;
use quantity::{Quantity as _, Velocity};

/// Faster than anyone drives through a gate, in meters a second.
const FAST: f64 = 40.0;

impl World {
    /// The greatest speed up to which no drive is touched, however it stops, starts and backs while the leaf closes; none
    /// where even a vehicle that creeps can be.
    ///
    /// A detector's output is surely on where its field sees the vehicle as far around as it can have come within the
    /// response. The leaf stands where outputs were surely on as long ago as it takes to stop, for as far around as the
    /// vehicle can have come since. Nothing is asked about how fast it gathers speed, so that this errs to the safe side.
    ///
    /// # Errors
    ///
    /// Where the world cannot be as given.
    pub fn fastest(&self) -> Result<Option<Velocity>, OutOfReach> {
        self.check()?;
        let ways = self.ways();
        let is_safe_at = |speed| ways.iter().all(|way| way.is_safe_at(speed));
        if !is_safe_at(0.0) {
            return Ok(None);
        }
        if is_safe_at(FAST) {
            return Ok(Some(Velocity::from_base(FAST)));
        }
        let (mut safe, mut open) = (0.0, FAST);
        while open - safe > 1e-3 {
            let half = f64::midpoint(safe, open);
            if is_safe_at(half) {
                safe = half;
            } else {
                open = half;
            }
        }
        Ok(Some(Velocity::from_base(safe)))
    }

    /// Every way of the leaf with the vehicle facing either way.
    fn ways(&self) -> Vec<Way> {
        let motions = self.leaf.motions();
        let facings = Facing::BOTH.into_iter();
        facings
            .flat_map(|facing| motions.iter().map(move |motion| self.way(facing, *motion)))
            .collect()
    }

    /// Places of the front at which no vehicle can be while the leaf begins to move: across the closed leaf.
    fn shut(&self, facing: Facing, motion: Direction) -> Intervals {
        match motion {
            Direction::Closing => Intervals::default(),
            Direction::Opening => {
                let (least, most) = self.leaf.beside_closed(&self.outline, facing);
                Intervals::of([(f64::NEG_INFINITY, least), (most, f64::INFINITY)])
            }
        }
    }

    fn way(&self, facing: Facing, motion: Direction) -> Way {
        let on = self
            .detectors
            .iter()
            .filter(|detector| detector.stops(motion));
        let shut = self.shut(facing, motion);
        let seen = on.map(|detector| {
            let seen = detector.sees(&self.outline, self.middles(), facing);
            let seen = Intervals::union([seen.eroded(SLACK), shut.clone()]);
            (seen, detector.response.base())
        });
        Way {
            seen: seen.collect(),
            warning: self.motion.warning(),
            met: self.in_the_way(self.middles(), facing, motion),
        }
    }
}

/// The leaf on its way in one direction, and a vehicle that faces one way, at any speed.
struct Way {
    /// Places of the front at which each detector surely sees the vehicle, and its response in seconds.
    seen: Vec<(Intervals, f64)>,
    /// How long before the leaf stands it must be told to stop, in seconds.
    warning: f64,
    /// Places of the front at which the leaf comes upon the vehicle.
    met: Intervals,
}

impl Way {
    /// There is no place at which the leaf may come upon the vehicle before it stands.
    fn is_safe_at(&self, speed: f64) -> bool {
        let seen: Vec<(&Intervals, f64)> = self
            .seen
            .iter()
            .map(|(seen, response)| (seen, speed * response))
            .collect();
        let alone = seen.iter().map(|(seen, within)| seen.eroded(*within));
        let together = seen.iter().map(|(_, within)| handed_over(&seen, *within));
        let warned = Intervals::union(alone.chain(together)).eroded(speed * self.warning);
        self.met.without(&warned).is_empty()
    }
}

/// Places at which one of several detectors is surely on, though the vehicle may come from one field into the next.
///
/// Within the response of the slowest of them it cannot go farther than a length: every stretch of that length around it
/// must lie wholly in one field. The beginnings of such stretches are joined, and the place is one around which all are.
fn handed_over(seen: &[(&Intervals, f64)], within: f64) -> Intervals {
    let fast = seen.iter().filter(|(_, other)| *other <= within);
    let begins = fast.flat_map(|(seen, _)| seen.iter().map(|(from, to)| (from, to - within)));
    Intervals::of(
        Intervals::of(begins)
            .iter()
            .map(|(from, to)| (from + within, to)),
    )
}
