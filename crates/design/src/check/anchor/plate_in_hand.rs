//! Whether the holes of the plate in hand meet the anchors.

use crate::asking::{Asking, read};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::standing::anchor_group::Pattern;
use quantity::{Length, Quantity as _};
use site::{Anchor, AnchorKind};

/// The holes as taped on the plate against the anchors as they stand or are drawn, within the play of the holes.
pub(super) fn plate_in_hand<'s>(
    asking: &mut Asking<'s>,
    anchor: &'s Anchor,
    pattern: &Pattern,
) -> Result<Vec<Comparison>, Halt> {
    if anchor.kind == Some(AnchorKind::HeadedStud) || pattern.count() == 1 {
        return Ok(Vec::new());
    }
    let hole = read!(asking, anchor.plate_hole);
    let diameter = read!(asking, anchor.diameter);
    let [in_row, between] = ways(pattern);
    let along = match in_row {
        Some(_) => read!(asking, anchor.plate_spacing).map(Some),
        None => Ok(None),
    };
    let across = match between {
        Some(_) => read!(asking, anchor.plate_row_spacing).map(Some),
        None => Ok(None),
    };
    let play = hole? - diameter?;
    let mut all = Vec::new();
    for (drawn, taped) in [(in_row, along?), (between, across?)] {
        if let (Some((gaps, drawn)), Some(taped)) = (drawn, taped) {
            all.push(Comparison::at_most(
                Labeled::new(
                    "what holes of the plate and anchors differ over the row",
                    Length::from_base((taped - drawn).base().abs() * gaps),
                ),
                Labeled::new("the play of a hole", play),
            ));
        }
    }
    Ok(all)
}

/// Gaps in a row and between rows, with the distance of neighbors; nothing where there are none.
fn ways(pattern: &Pattern) -> [Option<(f64, Length)>; 2] {
    let gaps = |count: u32, spacing: Length| {
        (count > 1).then(|| (f64::from(count.saturating_sub(1)), spacing))
    };
    match *pattern {
        Pattern::Rows {
            in_row,
            spacing,
            rows,
            row_spacing,
        } => [gaps(in_row, spacing), gaps(rows, row_spacing)],
        Pattern::Circle { .. } => [neighbors(pattern).map(|chord| (1.0, chord)), None],
    }
}

/// Distance of the nearest two anchors; nothing for a single one.
pub(super) fn neighbors(pattern: &Pattern) -> Option<Length> {
    match *pattern {
        Pattern::Rows {
            in_row,
            spacing,
            rows,
            row_spacing,
        } => match (in_row > 1, rows > 1) {
            (true, true) if row_spacing < spacing => Some(row_spacing),
            (true, _) => Some(spacing),
            (false, true) => Some(row_spacing),
            (false, false) => None,
        },
        Pattern::Circle { count, diameter } => {
            let half_angle = std::f64::consts::PI / f64::from(count.max(2));
            Some(diameter * half_angle.sin())
        }
    }
}
