//! Rows of dimensions under a drawing: named stretches, in as few rows as they take without overlapping.

use draw::{Dimension, DimensionLine, LayerId, Point, Scene};
use quantity::{Length, Quantity as _};

/// From the drawing to the first row of dimensions, and from row to row (mm).
pub(crate) const FIRST_ROW: f64 = 5.0;
pub(crate) const NEXT_ROW: f64 = 6.5;

/// A length along the gate, with its name.
#[derive(Debug, Clone)]
pub(crate) struct Stretch {
    pub(crate) what: &'static str,
    pub(crate) from: f64,
    pub(crate) to: f64,
}

/// Draws stretches that are measured at one height, in rows under the lowest point; the first stand nearest.
pub(crate) fn draw(
    scene: &mut Scene,
    layer: LayerId,
    (measured, lowest): (Length, Point),
    stretches: Vec<Stretch>,
) {
    let mut away = FIRST_ROW;
    for row in packed(stretches) {
        for stretch in row {
            let ends =
                [stretch.from, stretch.to].map(|x| Point::new(Length::from_base(x), measured));
            let length = Length::from_base(stretch.to - stretch.from);
            let said = draw::dimension_text(length, scene.units);
            let line = DimensionLine::Beyond(lowest, Length::from_base(-away / 1000.0));
            scene.add_titled(
                layer,
                stretch.what,
                Dimension::horizontal(ends, line).words([format!("{} {said}", stretch.what)]),
            );
        }
        away += NEXT_ROW;
    }
}

/// Stretches in rows: each in the first row where it overlaps none.
fn packed(stretches: Vec<Stretch>) -> Vec<Vec<Stretch>> {
    let mut rows: Vec<Vec<Stretch>> = Vec::new();
    for stretch in stretches {
        let row = rows.iter_mut().find(|row| {
            row.iter()
                .all(|other| stretch.from >= other.to - 1e-6 || stretch.to <= other.from + 1e-6)
        });
        match row {
            Some(row) => row.push(stretch),
            None => rows.push(vec![stretch]),
        }
    }
    rows
}
