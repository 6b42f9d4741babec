//! What is drawn of a lane's queue: how far it reaches for how much of each hour, and the time line of one vehicle.

use super::LaneQueue;
use quantity::{Length, Quantity as _, Ratio};
use sim::queue::{Report, Timeline};

/// Vehicles that come for a drawing.
const DRAWN: f64 = 60_000.0;
/// Share of the time below which a curve has come to its end.
const SHOWN: f64 = 0.0005;

/// How far the queue reaches back in one hour.
#[derive(Debug, Clone, PartialEq)]
pub struct HourShown {
    /// The hour and how many come in it: `7 to 8 h, 70 vehicles`.
    pub name: String,
    /// Lengths behind the reader, each with the share of the hour in which the queue reaches farther.
    pub farther: Vec<(Length, Ratio)>,
}

/// What is drawn of a lane's queue.
#[derive(Debug, Clone, PartialEq)]
pub struct QueuePicture {
    /// Name of the lane.
    pub lane: String,
    /// Each hour, in the order of the day.
    pub hours: Vec<HourShown>,
    /// Which of them is the worst.
    pub worst: usize,
    /// From the reader to the road.
    pub stacking: Length,
    /// The queue that is not exceeded for 95 % of the worst hour.
    pub length: Option<Length>,
    /// One vehicle of the most frequent kind that finds everything free.
    pub line: Timeline,
    /// Whole sentences under the plot.
    pub remarks: Vec<String>,
}

impl LaneQueue<'_> {
    /// What is drawn of it; nothing where the time line cannot be worked.
    pub fn picture(&self) -> Option<QueuePicture> {
        let line = self.timeline()?;
        let report = self.look(DRAWN);
        let counts = self.lowered.world.arrivals.iter();
        let hours = report.hours.iter().zip(counts).enumerate();
        let shown = |(at, (hour, count)): (usize, (&sim::queue::HourReport, &u32))| {
            let ends = hour
                .farther
                .iter()
                .position(|(_, share)| share.base() < SHOWN);
            let points = ends.map_or(hour.farther.len(), |at| at + 1);
            HourShown {
                name: format!("{}, {count} vehicles", self.hour(at)),
                farther: hour.farther[..points].to_vec(),
            }
        };
        Some(QueuePicture {
            lane: self.lane.called(),
            hours: hours.map(shown).collect(),
            worst: report.worst,
            stacking: self.lowered.world.lane.stacking,
            length: report.worst().length.map(|length| length.value),
            line,
            remarks: self.remarks(&report),
        })
    }

    fn remarks(&self, report: &Report) -> Vec<String> {
        let mut remarks = vec![self.said(self.print, report)];
        remarks.extend(self.lowered.taken.iter().cloned());
        remarks
    }
}
