//! The path of a body: what it does, how deep it is when, and the line of each of its cylinders.

use super::person::Part;
use super::profile::EVER;

/// What a body does, with depths in its own direction.
#[derive(Debug, Clone, Copy)]
pub(super) enum Path {
    Cross,
    Stop(f64),
    Stand(f64),
}

/// A scenario in the plain numbers of its pass.
#[derive(Debug, Clone, Copy)]
pub(super) struct Case {
    pub body: usize,
    pub way: usize,
    pub path: Path,
    pub x0: f64,
    pub slant: f64,
    pub speed: f64,
    pub arrives: f64,
}

impl Case {
    pub(super) fn is_finite(&self) -> bool {
        let depth = match self.path {
            Path::Cross => 0.0,
            Path::Stop(depth) | Path::Stand(depth) => depth,
        };
        [self.x0, self.slant, self.speed, self.arrives, depth]
            .iter()
            .all(|value| value.is_finite() && value.abs() < 1e6)
    }
}

/// How the depth of a body's middle goes with time.
#[derive(Debug, Clone, Copy)]
pub(super) struct Going {
    pub arrives: f64,
    /// Speed through the gate, and one over it.
    pub pace: f64,
    pub per_depth: f64,
    /// Depth at which it stays.
    pub stays: f64,
    pub stands: bool,
}

impl Going {
    /// How deep it is at a time.
    pub(super) fn depth_at(&self, time: f64) -> f64 {
        if self.stands {
            self.stays
        } else {
            (self.pace * (time - self.arrives)).min(self.stays)
        }
    }

    /// When it first comes to a depth.
    pub(super) fn comes_to(&self, depth: f64) -> f64 {
        if self.stands {
            if depth <= self.stays { -EVER } else { EVER }
        } else if depth <= self.stays {
            self.arrives + depth * self.per_depth
        } else {
            EVER
        }
    }

    /// When it is last at a depth or before it.
    pub(super) fn leaves(&self, depth: f64) -> f64 {
        if self.stands {
            if depth < self.stays { -EVER } else { EVER }
        } else if depth < self.stays {
            self.arrives + depth * self.per_depth
        } else {
            EVER
        }
    }
}

/// The line of one cylinder: where it crosses the gate line, and how far its depth is ahead of the body's.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line {
    pub x0: f64,
    pub lead: f64,
}

/// Line of a cylinder on a path with a slant; `stretch` is √(1 + slant²), `shrink` one over it.
pub(super) fn line(
    part: &Part,
    right: f64,
    x0: f64,
    slant: f64,
    stretch: f64,
    shrink: f64,
) -> Line {
    let aside = right * part.aside;
    Line {
        x0: x0 + aside * stretch,
        lead: (part.ahead - aside * slant) * shrink,
    }
}

/// How a case goes; `stretch` is √(1 + slant²).
pub(super) fn going(case: &Case, stretch: f64) -> Going {
    let (stays, stands) = match case.path {
        Path::Cross => (EVER, false),
        Path::Stop(depth) => (depth, false),
        Path::Stand(depth) => (depth, true),
    };
    Going {
        arrives: case.arrives,
        pace: case.speed / stretch,
        per_depth: stretch / case.speed,
        stays,
        stands,
    }
}
