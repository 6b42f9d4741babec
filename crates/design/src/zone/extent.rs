//! A box in the coordinates of the site.

use quantity::{Length, Quantity as _};

/// A box: along the gate line, into the property, up. Meters inside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent {
    pub(crate) low: [f64; 3],
    pub(crate) high: [f64; 3],
}

impl Extent {
    /// The box that two corners span, in any order.
    pub(crate) fn spanned(one: [f64; 3], other: [f64; 3]) -> Self {
        let pick = |of: fn(f64, f64) -> f64| {
            [
                of(one[0], other[0]),
                of(one[1], other[1]),
                of(one[2], other[2]),
            ]
        };
        Self {
            low: pick(f64::min),
            high: pick(f64::max),
        }
    }

    /// The corner with the least of each coordinate.
    pub fn low(&self) -> [Length; 3] {
        self.low.map(Length::from_base)
    }

    /// The corner with the most of each coordinate.
    pub fn high(&self) -> [Length; 3] {
        self.high.map(Length::from_base)
    }

    /// Its middle, seen from above.
    pub(crate) fn middle(&self) -> (f64, f64) {
        (
            f64::midpoint(self.low[0], self.high[0]),
            f64::midpoint(self.low[1], self.high[1]),
        )
    }

    /// Its four corners, seen from above.
    pub(crate) fn corners(&self) -> [(f64, f64); 4] {
        let ([x0, y0, _], [x1, y1, _]) = (self.low, self.high);
        [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
    }
}
