//! One vehicle that finds lane and gate free: what happens when.

use super::world::{Driver, World};
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Time};

/// When each thing happens, from the stop at the reader on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timeline {
    /// The driver is let in and the leaf begins to open.
    pub commanded: Time,
    /// The driver is at the gate line, were it open.
    pub at_line: Time,
    /// The leaf is fully open.
    pub open: Time,
    /// The front passes the gate line.
    pub passes: Time,
    /// The tail is over the gate line.
    pub tail_over: Time,
    /// The tail has left the innermost detector.
    pub clear: Time,
    /// The detector says so.
    pub reported: Time,
    /// The leaf begins to close.
    pub closes: Time,
    /// The leaf is shut.
    pub shut: Time,
}

impl World {
    /// The time line of a driver of one kind, at the mean time at the reader.
    pub fn timeline(&self, driver: usize) -> Result<Timeline, OutOfReach> {
        self.lower()?;
        let Some(driver) = self.drivers.get(driver) else {
            return Err(OutOfReach::new(
                "driver",
                "there is no such kind of drivers",
            ));
        };
        Ok(self.followed(driver))
    }

    fn followed(&self, driver: &Driver) -> Timeline {
        let (lane, leaf) = (&self.lane, &self.leaf);
        let takes = |way: Length| Time::from_base(way.base() / driver.speed.base());
        let commanded = driver.service;
        let open = commanded + leaf.opening;
        let waits = self.room() == 0;
        let sets_off = if waits { open } else { commanded };
        let at_line = sets_off + lane.set_off + takes(lane.reader);
        let passes = later(at_line, open + lane.set_off);
        let clear = passes + takes(lane.clear_after + driver.length);
        let reported = clear + leaf.drop_out;
        let closes = reported + leaf.hold;
        Timeline {
            commanded,
            at_line,
            open,
            passes,
            tail_over: passes + takes(driver.length),
            clear,
            reported,
            closes,
            shut: closes + leaf.closing,
        }
    }
}

fn later(one: Time, other: Time) -> Time {
    if one > other { one } else { other }
}
