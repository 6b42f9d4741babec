//! How busy so many readers are, and the Erlang formulas that follow from it.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Frequency, Quantity as _, Time};

/// The most servers that a formula takes.
const MOST: u32 = 1000;

/// Share of the time that each server is busy, below one.
pub(super) fn busy(arrivals: Frequency, service: Time, servers: u32) -> Result<f64, OutOfReach> {
    positive("arrivals", arrivals, "40 per hour")?;
    some(servers)?;
    let busy = arrivals.base() * service.base() / f64::from(servers);
    if busy < 1.0 {
        return Ok(busy);
    }
    Err(OutOfReach::new(
        "arrivals",
        format!(
            "{:.0} in an hour are more than are served, {:.0}: the queue grows without end; shorten the service or add a lane",
            arrivals.base() * 3600.0,
            f64::from(servers) * 3600.0 / service.base()
        ),
    ))
}

/// One server or more, and not without end.
pub(super) fn some(servers: u32) -> Result<(), OutOfReach> {
    if (1..=MOST).contains(&servers) {
        return Ok(());
    }
    Err(OutOfReach::new("servers", "give 1 to 1000"))
}

/// Share that finds all of so many servers busy and goes away, by the recursion that needs no large numbers.
pub(super) fn turned_away(load: f64, servers: u32) -> f64 {
    (1..=servers).fold(1.0, |share, server| {
        load * share / (f64::from(server) + load * share)
    })
}

/// Share that finds all of so many servers busy and waits, at a load below their number.
pub(super) fn made_to_wait(load: f64, servers: u32) -> f64 {
    let blocked = turned_away(load, servers);
    blocked / (1.0 - load / f64::from(servers) * (1.0 - blocked))
}
