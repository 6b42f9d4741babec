//! The list beside the views: each number with its name and its size, or what of it is not written.

use super::content::{Content, Place};
use super::{Drawn, at};
use draw::{Anchor, Text};
use quantity::{Length, Quantity as _};

/// Rows in a column of the height of the box, and a little below.
const ROWS: usize = 22;

/// Height of a row, and width of a column, over the larger side of the box.
const PITCH: f64 = 0.048;
const COLUMN: f64 = 1.0;

impl Drawn<'_> {
    /// Writes the list with its upper left corner at the height of the box (m).
    pub(super) fn list(&mut self, left: f64) {
        let larger = self.size.0.max(self.size.1);
        let mut rows = vec!["What is in it, as numbered".to_owned()];
        let things = self.contents.things.iter().zip(1..);
        rows.extend(things.map(|(thing, number)| format!("{number}   {}", self.row(thing))));
        let mut left = left;
        for column in rows.chunks(ROWS) {
            let mut up = self.size.1;
            for row in column {
                up -= PITCH * larger;
                let text = Text::new(at(left, up), row.as_str())
                    .anchor(Anchor::Start)
                    .height(super::front::small());
                self.scene.add(self.layers.words, text);
            }
            left += COLUMN * larger;
        }
    }

    fn row(&self, thing: &Content) -> String {
        let said = |meters: f64| draw::dimension_text(Length::from_base(meters), self.scene.units);
        let size = match (thing.width, thing.height) {
            (Some(wide), Some(high)) => format!("{} wide, {} high", said(wide), said(high)),
            (Some(wide), None) => format!("{} wide, height is not written", said(wide)),
            (None, Some(high)) => format!("width is not written, {} high", said(high)),
            (None, None) => "size is not written".to_owned(),
        };
        let place = match thing.place {
            Place::At(..) => "",
            Place::Behind(_) => "; not drawn: a width before it is not written",
            Place::Along(..) => "; not drawn",
            Place::Unwritten => "; place is not written",
        };
        format!("{}: {size}{place}", thing.title())
    }
}
