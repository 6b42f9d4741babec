//! Turned rectangles: the room that words and symbols take on the paper.

use crate::flat::{SLACK, Segment, Spot};

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
            self.center
                .plus(across, x * self.half_width)
                .plus(up, y * self.half_height)
        };
        [
            corner(-1.0, -1.0),
            corner(1.0, -1.0),
            corner(1.0, 1.0),
            corner(-1.0, 1.0),
        ]
    }

    /// How far it reaches from its center in a direction of length one.
    pub(crate) fn reach(&self, direction: Spot) -> f64 {
        let across = Spot::unit(self.angle);
        direction.along(across).abs() * self.half_width
            + direction.along(across.left()).abs() * self.half_height
    }

    /// Whether a spot lies inside.
    pub(crate) fn covers(&self, spot: Spot) -> bool {
        let own = spot.minus(self.center).turned(-self.angle);
        own.x.abs() < self.half_width && own.y.abs() < self.half_height
    }

    /// Where one leaves it, going from a spot inside in a direction of length one.
    pub(crate) fn edge(&self, from: Spot, direction: Spot) -> Spot {
        let own = from.minus(self.center).turned(-self.angle);
        let way = direction.turned(-self.angle);
        let out = |start: f64, step: f64, half: f64| {
            if step.abs() < 1e-9 {
                f64::INFINITY
            } else {
                (half.copysign(step) - start) / step
            }
        };
        let far = out(own.x, way.x, self.half_width).min(out(own.y, way.y, self.half_height));
        from.plus(direction, if far.is_finite() { far.max(0.0) } else { 0.0 })
    }

    /// This rectangle grown on each side by as much as another reaches.
    pub(crate) fn around(&self, other: &Patch) -> Patch {
        let across = Spot::unit(self.angle);
        let half_width = self.half_width + other.reach(across);
        Patch {
            half_width,
            half_height: self.half_height + other.reach(across.left()),
            ..*self
        }
    }

    /// How far its center must go from a spot, in a direction of length one, to leave a gap to the spot.
    pub(crate) fn clear(&self, direction: Spot, gap: f64) -> f64 {
        let way = direction.turned(-self.angle);
        let beside = (self.half_width + gap) / way.x.abs().max(1e-9);
        let above = (self.half_height + gap) / way.y.abs().max(1e-9);
        beside.min(above)
    }

    /// Clear paper between it and a spot; zero inside.
    pub(crate) fn gap(&self, spot: Spot) -> f64 {
        let own = spot.minus(self.center).turned(-self.angle);
        (own.x.abs() - self.half_width)
            .max(0.0)
            .hypot((own.y.abs() - self.half_height).max(0.0))
    }

    /// The same rectangle somewhere else.
    pub(crate) fn at(&self, center: Spot) -> Patch {
        Patch { center, ..*self }
    }

    /// Whether two rectangles share more than an edge.
    pub(crate) fn overlaps(&self, other: &Patch) -> bool {
        let between = other.center.minus(self.center);
        let across = [Spot::unit(self.angle), Spot::unit(other.angle)];
        across
            .iter()
            .flat_map(|axis| [*axis, axis.left()])
            .all(|axis| between.along(axis).abs() + SLACK < self.reach(axis) + other.reach(axis))
    }

    /// Whether a straight line passes through it.
    pub(crate) fn crossed_by(&self, line: Segment) -> bool {
        let own = |spot: Spot| spot.minus(self.center).turned(-self.angle);
        let (from, to) = (own(line.0), own(line.1));
        let step = to.minus(from);
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for (start, change, half) in [
            (from.x, step.x, self.half_width),
            (from.y, step.y, self.half_height),
        ] {
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
        Patch {
            center: Spot::new(x, y),
            half_width: 5.0,
            half_height: 1.0,
            angle,
        }
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
