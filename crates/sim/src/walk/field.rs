//! Where a straight path goes through a field: the field without dents, widened all around by the radius of what goes.
//!
//! The widened field is bounded by its sides, moved out, and by circles about its corners. Every place where the path
//! crosses a moved side between its ends, or cuts a corner's circle, is in the field, and the first and the last of all
//! of them are where the path enters and leaves.

use super::device::Spot;
use super::world::Pass;
use quantity::Quantity as _;

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
        let least = |sides: &Vec<Side>| {
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

    /// How far a place, along the gate line and in depth, is from it; zero within it.
    pub(super) fn apart(&self, way: usize, (x, y): (f64, f64)) -> f64 {
        let sides = &self.sides[way];
        let inside = sides.len() > 2
            && sides
                .iter()
                .all(|side| (x - side.x) * side.out().0 + (y - side.y) * side.out().1 <= 0.0);
        if inside {
            return 0.0;
        }
        let off = |side: &Side| {
            let (dx, dy) = (x - side.x, y - side.y);
            let (ex, ey) = side.along;
            let along = (dx * ex + dy * ey).clamp(0.0, side.length);
            (dx - along * ex).hypot(dy - along * ey)
        };
        sides.iter().map(off).fold(f64::INFINITY, f64::min)
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
        let mut note = |depth: f64| {
            enters = enters.min(depth);
            leaves = leaves.max(depth);
        };
        let mut crossed = 0;
        for side in sides {
            if let Some(depth) = crossing(side, x0, slant, radius) {
                note(depth);
                crossed += 1;
            }
        }
        if crossed < 2 {
            for side in sides {
                if let Some((first, last)) = circle(side, x0, slant, radius) {
                    note(first);
                    note(last);
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

/// Depth at which the path crosses a side that is moved out by a radius.
fn crossing(side: &Side, x0: f64, slant: f64, radius: f64) -> Option<f64> {
    let (nx, ny) = side.out();
    let (ex, ey) = side.along;
    let pace = nx * slant + ny;
    if pace.abs() < 1e-12 {
        return None;
    }
    let depth = (radius - nx * (x0 - side.x) + ny * side.y) / pace;
    let along = ex * (x0 - side.x + depth * slant) + ey * (depth - side.y);
    (0.0..=side.length).contains(&along).then_some(depth)
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
