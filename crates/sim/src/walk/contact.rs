//! When a circle that moves straight first touches the end of the leaf: a certified iteration that never goes past it.
//!
//! In the frame of the leaf its end is a half strip, and the distance of a point from a half strip is convex in the point.
//! So for any time τ ahead within one stretch of constant accelerations
//!
//! ```text
//! φ(t + τ) ≥ φ + φ′·τ + ½·g·a·τ²        g·a: slope of the distance times the acceleration of the end
//! ```
//!
//! and no touch comes before the first root of that parabola. Stepping from root to root comes to the touch from one side,
//! quadratically where it is clean; before a flat face the parabola is the distance itself and one step is enough. Should
//! the steps run out, the answer is a touch.

use super::profile::Stretch;

/// A distance that counts as a touch, in meters.
const TOUCH: f64 = 1e-12;
/// A distance at which nothing is touched, in meters: far more than rounding does.
const CLEAR: f64 = 1e-9;
/// Steps within one stretch.
const STEPS: u32 = 64;

/// A circle on a straight piece of its path, at one speed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    pub from: f64,
    pub until: f64,
    /// Place at `from`.
    pub x: f64,
    pub y: f64,
    /// Speed.
    pub vx: f64,
    pub vy: f64,
    pub radius: f64,
}

/// A touch.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hit {
    pub time: f64,
    /// The circle is beside the leaf, not before its end.
    pub side: bool,
}

/// The end of the leaf: half its thickness, and where its end is before it starts.
#[derive(Debug, Clone, Copy)]
pub(super) struct End {
    pub half: f64,
    pub start: f64,
}

/// Distance, its rate, its bent part, and whether the circle is beside the leaf.
struct Gap {
    apart: f64,
    rate: f64,
    bend: f64,
    side: bool,
}

/// First touch on a piece of the path from a time on, if there is one.
pub(super) fn first(stretches: &[Stretch], end: End, piece: &Piece, after: f64) -> Option<Hit> {
    let mut time = piece.from.max(after);
    for stretch in stretches {
        if stretch.until <= time {
            continue;
        }
        let until = stretch.until.min(piece.until);
        if stays_ahead(stretch, end, piece, time, until) {
            time = until;
            if time >= piece.until {
                return None;
            }
            continue;
        }
        if let Some(hit) = in_stretch(stretch, end, piece, time, until) {
            return Some(hit);
        }
        time = until;
        if time >= piece.until {
            return None;
        }
    }
    None
}

/// Whether the circle is farther ahead of the end than its radius all along: within a stretch both go one way.
fn stays_ahead(stretch: &Stretch, end: End, piece: &Piece, from: f64, until: f64) -> bool {
    let x = |time: f64| piece.x + piece.vx * (time - piece.from);
    let farthest = stretch.place_at(from).max(stretch.place_at(until));
    end.start - farthest - x(from).max(x(until)) > piece.radius + CLEAR
}

fn in_stretch(stretch: &Stretch, end: End, piece: &Piece, from: f64, until: f64) -> Option<Hit> {
    let mut time = from;
    for _ in 0..STEPS {
        let gap = gap(stretch, end, piece, time);
        if gap.apart <= TOUCH {
            return Some(Hit {
                time,
                side: gap.side,
            });
        }
        let next = time + step(&gap)?;
        if next >= until {
            return None;
        }
        if next <= time {
            return Some(Hit {
                time,
                side: gap.side,
            });
        }
        time = next;
    }
    let side = gap(stretch, end, piece, time).side;
    Some(Hit { time, side })
}

/// First root of the parabola below the distance.
fn step(gap: &Gap) -> Option<f64> {
    let square = gap.rate * gap.rate - 4.0 * gap.bend * gap.apart;
    if square < 0.0 {
        return None;
    }
    let sum = square.sqrt() - gap.rate;
    (sum > 0.0).then(|| 2.0 * gap.apart / sum)
}

fn gap(stretch: &Stretch, end: End, piece: &Piece, time: f64) -> Gap {
    let gone = time - piece.from;
    let (x, y) = (piece.x + piece.vx * gone, piece.y + piece.vy * gone);
    let ahead = end.start - stretch.place_at(time) - x;
    let aside = y.abs() - end.half;
    let ahead_rate = -stretch.speed_at(time) - piece.vx;
    let aside_rate = if y < 0.0 { -piece.vy } else { piece.vy };
    if ahead <= 0.0 {
        return Gap {
            apart: aside - piece.radius,
            rate: aside_rate,
            bend: 0.0,
            side: true,
        };
    }
    let away = aside.max(0.0);
    let distance = if away > 0.0 {
        (ahead * ahead + away * away).sqrt()
    } else {
        ahead
    };
    let slope = ahead / distance;
    Gap {
        apart: distance - piece.radius,
        rate: slope * ahead_rate + away / distance * aside_rate,
        bend: -0.5 * slope * stretch.rate,
        side: false,
    }
}
