//! What a sliding leaf moves toward: catch posts and whatever stands across its line.

use crate::asking::Asking;
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{FixedThing, Gate, Post, PostRole, SectionShape};

/// The foremost face before the leaf's closed end, which is that end itself where nothing else is written.
pub(super) fn before_closed_leaf<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    (closed, open): (Length, Length),
) -> Result<(Length, String), Halt> {
    let mut face = (
        closed,
        "nothing written: taken as shut against something".to_owned(),
    );
    let mut found = None;
    let posts = gate.post.iter().filter(|post| post.role == PostRole::Catch);
    for post in posts {
        let [x, _, _] = asking.position_as_written((&post.origin, "at"), post.at.as_ref())?;
        found = Some(foremost(found, x + half_width(post), &post.id));
    }
    for thing in &gate.nearby {
        if let Some(x) = crosses(asking, thing)?
            && x < 0.5 * (closed + open)
        {
            found = Some(foremost(found, x, &thing.id));
        }
    }
    if let Some((x, id)) = found {
        face = (x, format!("{id}, its face at {}", asking.print().q(x)));
    }
    Ok(face)
}

fn foremost(known: Option<(Length, String)>, x: Length, id: &site::Id) -> (Length, String) {
    known
        .filter(|(before, _)| *before >= x)
        .unwrap_or_else(|| (x, id.to_string()))
}

/// The nearest thing across the line behind the open leaf's tail; nothing where none is written.
pub(super) fn after_open_leaf<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    tail: Length,
) -> Result<(Option<Length>, String), Halt> {
    let mut nearest: Option<(Length, String)> = None;
    for thing in &gate.nearby {
        if let Some(x) = crosses(asking, thing)? {
            let nearer = nearest.as_ref().is_none_or(|(known, _)| x < *known);
            if x > tail && nearer {
                nearest = Some((x, thing.id.to_string()));
            }
        }
    }
    Ok(match nearest {
        Some((x, id)) => (
            Some(x),
            format!("{id}, its face at {}", asking.print().q(x)),
        ),
        None => (None, "nothing written: taken as open ground".to_owned()),
    })
}

/// Where a thing stands across the line of the leaf.
fn crosses<'s>(asking: &mut Asking<'s>, thing: &'s FixedThing) -> Result<Option<Length>, Halt> {
    let (Some(from), Some(to)) = (&thing.from, &thing.to) else {
        return Ok(None);
    };
    let [x0, y0, _] = asking.position_as_written((&thing.origin, "from"), Some(from))?;
    let [x1, y1, _] = asking.position_as_written((&thing.origin, "to"), Some(to))?;
    let (a, b) = (y0.base(), y1.base());
    if a * b > 0.0 {
        return Ok(None);
    }
    let share = if (b - a).abs() > 0.0 {
        -a / (b - a)
    } else {
        0.0
    };
    if (b - a).abs() > 0.0 {
        return Ok(Some(x0 + (x1 - x0) * share));
    }
    // It lies along the line: its nearer end counts, seen from either side of the opening.
    let left_of_it = x0.base() + x1.base() < 0.0;
    Ok(Some(if (x0 > x1) == left_of_it { x0 } else { x1 }))
}

/// Half the width of a post along the leaf, as far as it is written.
pub(crate) fn half_width(post: &Post) -> Length {
    let section = post.section.as_ref().map(|section| match section.shape() {
        SectionShape::Hss { depth, .. }
        | SectionShape::Tube { depth, .. }
        | SectionShape::Flat { depth, .. } => depth,
        SectionShape::Pipe { nominal } => nominal * 1.2,
        SectionShape::RoundTube { diameter, .. } | SectionShape::Rod { diameter } => diameter,
    });
    let width = post.width.as_ref().map(quantity::Measured::nominal);
    width
        .or(section)
        .map_or(Length::from_base(0.0), |width| width / 2.0)
}
