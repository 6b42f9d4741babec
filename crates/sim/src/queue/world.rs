//! What comes to a gate, where it stands, and how the leaf moves.

use super::arrivals::Hours;
use super::pass::Passing;
use formula::OutOfReach;
use quantity::{Length, Quantity, Ratio, Time, Velocity};

/// The most kinds of drivers.
pub(super) const MOST_DRIVERS: usize = 16;
/// The most hours of a day.
const MOST_HOURS: usize = 24;
/// The most vehicles of an hour, far beyond what a lane carries.
const MOST_ARRIVALS: u32 = 10_000;

/// Drivers of one kind: what they hold, and what they drive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Driver {
    /// Their share of all.
    pub share: Ratio,
    /// Mean time from the stop at the reader to the command to open: card, code, or a visitor who waits for an answer.
    pub service: Time,
    /// Standard deviation of that time, at most the mean: none is a steady time, the mean itself a time without memory; in
    /// between a least time and an exponential rest.
    pub spread: Time,
    /// Length of the vehicle.
    pub length: Length,
    /// Its speed from the reader through the gate.
    pub speed: Velocity,
}

/// The lane before the gate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lane {
    /// From the reader to the gate line.
    pub reader: Length,
    /// From the reader back to the edge of the road.
    pub stacking: Length,
    /// Gap between waiting vehicles.
    pub gap: Length,
    /// Time that a driver who stands takes to set off.
    pub set_off: Time,
    /// Least time between the tail of one and the front of the next at the gate line.
    pub headway: Time,
    /// From the outer edge of the outermost detector that reopens to the gate line.
    pub seen_before: Length,
    /// From the gate line to the inner edge of the innermost detector that holds the leaf.
    pub clear_after: Length,
}

/// How many vehicles an opening is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// The leaf stays open while vehicles come that are let in.
    StaysOpen,
    /// One vehicle each opening: the reader answers only once the leaf is shut again.
    OneEach,
}

/// How the leaf moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leaf {
    /// From the command to fully open.
    pub opening: Time,
    /// From the start of closing to shut.
    pub closing: Time,
    /// What a reversal takes beside the way back.
    pub reversal: Time,
    /// From the last detector's being free to the report of it.
    pub drop_out: Time,
    /// From that report to the start of closing.
    pub hold: Time,
    /// How many vehicles an opening is for.
    pub turn: Turn,
}

/// Everything that a day is made from.
#[derive(Debug, Clone, PartialEq)]
pub struct World {
    /// Vehicles in each hour of the time that is looked at.
    pub arrivals: Vec<u32>,
    /// Mean number of vehicles that come in one group, one behind the other; one where they come alone.
    pub group: Ratio,
    /// Kinds of drivers; their shares make up the whole.
    pub drivers: Vec<Driver>,
    /// Share of drivers who drive on behind another without reading while the leaf stands open.
    pub followers: Ratio,
    /// The lane.
    pub lane: Lane,
    /// The leaf.
    pub leaf: Leaf,
}

/// A world that is ready to be run.
#[derive(Debug, Clone)]
pub struct Queue {
    pub(super) hours: Hours,
    pub(super) passing: Passing,
    /// Reader to road edge, in meters.
    pub(super) stacking: f64,
    pub(super) gap: f64,
}

impl World {
    /// Checks the world and makes it ready; refuses what makes no sense with the name of the input.
    pub fn lower(&self) -> Result<Queue, OutOfReach> {
        self.check_arrivals()?;
        self.check_drivers()?;
        self.check_places()?;
        Ok(Queue {
            hours: Hours::new(self),
            passing: Passing::new(self),
            stacking: self.lane.stacking.base(),
            gap: self.lane.gap.base(),
        })
    }

    fn check_arrivals(&self) -> Result<(), OutOfReach> {
        let some = self.arrivals.iter().any(|&count| count > 0);
        if !some || self.arrivals.len() > MOST_HOURS {
            return Err(OutOfReach::new(
                "arrivals",
                "give the vehicles of 1 to 24 hours in a row, at least one of them above zero",
            ));
        }
        if self.arrivals.iter().any(|&count| count > MOST_ARRIVALS) {
            return Err(OutOfReach::new(
                "arrivals",
                "no lane takes more than 10,000 vehicles in an hour",
            ));
        }
        if !(1.0..=50.0).contains(&self.group.base()) {
            return Err(OutOfReach::new(
                "group",
                "a group has 1 vehicle or more, and at most 50",
            ));
        }
        share("followers", self.followers)
    }

    fn check_drivers(&self) -> Result<(), OutOfReach> {
        if self.drivers.is_empty() || self.drivers.len() > MOST_DRIVERS {
            return Err(OutOfReach::new(
                "drivers",
                "there are 1 to 16 kinds of drivers",
            ));
        }
        for driver in &self.drivers {
            share("share", driver.share)?;
            not_negative("service", driver.service)?;
            not_negative("length", driver.length)?;
            if !(driver.spread.base() >= 0.0 && driver.spread <= driver.service) {
                return Err(OutOfReach::new(
                    "spread",
                    "the spread of a time at the reader is at most the time itself",
                ));
            }
            let speed = driver.speed.base();
            if !(speed > 0.0 && speed.is_finite()) {
                return Err(OutOfReach::new("speed", "a vehicle that passes moves"));
            }
        }
        let sum: f64 = self.drivers.iter().map(|driver| driver.share.base()).sum();
        if (sum - 1.0).abs() > 1e-6 {
            return Err(OutOfReach::new(
                "share",
                format!(
                    "the shares of the drivers make {:.1} % together, not 100 %",
                    sum * 100.0
                ),
            ));
        }
        Ok(())
    }

    fn check_places(&self) -> Result<(), OutOfReach> {
        let lane = &self.lane;
        for (name, length) in [
            ("reader", lane.reader),
            ("gap", lane.gap),
            ("seen_before", lane.seen_before),
            ("clear_after", lane.clear_after),
        ] {
            not_negative(name, length)?;
        }
        if !(lane.stacking.base() > 0.0 && lane.stacking.base().is_finite()) {
            return Err(OutOfReach::new(
                "stacking",
                "the reader stands at the road's edge or beyond it: nobody can wait there",
            ));
        }
        let leaf = &self.leaf;
        for (name, time) in [
            ("set_off", lane.set_off),
            ("headway", lane.headway),
            ("opening", leaf.opening),
            ("closing", leaf.closing),
            ("reversal", leaf.reversal),
            ("drop_out", leaf.drop_out),
            ("hold", leaf.hold),
        ] {
            not_negative(name, time)?;
        }
        Ok(())
    }
}

fn share(name: &'static str, value: Ratio) -> Result<(), OutOfReach> {
    if (0.0..=1.0).contains(&value.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(name, "a share lies between 0 and 100 %"))
}

fn not_negative<Q: Quantity>(name: &'static str, value: Q) -> Result<(), OutOfReach> {
    if value.base() >= 0.0 && value.base().is_finite() {
        return Ok(());
    }
    Err(OutOfReach::new(name, "this is not below zero"))
}
