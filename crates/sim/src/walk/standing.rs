//! Scenarios of one family who stand there, side by side: whom the leaf does not come to, and whom a device sees.

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
    pub(super) fn of(lane: &Lane, person: &Person, way: usize, batch: &Batch) -> Self {
        let mut stood = Self {
            clear: [EVER; SIDE],
            seen: [-EVER; SIDE],
            unseen: [EVER; SIDE],
        };
        let right = lane.right(way);
        stood.comes_to(lane, person, right, batch);
        for look in &person.looks[way] {
            let sides = lane.fields[look.device].sides(way);
            for &(part, radius) in &person.seen[look.device] {
                let part = &person.parts[part];
                let place = Place::of(batch, part.ahead, right * part.aside);
                stood.sees(sides, radius, &place);
            }
        }
        stood
    }

    /// How far before the end of its way the leaf would have to be to touch one of the cylinders.
    fn comes_to(&mut self, lane: &Lane, person: &Person, right: f64, batch: &Batch) {
        for &part in &person.touchable {
            let part = &person.parts[part];
            let radius = part.radius + SLACK;
            let place = Place::of(batch, part.ahead, right * part.aside);
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
    fn sees(&mut self, sides: &[Side], radius: f64, place: &Place) {
        let beam = sides.len() < 3;
        let mut off = [-EVER; SIDE];
        let mut beside = [-EVER; SIDE];
        for side in if beam { &sides[..1] } else { sides } {
            let ((nx, ny), (ex, ey)) = (side.out(), side.along);
            for at in 0..SIDE {
                let (dx, dy) = (place.x[at] - side.x, place.y[at] - side.y);
                let (out, along) = (nx * dx + ny * dy, ex * dx + ey * dy);
                let out = if beam { out.abs() } else { out };
                off[at] = greater(off[at], out);
                let over = smaller(along, side.length - along);
                beside[at] = greater(beside[at], smaller(over, radius - out.abs()));
            }
        }
        for at in 0..SIDE {
            let inside = if beam { -EVER } else { -off[at] };
            let within = smaller(radius - off[at], greater(beside[at], inside));
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
    fn of(batch: &Batch, ahead: f64, aside: f64) -> Self {
        let mut place = Self {
            x: [0.0; SIDE],
            y: [0.0; SIDE],
        };
        for at in 0..SIDE {
            let slant = batch.slant[at];
            let y = batch.depth[at] + (ahead - aside * slant) * batch.shrink[at];
            place.y[at] = y;
            place.x[at] = batch.x0[at] + aside * batch.stretch[at] + y * slant;
        }
        place
    }
}
