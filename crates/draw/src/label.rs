//! Labels for any area of paper, placed so that no two overlap.

use crate::flat::{Bounds, Spot};
use crate::lettering::Block;
use crate::room::{Room, Wish};
use crate::{Anchor, Point, TextBox};
use quantity::{Length, Quantity};

/// A label to be placed on paper.
#[derive(Debug, Clone, PartialEq)]
pub struct LabelRequest {
    /// What it names, from the lower left corner of the area.
    pub at: Point,
    /// Its words; `\n` begins a new line.
    pub words: String,
    /// Height of its capitals on the paper.
    pub height: Length,
}

/// A label in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedLabel {
    /// The room that it takes.
    pub text: TextBox,
    /// A thin line from the named point to the text, when the text had to move away from it.
    pub leader: Option<(Point, Point)>,
}

/// Places labels in an area of paper so that they overlap neither each other nor the boxes that are already there.
///
/// Each answer is in the place of its request; `None` when there is no room left for it (or it has no words). The
/// earlier labels choose first. Positions are from the area's lower left corner.
pub fn place_labels(
    width: Length,
    height: Length,
    taken: &[TextBox],
    labels: &[LabelRequest],
) -> Vec<Option<PlacedLabel>> {
    let area = Bounds::new(
        Spot::new(0.0, 0.0),
        Spot::of_paper(Point::new(width, height)),
    );
    let mut room = Room::new(area);
    room.texts.extend(taken.iter().map(TextBox::patch));
    labels
        .iter()
        .map(|label| place_label(&mut room, label))
        .collect()
}

/// Places one label and keeps its room.
fn place_label(room: &mut Room, label: &LabelRequest) -> Option<PlacedLabel> {
    let at = Spot::of_paper(label.at);
    let block = Block::new(
        &label.words,
        label.height.base() * 1000.0,
        0.0,
        Anchor::Middle,
    )?;
    let place = room.near(at, &block.patch(at), &Wish::close())?;
    room.texts.push(place.patch);
    room.leaders.extend(place.leader);
    let leader = place
        .leader
        .map(|(from, to)| (from.to_paper(), to.to_paper()));
    Some(PlacedLabel {
        text: TextBox::of(block.words(), &place.patch),
        leader,
    })
}
