//! Flat geometry on the paper: spots in millimeters from the lower left corner, y up, and turned rectangles.

use crate::Point;
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
        Self::new(self.x * cosine - self.y * sine, self.x * sine + self.y * cosine)
    }

    /// Halfway to another spot.
    #[must_use]
    pub(crate) fn middle(self, other: Spot) -> Self {
        Self::new(f64::midpoint(self.x, other.x), f64::midpoint(self.y, other.y))
    }
}

/// A straight line between two spots.
pub(crate) type Segment = (Spot, Spot);

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
const SLACK: f64 = 1e-6;

/// A rectangle turned about its center: the room that a text or a symbol takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Patch {
    /// Its center.
    pub(crate) center: Spot,
    /// Half its width, in its own direction.
    pub(crate) half_width: f64,
    /// Half its height.
    pub(crate) half_height: f64,
    /// Its direction (rad, counter-clockwise from +x).
    pub(crate) angle: f64,
}

impl Patch {
    /// The four corners in turn.
    pub(crate) fn corners(&self) -> [Spot; 4] {
        let across = Spot::unit(self.angle);
        let up = across.left();
        let corner = |x: f64, y: f64| {
            self.center.plus(across, x * self.half_width).plus(up, y * self.half_height)
        };
        [corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)]
    }

    /// How far it reaches from its center in a direction of length one.
    pub(crate) fn reach(&self, direction: Spot) -> f64 {
        let across = Spot::unit(self.angle);
        direction.along(across).abs() * self.half_width
            + direction.along(across.left()).abs() * self.half_height
    }

    /// The same rectangle somewhere else.
    pub(crate) fn at(&self, center: Spot) -> Patch {
        Patch { center, ..*self }
    }

    /// Whether two rectangles share more than an edge.
    pub(crate) fn overlaps(&self, other: &Patch) -> bool {
        let between = other.center.minus(self.center);
        let across = [Spot::unit(self.angle), Spot::unit(other.angle)];
        across.iter().flat_map(|axis| [*axis, axis.left()]).all(|axis| {
            between.along(axis).abs() + SLACK < self.reach(axis) + other.reach(axis)
        })
    }

    /// Whether a straight line passes through it.
    pub(crate) fn crossed_by(&self, line: Segment) -> bool {
        let own = |spot: Spot| spot.minus(self.center).turned(-self.angle);
        let (from, to) = (own(line.0), own(line.1));
        let step = to.minus(from);
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for (start, change, half) in
            [(from.x, step.x, self.half_width), (from.y, step.y, self.half_height)]
        {
            if change.abs() < 1e-12 {
                if start.abs() >= half {
                    return false;
                }
                continue;
            }
            let (one, two) = ((-half - start) / change, (half - start) / change);
            enters = enters.max(one.min(two));
            leaves = leaves.min(one.max(two));
        }
        enters + 1e-9 < leaves
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A rectangle of 10 by 2 about a spot.
    fn patch(x: f64, y: f64, angle: f64) -> Patch {
        Patch { center: Spot::new(x, y), half_width: 5.0, half_height: 1.0, angle }
    }

    #[test]
    fn rectangles_side_by_side_touch_but_do_not_overlap() {
        assert!(!patch(0.0, 0.0, 0.0).overlaps(&patch(10.0, 0.0, 0.0)));
        assert!(patch(0.0, 0.0, 0.0).overlaps(&patch(9.9, 0.0, 0.0)));
        assert!(!patch(0.0, 0.0, 0.0).overlaps(&patch(0.0, 2.0, 0.0)));
    }

    #[test]
    fn turned_rectangles_overlap_only_where_they_meet() {
        let upright = std::f64::consts::FRAC_PI_2;
        assert!(patch(0.0, 0.0, 0.0).overlaps(&patch(4.0, 4.0, upright)));
        assert!(!patch(0.0, 0.0, 0.0).overlaps(&patch(7.0, 0.0, upright)));
    }

    #[test]
    fn a_line_crosses_only_what_it_passes_through() {
        let box_ = patch(0.0, 0.0, 0.0);
        assert!(box_.crossed_by((Spot::new(0.0, -5.0), Spot::new(0.0, 5.0))));
        assert!(!box_.crossed_by((Spot::new(6.0, -5.0), Spot::new(6.0, 5.0))));
        assert!(!box_.crossed_by((Spot::new(0.0, 1.5), Spot::new(0.0, 5.0))));
        assert!(!box_.crossed_by((Spot::new(-9.0, 1.0), Spot::new(9.0, 1.0))));
    }
}
