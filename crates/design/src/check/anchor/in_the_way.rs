//! Conduits that come up where an anchor is to go.

use super::edges::{from_middle, halves};
use crate::asking::{Asking, read};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::standing::anchor_group::Pattern;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Anchor, Foundation, StubUp};

static ROOM: Source = Source {
    work: "1 in of concrete between the hole of an anchor and a conduit",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "a drill that wanders by less does not reach the conduit",
};

/// Concrete between a hole and a conduit, in meters.
const BETWEEN: f64 = 0.0254;

/// Each conduit's distance to the nearest anchor, against what hole and conduit need.
pub(super) fn conduits<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
    pattern: &Pattern,
) -> Result<Vec<Comparison>, Halt> {
    if foundation.stub_up.is_empty() {
        return Ok(Vec::new());
    }
    asking.rest_on(&ROOM);
    let middle = from_middle(asking, foundation, anchor);
    let ground = asking.position(&foundation.origin, "at", foundation.at.as_ref());
    let hole = asking.read_if_there(
        &anchor.origin,
        "hole_diameter",
        anchor.hole_diameter.as_ref(),
    );
    let hole = match hole {
        Some(hole) => Ok(hole),
        None => read!(asking, anchor.diameter),
    };
    let conduits: Vec<Result<_, Halt>> = foundation
        .stub_up
        .iter()
        .map(|conduit| place(asking, conduit))
        .collect();
    let ([x, y], [gx, gy, _], hole) = (middle?, ground?, hole?);
    let mut all = Vec::new();
    for conduit in conduits {
        let ([cx, cy], diameter) = conduit?;
        let apart = distance(pattern, [cx - gx - x, cy - gy - y]);
        let needed = (hole + diameter) / 2.0 + Length::from_base(BETWEEN);
        all.push(Comparison::at_most(
            Labeled::new("what hole and conduit need between their middles", needed),
            Labeled::new("the distance from conduit to anchor", apart),
        ));
    }
    Ok(all)
}

/// Middle of a conduit and its diameter.
fn place<'s>(asking: &mut Asking<'s>, conduit: &'s StubUp) -> Result<([Length; 2], Length), Halt> {
    let at = asking.position(&conduit.origin, "at", conduit.at.as_ref());
    let diameter = read!(asking, conduit.diameter);
    let [x, y, _] = at?;
    Ok(([x, y], diameter?))
}

/// Distance from a point to the nearest anchor, from the middle of the set; of a circle, to the circle.
fn distance(pattern: &Pattern, point: [Length; 2]) -> Length {
    let [x, y] = point.map(quantity::Quantity::base);
    let [half_x, half_y] = halves(pattern).map(quantity::Quantity::base);
    let nearest = match *pattern {
        Pattern::Circle { .. } => (x.hypot(y) - half_x).abs(),
        Pattern::Rows {
            in_row,
            spacing,
            rows,
            row_spacing,
        } => {
            let across = (0..rows).map(|row| f64::from(row) * row_spacing.base() - half_y);
            let along = |y_at: f64| {
                (0..in_row).map(move |at| {
                    let x_at = f64::from(at) * spacing.base() - half_x;
                    (x - x_at).hypot(y - y_at)
                })
            };
            across.flat_map(along).fold(f64::INFINITY, f64::min)
        }
    };
    Length::from_base(nearest)
}
