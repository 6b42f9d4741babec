//! The part of the site that one sheet shows.

use super::ground::seen_from_above;
use draw::Point;
use quantity::{Length, Measured, Quantity as _};
use site::{Gate, Position};

/// Opening that is taken for a gate whose clear opening nobody has measured, for the window alone (m).
const USUAL_OPENING: f64 = 5.0;

/// An upright rectangle of the site.
#[derive(Debug, Clone, Copy)]
pub(super) struct Window {
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) below: f64,
    pub(super) above: f64,
}

impl Window {
    /// Everything.
    pub(super) fn whole() -> Self {
        let far = f64::INFINITY;
        Self {
            left: -far,
            right: far,
            below: -far,
            above: far,
        }
    }

    /// What belongs on the sheet of one gate: its opening, its travel to the side, and a little more than
    /// the opening's width before and behind it.
    pub(super) fn of_gate(gate: &Gate) -> Self {
        let number =
            |length: Option<&Measured<Length>>| length.map(|length| length.nominal().base());
        let opening = number(gate.clear_opening.as_ref()).unwrap_or(USUAL_OPENING);
        let leaf = gate
            .leaf
            .iter()
            .filter_map(|leaf| number(leaf.length.as_ref()))
            .fold(opening, f64::max);
        let side = 0.35 * opening;
        let depth = (1.1 * opening).max(0.9 * leaf);
        let end = leaf.max(opening) + number(gate.travel.as_ref()).unwrap_or(0.0);
        Self {
            left: -side,
            right: end + side,
            below: -depth,
            above: depth,
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
    pub(super) fn cut(&self, from: Point, to: Point) -> Option<(Point, Point)> {
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
