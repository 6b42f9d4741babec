//! Where many circles, each on its straight path, go through the sides of a field, side by side.

#![allow(
    clippy::inline_always,
    reason = "only what is inlined is worked in wide registers"
)]

use super::batch::{Batch, Values, greater, smaller};
use super::field::Side;
use super::profile::EVER;
use super::sequence::SIDE;

/// Depths at which each goes through two sides of a field; without end where that is not so.
pub(super) struct Passed {
    pub enters: Values,
    pub leaves: Values,
}

impl Passed {
    /// Nobody goes through anything.
    pub(super) const NONE: Self = Self {
        enters: [EVER; SIDE],
        leaves: [-EVER; SIDE],
    };

    /// Notes where each goes through a beam.
    #[inline(always)]
    pub(super) fn through(&mut self, batch: &Batch, side: &Side, aside: f64, radius: f64) {
        let (nx, ny) = side.out();
        let (ex, ey) = side.along;
        for at in 0..SIDE {
            let slant = batch.slant[at];
            let off = batch.x0[at] + aside * batch.stretch[at] - side.x;
            let over = 1.0 / (nx * slant + ny);
            let middle = ny * side.y - nx * off;
            let (one, other) = ((middle + radius) * over, (middle - radius) * over);
            let (from, pace) = (ex * off - ey * side.y, ex * slant + ey);
            let (a, b) = (from + one * pace, from + other * pace);
            let within = smaller(smaller(a, b), side.length - greater(a, b));
            self.enters[at] = if within > 0.0 {
                smaller(one, other)
            } else {
                EVER
            };
            self.leaves[at] = if within > 0.0 {
                greater(one, other)
            } else {
                -EVER
            };
        }
    }

    /// Notes where each crosses a side that is moved out by a radius.
    #[inline(always)]
    pub(super) fn add(&mut self, batch: &Batch, side: &Side, aside: f64, radius: f64) {
        let (nx, ny) = side.out();
        let (ex, ey) = side.along;
        for at in 0..SIDE {
            let slant = batch.slant[at];
            let off = batch.x0[at] + aside * batch.stretch[at] - side.x;
            let pace = nx * slant + ny;
            let deep = radius - nx * off + ny * side.y;
            let along = (ex * off - ey * side.y) * pace + deep * (ex * slant + ey);
            let size = pace.abs();
            let along = if pace > 0.0 { along } else { -along };
            let within = smaller(along, side.length * size - along);
            let depth = deep / pace;
            let enters = if smaller(within, -pace) > 0.0 {
                depth
            } else {
                EVER
            };
            let leaves = if smaller(within, pace) > 0.0 {
                depth
            } else {
                -EVER
            };
            self.enters[at] = smaller(self.enters[at], enters);
            self.leaves[at] = greater(self.leaves[at], leaves);
        }
    }
}
