//! The north arrow, or the plain statement that north isn't known.

use super::frame::caption;
use super::typist::{PLAIN, Style, Typist, letters};
use crate::flat::Spot;
use crate::mark::{Mark, Pen, Slant};
use crate::{Anchor, Ink, North};
use quantity::Quantity;

/// Radius of the ring (mm).
const RING: f64 = 6.0;

/// North in the cell whose upper left corner is here.
pub(crate) fn north_marks(north: &North, left: f64, top: f64) -> Vec<Mark> {
    match north {
        North::Toward {
            direction,
            caption: words,
        } => {
            let mut marks = caption("True north", left, top).marks;
            let center = Spot::new(left + 13.0, top - 15.0);
            marks.extend(arrow(center, direction.base()));
            let mut typist = Typist::new(left + 25.0, top - 8.0, 48.0);
            typist.set(words, PLAIN);
            marks.extend(typist.marks);
            marks
        }
        North::NotMeasured => statement("True north", "North has not been measured.", left, top),
        North::NotSeenFromAbove => {
            statement("View", "North does not apply to this view.", left, top)
        }
    }
}

/// Words in place of an arrow.
fn statement(head: &str, words: &str, left: f64, top: f64) -> Vec<Mark> {
    let mut marks = caption(head, left, top).marks;
    let mut typist = Typist::new(left + 2.0, top - 5.2, 70.0);
    typist.set(words, PLAIN);
    marks.extend(typist.marks);
    marks
}

/// A ring with a slim needle, its north half dark, and the letter N beyond it.
fn arrow(center: Spot, direction: f64) -> Vec<Mark> {
    let unit = Spot::unit(direction);
    let (tip, tail) = (center.plus(unit, RING + 1.4), center.plus(unit, -RING));
    let (one, other) = (
        center.plus(unit.left(), 1.5),
        center.plus(unit.left(), -1.5),
    );
    let fine = Pen::black(0.18);
    let half = |end: Spot, side: Spot, fill: Ink| Mark::Path {
        spots: vec![end, side, center],
        closed: true,
        pen: Some(fine),
        fill: Some(fill),
    };
    let strong = Style {
        height: 2.5,
        slant: Slant::Strong,
        ink: Ink::Black,
    };
    let letter = center
        .plus(unit, RING + 4.0)
        .plus(Spot::new(0.0, -1.25), 1.0);
    vec![
        Mark::Circle {
            center,
            radius: RING,
            pen: Some(fine),
            fill: None,
        },
        half(tip, one, Ink::Black),
        half(tip, other, Ink::Paper),
        half(tail, one, Ink::Paper),
        half(tail, other, Ink::Black),
        letters(letter, "N".to_owned(), strong, Anchor::Middle),
    ]
}
