//! Bounds of what a device sees of a body whose line is known within spans.
//!
//! Ways are counted along the gate's depth from the event to the touch: the way in is how deep the body has gone since it
//! entered, so that the time of the touch itself cancels.

use super::edge::passed;
use super::span::{Span, down};
use crate::walk::body::MOST_PARTS;
use crate::walk::field::Side;
use crate::walk::lane::Lane;
use crate::walk::person::Part;

/// One time without a gap in which a device sees the body.
#[derive(Debug, Clone, Copy)]
pub(super) struct Run {
    /// Depth gone since it entered; below zero where it has not.
    pub since_in: Span,
    /// Depth gone since it left; below zero where it has not.
    pub since_out: Span,
    /// It is seen whatever the rest of the spans.
    pub sure: bool,
    /// Depth that it is seen for at least: more than the ends tell that are known each by itself.
    pub least: f64,
    /// Delay of the device.
    pub response: f64,
}

impl Run {
    /// It surely sees the body where it is.
    pub(super) fn sees(&self) -> bool {
        self.sure && self.since_in.lo >= 0.0 && self.since_out.hi <= 0.0
    }

    /// It sees a circle that may go so far any way from where it is: on its path it has come at least so far since it entered.
    fn is_within(&mut self, deep: f64, at: &At) {
        if deep < SURE {
            return;
        }
        let gone = down(deep - SURE).max(0.0);
        let gone = down(down(gone / at.stretch.hi));
        self.since_in.lo = self.since_in.lo.max(gone).min(self.since_in.hi);
        self.since_out.hi = self.since_out.hi.min(-gone).max(self.since_out.lo);
        self.sure = true;
    }

    /// It may see the body where it is.
    pub(super) fn may_see(&self) -> bool {
        self.since_in.hi >= 0.0 && self.since_out.lo <= 0.0
    }
}

/// The place of a touch: depth of the touched cylinder, slant of the path, √(1 + slant²).
#[derive(Debug, Clone, Copy)]
pub(super) struct At {
    pub depth: Span,
    pub slant: Span,
    pub stretch: Span,
}

/// Where the line of a cylinder is beside that of the touched one: along the gate line, and ahead in depth.
#[derive(Debug, Clone, Copy)]
pub(super) struct Beside {
    pub off: Span,
    pub lead: Span,
}

/// Where the lines of all cylinders of a body are beside that of one.
pub(super) fn beside(lane: &Lane, way: usize, parts: &[Part], one: &Part, at: &At) -> Lines {
    let mut lines = [Beside {
        off: Span::of(0.0),
        lead: Span::of(0.0),
    }; MOST_PARTS];
    let right = lane.right(way);
    for (line, other) in lines.iter_mut().zip(parts) {
        let aside = (Span::of(other.aside) - one.aside) * right;
        let ahead = Span::of(other.ahead) - one.ahead;
        *line = Beside {
            off: aside * at.stretch,
            lead: (ahead - aside * at.slant).over(at.stretch),
        };
    }
    lines
}

/// The lines of the cylinders of a body.
pub(super) type Lines = [Beside; MOST_PARTS];

/// Times in which each device sees the body.
pub(super) fn runs(
    lane: &Lane,
    way: usize,
    body: usize,
    lines: &Lines,
    at: &At,
    (x0, x): (Span, Option<Span>),
) -> Vec<Run> {
    let mut all = Vec::with_capacity(MOST_PARTS);
    for (field, seen) in lane.fields.iter().zip(&lane.people[body].seen) {
        let from = all.len();
        for &(part, radius) in seen {
            let line = &lines[part];
            if let Some(passed) = passed(field, way, x0 + line.off, at.slant, radius) {
                let here = at.depth + line.lead;
                let mut run = Run {
                    since_in: here - passed.enters,
                    since_out: here - passed.leaves,
                    sure: passed.sure,
                    least: passed.least,
                    response: field.response,
                };
                if let Some(x) = x {
                    run.is_within(deep(field.sides(way), line.place(x, at), radius), at);
                }
                all.push(run);
            }
        }
        join(&mut all, from);
    }
    all
}

/// Joins the runs of one device that surely touch, and lets the first of two that may touch last as long as both.
fn join(all: &mut Vec<Run>, from: usize) {
    all[from..].sort_by(|a, b| b.since_in.hi.total_cmp(&a.since_in.hi));
    let mut at = from;
    while at + 1 < all.len() {
        let (first, next) = (all[at], all[at + 1]);
        let surely =
            next.since_in.lo >= first.since_out.hi && first.since_in.lo >= next.since_out.hi;
        if first.sure && next.sure && surely {
            all[at] = Run {
                since_in: first.since_in.max(next.since_in),
                since_out: first.since_out.min(next.since_out),
                least: first.least.max(next.least),
                ..first
            };
            all.remove(at + 1);
            continue;
        }
        if next.since_in.hi >= first.since_out.lo {
            let lo = first.since_out.lo.min(next.since_out.lo);
            all[at].since_out.lo = lo;
        }
        at += 1;
    }
}

/// So far within a field a circle is that surely is in it, in meters: far more than rounding moves where a path meets its edge.
pub(super) const SURE: f64 = 1e-7;

/// Whether a device surely sees a body where it stands, whatever way it came there: with the place of the touched cylinder
/// and the slant on which it faces.
pub(super) fn sees_standing(
    lane: &Lane,
    (way, body): (usize, usize),
    lines: &Lines,
    (x, at): (Span, &At),
) -> bool {
    let mut devices = lane.fields.iter().zip(&lane.people[body].seen);
    devices.any(|(field, seen)| {
        let mut seen = seen.iter();
        seen.any(|&(part, radius)| deep(field.sides(way), lines[part].place(x, at), radius) >= SURE)
    })
}

impl Beside {
    /// Where its cylinder is: along the gate line, and its depth.
    fn place(&self, x: Span, at: &At) -> (Span, Span) {
        (x + self.off + self.lead * at.slant, at.depth + self.lead)
    }
}

/// How far at least a circle is within a field, wherever its middle is in such spans: so far its middle may go any way and it is
/// seen still. Below zero where that is not known.
///
/// What is within all sides may go as far as to the nearest of them and its radius; what is beside one may go its radius less
/// how far it is off.
pub(super) fn deep(sides: &[Side], (x, depth): (Span, Span), radius: f64) -> f64 {
    let (mut inside, mut beside) = (f64::INFINITY, f64::NEG_INFINITY);
    for side in sides {
        let ((nx, ny), (ex, ey)) = (side.out(), side.along);
        let (dx, dy) = (x - side.x, depth - side.y);
        let (out, along) = (dx * nx + dy * ny, dx * ex + dy * ey);
        inside = inside.min(-out.hi);
        if along.lo >= SURE && along.hi <= side.length - SURE {
            beside = beside.max(-out.hi.max(-out.lo));
        }
    }
    if sides.len() > 2 && inside >= SURE {
        beside = beside.max(inside);
    }
    beside + radius
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::super::testing::aslant;
    use super::*;
    use crate::walk::sequence::Draw;

    /// Boxes of any size about any place, and places within them on paths of any slant: what is surely seen there is seen.
    #[test]
    fn whom_a_device_surely_sees_it_sees_wherever_they_are_in_the_box() {
        let walk = aslant().unwrap();
        let lane = &walk.lanes[0];
        let (mut sure, mut all) = (0, 0);
        for seed in 0..200_000 {
            let [x, y, size, slant, radius] = Draw::new(seed, 1).point();
            let field = &lane.fields[usize::try_from(seed).unwrap() % lane.fields.len()];
            let (x, y, size) = (6.0 * x - 1.0, 4.0 * y - 2.0, 0.3 * size * size);
            let (slant, radius) = (4.0 * slant - 2.0, 0.01 + 0.4 * radius);
            let about = |middle: f64| Span::new(middle - size, middle + size);
            all += 1;
            let deep = deep(field.sides(0), (about(x), about(y)), radius);
            if deep < SURE {
                continue;
            }
            sure += 1;
            for (dx, dy) in [
                (-1.0, -1.0),
                (-1.0, 1.0),
                (1.0, -1.0),
                (1.0, 1.0),
                (0.1, -0.3),
            ] {
                let (x, y) = (x + dx * size, y + dy * size);
                let passed = field.passed(0, x - y * slant, slant, radius);
                let (first, last) = passed.unwrap();
                let goes = deep / (1.0 + slant * slant).sqrt() - 1e-9;
                assert!(
                    first <= y - goes && y + goes <= last,
                    "{x} {y} {slant} {radius}"
                );
                assert!(field.holds(0, x - y * slant, slant, radius, y));
            }
        }
        assert!(20 * sure > all && 20 * sure < 19 * all, "{sure} {all}");
    }
}
