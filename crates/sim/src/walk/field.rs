//! Where a straight path goes through a field: the field without dents, widened all around by the radius of what goes.
//!
//! The widened field is bounded by its sides, moved out, and by circles about its corners. Every place where the path
//! crosses a moved side between its ends, or cuts a corner's circle, is in the field, and the first and the last of all
//! of them are where the path enters and leaves.

use super::device::Spot;
use super::world::Pass;
use quantity::Quantity as _;

/// What is farther than this from a field is surely not in it, in meters: far more than rounding does.
const CLEAR: f64 = 1e-9;

/// A field in the plain numbers of one pass, as seen by those who go in and by those who go out.
#[derive(Debug, Clone)]
pub(super) struct Field {
    /// Sides for each way.
    sides: [Vec<Side>; 2],
    /// Least depth of it for each way.
    pub begins: [f64; 2],
    /// From the presence to the output.
    pub response: f64,
}

/// One side: its first corner, its direction, its length; the field lies to its left.
#[derive(Debug, Clone, Copy)]
pub(super) struct Side {
    pub x: f64,
    pub y: f64,
    pub along: (f64, f64),
    pub length: f64,
}

impl Side {
    /// The way out of the field.
    pub(super) fn out(&self) -> (f64, f64) {
        (self.along.1, -self.along.0)
    }
}

impl Field {
    pub(super) fn new(pass: &Pass, corners: &[Spot], response: f64) -> Self {
        let sides = [1.0, -1.0].map(|way| sides(pass, corners, way));
        let least = |sides: &[Side]| {
            sides
                .iter()
                .map(|side| side.y)
                .fold(f64::INFINITY, f64::min)
        };
        Self {
            begins: [least(&sides[0]), least(&sides[1])],
            sides,
            response,
        }
    }

    /// Its sides for those who go a way: in, out.
    pub(super) fn sides(&self, way: usize) -> &[Side] {
        &self.sides[way]
    }

    /// Whether a circle that goes on a path is in it when its middle is at a depth.
    pub(super) fn holds(&self, way: usize, x0: f64, slant: f64, radius: f64, depth: f64) -> bool {
        let x = x0 + depth * slant;
        let (mut beside, mut inside) = (false, self.sides[way].len() > 2);
        for side in &self.sides[way] {
            let ((nx, ny), (ex, ey)) = (side.out(), side.along);
            let (dx, dy) = (x - side.x, depth - side.y);
            let (off, along) = (nx * dx + ny * dy, ex * dx + ey * dy);
            if off > radius + CLEAR {
                return false;
            }
            let over = (0.0..=side.length).contains(&along);
            beside |= over && off.abs() <= radius - CLEAR;
            inside &= off <= 0.0;
        }
        // What is near a corner, or at the very edge, is left to the path.
        beside
            || inside && radius > CLEAR
            || self
                .passed(way, x0, slant, radius)
                .is_some_and(|(first, last)| first <= depth && last >= depth)
    }

    /// Depths at which a circle on a straight path enters and leaves.
    pub(super) fn passed(
        &self,
        way: usize,
        x0: f64,
        slant: f64,
        radius: f64,
    ) -> Option<(f64, f64)> {
        let (mut enters, mut leaves) = (f64::INFINITY, f64::NEG_INFINITY);
        let sides = &self.sides[way];
        for side in sides {
            if let Some((depth, out)) = crossing(side, x0, slant, radius) {
                if out {
                    leaves = depth;
                } else {
                    enters = depth;
                }
            }
        }
        if enters.is_infinite() || leaves.is_infinite() {
            for side in sides {
                if let Some((first, last)) = circle(side, x0, slant, radius) {
                    enters = enters.min(first);
                    leaves = leaves.max(last);
                }
            }
        }
        (enters <= leaves).then_some((enters, leaves))
    }
}

fn sides(pass: &Pass, corners: &[Spot], way: f64) -> Vec<Side> {
    let sign = pass.sign();
    let mut points: Vec<(f64, f64)> = corners
        .iter()
        .map(|corner| {
            (
                sign * (corner.x.base() - pass.edge_at_end()),
                way * corner.y.base(),
            )
        })
        .collect();
    let area: f64 = (0..points.len())
        .map(|i| {
            let ((ax, ay), (bx, by)) = (points[i], points[(i + 1) % points.len()]);
            ax * by - ay * bx
        })
        .sum();
    if area < 0.0 {
        points.reverse();
    }
    (0..points.len())
        .map(|i| {
            let ((ax, ay), (bx, by)) = (points[i], points[(i + 1) % points.len()]);
            let length = (bx - ax).hypot(by - ay);
            Side {
                x: ax,
                y: ay,
                along: ((bx - ax) / length, (by - ay) / length),
                length,
            }
        })
        .collect()
}

/// Depth at which the path crosses a side that is moved out by a radius, and whether it goes out of the field there.
#[inline]
fn crossing(side: &Side, x0: f64, slant: f64, radius: f64) -> Option<(f64, bool)> {
    let (nx, ny) = side.out();
    let (ex, ey) = side.along;
    let off = x0 - side.x;
    let pace = nx * slant + ny;
    let deep = radius - nx * off + ny * side.y;
    // Both sides of the comparison are taken by the pace, which spares a division where the side is not crossed.
    let along = (ex * off - ey * side.y) * pace + deep * (ex * slant + ey);
    let (out, size) = (pace > 0.0, pace.abs());
    let along = if out { along } else { -along };
    let crossed = size >= 1e-12 && along >= 0.0 && along <= side.length * size;
    crossed.then(|| (deep / pace, out))
}

/// Depths at which the path cuts the circle about a side's first corner.
fn circle(side: &Side, x0: f64, slant: f64, radius: f64) -> Option<(f64, f64)> {
    let (dx, square) = (x0 - side.x, 1.0 + slant * slant);
    let off = dx + slant * side.y;
    let left = radius * radius * square - off * off;
    if left < 0.0 {
        return None;
    }
    let middle = side.y - slant * dx;
    let half = left.sqrt();
    Some(((middle - half) / square, (middle + half) / square))
}
