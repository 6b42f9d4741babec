//! Values by the hour, with straight lines between.

/// Seconds of an hour.
pub(super) const HOUR: f64 = 3600.0;

/// Values at the full hours of a day, both midnights included.
pub(super) type Hours = [f64; 25];

/// A day that repeats: its last midnight is its first.
pub(super) fn repeated(hours: &[f64; 24]) -> Hours {
    std::array::from_fn(|hour| hours[hour % 24])
}

/// A straight piece of an hour.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    begin: f64,
    pub(super) slope: f64,
}

impl Piece {
    /// From a full hour to the next.
    pub(super) fn of(hours: &Hours, hour: usize) -> Self {
        let begin = hours.get(hour).copied().unwrap_or(hours[24]);
        let end = hours.get(hour + 1).copied().unwrap_or(hours[24]);
        Self {
            begin,
            slope: (end - begin) / HOUR,
        }
    }

    /// The value so many seconds into the hour.
    pub(super) fn at(&self, time: f64) -> f64 {
        self.begin + self.slope * time
    }
}
