//! The steady load that heats a motor as much as a load that changes.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Quantity, Ratio, Time};

/// A load that changes over a cycle: three parts of moving, and rest.
pub(super) struct Cycle<Q> {
    pub(super) parts: [Part<Q>; 3],
    pub(super) rest_time: Time,
    pub(super) rest_cooling: Ratio,
}

/// One part of a cycle, its values with the names of their inputs.
pub(super) struct Part<Q> {
    pub(super) load: (&'static str, Q),
    pub(super) time: (&'static str, Time),
}

/// Root of the mean of the squares, with rest counted by how well it cools.
pub(super) fn rms<Q: Quantity>(cycle: &Cycle<Q>) -> Result<Q, OutOfReach> {
    not_negative("rest_time", cycle.rest_time, "30 s")?;
    if !(0.0..=1.0).contains(&cycle.rest_cooling.base()) {
        return Err(OutOfReach::new(
            "rest_cooling",
            "give 1 for a motor that cools as well standing as running, 1/3 for one that its own fan cools",
        ));
    }
    let mut squares = 0.0;
    let mut cooling = cycle.rest_time.base() * cycle.rest_cooling.base();
    for part in &cycle.parts {
        let ((name, load), (time_name, time)) = (part.load, part.time);
        not_negative(name, load, "20")?;
        not_negative(time_name, time, "2 s")?;
        squares += load.base().powi(2) * time.base();
        cooling += time.base();
    }
    if cooling <= 0.0 {
        return Err(OutOfReach::new(
            "run_time",
            "the cycle takes no time; give the time of at least one part",
        ));
    }
    Ok(Q::from_base((squares / cooling).sqrt()))
}
