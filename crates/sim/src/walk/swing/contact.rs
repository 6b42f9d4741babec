//! When a circle that moves straight first touches a leaf that turns: a certified iteration that never goes past it.
//!
//! Seen from the leaf the circle's middle p moves on a bent line, and the distance of a point from the leaf is convex in
//! the point. With n the way from the leaf to p at a time t, and |n·p‴| ≤ J as long as the circle is within reach,
//!
//! ```text
//! φ(t + τ) ≥ φ + n·(p(t + τ) − p(t)) ≥ φ + φ′·τ + ½·n·p″·τ² − ⅙·J·τ³
//! n·p″ = α·(Jn·p) − ω²·(n·p) + 2·ω·(Jn·w)      Jn: n turned by a quarter turn, w: speed of the circle
//! J = ρ·(3·|α|·ω + ω³) + 3·(|α| + ω²)·|w|      ρ: farthest from the hinge line, ω: fastest turn in the stretch
//! ```
//!
//! Up to a time T ahead the last two terms are no less than ½·(n·p″ − ⅓·J·T)·τ², so no touch comes before the first root
//! of that parabola, or before T where that is sooner. T is twice the time that the circle would take at its rate: it gets
//! small with the distance, and the parabola becomes the true one. Should the steps run out, the answer is a touch.

use super::super::profile::Stretch;
use super::angle::sin_cos;
use super::gap::{Gap, Seen};
use super::room::Side;
use std::f64::consts::TAU;

/// A distance that counts as a touch, in meters.
pub(super) const TOUCH: f64 = 1e-12;
/// A distance at which a circle around many is left to each of them, in meters.
pub(super) const NEAR: f64 = 0.05;
/// Steps within one stretch.
pub(super) const STEPS: u32 = 64;

/// The leaf in its own frame: along itself from the hinge line, and across.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Slab {
    pub from: f64,
    pub to: f64,
    pub low: f64,
    pub high: f64,
}

/// A leaf that turns.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Swung {
    pub slab: Slab,
    /// Turn for each unit of place.
    pub turn: f64,
    /// Angle at its start.
    pub start: f64,
    /// No point of it is farther from the hinge line.
    pub reach: f64,
    /// No point of it that is not ahead of the hinge line, or across it, is farther from that.
    root: f64,
    corners: [Corner; 4],
}

/// A corner of a leaf in its own frame, also by its distance and its bearing from the hinge line.
#[derive(Debug, Clone, Copy)]
struct Corner {
    along: f64,
    across: f64,
    far: f64,
    bearing: f64,
}

/// A circle on a straight piece of its path, at one speed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    pub from: f64,
    pub until: f64,
    /// When it is at its place.
    pub when: f64,
    pub at: (f64, f64),
    pub speed: (f64, f64),
    pub radius: f64,
}

/// A touch, with the leaf seen in its own frame.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Hit {
    pub time: f64,
    /// Where the leaf is touched.
    pub along: f64,
    pub across: f64,
    /// Way out of the leaf there, along it and across it.
    pub ahead: f64,
    pub out: f64,
    /// How far the leaf moves toward the circle for each unit that it turns.
    pub lever: f64,
}

/// First root ahead of the parabola apart + rate·τ − bend·τ²; nothing where it has none.
pub(in super::super) fn root(apart: f64, rate: f64, bend: f64) -> Option<f64> {
    let square = (rate * rate + 4.0 * bend * apart).sqrt();
    if rate <= 0.0 {
        let sum = square - rate;
        (sum > 0.0).then(|| 2.0 * apart / sum)
    } else {
        (bend > 0.0).then(|| (rate + square) / (2.0 * bend))
    }
}

impl Slab {
    fn corners(&self) -> [(f64, f64); 4] {
        [
            (self.from, self.low),
            (self.to, self.low),
            (self.to, self.high),
            (self.from, self.high),
        ]
    }
}

impl Piece {
    fn place(&self, time: f64) -> (f64, f64) {
        let gone = time - self.when;
        (
            self.at.0 + self.speed.0 * gone,
            self.at.1 + self.speed.1 * gone,
        )
    }

    /// The part of it in which its middle is within a distance from zero.
    pub(super) fn within(mut self, distance: f64) -> Option<Self> {
        let ((x, y), (u, v)) = (self.at, self.speed);
        let (square, half) = (u * u + v * v, x * u + y * v);
        let rest = x * x + y * y - distance * distance;
        if square <= 0.0 {
            return (rest <= 0.0).then_some(self);
        }
        let root = half * half - square * rest;
        if root < 0.0 {
            return None;
        }
        let root = root.sqrt();
        self.from = self.from.max(self.when + (-half - root) / square);
        self.until = self.until.min(self.when + (-half + root) / square);
        (self.from < self.until).then_some(self)
    }
}

impl Swung {
    pub(in super::super) fn new(slab: Slab, length: f64, start: f64) -> Self {
        let across = slab.low.abs().max(slab.high.abs());
        Self {
            slab,
            turn: 1.0 / length,
            start,
            reach: slab.to.hypot(across),
            root: slab.from.min(0.0).hypot(across),
            corners: slab.corners().map(|(along, across)| Corner {
                along,
                across,
                far: along.hypot(across),
                bearing: across.atan2(along),
            }),
        }
    }

    /// How far the leaf gets beyond a touch, along the way out of it there, between the place of the touch and another:
    /// what is there, on the other side of the line across that way, is pressed no farther. Without end where no way is
    /// known.
    pub(in super::super) fn deepest(&self, hit: &Hit, place: f64, goes_to: f64) -> f64 {
        if hit.ahead.abs() + hit.out.abs() <= 0.0 {
            return f64::INFINITY;
        }
        let turned = (goes_to - place) * self.turn;
        let way = hit.out.atan2(hit.ahead);
        let (sin, cos) = turned.sin_cos();
        let farthest = self.corners.map(|corner| {
            // How far the corner has to turn to be right in the way.
            let left = way - corner.bearing;
            let left = if left < 0.0 { left + TAU } else { left };
            let left = if turned < 0.0 { TAU - left } else { left };
            if left <= turned.abs() {
                corner.far
            } else {
                hit.ahead * (corner.along * cos - corner.across * sin)
                    + hit.out * (corner.along * sin + corner.across * cos)
            }
        });
        let here = hit.ahead * hit.along + hit.out * hit.across;
        let farthest = farthest.into_iter().fold(here, f64::max);
        farthest - here
    }

    /// Sine and cosine of the angle at a place.
    fn angle(&self, place: f64) -> (f64, f64) {
        (self.start + place * self.turn).sin_cos()
    }

    pub(in super::super) fn corners(&self, place: f64) -> [(f64, f64); 4] {
        let (sin, cos) = self.angle(place);
        let seen = |(along, across)| (along * cos - across * sin, along * sin + across * cos);
        self.slab.corners().map(seen)
    }

    /// Whether a side is in the leaf, which is taken so much smaller all around.
    pub(super) fn cuts(&self, place: f64, side: &Side, smaller: f64) -> bool {
        let (sin, cos) = self.angle(place);
        let seen = |(x, y): (f64, f64)| (x * cos + y * sin, y * cos - x * sin);
        let (from, to) = (seen(side.from), seen(side.to));
        let slab = self.slab;
        let (mut first, mut last) = (0.0_f64, 1.0_f64);
        for (at, end, low, high) in [
            (from.0, to.0, slab.from, slab.to),
            (from.1, to.1, slab.low, slab.high),
        ] {
            let (low, high, run) = (low + smaller, high - smaller, end - at);
            if run.abs() < 1e-12 {
                if at <= low || at >= high {
                    return false;
                }
                continue;
            }
            let (a, b) = ((low - at) / run, (high - at) / run);
            first = first.max(a.min(b));
            last = last.min(a.max(b));
        }
        first < last
    }

    /// First touch on a piece of a path from a time on, if there is one.
    pub(super) fn first(&self, stretches: &[Stretch], piece: &Piece, after: f64) -> Option<Hit> {
        self.search(stretches, piece, after, TOUCH)
    }

    /// A time before which the circle surely is not touched, from a time on; nothing where it never is.
    pub(super) fn nears(&self, stretches: &[Stretch], piece: &Piece, after: f64) -> Option<f64> {
        self.search(stretches, piece, after, NEAR)
            .map(|hit| hit.time)
    }

    /// Searches a piece until the distance is small enough.
    fn search(&self, stretches: &[Stretch], piece: &Piece, after: f64, touch: f64) -> Option<Hit> {
        let piece = self.meets(stretches, piece, after)?;
        let mut time = piece.from;
        for stretch in stretches {
            if stretch.until <= time {
                continue;
            }
            let until = stretch.until.min(piece.until);
            if let Some(hit) = self.in_stretch(stretch, &piece, (time, until), touch) {
                return Some(hit);
            }
            time = until;
            if time >= piece.until {
                return None;
            }
        }
        None
    }

    /// The part of a piece in which the circle may touch the leaf; nothing where it surely does not.
    fn meets(&self, stretches: &[Stretch], piece: &Piece, after: f64) -> Option<Piece> {
        let piece = self.reaches(piece, after)?;
        (!self.passes(stretches, &piece)).then_some(piece)
    }

    /// The part of a piece from a time on in which the circle is within reach of the leaf; nothing where it never is.
    pub(super) fn reaches(&self, piece: &Piece, after: f64) -> Option<Piece> {
        let mut piece = piece.within(self.reach + piece.radius)?;
        piece.from = piece.from.max(after);
        (piece.from < piece.until).then_some(piece)
    }

    /// Whether the circle surely stays before the leaf, or behind it, by where the leaf is at the ends of the time.
    fn passes(&self, stretches: &[Stretch], piece: &Piece) -> bool {
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for stretch in stretches {
            if stretch.until >= piece.from && stretch.from <= piece.until {
                for time in [piece.from.max(stretch.from), piece.until.min(stretch.until)] {
                    let place = stretch.place_at(time);
                    (least, most) = (least.min(place), most.max(place));
                }
            }
        }
        if (most - least) * self.turn > 1.5 {
            return false;
        }
        let ends = [piece.place(piece.from), piece.place(piece.until)];
        let clear = piece.radius + self.root;
        let (sin, cos) = sin_cos(self.start + most * self.turn);
        if ends.iter().all(|(x, y)| y * cos - x * sin > clear) {
            return true;
        }
        let (sin, cos) = sin_cos(self.start + least * self.turn);
        ends.iter().all(|(x, y)| y * cos - x * sin < -clear)
    }

    fn in_stretch(
        &self,
        stretch: &Stretch,
        piece: &Piece,
        (from, until): (f64, f64),
        touch: f64,
    ) -> Option<Hit> {
        let jerk = self.jerk(stretch, piece, from, until);
        let mut time = from;
        for _ in 0..STEPS {
            let gap = self.gap(stretch, piece, time);
            if gap.apart <= touch {
                return Some(gap.hit(time));
            }
            let next = time + gap.step(jerk, until - time);
            if next >= until {
                return None;
            }
            if next <= time {
                return Some(gap.hit(time));
            }
            time = next;
        }
        Some(self.hit(stretch, piece, time))
    }

    fn gap(&self, stretch: &Stretch, piece: &Piece, time: f64) -> Gap {
        let place = stretch.place_at(time);
        let turns = (stretch.speed_at(time) * self.turn, stretch.rate * self.turn);
        let seen = self.seen(place, piece.place(time), piece.speed);
        seen.gap(&self.slab, turns, piece.radius)
    }

    /// A place and a speed of the plan as a leaf sees them that is at a place of its way.
    #[allow(
        clippy::inline_always,
        reason = "measured: lanes stay lanes only where the call is gone"
    )]
    #[inline(always)]
    pub(super) fn seen(&self, place: f64, (x, y): (f64, f64), (dx, dy): (f64, f64)) -> Seen {
        let (sin, cos) = sin_cos(self.start + place * self.turn);
        Seen {
            at: (x * cos + y * sin, y * cos - x * sin),
            speed: (dx * cos + dy * sin, dy * cos - dx * sin),
        }
    }

    /// How fast the bend of a way may change, as the leaf sees it.
    #[inline]
    pub(super) fn jerk(&self, stretch: &Stretch, piece: &Piece, from: f64, until: f64) -> f64 {
        let (first, last) = (stretch.speed_at(from), stretch.speed_at(until));
        let fastest = first.abs().max(last.abs()) * self.turn;
        let (turns, rate) = (fastest * fastest, stretch.rate.abs() * self.turn);
        let farthest = self.reach + piece.radius;
        let (dx, dy) = piece.speed;
        let speed = (dx * dx + dy * dy).sqrt();
        farthest * fastest * (3.0 * rate + turns) + 3.0 * (rate + turns) * speed
    }

    /// A touch at a time of a stretch.
    pub(super) fn hit(&self, stretch: &Stretch, piece: &Piece, time: f64) -> Hit {
        self.gap(stretch, piece, time).hit(time)
    }
}
