//! From where the zones are seen.

use draw::Point;
use quantity::{Length, Quantity as _};
use site::Position;

/// A side from which a gate is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Seen {
    /// From above.
    FromAbove,
    /// From the road.
    FromRoad,
}

impl Seen {
    /// A point of the site on the drawing.
    pub(super) fn point(self, [x, y, z]: [Length; 3]) -> Point {
        match self {
            Self::FromAbove => Point::new(x, y),
            Self::FromRoad => Point::new(x, z),
        }
    }

    /// A position on the drawing.
    pub(super) fn position(self, at: &Position) -> Point {
        self.point([at.x.nominal(), at.y.nominal(), at.z.nominal()])
    }

    /// A direction on the drawing; none where it runs toward whoever looks, or nowhere.
    pub(super) fn direction(self, [x, y, z]: [f64; 3]) -> Option<quantity::Angle> {
        let (right, up) = match self {
            Self::FromAbove => (x, y),
            Self::FromRoad => (x, z),
        };
        let whole = x.hypot(y).hypot(z);
        let seen = right.hypot(up);
        (whole > 0.0 && seen > 0.5 * whole).then(|| quantity::Angle::from_base(up.atan2(right)))
    }
}
