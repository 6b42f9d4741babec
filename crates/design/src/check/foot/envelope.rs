//! The ground that the leaves of a gate pass over, seen from above.

use crate::asking::{Asking, Wants, read};
use crate::check::plane::{Piece, Point, between};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{Gate, GateKind, Leaf, SwingSide};
use std::f64::consts::PI;

/// How a leaf is written.
const LEAF: &str = "[{ id = \"leaf\", length = \"21 ft\" }]";

/// Parts into which the way of a tip is cut.
const STEPS: u32 = 24;

/// The ground that the leaves of a gate pass over: the outline of each leaf's part of it.
#[derive(Debug)]
pub(crate) struct Envelope(Vec<Vec<Point>>);

impl Envelope {
    /// Distance of a straight piece from that ground; nothing where they meet.
    pub(crate) fn to_piece(&self, piece: &Piece) -> f64 {
        let each = self.0.iter().map(|outline| {
            if piece.iter().any(|point| within(*point, outline)) {
                return 0.0;
            }
            let sides = sides(outline);
            sides.fold(f64::INFINITY, |least, side| {
                least.min(between(&side, piece))
            })
        });
        each.fold(f64::INFINITY, f64::min)
    }

    /// Distance of a point from that ground.
    pub(crate) fn to_point(&self, point: Point) -> f64 {
        self.to_piece(&[point, point])
    }
}

fn sides(outline: &[Point]) -> impl Iterator<Item = Piece> {
    let next = outline.iter().cycle().skip(1);
    outline.iter().zip(next).map(|(from, to)| [*from, *to])
}

/// A point lies within an outline: a line from it crosses the outline an odd number of times.
fn within(point: Point, outline: &[Point]) -> bool {
    let crossings = sides(outline).filter(|[from, to]| {
        (from.1 > point.1) != (to.1 > point.1)
            && point.0 < from.0 + (point.1 - from.1) / (to.1 - from.1) * (to.0 - from.0)
    });
    crossings.count() % 2 == 1
}

/// The ground that the leaves of a gate pass over, run-back included.
pub(crate) fn envelope<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Envelope, Halt> {
    if gate.leaf.is_empty() {
        return asking.lack(&gate.origin, "leaf", Wants::Written(LEAF));
    }
    let mut outlines = Ok(Vec::new());
    for (index, leaf) in gate.leaf.iter().enumerate() {
        let outline = match gate.kind {
            GateKind::SingleSwing | GateKind::DoubleSwing => turned(asking, gate, leaf, index),
            _ => straight(asking, gate, leaf),
        };
        outlines = outlines.and_then(|mut outlines: Vec<_>| {
            outlines.push(outline?);
            Ok(outlines)
        });
    }
    outlines.map(Envelope)
}

/// The strip of a leaf that slides, or the ground below one that rises.
fn straight<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Vec<Point>, Halt> {
    let length = read!(asking, leaf.length);
    let from = read!(asking, leaf.closed_end);
    let thickness = asking.read_if_there(&leaf.origin, "thickness", leaf.thickness.as_ref());
    let travel = match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => read!(asking, gate.travel),
        _ => Ok(Length::default()),
    };
    let (length, from, travel) = (length?.base(), from?.base(), travel?.base());
    let (to, half) = (
        from + length + travel,
        thickness.map_or(0.0, |thickness| thickness.base() / 2.0),
    );
    Ok(vec![(from, -half), (to, -half), (to, half), (from, half)])
}

/// The sector of a leaf that turns; its curved side lies a hair outside the way of the tip.
fn turned<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    index: usize,
) -> Result<Vec<Point>, Halt> {
    let length = read!(asking, leaf.length);
    let angle = read!(asking, gate.travel_angle);
    let side = asking.pick(&gate.origin, "swings", gate.swings);
    let at_latch = gate.kind == GateKind::DoubleSwing && index == 0;
    let hinge = if at_latch {
        Ok(Length::default())
    } else {
        read!(asking, gate.clear_opening)
    };
    let (length, angle, side) = (length?.base(), angle?.base(), side?);
    let hinge = (hinge?.base(), 0.0);
    let closed = if at_latch { 0.0 } else { PI };
    let turn = if (side == SwingSide::IntoProperty) == at_latch {
        angle
    } else {
        -angle
    };
    let step = turn / f64::from(STEPS);
    let reach = length / (step / 2.0).cos();
    let mut outline = vec![hinge];
    outline.extend((0..=STEPS).map(|part| {
        let (sine, cosine) = (closed + step * f64::from(part)).sin_cos();
        (hinge.0 + reach * cosine, hinge.1 + reach * sine)
    }));
    Ok(outline)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::check::testing::site;
    use quantity::UnitSystem;

    fn of(gate: &str) -> Envelope {
        let text = format!(
            "[site]\nname = \"Test yard\"\ncode_basis = \"eu\"\n[[gate]]\nid = \"main\"\n{gate}"
        );
        let site: &'static site::Site = Box::leak(Box::new(site(&text)));
        envelope(&mut Asking::new(UnitSystem::Si), &site.gate[0]).unwrap()
    }

    #[test]
    fn a_slide_covers_its_run_back() {
        let slide = of(
            "kind = \"track-slide\"\ntravel = \"5 m\"\n[[gate.leaf]]\nid = \"leaf\"\nlength = \"5 m\"\nclosed_end = \"0 m\"\nthickness = \"100 mm\"",
        );
        assert!(slide.to_point((7.0, 0.0)).abs() < 1e-12);
        assert!((slide.to_point((12.0, 0.0)) - 2.0).abs() < 1e-12);
        assert!((slide.to_point((3.0, 1.05)) - 1.0).abs() < 1e-12);
        assert!(slide.to_piece(&[(3.0, -2.0), (3.0, 2.0)]).abs() < 1e-12);
    }

    #[test]
    fn two_leaves_cover_two_quarters_of_a_circle() {
        let swing = of(
            "kind = \"double-swing\"\nclear_opening = \"4 m\"\ntravel_angle = \"90°\"\nswings = \"into the property\"\n[[gate.leaf]]\nid = \"one\"\nlength = \"2 m\"\n[[gate.leaf]]\nid = \"two\"\nlength = \"2 m\"",
        );
        for inside in [(0.5, 1.0), (3.5, 1.0), (1.3, 1.3)] {
            assert!(swing.to_point(inside).abs() < 1e-12, "{inside:?}");
        }
        assert!((swing.to_point((-1.0, 1.0)) - 1.0).abs() < 1e-9);
        assert!((swing.to_point((1.0, -0.5)) - 0.5).abs() < 1e-9);
        // Straight out from the hinge at 45°, 3 m away: 1 m beyond the tip.
        let out = 3.0 / 2_f64.sqrt();
        let apart = of(
            "kind = \"single-swing\"\nclear_opening = \"2 m\"\ntravel_angle = \"90°\"\nswings = \"toward the road\"\n[[gate.leaf]]\nid = \"one\"\nlength = \"2 m\"",
        );
        assert!((apart.to_point((2.0 - out, -out)) - 1.0).abs() < 0.005);
    }
}
