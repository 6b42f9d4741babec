//! Scenarios of one family who stand there, side by side: whom the leaf does not come to, and whom a device sees.

#![allow(
    clippy::inline_always,
    reason = "only what is inlined is worked in wide registers"
)]

use super::batch::{Batch, Values, greater, smaller};
use super::field::Side;
use super::lane::Lane;
use super::person::Person;
use super::profile::EVER;
use super::sequence::SIDE;
use super::sieve::SLACK;

/// What is known of each by a look at all, by how surely.
pub(super) struct Stood {
    /// The leaf surely does not come to them where this is above zero.
    pub clear: Values,
    /// A device surely sees them where this is above zero.
    pub seen: Values,
    /// No device sees them where this is above zero.
    pub unseen: Values,
}

impl Stood {
    /// Looks at all.
    #[inline(always)]
    pub(super) fn of(lane: &Lane, person: &Person, way: usize, batch: &Batch) -> Self {
        let mut stood = Self {
            clear: [EVER; SIDE],
            seen: [-EVER; SIDE],
            unseen: [EVER; SIDE],
        };
        let right = lane.right(way);
        stood.comes_to(lane, person, right, batch);
        let mut place = Place::NONE;
        for look in &person.looks[way] {
            let sides = lane.fields[look.device].sides(way);
            for &(part, radius) in &person.seen[look.device] {
                let part = &person.parts[part];
                place.put(batch, part.ahead, right * part.aside);
                stood.sees(sides, radius, &place);
            }
        }
        stood
    }

    /// How far before the end of its way the leaf would have to be to touch one of the cylinders.
    #[inline(always)]
    fn comes_to(&mut self, lane: &Lane, person: &Person, right: f64, batch: &Batch) {
        let mut place = Place::NONE;
        for &part in &person.touchable {
            let part = &person.parts[part];
            let radius = part.radius + SLACK;
            place.put(batch, part.ahead, right * part.aside);
            for at in 0..SIDE {
                let aside = greater(place.y[at].abs() - lane.half, 0.0);
                let square = radius * radius - aside * aside;
                let before = -place.x[at] - greater(square, 0.0).sqrt();
                let before = if square > 0.0 { before } else { EVER };
                self.clear[at] = smaller(self.clear[at], before - SLACK);
            }
        }
    }

    /// Notes how surely a field sees a circle.
    #[inline(always)]
    fn sees(&mut self, sides: &[Side], radius: f64, place: &Place) {
        if let [side, _] = sides {
            for at in 0..SIDE {
                let (out, over) = place.from(side, at);
                let off = out.abs();
                let within = smaller(radius - off, over);
                self.seen[at] = greater(self.seen[at], within - SLACK);
                self.unseen[at] = smaller(self.unseen[at], off - radius - SLACK);
            }
            return;
        }
        let mut off = [-EVER; SIDE];
        let mut beside = [-EVER; SIDE];
        for side in sides {
            for at in 0..SIDE {
                let (out, over) = place.from(side, at);
                off[at] = greater(off[at], out);
                beside[at] = greater(beside[at], smaller(over, radius - out.abs()));
            }
        }
        for at in 0..SIDE {
            let within = smaller(radius - off[at], greater(beside[at], -off[at]));
            self.seen[at] = greater(self.seen[at], within - SLACK);
            self.unseen[at] = smaller(self.unseen[at], off[at] - radius - SLACK);
        }
    }
}

/// Where a cylinder of each stands.
struct Place {
    x: Values,
    y: Values,
}

impl Place {
    const NONE: Self = Self {
        x: [0.0; SIDE],
        y: [0.0; SIDE],
    };

    #[inline(always)]
    fn put(&mut self, batch: &Batch, ahead: f64, aside: f64) {
        for at in 0..SIDE {
            let slant = batch.slant[at];
            let y = batch.depth[at] + (ahead - aside * slant) * batch.shrink[at];
            self.y[at] = y;
            self.x[at] = batch.x0[at] + aside * batch.stretch[at] + y * slant;
        }
    }

    /// How far out of a side each is, and how far from the nearer of its ends, along it.
    #[inline(always)]
    fn from(&self, side: &Side, at: usize) -> (f64, f64) {
        let ((nx, ny), (ex, ey)) = (side.out(), side.along);
        let (dx, dy) = (self.x[at] - side.x, self.y[at] - side.y);
        let (out, along) = (nx * dx + ny * dy, ex * dx + ey * dy);
        (out, smaller(along, side.length - along))
    }
}
