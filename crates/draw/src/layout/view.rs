//! From the site to the paper and back.

use crate::Point;
use crate::flat::Spot;
use quantity::{Length, Quantity};

/// How the site is put on the paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct View {
    /// Paper millimeters to a meter of the site.
    pub(crate) per_meter: f64,
    /// Where the site's origin is on the paper.
    pub(crate) origin: Spot,
}

impl View {
    /// The spot of a site point.
    pub(crate) fn spot(&self, point: Point) -> Spot {
        let site = Spot::new(point.x.base(), point.y.base());
        self.origin.plus(site, self.per_meter)
    }

    /// A site length on paper (mm).
    pub(crate) fn length(&self, length: Length) -> f64 {
        length.base() * self.per_meter
    }

    /// The site point (m) of a spot.
    pub(crate) fn site(&self, spot: Spot) -> Spot {
        let step = spot.minus(self.origin);
        Spot::new(step.x / self.per_meter, step.y / self.per_meter)
    }
}
