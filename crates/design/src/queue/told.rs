//! What the days say, in words and in plain values.

use super::LaneQueue;
use crate::figure::Print;
use quantity::{Quantity, Ratio};
use serde::Serialize;
use sim::queue::{Estimate, HourReport, Report};

/// A figure with its error at 95 %, in SI units.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct EstimateTold {
    /// The figure.
    pub value: f64,
    /// How far the true one may be off.
    pub error: f64,
}

/// What came of one hour, or of all, in SI units; counts are for one hour.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HourTold {
    /// The hour: `7 to 8 h`, or `all hours`.
    pub hour: String,
    /// Vehicles that came.
    pub arrivals: EstimateTold,
    /// Vehicles at the reader and behind it, on the mean over the time.
    pub standing: EstimateTold,
    /// From the reader back to the last tail, not exceeded 95 % of the time; nothing where it is more than three times the room.
    pub length: Option<EstimateTold>,
    /// Share of the time with a tail in the road.
    pub in_road: EstimateTold,
    /// Wait before the reader, on the mean.
    pub wait: EstimateTold,
    /// Wait before the reader that 95 % do not exceed.
    pub long_wait: EstimateTold,
    /// From the arrival to the gate line, on the mean.
    pub through: EstimateTold,
    /// Openings from shut.
    pub openings: EstimateTold,
    /// Times that a leaf that closes turns back.
    pub reversals: EstimateTold,
    /// Share of vehicles let in while the leaf stood open for another.
    pub shared: EstimateTold,
    /// Share of vehicles that drove on without reading.
    pub tailgated: EstimateTold,
}

/// One step of the time line of a vehicle that finds everything free.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LineStep {
    /// Seconds from the stop at the reader.
    pub seconds: f64,
    /// What happens.
    pub what: String,
}

/// Everything that was worked of one lane.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct QueueTold {
    /// The lane, and the gate that it leads through.
    pub lane: String,
    /// The lane as a sentence names it.
    #[serde(skip)]
    pub called: String,
    /// The gate.
    pub gate: String,
    /// Number from which the same days can be made again.
    pub seed: u64,
    /// Days that were worked.
    pub days: u64,
    /// Vehicles that came.
    pub vehicles: u64,
    /// From the reader to the road, in meters.
    pub stacking: f64,
    /// Each hour, and all of them.
    pub hours: Vec<HourTold>,
    /// One vehicle of the most frequent kind.
    pub line: Vec<LineStep>,
    /// By what drivers are let in, each kind.
    pub drivers: Vec<String>,
    /// What was taken for granted.
    pub taken: Vec<String>,
}

impl LaneQueue<'_> {
    /// What was worked, in plain values.
    pub fn told(&self, report: &Report) -> QueueTold {
        let each = report.hours.iter().enumerate();
        let mut hours: Vec<HourTold> = each.map(|(at, hour)| told(self.hour(at), hour)).collect();
        if hours.len() > 1 {
            hours.push(told("all hours".to_owned(), &report.whole));
        }
        QueueTold {
            lane: self.lane.id.to_string(),
            called: self.lane.called(),
            gate: self.lowered.gate.id.to_string(),
            seed: report.seed,
            days: report.days,
            vehicles: report.vehicles,
            stacking: self.lowered.world.lane.stacking.base(),
            hours,
            line: self.line(),
            drivers: self.lowered.drivers.clone(),
            taken: self.lowered.taken.clone(),
        }
    }

    /// An hour in words: by the clock where the site says when the first begins.
    pub fn hour(&self, at: usize) -> String {
        let at = u32::try_from(at).unwrap_or(0);
        match self.lowered.first_hour {
            Some(first) => format!("{} to {} h", (first + at) % 24, (first + at) % 24 + 1),
            None => format!("hour {}", at + 1),
        }
    }

    /// A figure in SI units as the site prints it, with its error.
    pub fn estimated<Q: Quantity>(&self, told: EstimateTold) -> String {
        let (value, error) = (Q::from_base(told.value), Q::from_base(told.error));
        format!("{} ± {}", self.print.q(value), self.print.q(error))
    }

    /// The queue as a tradesperson would say it.
    pub(super) fn said(&self, print: Print, report: &Report) -> String {
        let worst = report.worst();
        let hour = self.hour(report.worst);
        let lane = &self.lowered.world.lane;
        let queue = match worst.length {
            Some(length) if length.value.base() > 0.0 => format!(
                "the queue reaches back {} from the reader or less for 95 % of the time, {} at the bad end of the interval",
                print.q(length.value),
                print.q(length.most())
            ),
            Some(_) => "nobody stands at the reader for 95 % of the time".to_owned(),
            None => "the queue grows out of the lane".to_owned(),
        };
        format!(
            "In the worst hour of {}, {hour}, {queue}; to the road there are {}. A tail stands in the road {} of that hour. \
             Drivers wait {} before the reader on the mean, one in twenty longer than {}; the gate opens {:.0} times. \
             {} days with {} vehicles, seed {}.",
            self.lane.called(),
            print.q(lane.stacking),
            share(&worst.in_road),
            print.q(worst.wait.value),
            print.q(worst.long_wait.value),
            worst.openings.value.base(),
            crate::walk::grouped(report.days),
            crate::walk::grouped(report.vehicles),
            report.seed
        )
    }
}

/// A share with its error, in percent.
fn share(estimate: &Estimate<Ratio>) -> String {
    let (value, error) = (estimate.value.base() * 100.0, estimate.error.base() * 100.0);
    if value <= 0.0 {
        "none".to_owned()
    } else {
        format!("{value:.2} ± {error:.2} %")
    }
}

fn plain<Q: Quantity>(estimate: &Estimate<Q>) -> EstimateTold {
    EstimateTold {
        value: estimate.value.base(),
        error: estimate.error.base(),
    }
}

fn told(hour: String, report: &HourReport) -> HourTold {
    HourTold {
        hour,
        arrivals: plain(&report.arrivals),
        standing: plain(&report.standing),
        length: report.length.as_ref().map(plain),
        in_road: plain(&report.in_road),
        wait: plain(&report.wait),
        long_wait: plain(&report.long_wait),
        through: plain(&report.through),
        openings: plain(&report.openings),
        reversals: plain(&report.reversals),
        shared: plain(&report.shared),
        tailgated: plain(&report.tailgated),
    }
}
