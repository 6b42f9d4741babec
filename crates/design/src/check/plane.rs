//! Points and straight pieces seen from above: x along the gate line, y into the property, in meters.

/// A point.
pub(crate) type Point = (f64, f64);
/// A straight piece from one point to another.
pub(crate) type Piece = [Point; 2];

/// Distance between two straight pieces in the plane; nothing where they cross.
pub(crate) fn between(one: &Piece, other: &Piece) -> f64 {
    if cross(one, other) {
        return 0.0;
    }
    let ends = [
        from(one[0], other),
        from(one[1], other),
        from(other[0], one),
        from(other[1], one),
    ];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

/// Distance of a point from a straight piece.
pub(crate) fn from(point: Point, piece: &Piece) -> f64 {
    let foot = nearest(point, piece);
    (point.0 - foot.0).hypot(point.1 - foot.1)
}

/// The place of a straight piece that is nearest to a point.
pub(crate) fn nearest(point: Point, piece: &Piece) -> Point {
    let (along_x, along_y) = (piece[1].0 - piece[0].0, piece[1].1 - piece[0].1);
    let squared = along_x.powi(2) + along_y.powi(2);
    let (off_x, off_y) = (point.0 - piece[0].0, point.1 - piece[0].1);
    let share = if squared > 0.0 {
        ((off_x * along_x + off_y * along_y) / squared).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (piece[0].0 + share * along_x, piece[0].1 + share * along_y)
}

/// A point lies inside a closed line, or on it.
pub(crate) fn is_inside(at: Point, corners: &[Point]) -> bool {
    let mut inside = false;
    let pairs = corners.iter().zip(corners.iter().cycle().skip(1));
    for (one, other) in pairs {
        if from(at, &[*one, *other]) <= 1e-6 {
            return true;
        }
        let crosses = (one.1 > at.1) != (other.1 > at.1);
        if crosses && at.0 < one.0 + (at.1 - one.1) / (other.1 - one.1) * (other.0 - one.0) {
            inside = !inside;
        }
    }
    inside
}

fn cross(one: &Piece, other: &Piece) -> bool {
    let turn = |a: Point, b: Point, c: Point| (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0);
    let apart = |piece: &Piece, ends: &Piece| {
        turn(piece[0], piece[1], ends[0]) * turn(piece[0], piece[1], ends[1]) < 0.0
    };
    apart(one, other) && apart(other, one)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_of_pieces() {
        let level = [(0.0, 0.0), (2.0, 0.0)];
        assert!((between(&level, &[(1.0, 1.0), (1.0, 3.0)]) - 1.0).abs() < 1e-12);
        assert!(between(&level, &[(1.0, -1.0), (1.0, 3.0)]).abs() < 1e-12);
        assert!((from((3.0, 4.0), &[(0.0, 0.0), (0.0, 0.0)]) - 5.0).abs() < 1e-12);
    }
}
