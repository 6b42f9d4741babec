//! The time line of one vehicle in words.

use super::LaneQueue;
use super::told::LineStep;
use quantity::{Quantity as _, Time};

impl LaneQueue<'_> {
    /// What happens when to one vehicle of the most frequent kind that finds lane and gate free, in the order of time.
    pub fn line(&self) -> Vec<LineStep> {
        let Some(line) = self.timeline() else {
            return Vec::new();
        };
        let step = |time: Time, what: &str| LineStep {
            seconds: time.base(),
            what: what.to_owned(),
        };
        let mut steps = vec![
            step(Time::from_base(0.0), "stops at the reader"),
            step(line.commanded, "let in; the gate begins to open"),
            step(line.at_line, "could be at the gate line"),
            step(line.open, "the gate is open"),
            step(line.passes, "front passes the gate line"),
            step(line.tail_over, "tail is over the gate line"),
            step(line.clear, "tail has left the last detector"),
            step(line.reported, "the detector lets the gate go"),
            step(line.closes, "the gate begins to close"),
            step(line.shut, "the gate is shut"),
        ];
        steps.sort_by(|a, b| a.seconds.total_cmp(&b.seconds));
        steps
    }
}
