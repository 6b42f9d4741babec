//! When a cylinder first touches a leaf that turns in the upright plane: a certified iteration that never goes past it.
//!
//! While a cylinder is in the thickness of the leaf, the upright box about it counts. Seen from the leaf the corners of
//! the box move on bent lines. With n the way from the leaf to the box at a time t, and h how far the leaf reaches along n,
//!
//! ```text
//! apart(t + τ) ≥ least over the corners p of  n·p − h + n·p′·τ − ½·B·τ²
//! B = ρ·(|α″| + ω²) + 2·ω·|w|      ρ: farthest from the pivot line, w: speed of the box
//! ```

use super::super::profile::Stretch;
use super::super::swing::{Hit, Swung, root};

/// A distance that counts as a touch, in meters.
const TOUCH: f64 = 1e-12;
/// Steps within one stretch.
const STEPS: u32 = 1024;

/// An upright box that moves along the gate line, as the leaf sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Crate {
    pub from: f64,
    pub until: f64,
    /// When its middle is at its place.
    pub when: f64,
    pub at: (f64, f64),
    pub speed: f64,
    /// Half its sizes.
    pub wide: f64,
    pub tall: f64,
}

/// The nearest two points.
struct Near {
    apart: f64,
    /// Way from the leaf to the box.
    way: (f64, f64),
    along: f64,
    across: f64,
}

impl Near {
    fn hit(&self, time: f64) -> Hit {
        Hit {
            time,
            along: self.along,
            across: self.across,
            ahead: self.way.0,
            out: self.way.1,
            lever: self.way.1 * self.along - self.way.0 * self.across,
        }
    }
}

impl Crate {
    fn corners(&self, time: f64) -> [(f64, f64); 4] {
        let x = self.at.0 + self.speed * (time - self.when);
        [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(|(a, b)| (x + a * self.wide, self.at.1 + b * self.tall))
    }

    fn farthest(&self) -> f64 {
        [self.from, self.until]
            .iter()
            .flat_map(|time| self.corners(*time))
            .map(|(x, z)| x.hypot(z))
            .fold(0.0, f64::max)
    }
}

/// First touch of a box from a time on, if there is one.
pub(super) fn first(leaf: &Swung, stretches: &[Stretch], of: &Crate, after: f64) -> Option<Hit> {
    let mut time = of.from.max(after);
    if time >= of.until {
        return None;
    }
    let of = Crate { from: time, ..*of };
    for stretch in stretches {
        if stretch.until <= time {
            continue;
        }
        let until = stretch.until.min(of.until);
        if let Some(hit) = in_stretch(leaf, stretch, &of, time, until) {
            return Some(hit);
        }
        time = until;
        if time >= of.until {
            return None;
        }
    }
    None
}

fn in_stretch(leaf: &Swung, stretch: &Stretch, of: &Crate, from: f64, until: f64) -> Option<Hit> {
    let fastest = stretch
        .speed_at(from)
        .abs()
        .max(stretch.speed_at(until).abs())
        * leaf.turn;
    let within = Crate { from, until, ..*of };
    let bend = 0.5
        * (within.farthest() * (stretch.rate.abs() * leaf.turn + fastest * fastest)
            + 2.0 * fastest * of.speed.abs());
    let mut time = from;
    for _ in 0..STEPS {
        let (near, seen, (sin, cos)) = look(leaf, stretch, of, time);
        if near.apart <= TOUCH {
            return Some(near.hit(time));
        }
        let omega = stretch.speed_at(time) * leaf.turn;
        let speed = (of.speed * cos, -of.speed * sin);
        let next = time + step(leaf, &near, &seen, omega, speed, bend)?;
        if next >= until {
            return None;
        }
        if next <= time {
            return Some(near.hit(time));
        }
        time = next;
    }
    // So many steps are as good as a touch.
    Some(look(leaf, stretch, of, time).0.hit(time))
}

/// The nearest points at a time, the corners of the box as the leaf sees them, sine and cosine of its angle.
fn look(
    leaf: &Swung,
    stretch: &Stretch,
    of: &Crate,
    time: f64,
) -> (Near, [(f64, f64); 4], (f64, f64)) {
    let (sin, cos) = (leaf.start + stretch.place_at(time) * leaf.turn).sin_cos();
    let corners = of.corners(time);
    let seen = corners.map(|(x, z)| (x * cos + z * sin, z * cos - x * sin));
    (nearest(leaf, &seen, of, (sin, cos)), seen, (sin, cos))
}

/// Time to the first root of the parabolas below the distances of the corners.
fn step(
    leaf: &Swung,
    near: &Near,
    seen: &[(f64, f64); 4],
    omega: f64,
    speed: (f64, f64),
    bend: f64,
) -> Option<f64> {
    let (nu, nv) = near.way;
    let slab = leaf.slab;
    let reach = (nu * slab.from).max(nu * slab.to) + (nv * slab.low).max(nv * slab.high);
    let mut first: Option<f64> = None;
    for (u, v) in seen {
        // No corner is nearer than the nearest place: rounding of the way to it must not say so.
        let apart = (nu * u + nv * v - reach).max(near.apart);
        let rate = nu * (omega * v + speed.0) + nv * (speed.1 - omega * u);
        let Some(root) = root(apart, rate, bend) else {
            continue;
        };
        first = Some(first.map_or(root, |known| known.min(root)));
    }
    first
}

fn nearest(leaf: &Swung, seen: &[(f64, f64); 4], of: &Crate, (sin, cos): (f64, f64)) -> Near {
    let slab = leaf.slab;
    // A place of the leaf, and the way from it to the box: nothing of it is rounded that is nothing.
    let mut pairs = [((0.0, 0.0), (0.0, 0.0)); 8];
    for (pair, &(u, v)) in pairs.iter_mut().zip(seen) {
        let on_leaf = (u.clamp(slab.from, slab.to), v.clamp(slab.low, slab.high));
        *pair = (on_leaf, (u - on_leaf.0, v - on_leaf.1));
    }
    // The box in its own directions, about its first corner.
    let (base, wide, tall) = (seen[0], 2.0 * of.wide, 2.0 * of.tall);
    let corners = [
        (slab.from, slab.low),
        (slab.to, slab.low),
        (slab.to, slab.high),
        (slab.from, slab.high),
    ];
    for (pair, corner) in pairs.iter_mut().skip(4).zip(corners) {
        let (du, dv) = (corner.0 - base.0, corner.1 - base.1);
        let (x, z) = (du * cos - dv * sin, du * sin + dv * cos);
        let (x, z) = (x.clamp(0.0, wide) - x, z.clamp(0.0, tall) - z);
        *pair = (corner, (x * cos + z * sin, z * cos - x * sin));
    }
    let mut near = nearest_of(&pairs, slab.to);
    if near.apart > 0.0 && overlap(leaf, seen, of, (sin, cos)) {
        near.apart = 0.0;
        near.way = (0.0, 0.0);
    }
    near
}

/// A place on the leaf, and the way from it to the body.
type Pair = ((f64, f64), (f64, f64));

/// The nearest of pairs, the first of several that are as near; the end of the leaf where none is near.
fn nearest_of(pairs: &[Pair; 8], end: f64) -> Near {
    let squared = pairs.map(|(_, (du, dv))| du * du + dv * dv);
    // A root is taken only of what may be the least once it is rounded.
    let least = squared.into_iter().fold(f64::INFINITY, f64::min);
    let most = least * (1.0 + 1e-12) + 1e-200;
    let mut near = Near {
        apart: f64::INFINITY,
        way: (0.0, 0.0),
        along: end,
        across: 0.0,
    };
    let close = pairs.iter().zip(squared).filter(|(_, it)| *it <= most);
    for ((on_leaf, (du, dv)), _) in close {
        let (du, dv) = (*du, *dv);
        let apart = du.hypot(dv);
        if apart < near.apart {
            let way = if apart > 0.0 {
                (du / apart, dv / apart)
            } else {
                (0.0, 0.0)
            };
            near = Near {
                apart,
                way,
                along: on_leaf.0,
                across: on_leaf.1,
            };
        }
    }
    near
}

/// Whether no side of either parts the two.
fn overlap(leaf: &Swung, seen: &[(f64, f64); 4], of: &Crate, (sin, cos): (f64, f64)) -> bool {
    let slab = leaf.slab;
    let span = |values: [f64; 4]| {
        values
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
                (low.min(*value), high.max(*value))
            })
    };
    let meets = |(low, high): (f64, f64), from: f64, to: f64| low < to && high > from;
    let corners = [
        (slab.from, slab.low),
        (slab.to, slab.low),
        (slab.to, slab.high),
        (slab.from, slab.high),
    ];
    let (bx, bz) = (
        seen[0].0 * cos - seen[0].1 * sin,
        seen[0].0 * sin + seen[0].1 * cos,
    );
    meets(span(seen.map(|corner| corner.0)), slab.from, slab.to)
        && meets(span(seen.map(|corner| corner.1)), slab.low, slab.high)
        && meets(
            span(corners.map(|(u, v)| u * cos - v * sin)),
            bx,
            bx + 2.0 * of.wide,
        )
        && meets(
            span(corners.map(|(u, v)| u * sin + v * cos)),
            bz,
            bz + 2.0 * of.tall,
        )
}
