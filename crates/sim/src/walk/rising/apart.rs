//! The directions along which a leaf that turns and an upright box may be parted.

use super::super::evaluate::PARTS;
use super::super::prove::span::Span;
use super::super::prove::sweeps::Spot;
use super::super::swing::{SLACK, Swung};
use super::lane::{RisingLane, Shape};

/// A leaf that turns, with where its pivot line is and the signs of its own directions.
#[derive(Clone, Copy)]
pub(super) struct Turning<'a> {
    pub swung: &'a Swung,
    pub pivot: f64,
    pub height: f64,
    pub along: f64,
    pub upward: f64,
    pub sin: Span,
    pub cos: Span,
}

/// An upright box about a cylinder, seen from the pivot line: least and greatest of each, in the plan's directions.
#[derive(Clone, Copy)]
pub(super) struct Crate {
    pub x: (Span, Span),
    pub z: (Span, Span),
}

/// Least and greatest along a direction.
pub(super) type Ends = (Span, Span);

/// How leaf and body come together.
pub(super) struct Coming {
    pub onward: bool,
    /// How fast the leaf turns.
    pub turns: Span,
    /// How fast the body goes in the leaf's own x.
    pub speed: Span,
}

/// A direction along which leaf and body may be parted, in the leaf's own frame, how far both reach along it, and where along
/// the leaf and across it they touch then.
#[derive(Clone, Copy)]
pub(super) struct Parted {
    pub ahead: Span,
    pub out: Span,
    pub side: Span,
    pub at: Ends,
}

impl Parted {
    /// Whether the leaf may move toward the body along it, and the two may have come together so.
    pub(super) fn may_press(&self, leaf: &Turning, of: &Coming) -> bool {
        let (along, across) = self.at;
        let lever = self.out * along - self.ahead * across;
        let toward = if of.onward { lever.hi } else { -lever.lo };
        let walks = of.speed * (self.ahead * leaf.cos - self.out * leaf.sin);
        let parts = walks - lever * of.turns;
        toward > 0.0 && parts.lo <= 2.0 * PARTS
    }
}

/// What is so along every direction along which they may be parted, and between two of them.
pub(super) struct All {
    /// The side that goes ahead is touched.
    pub ahead: bool,
    /// The body is pressed upward.
    pub upward: bool,
    /// The leaf never gets farther along a direction than its farthest point is from the pivot line.
    pub deepest: f64,
    /// Where along the leaf and across it they touch.
    pub at: Ends,
}

impl All {
    /// Nothing where they cannot touch.
    pub(super) fn of(leaf: &Turning, parted: &[Option<Parted>; 8]) -> Option<Self> {
        let ways = || parted.iter().flatten();
        let hull = |one: Ends, other: Ends| (one.0.hull(other.0), one.1.hull(other.1));
        let at = ways().map(|one| one.at).reduce(hull)?;
        let up = |one: &Parted| (one.ahead * leaf.sin + one.out * leaf.cos) * leaf.upward;
        let deepest = ways().map(|one| leaf.swung.reach - one.side.lo);
        let deepest = deepest.fold(0.0, f64::max) + SLACK;
        Some(Self {
            ahead: ways().all(|one| one.out.lo >= 0.0),
            upward: ways().all(|one| up(one).lo > 1e-8),
            // Between two directions that are square to each other at most.
            deepest: if ways().count() > 1 {
                1.5 * deepest
            } else {
                deepest
            },
            at,
        })
    }
}

impl RisingLane {
    /// The leaf at a place of its way, where it turns.
    pub(super) fn turned(&self, place: Span) -> Option<Turning<'_>> {
        let Shape::Turning {
            swung,
            pivot,
            height,
            along,
            upward,
        } = &self.shape
        else {
            return None;
        };
        let (sin, cos) = (place * swung.turn + swung.start).sin_cos();
        Some(Turning {
            swung,
            pivot: *pivot,
            height: *height,
            along: *along,
            upward: *upward,
            sin,
            cos,
        })
    }
}

impl Turning<'_> {
    /// The box about a cylinder of a body.
    pub(super) fn sees(
        &self,
        lane: &RisingLane,
        (body, part): (usize, usize),
        spot: &Spot,
    ) -> Crate {
        let radius = lane.people[body].parts[part].radius;
        let (bottom, top) = lane.heights[body][part];
        let x = (spot.x - self.pivot) * self.along;
        let z = |height: f64| (Span::of(height) - self.height) * self.upward;
        let (low, high) = if self.upward > 0.0 {
            (z(bottom), z(top))
        } else {
            (z(top), z(bottom))
        };
        Crate {
            x: (x - radius, x + radius),
            z: (low, high),
        }
    }

    /// Corners of the leaf in its own directions, and in those of the plan.
    fn corners(&self) -> ([Ends; 4], [Ends; 4]) {
        let slab = self.swung.slab;
        let corners = [
            (slab.from, slab.low),
            (slab.to, slab.low),
            (slab.to, slab.high),
            (slab.from, slab.high),
        ];
        let own = corners.map(|(along, across)| (Span::of(along), Span::of(across)));
        let in_plan = own.map(|(along, across)| {
            let x = self.cos * along - self.sin * across;
            (x, self.sin * along + self.cos * across)
        });
        (own, in_plan)
    }

    /// Corners of a body along the leaf and across it.
    fn seen(&self, of: &Crate) -> [Ends; 4] {
        let corners = [
            (of.x.0, of.z.0),
            (of.x.1, of.z.0),
            (of.x.1, of.z.1),
            (of.x.0, of.z.1),
        ];
        corners.map(|(x, z)| (x * self.cos + z * self.sin, z * self.cos - x * self.sin))
    }

    /// The directions along which leaf and body may touch, where they share such places.
    pub(super) fn parted(&self, of: &Crate, shared: Ends) -> [Option<Parted>; 8] {
        let slab = self.swung.slab;
        let (one, none) = (Span::of(1.0), Span::of(0.0));
        let (own, in_plan) = self.corners();
        let seen = self.seen(of);
        let way = |(ahead, out): (Span, Span), leaf: Span, body: Span, at: Option<Ends>| {
            let apart = body - leaf;
            (apart.lo <= SLACK && apart.hi >= -SLACK).then_some(Parted {
                ahead,
                out,
                side: leaf.both(body).unwrap_or(leaf.hull(body)),
                at: at?,
            })
        };
        // Along a side of the body a corner of the leaf touches, along one of the leaf a corner of the body.
        let by_body = |way_of: (Span, Span), values: [Span; 4], body: Ends| {
            let (least, most) = ends(values);
            [
                way(way_of, most, body.0, farthest(own, values, shared)),
                way(
                    (-way_of.0, -way_of.1),
                    -least,
                    -body.1,
                    farthest(own, values.map(|value| -value), shared),
                ),
            ]
        };
        let by_leaf = |way_of: (Span, Span), values: [Span; 4], (low, high): (f64, f64)| {
            let (least, most) = ends(values);
            [
                way(
                    way_of,
                    Span::of(high),
                    least,
                    farthest(seen, values.map(|value| -value), shared),
                ),
                way(
                    (-way_of.0, -way_of.1),
                    Span::of(-low),
                    -most,
                    farthest(seen, values, shared),
                ),
            ]
        };
        let [right, left] = by_body((self.cos, -self.sin), in_plan.map(|(x, _)| x), of.x);
        let [up, down] = by_body((self.sin, self.cos), in_plan.map(|(_, z)| z), of.z);
        let [tip, heel] = by_leaf((one, none), seen.map(|(u, _)| u), (slab.from, slab.to));
        let [top, under] = by_leaf((none, one), seen.map(|(_, v)| v), (slab.low, slab.high));
        [right, left, up, down, tip, heel, top, under]
    }

    /// Where along the leaf and across it a point may be that both have; nothing where they surely are apart.
    pub(super) fn shared(&self, of: &Crate) -> Option<Ends> {
        let slab = self.swung.slab;
        let loose = |of: &Ends| Span::new(of.0.lo - SLACK, of.1.hi + SLACK);
        let (along, across) = spans(self.seen(of));
        let (x, z) = spans(self.corners().1);
        let mut along = loose(&along).both(Span::new(slab.from, slab.to))?;
        let mut across = loose(&across).both(Span::new(slab.low, slab.high))?;
        let mut x = loose(&x).both(loose(&of.x))?;
        let mut z = loose(&z).both(loose(&of.z))?;
        for _ in 0..2 {
            let wide = |of: Span| Span::new(of.lo - SLACK, of.hi + SLACK);
            along = along.both(wide(x * self.cos + z * self.sin))?;
            across = across.both(wide(z * self.cos - x * self.sin))?;
            x = x.both(wide(along * self.cos - across * self.sin))?;
            z = z.both(wide(along * self.sin + across * self.cos))?;
        }
        Some((along, across))
    }

    /// Least height above the ground of a point that both have.
    pub(super) fn lowest(&self, along: Span, across: Span, of: &Crate) -> f64 {
        let z = along * self.sin + across * self.cos;
        let body = Span::new(of.z.0.lo - SLACK, of.z.1.hi + SLACK);
        let z = z.both(body).unwrap_or(z);
        (z * self.upward + self.height).lo
    }

    /// Whether surely no side of either parts the two.
    pub(super) fn is_in(&self, of: &Crate) -> bool {
        let meets =
            |one: &Ends, other: &Ends| (one.1 - other.0).lo > SLACK && (other.1 - one.0).lo > SLACK;
        let (x, z) = spans(self.corners().1);
        let (along, across) = spans(self.seen(of));
        let slab = self.swung.slab;
        let leaf = |low: f64, high: f64| (Span::of(low), Span::of(high));
        meets(&x, &of.x)
            && meets(&z, &of.z)
            && meets(&leaf(slab.from, slab.to), &along)
            && meets(&leaf(slab.low, slab.high), &across)
    }
}

/// Where those of four corners are that may be the farthest by their values, as far as leaf and body share it; nothing where they do not.
fn farthest(corners: [Ends; 4], values: [Span; 4], shared: Ends) -> Option<Ends> {
    let most = values
        .map(|value| value.lo)
        .into_iter()
        .fold(f64::NEG_INFINITY, f64::max);
    let may = corners
        .into_iter()
        .zip(values)
        .filter(|(_, value)| value.hi >= most - SLACK);
    let hull = |one: Ends, other: Ends| (one.0.hull(other.0), one.1.hull(other.1));
    let (along, across) = may.map(|(corner, _)| corner).reduce(hull)?;
    let wide = |of: Span| Span::new(of.lo - SLACK, of.hi + SLACK);
    Some((wide(along).both(shared.0)?, wide(across).both(shared.1)?))
}

/// Least and greatest of corners each way.
fn spans(of: [Ends; 4]) -> (Ends, Ends) {
    (
        ends(of.map(|corner| corner.0)),
        ends(of.map(|corner| corner.1)),
    )
}

fn ends(of: [Span; 4]) -> Ends {
    let [a, b, c, d] = of;
    (a.min(b).min(c.min(d)), a.max(b).max(c.max(d)))
}
