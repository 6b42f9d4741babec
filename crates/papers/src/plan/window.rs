//! The part of the site that one sheet shows.

use super::ground::seen_from_above;
use draw::Point;
use quantity::{Length, Measured, Quantity as _};
use site::{Gate, Position, Site, SwingSide};

/// Opening that is taken for a gate whose clear opening nobody has measured, for the window alone (m).
const USUAL_OPENING: f64 = 5.0;

/// Clear ground around what stands at a gate (m).
const MARGIN: f64 = 0.5;

/// Ground before and behind the leaf that is shown even if nothing stands there (m).
const LEAST_DEPTH: f64 = 1.5;

/// How far beyond the gate a sheet may reach, in widths of the opening beside it and in a little more than widths of
/// the opening before and behind it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reach {
    pub(super) side: f64,
    pub(super) depth: f64,
}

impl Reach {
    /// The least that the sheet of a gate shows.
    pub(super) const LEAST: Self = Self {
        side: 0.35,
        depth: 1.0,
    };
}

/// An upright rectangle of the site.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Window {
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) below: f64,
    pub(super) above: f64,
}

impl Window {
    /// Everything.
    pub(crate) fn whole() -> Self {
        let far = f64::INFINITY;
        Self {
            left: -far,
            right: far,
            below: -far,
            above: far,
        }
    }

    /// The farthest that the sheet of one gate may reach: its opening, its travel to the side, and so many openings
    /// beside and before it.
    fn around_gate(gate: &Gate, reach: Reach) -> Self {
        let opening = number(gate.clear_opening.as_ref()).unwrap_or(USUAL_OPENING);
        let leaf = longest_leaf(gate);
        let side = reach.side * opening;
        let depth = reach.depth * (1.1 * opening).max(0.9 * leaf);
        let end = end_of_travel(gate, opening);
        Self {
            left: -side,
            right: end + side,
            below: -depth,
            above: depth,
        }
    }

    /// What belongs on the sheet of one gate: the part of its surroundings in which something stands.
    pub(super) fn of_gate(gate: &Gate, points: &[Point], reach: Reach) -> Self {
        let farthest = Self::around_gate(gate, reach);
        let opening = number(gate.clear_opening.as_ref()).unwrap_or(USUAL_OPENING);
        let end = end_of_travel(gate, opening);
        let mut held = Self {
            left: 0.0,
            right: end,
            below: -LEAST_DEPTH,
            above: LEAST_DEPTH,
        };
        held.take_swing(gate);
        for point in points.iter().filter(|point| farthest.shows(**point)) {
            held.take(*point);
        }
        held.grown(MARGIN)
    }

    /// The part of the site between two opposite corners.
    pub(crate) fn between(low: Point, high: Point) -> Self {
        Self {
            left: low.x.base(),
            right: high.x.base(),
            below: low.y.base(),
            above: high.y.base(),
        }
    }

    /// Points, the gates whole with the way of their leaves, and so much clear ground around (m).
    pub(crate) fn around(site: &Site, points: &[Point], margin: f64) -> Self {
        let mut held = Self {
            left: f64::INFINITY,
            right: f64::NEG_INFINITY,
            below: -LEAST_DEPTH,
            above: LEAST_DEPTH,
        };
        for gate in &site.gate {
            held.left = held.left.min(0.0);
            held.right = held.right.max(end_of_travel(gate, 0.0));
            held.take_swing(gate);
        }
        for point in points {
            held.take(*point);
        }
        held.grown(margin)
    }

    /// Makes room for a point.
    fn take(&mut self, point: Point) {
        let (x, y) = (point.x.base(), point.y.base());
        self.left = self.left.min(x);
        self.right = self.right.max(x);
        self.below = self.below.min(y);
        self.above = self.above.max(y);
    }

    /// Makes room for the way of swing leaves.
    fn take_swing(&mut self, gate: &Gate) {
        match gate.swings {
            Some(SwingSide::IntoProperty) => self.above = self.above.max(longest_leaf(gate)),
            Some(SwingSide::TowardRoad) => self.below = self.below.min(-longest_leaf(gate)),
            None => {}
        }
    }

    /// The same part of the site and so much more on each side (m).
    fn grown(self, by: f64) -> Self {
        Self {
            left: self.left - by,
            right: self.right + by,
            below: self.below - by,
            above: self.above + by,
        }
    }

    /// The point lies on the sheet.
    pub(super) fn shows(&self, point: Point) -> bool {
        let (x, y) = (point.x.base(), point.y.base());
        (self.left..=self.right).contains(&x) && (self.below..=self.above).contains(&y)
    }

    /// The position lies on the sheet.
    pub(super) fn shows_position(&self, position: &Position) -> bool {
        self.shows(seen_from_above(position))
    }

    /// The part of a straight line that lies on the sheet, if any does (Liang and Barsky's way of cutting).
    pub(crate) fn cut(&self, from: Point, to: Point) -> Option<(Point, Point)> {
        let (x, y) = (from.x.base(), from.y.base());
        let (run, rise) = (to.x.base() - x, to.y.base() - y);
        let (mut start, mut end) = (0.0_f64, 1.0_f64);
        for (step, room) in [
            (-run, x - self.left),
            (run, self.right - x),
            (-rise, y - self.below),
            (rise, self.above - y),
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
        let at = |share: f64| {
            Point::new(
                Length::from_base(x + share * run),
                Length::from_base(y + share * rise),
            )
        };
        (start < end).then(|| (at(start), at(end)))
    }
}

fn number(length: Option<&Measured<Length>>) -> Option<f64> {
    length.map(|length| length.nominal().base())
}

/// Length of the longest leaf (m); none counts as zero.
fn longest_leaf(gate: &Gate) -> f64 {
    gate.leaf
        .iter()
        .filter_map(|leaf| number(leaf.length.as_ref()))
        .fold(0.0, f64::max)
}

/// How far along the gate its leaf and its run-back reach (m).
fn end_of_travel(gate: &Gate, opening: f64) -> f64 {
    let of = |length: Option<&Measured<Length>>| number(length).unwrap_or(0.0);
    let open = longest_leaf(gate).max(opening) + of(gate.travel.as_ref());
    open.max(opening + of(gate.run_back.as_ref()))
}
