//! Flat geometry on the paper: spots in millimeters from the lower left corner, y up, lines and bounds.

use crate::Point;
use crate::patch::Patch;
use quantity::Quantity;

/// A place on the paper, or a step from one place to another (mm).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Spot {
    /// To the right.
    pub(crate) x: f64,
    /// Up.
    pub(crate) y: f64,
}

impl Spot {
    /// The spot at these millimeters.
    pub(crate) const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// A step of length one in a direction (rad, counter-clockwise from +x).
    pub(crate) fn unit(angle: f64) -> Self {
        Self::new(angle.cos(), angle.sin())
    }

    /// A point whose lengths are paper lengths.
    pub(crate) fn of_paper(point: Point) -> Self {
        Self::new(point.x.base() * 1000.0, point.y.base() * 1000.0)
    }

    /// This spot as a point of paper lengths.
    pub(crate) fn to_paper(self) -> Point {
        Point::from_base(self.x / 1000.0, self.y / 1000.0)
    }

    /// This spot moved by a number of steps.
    #[must_use]
    pub(crate) fn plus(self, step: Spot, times: f64) -> Self {
        Self::new(self.x + step.x * times, self.y + step.y * times)
    }

    /// The step from another spot to this one.
    #[must_use]
    pub(crate) fn minus(self, other: Spot) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }

    /// How far this step goes along another of length one.
    pub(crate) fn along(self, unit: Spot) -> f64 {
        self.x * unit.x + self.y * unit.y
    }

    /// Length of this step.
    pub(crate) fn length(self) -> f64 {
        self.x.hypot(self.y)
    }

    /// This step turned a quarter counter-clockwise.
    #[must_use]
    pub(crate) fn left(self) -> Self {
        Self::new(-self.y, self.x)
    }

    /// This step turned by an angle (rad).
    #[must_use]
    pub(crate) fn turned(self, angle: f64) -> Self {
        let (sine, cosine) = angle.sin_cos();
        Self::new(
            self.x * cosine - self.y * sine,
            self.x * sine + self.y * cosine,
        )
    }

    /// Halfway to another spot.
    #[must_use]
    pub(crate) fn middle(self, other: Spot) -> Self {
        Self::new(
            f64::midpoint(self.x, other.x),
            f64::midpoint(self.y, other.y),
        )
    }
}

/// A straight line between two spots.
pub(crate) type Segment = (Spot, Spot);

/// Whether two lines cross between their ends; touching with an end is no crossing.
pub(crate) fn cross(one: Segment, other: Segment) -> bool {
    let side = |line: Segment, spot: Spot| spot.minus(line.0).along(line.1.minus(line.0).left());
    let apart = |line: Segment, two: Segment| {
        let (first, second) = (side(line, two.0), side(line, two.1));
        first.abs() > SLACK && second.abs() > SLACK && (first > 0.0) != (second > 0.0)
    };
    apart(one, other) && apart(other, one)
}

/// An upright rectangle that grows around what is put into it; empty at first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bounds {
    /// Lower left corner.
    pub(crate) low: Spot,
    /// Upper right corner.
    pub(crate) high: Spot,
}

impl Bounds {
    /// Bounds around nothing.
    pub(crate) const EMPTY: Bounds = Bounds {
        low: Spot::new(f64::INFINITY, f64::INFINITY),
        high: Spot::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
    };

    /// Bounds between two corners.
    pub(crate) const fn new(low: Spot, high: Spot) -> Self {
        Self { low, high }
    }

    /// Grows to hold a spot.
    pub(crate) fn take(&mut self, spot: Spot) {
        self.low = Spot::new(self.low.x.min(spot.x), self.low.y.min(spot.y));
        self.high = Spot::new(self.high.x.max(spot.x), self.high.y.max(spot.y));
    }

    /// Whether nothing has been put in.
    pub(crate) fn is_empty(&self) -> bool {
        self.low.x > self.high.x
    }

    /// Width; zero when empty.
    pub(crate) fn width(&self) -> f64 {
        (self.high.x - self.low.x).max(0.0)
    }

    /// Height; zero when empty.
    pub(crate) fn height(&self) -> f64 {
        (self.high.y - self.low.y).max(0.0)
    }

    /// The middle.
    pub(crate) fn center(&self) -> Spot {
        self.low.middle(self.high)
    }

    /// Whether a spot lies within.
    pub(crate) fn contains(&self, spot: Spot) -> bool {
        (self.low.x..=self.high.x).contains(&spot.x) && (self.low.y..=self.high.y).contains(&spot.y)
    }

    /// The part of a line that lies within (Liang and Barsky's way of cutting).
    pub(crate) fn cut(&self, (from, to): Segment) -> Option<Segment> {
        let run = to.minus(from);
        let (mut start, mut end) = (0.0_f64, 1.0_f64);
        for (step, room) in [
            (-run.x, from.x - self.low.x),
            (run.x, self.high.x - from.x),
            (-run.y, from.y - self.low.y),
            (run.y, self.high.y - from.y),
        ] {
            if step == 0.0 {
                if room < 0.0 {
                    return None;
                }
            } else if step < 0.0 {
                start = start.max(room / step);
            } else {
                end = end.min(room / step);
            }
        }
        (start < end).then(|| (from.plus(run, start), from.plus(run, end)))
    }

    /// Whether a turned rectangle lies within.
    pub(crate) fn holds(&self, patch: &Patch) -> bool {
        patch.corners().iter().all(|corner| {
            corner.x >= self.low.x - SLACK
                && corner.x <= self.high.x + SLACK
                && corner.y >= self.low.y - SLACK
                && corner.y <= self.high.y + SLACK
        })
    }
}

/// What counts as touching, not overlapping (mm).
pub(crate) const SLACK: f64 = 1e-6;
