//! What one device says of the times at which it sees a body.

/// The most devices of one pass that see something.
pub(super) const MOST_REPORTS: usize = 16;

/// What the devices report: when each saw the body first, and when it said so.
pub(super) struct Reports {
    pub entered: [f64; MOST_REPORTS],
    pub said: [f64; MOST_REPORTS],
    pub count: usize,
    /// One of them keeps the leaf from starting.
    pub shut: bool,
}

impl Reports {
    /// Earliest report of a device that the body had entered by a time.
    pub(super) fn first(&self, by: f64) -> Option<f64> {
        let mut first: Option<f64> = None;
        for at in 0..self.count {
            if self.entered[at] <= by {
                first = Some(first.map_or(self.said[at], |known| known.min(self.said[at])));
            }
        }
        first
    }
}

/// What one device says.
pub(super) enum Report {
    Nothing,
    KeepsShut,
    At { entered: f64, said: f64 },
}

/// What one device says of the times at which it sees parts of the body: times that touch are one.
pub(super) fn report(runs: &mut [(f64, f64)], response: f64) -> Report {
    if runs.len() > 1 {
        runs.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
    }
    let mut at = 0;
    while at < runs.len() {
        let (entered, mut left) = runs[at];
        at += 1;
        while at < runs.len() && runs[at].0 <= left {
            left = left.max(runs[at].1);
            at += 1;
        }
        let said = entered + response;
        if said > left {
            continue;
        }
        if said > 0.0 {
            return Report::At { entered, said };
        }
        if left > 0.0 {
            return Report::KeepsShut;
        }
    }
    Report::Nothing
}
