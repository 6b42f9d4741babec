//! Areas seen from above: cut by straight lines, hulls, and the pieces that a strip cuts out of them.

/// A point, in meters.
pub(super) type Point = (f64, f64);

/// A half of the plane: all points whose `along x + across y + off` is not below zero.
#[derive(Debug, Clone, Copy)]
pub(super) struct Half {
    x: f64,
    y: f64,
    off: f64,
}

impl Half {
    /// What a half of space, whose edge goes through a point, leaves of a level plane.
    pub(super) fn of(normal: [f64; 3], through: [f64; 3], height: f64) -> Self {
        Self {
            x: normal[0],
            y: normal[1],
            off: normal[2] * (height - through[2])
                - normal[0] * through[0]
                - normal[1] * through[1],
        }
    }

    fn value(&self, (x, y): Point) -> f64 {
        self.x * x + self.y * y + self.off
    }

    /// The stretch of a line of constant y that lies in it.
    fn narrowed(&self, (low, high): (f64, f64), y: f64) -> (f64, f64) {
        let rest = self.y * y + self.off;
        if self.x.abs() < 1e-15 {
            return if rest >= 0.0 {
                (low, high)
            } else {
                (high, low)
            };
        }
        let root = -rest / self.x;
        if self.x > 0.0 {
            (low.max(root), high)
        } else {
            (low, high.min(root))
        }
    }
}

/// What several halves of the plane leave of a stretch of a line of constant y; the wrong way round where nothing.
pub(super) fn narrowed(halves: &[Half], stretch: (f64, f64), y: f64) -> (f64, f64) {
    halves
        .iter()
        .fold(stretch, |stretch, half| half.narrowed(stretch, y))
}

/// What several halves of the plane leave of an area.
pub(super) fn clipped(area: Vec<Point>, halves: &[Half]) -> Vec<Point> {
    halves.iter().fold(area, |area, half| cut(&area, half))
}

fn cut(area: &[Point], half: &Half) -> Vec<Point> {
    let mut kept = Vec::with_capacity(area.len() + 2);
    let before = area.last().into_iter().chain(area);
    for (from, to) in before.zip(area) {
        let (was, is) = (half.value(*from), half.value(*to));
        if (was < 0.0) != (is < 0.0) {
            let share = was / (was - is);
            kept.push((
                from.0 + share * (to.0 - from.0),
                from.1 + share * (to.1 - from.1),
            ));
        }
        if is >= 0.0 {
            kept.push(*to);
        }
    }
    kept
}

fn turn(a: Point, b: Point, c: Point) -> f64 {
    (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0)
}

/// The smallest convex area around points, counter-clockwise.
pub(super) fn hull(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let chain = |points: &mut dyn Iterator<Item = Point>| {
        let mut kept: Vec<Point> = Vec::new();
        for point in points {
            while let [.., a, b] = kept[..]
                && turn(a, b, point) <= 0.0
            {
                kept.pop();
            }
            kept.push(point);
        }
        kept.pop();
        kept
    };
    let mut lower = chain(&mut points.iter().copied());
    lower.extend(chain(&mut points.iter().rev().copied()));
    lower
}

/// The sides of a convex area, counter-clockwise, as halves of the plane.
pub(super) fn sides(convex: &[Point]) -> Vec<Half> {
    let next = convex.iter().cycle().skip(1);
    convex
        .iter()
        .zip(next)
        .map(|(a, b)| Half {
            x: a.1 - b.1,
            y: b.0 - a.0,
            off: (b.1 - a.1) * a.0 - (b.0 - a.0) * a.1,
        })
        .collect()
}

/// Where a line of constant y lies in a convex area: from and to.
pub(super) fn across(convex: &[Point], y: f64) -> Option<(f64, f64)> {
    let places = crossings(convex, y);
    match (places.first(), places.last()) {
        (Some(first), Some(last)) if last > first => Some((*first, *last)),
        _ => None,
    }
}

/// Where a line of constant y crosses the rim of an area, rising.
pub(super) fn crossings(area: &[Point], y: f64) -> Vec<f64> {
    let next = area.iter().cycle().skip(1);
    let mut found: Vec<f64> = area
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.1 <= y) != (b.1 <= y))
        .map(|(a, b)| a.0 + (y - a.1) / (b.1 - a.1) * (b.0 - a.0))
        .collect();
    found.sort_by(f64::total_cmp);
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hull_leaves_out_what_is_inside() {
        let square = hull(vec![
            (0.0, 0.0),
            (2.0, 0.0),
            (1.0, 1.0),
            (2.0, 2.0),
            (0.0, 2.0),
        ]);
        assert_eq!(square, [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)]);
        assert_eq!(across(&square, 0.5), Some((0.0, 2.0)));
        assert_eq!(across(&square, 2.5), None);
    }

    #[test]
    fn an_area_is_cut_by_the_sides_of_another() {
        let square = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)];
        let moved: Vec<Point> = square.iter().map(|(x, y)| (x + 1.0, y + 1.0)).collect();
        let both = clipped(moved, &sides(&square));
        let x: f64 = both.iter().map(|point| point.0).fold(0.0, f64::max);
        assert!((x - 2.0).abs() < 1e-12 && both.len() == 4, "{both:?}");
    }
}
