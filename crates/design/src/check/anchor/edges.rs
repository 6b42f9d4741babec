//! How far the outermost anchors are from the edges of their concrete.
//!
//! The outline of the foundation counts; round ones count as near on every side as on the nearest. A stated distance
//! counts where there is no outline, and where it is less than the outline says every edge is nearer by as much.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::standing::anchor_group::Pattern;
use quantity::{Length, Quantity as _};
use site::{Anchor, Foundation};

/// Distances to the edges on the latching side, the far side, outside and inside.
pub(super) fn edges<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
    pattern: &Pattern,
) -> Result<[Length; 4], Halt> {
    let stated = asking.read_if_there(
        &anchor.origin,
        "edge_distance",
        anchor.edge_distance.as_ref(),
    );
    let edges = match (outline(asking, foundation, anchor, pattern)?, stated) {
        (Some(edges), Some(stated)) => {
            let nearer = nearest(&edges).base() - stated.base();
            edges.map(|edge| Length::from_base(edge.base() - nearer.max(0.0)))
        }
        (Some(edges), None) => edges,
        (None, Some(stated)) => [stated; 4],
        (None, None) => [read!(asking, anchor.edge_distance)?; 4],
    };
    if nearest(&edges).base() <= 0.0 {
        return asking.refuse("the anchors stand beyond the edge of their foundation");
    }
    Ok(edges)
}

/// The nearest of them.
pub(crate) fn nearest(edges: &[Length; 4]) -> Length {
    let least = edges.iter().map(|edge| edge.base());
    Length::from_base(least.fold(f64::INFINITY, f64::min))
}

/// Distances by the outline of the foundation, where it is known.
pub(super) fn outline<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
    pattern: &Pattern,
) -> Result<Option<[Length; 4]>, Halt> {
    let origin = &foundation.origin;
    let diameter = asking.read_if_there(origin, "diameter", foundation.diameter.as_ref());
    let length = asking.read_if_there(origin, "length", foundation.length.as_ref());
    let width = asking.read_if_there(origin, "width", foundation.width.as_ref());
    if diameter.is_none() && (length.is_none() || width.is_none()) {
        return Ok(None);
    }
    let [x, y] = from_middle(asking, foundation, anchor)?.map(quantity::Quantity::base);
    let [half_x, half_y] = halves(pattern).map(quantity::Quantity::base);
    let distances = match (diameter, length, width) {
        (Some(diameter), ..) => {
            let reach = match pattern {
                Pattern::Circle { .. } => x.hypot(y) + half_x,
                Pattern::Rows { .. } => (x.abs() + half_x).hypot(y.abs() + half_y),
            };
            [diameter.base() / 2.0 - reach; 4]
        }
        (None, Some(length), Some(width)) => {
            let (to_x, to_y) = (length.base() / 2.0 - half_x, width.base() / 2.0 - half_y);
            [to_x + x, to_x - x, to_y + y, to_y - y]
        }
        _ => return Ok(None),
    };
    Ok(Some(distances.map(Length::from_base)))
}

/// Middle of the anchors, from that of the foundation.
pub(super) fn from_middle<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<[Length; 2], Halt> {
    if anchor.at.is_none() {
        return Ok([Length::default(); 2]);
    }
    let [x, y, _] = asking.position(&anchor.origin, "at", anchor.at.as_ref())?;
    let [fx, fy, _] = asking.position(&foundation.origin, "at", foundation.at.as_ref())?;
    Ok([x - fx, y - fy])
}

/// Half of the distance between the outermost anchors, along the gate line and across it.
pub(super) fn halves(pattern: &Pattern) -> [Length; 2] {
    match *pattern {
        Pattern::Rows {
            in_row,
            spacing,
            rows,
            row_spacing,
        } => [
            spacing * (f64::from(in_row.saturating_sub(1)) / 2.0),
            row_spacing * (f64::from(rows.saturating_sub(1)) / 2.0),
        ],
        Pattern::Circle { diameter, .. } => [diameter / 2.0; 2],
    }
}
