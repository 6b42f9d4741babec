//! Whether a leaf that swings may touch a cylinder that is known within bounds, and what that may meet.
//!
//! Seen from the leaf the middle of the circle is in a span along it and one across; where its distance from the leaf may
//! be the radius, neither more nor less, it may be touched, and the way out of the leaf goes through that middle.

use super::super::evaluate::{Found, IN_POST, PARTS};
use super::super::path::Case;
use super::super::prove::span::Span;
use super::super::prove::sweeps::{May, Spot, Sweeps, Touched};
use super::lane::SwingLane;
use super::room::{Disc, Side};
use super::wing::Wing;

/// More than rounding moves a place or a time, in meters and seconds: numbers below a thousand, some dozens of
/// operations, a mathematics library that is right to far more than nine digits.
pub(in super::super) const SLACK: f64 = 1e-9;

/// One leaf in one pass.
pub(super) struct Bound<'a> {
    pub lane: &'a SwingLane,
    pub wing: usize,
}

/// A circle as the leaf sees it: its middle, the nearest place of the leaf, how far that is off.
struct Seen {
    along: Span,
    across: Span,
    /// Way from the leaf to the middle.
    ahead: Span,
    out: Span,
    apart: Span,
    /// Where the middle is across the leaf.
    beside: Span,
}

impl Seen {
    /// What is left of it where the middle is the radius away, neither more nor less.
    fn touching(self, radius: f64) -> Option<Self> {
        let (less, more) = (radius - SLACK, radius + SLACK);
        let leg = |side: Span| {
            let side = side.abs();
            let least = Span::of(less).square() - Span::of(side.hi).square();
            let most = Span::of(more).square() - Span::of(side.lo).square();
            Span::new(least.root().lo, most.root().hi)
        };
        let along = |one: Span, other: Span| {
            let size = leg(other);
            let signed = if one.lo >= 0.0 {
                size
            } else if one.hi <= 0.0 {
                -size
            } else {
                Span::new(-size.hi, size.hi)
            };
            one.both(signed)
        };
        Some(Self {
            ahead: along(self.ahead, self.out)?,
            out: along(self.out, self.ahead)?,
            ..self
        })
    }

    /// Whether the side that goes ahead is touched wherever the leaf presses, given where the other side is: of a body beyond
    /// that one it goes away, but at its end.
    fn is_ahead(&self, low: f64) -> bool {
        self.beside.lo >= low + SLACK || (-self.ahead * low).hi <= 0.0
    }
}

impl Sweeps for Bound<'_> {
    fn may(&self, of: &Touched) -> Vec<May<'_>> {
        self.touch(of).into_iter().collect()
    }

    fn is_in(&self, body: usize, spots: &[Spot], place: Span) -> bool {
        let wing = self.of();
        let turned = wing.turned(place);
        wing.touchable[body].iter().any(|&at| {
            let radius = self.lane.people[body].parts[at].radius;
            wing.seen(&spots[at], turned).apart.hi < radius - SLACK
        })
    }

    fn reach(&self, body: usize, part: usize) -> (Span, Span) {
        let wing = self.of();
        let radius = self.lane.people[body].parts[part].radius;
        let (x, y) = wing.frame.shows((0.0, 0.0));
        let reach = wing.swung.reach + radius + SLACK;
        (
            Span::new(x - reach, x + reach),
            Span::new(y - reach, y + reach),
        )
    }

    fn crosses(&self) -> Span {
        Span::ALL
    }

    fn run(&self, case: &Case) -> Found {
        self.lane.run(case)
    }
}

impl Bound<'_> {
    fn of(&self) -> &Wing {
        &self.lane.wings[self.wing]
    }

    fn touch(&self, of: &Touched) -> Option<May<'_>> {
        let wing = self.of();
        let radius = self.lane.people[of.body].parts[of.part].radius;
        let turned = wing.turned(of.place);
        let seen = wing.seen(&of.spots[of.part], turned);
        if seen.apart.lo > radius + SLACK || seen.apart.hi < radius - SLACK {
            return None;
        }
        let seen = seen.touching(radius)?;
        let lever = seen.out * seen.along - seen.ahead * seen.across;
        let toward = if of.onward { lever.hi } else { -lever.lo };
        let (along, across) = wing.frame.turns_span(of.goes);
        let (sin, cos) = turned;
        let walks =
            seen.ahead * (along * cos + across * sin) + seen.out * (across * cos - along * sin);
        let parts = walks - lever * (of.speed * wing.swung.turn);
        if toward <= 0.0 || parts.lo > 2.0 * PARTS {
            return None;
        }
        let distance = (seen.along.square() + seen.across.square()).root();
        let skin = &wing.skin;
        let share = (
            skin.share(distance.lo - SLACK),
            skin.share(distance.hi + SLACK),
        );
        let (own, all) = self.room(of, distance.lo)?;
        let which = (of.body, of.part);
        let along = (seen.along.lo - SLACK, seen.along.hi + SLACK);
        let (springs, after) = if of.onward {
            let within = skin.within(which, along, share.0, seen.is_ahead(wing.swung.slab.low));
            (within.springs, within.after)
        } else {
            (vec![skin.bare()], Vec::new())
        };
        // How far the leaf reaches along the way out of it, times the radius.
        let side = seen.ahead * seen.along + seen.out * seen.across;
        let sinks = (wing.swung.reach - side.lo / radius).max(0.0) + SLACK;
        Some(May {
            springs,
            after,
            share,
            gap: own.max(0.0) + 2.0 * radius,
            room: all,
            sinks,
            press: if of.onward {
                &skin.press
            } else {
                &skin.press_back
            },
            far: (skin.far(share.0), skin.far(share.1)),
        })
    }

    /// Least room of the touched cylinder and of the whole body along the arc; nothing where the body surely is in
    /// something that stays.
    fn room(&self, of: &Touched, lever: f64) -> Option<(f64, f64)> {
        let wing = self.of();
        let lever = (lever - SLACK).max(0.0);
        let (mut own, mut all) = (f64::INFINITY, f64::INFINITY);
        for (at, spot) in of.spots.iter().enumerate() {
            let radius = self.lane.people[of.body].parts[at].radius;
            let off = 0.5 * spot.x.width().hypot(spot.y.width()) + SLACK;
            let plain = wing.frame.sees((spot.x.middle(), spot.y.middle()));
            let flip = |(x, y): (f64, f64)| if of.onward { (x, y) } else { (x, -y) };
            let mut angle = f64::INFINITY;
            for side in &wing.sides {
                let disc = |at, radius| Disc { at, radius };
                if side.apart(&disc(plain, radius)) + off < -IN_POST - SLACK {
                    return None;
                }
                let turned = Side::new(flip(side.from), flip(side.to));
                let wide = disc(flip(plain), radius + off);
                angle = angle.min((turned.angle_to(&wide) - SLACK).max(0.0));
            }
            let mut left = if angle.is_finite() {
                angle * lever
            } else {
                angle
            };
            for (other, leaf) in self.lane.wings.iter().enumerate() {
                if other != self.wing && leaf.touchable[of.body].contains(&at) {
                    let about = (spot.x.middle(), spot.y.middle());
                    let apart = leaf.nearest(leaf.may_stand(of), about) - off - radius - SLACK;
                    let far = plain.0.hypot(plain.1) + off;
                    left = left.min(if apart < 0.0 {
                        apart
                    } else {
                        lever * apart / far
                    });
                }
            }
            all = all.min(left);
            if at == of.part {
                own = left;
            }
        }
        Some((own, all))
    }
}

impl Wing {
    /// Sine and cosine of its angle at a place.
    fn turned(&self, place: Span) -> (Span, Span) {
        (place * self.swung.turn + self.swung.start).sin_cos()
    }

    fn seen(&self, spot: &Spot, (sin, cos): (Span, Span)) -> Seen {
        let (x, y) = self.frame.sees_span(spot.x, spot.y);
        let (u, v) = (x * cos + y * sin, y * cos - x * sin);
        let slab = self.swung.slab;
        let on = |of: Span, low: f64, high: f64| of.at_least(low).at_most(high);
        let (along, across) = (on(u, slab.from, slab.to), on(v, slab.low, slab.high));
        let off = |of: Span, low: f64, high: f64| {
            // It never falls with where the middle is.
            let one = |at: f64| Span::of(at) - at.clamp(low, high);
            Span::new(one(of.lo).lo, one(of.hi).hi)
        };
        let (ahead, out) = (off(u, slab.from, slab.to), off(v, slab.low, slab.high));
        Seen {
            along,
            across,
            ahead,
            out,
            apart: (ahead.square() + out.square()).root(),
            beside: v,
        }
    }

    /// From where to where it may stand in the end, beside the leaf that touches.
    fn may_stand(&self, of: &Touched) -> (f64, f64) {
        if !of.onward {
            return (0.0, 0.0);
        }
        let (earliest, latest) = of.told;
        let from = self.profile.place_at(earliest - self.delay) - SLACK;
        let to = if latest.is_finite() {
            self.stands(Some(latest + SLACK)) + SLACK
        } else {
            self.profile.travel
        };
        (from.clamp(0.0, self.profile.travel), to)
    }

    /// Least distance of a place of the plan from the leaf wherever it stands between two places of its way; below zero
    /// where it may be in it.
    fn nearest(&self, (from, to): (f64, f64), spot: (f64, f64)) -> f64 {
        let steps = 16;
        let piece = (to - from).max(0.0) / f64::from(steps);
        let arc = 0.5 * piece * self.swung.turn * self.swung.reach;
        let at = |step: i32| self.apart(from + piece * (f64::from(step) + 0.5), spot);
        (0..steps).map(at).fold(f64::INFINITY, f64::min) - arc
    }
}
