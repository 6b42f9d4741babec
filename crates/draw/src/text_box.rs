//! The room that each text takes on the paper, and which texts overlap.

use crate::Point;
use crate::flat::Spot;
use crate::patch::Patch;
use quantity::{Angle, Length, Quantity};

/// The rectangle that a text takes on the paper, its width estimated.
#[derive(Debug, Clone, PartialEq)]
pub struct TextBox {
    /// The words inside.
    pub words: String,
    /// Its center, from the lower left corner of the paper.
    pub center: Point,
    /// Its width in the direction of reading.
    pub width: Length,
    /// Its height.
    pub height: Length,
    /// Direction of reading, counter-clockwise from the paper's lower edge.
    pub rotation: Angle,
}

impl TextBox {
    /// The box of words in a patch of paper.
    pub(crate) fn of(words: String, patch: &Patch) -> Self {
        Self {
            words,
            center: patch.center.to_paper(),
            width: Length::from_base(patch.half_width * 0.002),
            height: Length::from_base(patch.half_height * 0.002),
            rotation: Angle::from_base(patch.angle),
        }
    }

    /// The patch of paper that it takes.
    pub(crate) fn patch(&self) -> Patch {
        Patch {
            center: Spot::of_paper(self.center),
            half_width: self.width.base() * 500.0,
            half_height: self.height.base() * 500.0,
            angle: self.rotation.base(),
        }
    }
}

/// Every pair of texts that overlap, by their words; empty on a drawing that may leave the house.
pub fn overlapping(boxes: &[TextBox]) -> Vec<(String, String)> {
    let patches: Vec<Patch> = boxes.iter().map(TextBox::patch).collect();
    let mut pairs = Vec::new();
    for (index, (one, patch)) in boxes.iter().zip(&patches).enumerate() {
        for (other, beside) in boxes.iter().zip(&patches).skip(index + 1) {
            if patch.overlaps(beside) {
                pairs.push((one.words.clone(), other.words.clone()));
            }
        }
    }
    pairs
}
