//! The scale bar on the sheet, with the size of paper at which it is true.

use super::frame::caption;
use super::typist::{CAPTION, PLAIN, Style, Typist, letters};
use crate::flat::{Bounds, Spot};
use crate::mark::{Mark, Pen};
use crate::{Anchor, Ink, Scale, ScaleBar, Scene, Sheet};
use quantity::{Quantity, UnitSystem};

/// Height of the bar (mm).
const HIGH: f64 = 1.6;

/// The scale bar at the foot of its cell, or the statement that there is no scale.
pub(crate) fn bar_marks(
    sheet: &Sheet,
    scene: &Scene,
    scale: Option<&Scale>,
    bar: Option<&ScaleBar>,
    cell: Bounds,
) -> Vec<Mark> {
    let (left, foot) = (cell.low.x + 5.0, cell.low.y + 8.4);
    let (Some(_), Some(bar)) = (scale, bar) else {
        let mut typist = Typist::new(cell.low.x + 2.0, cell.low.y + 10.0, 70.0);
        typist.set("Not to scale. Do not measure from this sheet.", PLAIN);
        return typist.marks;
    };
    let small = Style {
        height: 2.0,
        ..PLAIN
    };
    let mut marks = parts(bar, Spot::new(left, foot));
    let end = Spot::new(left + bar.on_paper.base() * 1000.0, foot + HIGH + 1.2);
    marks.push(letters(
        Spot::new(left, end.y),
        "0".to_owned(),
        small,
        Anchor::Middle,
    ));
    marks.push(letters(end, bar.words.clone(), small, Anchor::Middle));
    let unit = match scene.units {
        UnitSystem::UsCustomary => "Dimensions in feet and inches.",
        UnitSystem::Si => "Dimensions in millimeters.",
    };
    let mut typist = Typist::new(cell.low.x + 2.0, foot - 1.4, 73.0);
    for words in [
        unit.to_owned(),
        format!("True at full size on {}.", sheet.paper.words()),
    ] {
        typist.set(
            &words,
            Style {
                ink: Ink::Black,
                ..CAPTION
            },
        );
    }
    marks.extend(typist.marks);
    marks.extend(caption("Scale bar", cell.low.x, foot + HIGH + 8.4).marks);
    marks
}

/// The bar, its parts dark and light in turn.
fn parts(bar: &ScaleBar, low: Spot) -> Vec<Mark> {
    let long = bar.on_paper.base() * 1000.0;
    let each = long / f64::from(bar.parts);
    let part = |index: u32, fill: Ink| {
        let left = low.x + each * f64::from(index);
        let (right, top) = (left + each, low.y + HIGH);
        let spots = vec![
            Spot::new(left, low.y),
            Spot::new(right, low.y),
            Spot::new(right, top),
            Spot::new(left, top),
        ];
        Mark::Path {
            spots,
            closed: true,
            pen: Some(Pen::black(0.18)),
            fill: Some(fill),
        }
    };
    (0..bar.parts)
        .map(|index| {
            part(
                index,
                if index % 2 == 0 {
                    Ink::Black
                } else {
                    Ink::Paper
                },
            )
        })
        .collect()
}
