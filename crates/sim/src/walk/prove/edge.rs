//! Where a path that is known within spans meets the edge of a field.

use super::sight::{SURE, deep};
use super::span::Span;
use crate::walk::field::{Field, Side};

/// Depths at which a path enters a field and leaves it.
#[derive(Debug)]
pub(super) struct Passed {
    pub enters: Span,
    pub leaves: Span,
    /// It surely does.
    pub sure: bool,
    /// Way within the field at least.
    pub least: f64,
}

/// Collects the places where a line meets the edge of a widened field.
struct Marks {
    /// Where it first and last meets each piece of the edge that it may meet.
    met: Option<(Span, Span)>,
    enters: f64,
    leaves: f64,
    sure: bool,
    /// Longest way that is surely within one of the circles.
    least: f64,
}

impl Marks {
    fn note(&mut self, first: Span, last: Span, sure: bool) {
        self.met = Some(self.met.map_or((first, last), |known| {
            (known.0.hull(first), known.1.hull(last))
        }));
        if sure {
            self.enters = self.enters.min(first.hi);
            self.leaves = self.leaves.max(last.lo);
            self.sure = true;
        }
    }
}

/// Where paths within bounds meet the edge of a field; nothing where none of them does.
pub(super) fn passed(
    field: &Field,
    way: usize,
    x0: Span,
    slant: Span,
    radius: f64,
) -> Option<Passed> {
    let mut marks = Marks {
        met: None,
        enters: f64::INFINITY,
        leaves: f64::NEG_INFINITY,
        sure: false,
        least: 0.0,
    };
    let mut surely: Option<Span> = None;
    for side in field.sides(way) {
        let Some((depth, sure)) = crossing(side, x0, slant, radius) else {
            continue;
        };
        marks.note(depth, depth, sure);
        if !sure {
            continue;
        }
        // A line crosses the edge of a field without dents twice.
        if let Some(other) = surely.replace(depth) {
            return Some(Passed {
                enters: depth.min(other),
                leaves: depth.max(other),
                sure: true,
                least: 0.0,
            });
        }
    }
    for side in field.sides(way) {
        circle(side, x0, slant, radius, &mut marks);
    }
    let (first, last) = marks.met?;
    let mut passed = Passed {
        enters: Span::new(first.lo, marks.enters.min(first.hi)),
        leaves: Span::new(marks.leaves.max(last.lo), last.hi),
        sure: marks.sure,
        least: marks.least,
    };
    passed.narrow(&|depth| {
        let here = (x0 + slant * depth, Span::of(depth));
        deep(field.sides(way), here, radius) >= SURE
    });
    Some(passed)
}

/// Narrower than this is not asked for, in meters.
const NARROW: f64 = 0.02;
/// Most halvings until then.
const NARROWINGS: u32 = 6;

impl Passed {
    /// Near a corner the pieces of the edge tell little. A path that surely is in the field at a depth has entered before it
    /// and leaves after it.
    fn narrow(&mut self, is_in: &dyn Fn(f64) -> bool) {
        let middle = 0.5 * (self.enters.lo + self.leaves.hi);
        let wide = |span: &Span| span.width() > NARROW;
        if !self.sure && (wide(&self.enters) || wide(&self.leaves)) && is_in(middle) {
            self.enters.hi = self.enters.hi.min(middle);
            self.leaves.lo = self.leaves.lo.max(middle);
            self.sure = true;
        }
        if !self.sure {
            return;
        }
        for _ in 0..NARROWINGS {
            let entered = self.enters.middle();
            if !wide(&self.enters) || !is_in(entered) {
                break;
            }
            self.enters.hi = entered;
        }
        for _ in 0..NARROWINGS {
            let leaves = self.leaves.middle();
            if !wide(&self.leaves) || !is_in(leaves) {
                break;
            }
            self.leaves.lo = leaves;
        }
    }
}

/// Depths at which a line may cross a side that is moved out, and whether it surely does.
fn crossing(side: &Side, x0: Span, slant: Span, radius: f64) -> Option<(Span, bool)> {
    let ((nx, ny), (ex, ey)) = (side.out(), side.along);
    let off = x0 - side.x;
    let pace = slant * nx + ny;
    // The ends of a side are known to the last bits only.
    let slack = 1e-12;
    let whole = Span::new(-slack, side.length + slack);
    if pace.has_zero() {
        let run = slant * ex + ey;
        let depth = (whole - off * ex + Span::of(side.y) * ey).over(run);
        return Some((depth, false));
    }
    let depth = (Span::of(radius) - off * nx + Span::of(side.y) * ny).over(pace);
    let along = (off + depth * slant) * ex + (depth - side.y) * ey;
    along.both(whole)?;
    Some((depth, along.lo >= slack && along.hi <= side.length - slack))
}

fn circle(side: &Side, x0: Span, slant: Span, radius: f64, marks: &mut Marks) {
    let off = x0 - side.x;
    let square = slant.square() + 1.0;
    let left = Span::of(radius).square() * square - (off + slant * side.y).square();
    if left.hi < 0.0 {
        return;
    }
    let middle = Span::of(side.y) - slant * off;
    let half = left.root();
    let sure = left.lo >= 0.0;
    let (first, last) = ((middle - half).over(square), (middle + half).over(square));
    marks.note(first, last, sure);
    if sure {
        marks.least = marks.least.max((half + half).over(square).lo);
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::super::testing::aslant;
    use super::*;
    use crate::walk::sequence::Draw;

    /// Paths of any slant past corners and sides: each of a box meets the edge where the box says, and a box that is a path
    /// says it to the narrowest that is asked for.
    #[test]
    fn paths_meet_the_edge_of_a_field_where_their_box_says() {
        let walk = aslant().unwrap();
        let fields = &walk.lanes[0].fields;
        let (mut sure, mut all) = (0, 0);
        for seed in 0..60_000 {
            let [x, size, slant, wide, radius] = Draw::new(seed, 1).point();
            let field = &fields[usize::try_from(seed).unwrap() % fields.len()];
            let (x, slant, radius) = (8.0 * x - 2.0, 4.0 * slant - 2.0, 0.01 + 0.4 * radius);
            let (size, wide) = (0.1 * size * size, 0.1 * wide * wide);
            let about = |middle: f64, size: f64| Span::new(middle - size, middle + size);
            let told = passed(field, 0, about(x, size), about(slant, wide), radius);
            for (dx, ds) in [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (0.2, 0.3)] {
                let is = field.passed(0, x + dx * size, slant + ds * wide, radius);
                let Some((first, last)) = is else {
                    assert!(told.as_ref().is_none_or(|told| !told.sure));
                    continue;
                };
                let told = told.as_ref().unwrap();
                all += 1;
                sure += i32::from(told.sure);
                assert!(told.enters.lo <= first + 1e-9 && first <= told.enters.hi + 1e-9);
                assert!(told.leaves.lo <= last + 1e-9 && last <= told.leaves.hi + 1e-9);
            }
        }
        assert!(all > 100_000 && 10 * sure > 9 * all, "{sure} of {all}");
    }
}
