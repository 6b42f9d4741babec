//! A part of a body as a moment shows it.

use draw::Point;
use quantity::{Length, Quantity as _};

/// A part of a body.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Part {
    /// Seen from above: its middle and its radius.
    Circle(Point, Length),
    /// Seen from the road: its corners that are lowest at the left and highest at the right, and whether it is where the
    /// leaf may touch it, neither before nor behind it.
    Box(Point, Point, bool),
}

impl Part {
    /// Its middle, in meters.
    pub(super) fn middle(&self) -> (f64, f64) {
        let (x, y) = match self {
            Self::Circle(at, _) => (at.x, at.y),
            Self::Box(low, high, _) => ((low.x + high.x) / 2.0, (low.y + high.y) / 2.0),
        };
        (x.base(), y.base())
    }

    /// The least and the greatest x, and the same of y, in meters.
    pub(super) fn extent(&self) -> [f64; 4] {
        let [left, right, low, high] = match self {
            Self::Circle(at, radius) => [
                at.x - *radius,
                at.x + *radius,
                at.y - *radius,
                at.y + *radius,
            ],
            Self::Box(low, high, _) => [low.x, high.x, low.y, high.y],
        };
        [left.base(), right.base(), low.base(), high.base()]
    }
}
