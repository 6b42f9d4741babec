//! What of a straight piece is seen from one point over and past upright walls: exact shares, without sampling.
//!
//! A line of sight to a point of the piece crosses a wall's line at a share of its way that is one linear function over
//! another. Every condition for being hidden, also that of height, is linear along the piece, so each wall hides one
//! interval of it.

use crate::check::plane::{Piece, Point};

/// An upright wall that one does not see through, from a lower to an upper height.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Wall {
    pub(crate) piece: Piece,
    pub(crate) bottom: f64,
    pub(crate) top: f64,
}

/// A point from which somebody looks.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Eye {
    pub(crate) at: Point,
    pub(crate) height: f64,
}

/// What is looked at: a straight piece at one height.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Target {
    pub(crate) piece: Piece,
    pub(crate) height: f64,
}

impl Target {
    pub(crate) fn length(&self) -> f64 {
        (self.piece[1].0 - self.piece[0].0).hypot(self.piece[1].1 - self.piece[0].1)
    }
}

/// A share of a piece, from its first end.
type Interval = (f64, f64);

/// A linear function along the piece: its value at the first end, and what it gains to the other.
type Line = (f64, f64);

/// The share of a target that one wall hides; nothing where it hides none.
pub(crate) fn hidden(eye: Eye, target: &Target, wall: &Wall) -> Option<Interval> {
    let from = less(target.piece[0], eye.at);
    let along = less(target.piece[1], target.piece[0]);
    let start = less(wall.piece[0], eye.at);
    let run = less(wall.piece[1], wall.piece[0]);
    let whole = cross(start, run);
    let sign = whole.signum();
    let whole = whole.abs();
    if whole <= 1e-12 {
        return None;
    }
    let across: Line = (sign * cross(from, run), sign * cross(along, run));
    let place: Line = (sign * cross(start, from), sign * cross(start, along));
    let drop = (target.height - eye.height) * whole;
    let conditions: [Line; 5] = [
        (across.0 - whole * (1.0 + 1e-9), across.1),
        place,
        (across.0 - place.0, across.1 - place.1),
        (
            (wall.top - eye.height) * across.0 - drop,
            (wall.top - eye.height) * across.1,
        ),
        (
            (eye.height - wall.bottom) * across.0 + drop,
            (eye.height - wall.bottom) * across.1,
        ),
    ];
    let found = conditions.iter().fold((0.0, 1.0), narrowed);
    (found.1 - found.0 > 1e-9).then_some(found)
}

/// The part of an interval in which a linear function is not below zero.
fn narrowed((low, high): Interval, (value, gain): &Line) -> Interval {
    if gain.abs() < 1e-15 {
        return if *value >= 0.0 {
            (low, high)
        } else {
            (1.0, 0.0)
        };
    }
    let root = -value / gain;
    if *gain > 0.0 {
        (low.max(root), high)
    } else {
        (low, high.min(root))
    }
}

/// Length of what several intervals cover together.
pub(crate) fn covered(intervals: &[Interval]) -> f64 {
    let mut sorted = intervals.to_vec();
    sorted.sort_by(|one, other| one.0.total_cmp(&other.0));
    let mut reached = 0.0_f64;
    let mut sum = 0.0;
    for (low, high) in sorted {
        let low = low.max(reached);
        sum += (high - low).max(0.0);
        reached = reached.max(high);
    }
    sum
}

fn less(one: Point, other: Point) -> Point {
    (one.0 - other.0, one.1 - other.1)
}

fn cross(one: Point, other: Point) -> f64 {
    one.0 * other.1 - one.1 * other.0
}

#[cfg(test)]
mod tests {
    use super::*;

    const TARGET: Target = Target {
        piece: [(-4.0, 0.0), (4.0, 0.0)],
        height: 0.0,
    };

    fn eye(height: f64) -> Eye {
        Eye {
            at: (0.0, 10.0),
            height,
        }
    }

    fn wall(top: f64) -> Wall {
        Wall {
            piece: [(1.0, 5.0), (-1.0, 5.0)],
            bottom: 0.0,
            top,
        }
    }

    fn share(found: Option<Interval>) -> f64 {
        found.map_or(0.0, |(low, high)| high - low)
    }

    #[test]
    fn a_tall_wall_half_way_hides_twice_its_length() {
        // Similar triangles: 2 m at half way hide 4 m of 8 m.
        let found = hidden(eye(1.6), &TARGET, &wall(3.0));
        assert!((share(found) - 0.5).abs() < 1e-6, "{found:?}");
    }

    #[test]
    fn a_low_wall_is_looked_over() {
        // Half way a line from 1.6 m down to the ground is 0.8 m high.
        assert!(share(hidden(eye(1.6), &TARGET, &wall(0.79))) < 1e-9);
        assert!(share(hidden(eye(1.6), &TARGET, &wall(0.81))) > 0.4);
    }

    #[test]
    fn what_stands_behind_the_target_hides_nothing() {
        let behind = Wall {
            piece: [(1.0, -1.0), (-1.0, -1.0)],
            ..wall(3.0)
        };
        assert!(hidden(eye(1.6), &TARGET, &behind).is_none());
    }

    #[test]
    fn intervals_that_overlap_count_once() {
        assert!((covered(&[(0.5, 0.7), (0.0, 0.6), (0.9, 1.0)]) - 0.8).abs() < 1e-12);
    }

    /// Whether one point of the target is hidden, by following its line of sight in small steps.
    fn stepped(eye: Eye, target: &Target, wall: &Wall, share: f64) -> bool {
        let [from, to] = target.piece;
        let point = (
            from.0 + (to.0 - from.0) * share,
            from.1 + (to.1 - from.1) * share,
        );
        let steps = 4000_u32;
        let at = |step: u32| {
            let part = f64::from(step) / f64::from(steps);
            let x = eye.at.0 + (point.0 - eye.at.0) * part;
            let y = eye.at.1 + (point.1 - eye.at.1) * part;
            (x, y, eye.height + (target.height - eye.height) * part)
        };
        let side = |x: f64, y: f64| {
            cross(
                less(wall.piece[1], wall.piece[0]),
                less((x, y), wall.piece[0]),
            )
        };
        (1..steps).any(|step| {
            let ((x0, y0, _), (x1, y1, z)) = (at(step - 1), at(step));
            let run = less(wall.piece[1], wall.piece[0]);
            let along = less((x1, y1), wall.piece[0]);
            let place = (along.0 * run.0 + along.1 * run.1) / (run.0 * run.0 + run.1 * run.1);
            side(x0, y0) * side(x1, y1) <= 0.0
                && (0.0..=1.0).contains(&place)
                && (wall.bottom..=wall.top).contains(&z)
        })
    }

    /// Numbers spread evenly over 0 to 1, one row of them for each place in a sequence.
    fn spread(row: u32) -> [f64; 7] {
        let roots = [2.0, 3.0, 5.0, 7.0, 11.0, 13.0, 17.0];
        roots.map(|root: f64| (f64::from(row) * root.sqrt()).fract())
    }

    #[test]
    fn agrees_with_a_line_of_sight_followed_step_by_step() {
        let mut told = [0_u32; 2];
        for row in 1..600 {
            let [x, y, turn, length, top, height, share] = spread(row);
            let (x, y, turn) = (12.0 * x - 6.0, 2.0 + 7.0 * y, 0.3 + 2.5 * turn);
            let (length, share) = (0.5 + 3.5 * length, 0.05 + 0.9 * share);
            let wall = Wall {
                piece: [
                    (x, y),
                    (x + length * turn.cos(), y - 0.5 * length * turn.sin()),
                ],
                bottom: -1.0,
                top: 0.2 + 1.8 * top,
            };
            let eye = eye(0.8 + 1.4 * height);
            let (low, high) = hidden(eye, &TARGET, &wall).unwrap_or((2.0, 2.0));
            if (share - low).abs() < 0.01 || (share - high).abs() < 0.01 {
                continue;
            }
            let inside = (low..=high).contains(&share);
            told[usize::from(inside)] += 1;
            assert_eq!(inside, stepped(eye, &TARGET, &wall, share), "row {row}");
        }
        assert!(told[0] > 50 && told[1] > 20, "{told:?}");
    }
}
