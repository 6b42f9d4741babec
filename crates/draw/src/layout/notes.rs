//! Text, labels and notes as marks, each in the best free place.

use super::dimensions::reading;
use super::view::View;
use crate::flat::{Segment, Spot};
use crate::lettering::Block;
use crate::mark::{Mark, Pen};
use crate::room::{Place, Room, Wish};
use crate::{Anchor, Ink, Label, LineWeight, Note, Text};
use quantity::Quantity;

/// Length of an arrowhead (mm).
const HEAD: f64 = 2.6;
/// Half its width (mm).
const HEAD_HALF: f64 = 0.45;

/// A text where it is put, or beside it when other words are there; `None` when the sheet is full.
pub(crate) fn place_text(text: &Text, view: &View, ink: Ink, room: &mut Room) -> Option<Vec<Mark>> {
    let block = text_block(text, view)?.ink(ink);
    let center = block.center_from(view.spot(text.at));
    let patch = block.patch(center);
    if room.is_free(&patch) {
        room.texts.push(patch);
        return Some(block.marks(center));
    }
    settle(&block, view.spot(text.at), Wish::close(), room)
}

/// The block of a text; `None` when it has no words.
pub(crate) fn text_block(text: &Text, view: &View) -> Option<Block> {
    let height = text.height.millimeters(view.per_meter);
    Block::new(
        &text.words,
        height,
        reading(turn(text.rotation.base())),
        text.anchor,
    )
}

/// An angle between minus and plus half a turn (rad).
fn turn(angle: f64) -> f64 {
    let full = std::f64::consts::TAU;
    let turned = angle.rem_euclid(full);
    if turned > full / 2.0 {
        turned - full
    } else {
        turned
    }
}

/// A label beside its point; `None` when the sheet is full.
pub(crate) fn place_label(
    label: &Label,
    view: &View,
    ink: Ink,
    room: &mut Room,
) -> Option<Vec<Mark>> {
    let height = label.height.millimeters(view.per_meter);
    let block = Block::new(&label.words, height, 0.0, Anchor::Middle)?.ink(ink);
    settle(&block, view.spot(label.at), Wish::close(), room)
}

/// A note with its arrow; `None` when the sheet is full.
pub(crate) fn place_note(note: &Note, view: &View, ink: Ink, room: &mut Room) -> Option<Vec<Mark>> {
    let height = note.height.millimeters(view.per_meter);
    let tip = view.spot(note.at);
    let block = Block::new(&note.words, height, 0.0, Anchor::Start)?.ink(ink);
    let place = room.near(tip, &block.patch(tip), &Wish::note(note.toward))?;
    let align = if place.patch.center.x < tip.x {
        Anchor::End
    } else {
        Anchor::Start
    };
    let mut marks = place.leader.map_or_else(Vec::new, |line| arrow(line, ink));
    keep(&place, room);
    marks.extend(block.aligned(align).marks(place.patch.center));
    Some(marks)
}

/// Words in the best free place near a point, with a thin line when they stand away from it.
fn settle(block: &Block, at: Spot, wish: Wish, room: &mut Room) -> Option<Vec<Mark>> {
    let place = room.near(at, &block.patch(at), &wish)?;
    let pen = Pen {
        ink: Ink::Gray,
        ..Pen::black(LineWeight::Fine.millimeters())
    };
    let mut marks: Vec<Mark> = place
        .leader
        .map(|(from, to)| Mark::line(from, to, pen))
        .into_iter()
        .collect();
    keep(&place, room);
    marks.extend(block.marks(place.patch.center));
    Some(marks)
}

/// Keeps the room of placed words and their line.
fn keep(place: &Place, room: &mut Room) {
    room.texts.push(place.patch);
    room.leaders.extend(place.leader);
}

/// A line with a slim arrowhead at its first end.
fn arrow(line: Segment, ink: Ink) -> Vec<Mark> {
    let (tip, end) = line;
    let step = end.minus(tip);
    let long = step.length().max(1e-9);
    let unit = Spot::new(step.x / long, step.y / long);
    let back = tip.plus(unit, HEAD.min(long));
    let corners = [
        back.plus(unit.left(), HEAD_HALF),
        tip,
        back.plus(unit.left(), -HEAD_HALF),
    ];
    let pen = Pen {
        ink,
        ..Pen::black(LineWeight::Fine.millimeters())
    };
    vec![
        Mark::line(tip, end, pen),
        Mark::solid(corners.to_vec(), ink),
    ]
}
