//! A scene at one scale: its geometry as marks on layers, then its words, each in a place of its own.

use super::dimensions::Drawn;
use super::figures::{figure_marks, patch_around, stand_of, symbol_marks};
use super::notes::{place_label, place_note, place_text, text_block};
use super::view::View;
use crate::flat::{Bounds, Spot};
use crate::mark::{Mark, Pen};
use crate::room::Room;
use crate::{Content, Layer, LineWeight, Scene, Shape};

/// A scene on the paper.
#[derive(Debug, Clone)]
pub(crate) struct Composed {
    /// How it came to the paper.
    pub(crate) view: View,
    /// For each layer of the scene, its geometry.
    pub(crate) geometry: Vec<Vec<Mark>>,
    /// For each layer of the scene, its words and dimensions.
    pub(crate) words: Vec<Vec<Mark>>,
    /// Words that found no room.
    pub(crate) homeless: Vec<String>,
}

/// The pen of a layer.
pub(crate) fn pen_of(layer: Option<&Layer>) -> Pen {
    layer.map_or(Pen::black(LineWeight::Medium.millimeters()), |layer| Pen {
        width: layer.weight.millimeters(),
        pattern: layer.pattern,
        ink: layer.ink,
    })
}

/// The pen of the layer that a shape is on.
fn pen(scene: &Scene, shape: &Shape) -> Pen {
    pen_of(scene.layers().get(shape.layer.0))
}

/// Whether a scene has words that need paper around the geometry.
pub(crate) fn has_notes(scene: &Scene) -> bool {
    scene
        .shapes()
        .iter()
        .any(|shape| matches!(shape.content, Content::Note(_) | Content::Label(_)))
}

/// The geometry that a shape draws, if it is geometry.
fn geometry(shape: &Shape, view: &View, pen: Pen) -> Vec<Mark> {
    match &shape.content {
        Content::Figure(figure) => figure_marks(figure, view, pen),
        Content::Symbol(placement) => {
            let pen = Pen {
                width: pen.width.min(LineWeight::Medium.millimeters()),
                ..pen
            };
            let solid = Pen {
                pattern: crate::LinePattern::Unbroken,
                ..pen
            };
            symbol_marks(&placement.symbol, stand_of(placement, view), solid)
        }
        _ => Vec::new(),
    }
}

/// How far a scene reaches on paper at so many millimeters to the meter, its origin at the corner.
pub(crate) fn extent(scene: &Scene, per_meter: f64) -> Bounds {
    let view = View {
        per_meter,
        origin: Spot::new(0.0, 0.0),
    };
    let mut bounds = Bounds::EMPTY;
    for shape in scene.shapes() {
        let pen = pen(scene, shape);
        match &shape.content {
            Content::Figure(_) | Content::Symbol(_) => {
                for mark in geometry(shape, &view, pen) {
                    mark.bound(&mut bounds);
                }
            }
            Content::Dimension(dimension) => {
                let drawn = Drawn::new(dimension, &view, scene.units, pen.ink);
                drawn
                    .iter()
                    .flat_map(Drawn::outline)
                    .for_each(|spot| bounds.take(spot));
            }
            Content::Text(text) => {
                let patch = text_block(text, &view)
                    .map(|block| block.patch(block.center_from(view.spot(text.at))));
                patch
                    .iter()
                    .flat_map(crate::patch::Patch::corners)
                    .for_each(|corner| bounds.take(corner));
            }
            Content::Label(label) => bounds.take(view.spot(label.at)),
            Content::Note(note) => bounds.take(view.spot(note.at)),
        }
    }
    bounds
}

/// Puts a scene on the paper.
pub(crate) fn compose(scene: &Scene, view: View, area: Bounds) -> Composed {
    compose_in(scene, view, Room::new(area))
}

/// Puts a scene on paper on which something may stand already.
pub(crate) fn compose_in(scene: &Scene, view: View, mut room: Room) -> Composed {
    let mut composed = Composed {
        view,
        geometry: vec![Vec::new(); scene.layers().len()],
        words: vec![Vec::new(); scene.layers().len()],
        homeless: Vec::new(),
    };
    composed.draw_geometry(scene, &mut room);
    for kind in [Kind::Text, Kind::Dimension, Kind::Note, Kind::Label] {
        composed.draw_words(scene, kind, &mut room);
    }
    composed
}

/// Kinds of words, in the order in which they choose their place.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Text,
    Dimension,
    Note,
    Label,
}

impl Kind {
    /// The kind of a content with something to print.
    fn of(content: &Content) -> Option<Kind> {
        let (kind, words) = match content {
            Content::Text(text) => (Kind::Text, &text.words),
            Content::Note(note) => (Kind::Note, &note.words),
            Content::Label(label) => (Kind::Label, &label.words),
            Content::Dimension(_) => return Some(Kind::Dimension),
            Content::Figure(_) | Content::Symbol(_) => return None,
        };
        (!words.trim().is_empty()).then_some(kind)
    }
}

impl Composed {
    /// Draws figures and symbols, and keeps words off them.
    fn draw_geometry(&mut self, scene: &Scene, room: &mut Room) {
        for shape in scene.shapes() {
            let pen = pen(scene, shape);
            let marks = geometry(shape, &self.view, pen);
            if matches!(shape.content, Content::Symbol(_)) {
                room.solids.extend(patch_around(&marks));
                room.texts.extend(marks.iter().filter_map(letter_patch));
            }
            room.lines.extend(marks.iter().flat_map(Mark::segments));
            if let Content::Dimension(dimension) = &shape.content {
                let drawn = Drawn::new(dimension, &self.view, scene.units, pen.ink);
                room.leaders.extend(drawn.iter().flat_map(Drawn::segments));
            }
            push(&mut self.geometry, shape, class(&shape.content), marks);
        }
    }

    /// Draws the words of one kind in the order of the scene.
    fn draw_words(&mut self, scene: &Scene, kind: Kind, room: &mut Room) {
        for shape in scene
            .shapes()
            .iter()
            .filter(|shape| Kind::of(&shape.content) == Some(kind))
        {
            let ink = pen(scene, shape).ink;
            let placed = match &shape.content {
                Content::Text(text) => place_text(text, &self.view, ink, room),
                Content::Label(label) => place_label(label, &self.view, ink, room),
                Content::Note(note) => place_note(note, &self.view, ink, room),
                Content::Dimension(dimension) => {
                    let mut marks = Vec::new();
                    if let Some(drawn) = Drawn::new(dimension, &self.view, scene.units, ink) {
                        self.homeless.extend(drawn.place(room, &mut marks));
                    }
                    Some(marks)
                }
                Content::Figure(_) | Content::Symbol(_) => None,
            };
            match placed {
                Some(marks) => push(&mut self.words, shape, class(&shape.content), marks),
                None => self.homeless.extend(words(&shape.content)),
            }
        }
    }
}

/// Adds the marks of a shape to its layer as one group.
fn push(layers: &mut [Vec<Mark>], shape: &Shape, class: &'static str, marks: Vec<Mark>) {
    if let (Some(layer), false) = (layers.get_mut(shape.layer.0), marks.is_empty()) {
        layer.push(Mark::Group {
            class,
            title: shape.title.clone(),
            marks,
        });
    }
}

/// The room of a letter inside a symbol.
fn letter_patch(mark: &Mark) -> Option<crate::patch::Patch> {
    match mark {
        Mark::Letters(letter) => Some(letter.patch()),
        _ => None,
    }
}

/// The class of the group that a content becomes.
fn class(content: &Content) -> &'static str {
    match content {
        Content::Figure(_) => "figure",
        Content::Text(_) => "text",
        Content::Label(_) => "label",
        Content::Note(_) => "note",
        Content::Dimension(_) => "dimension",
        Content::Symbol(_) => "symbol",
    }
}

/// The words of a content that found no room.
fn words(content: &Content) -> Option<String> {
    match content {
        Content::Text(text) => Some(text.words.clone()),
        Content::Label(label) => Some(label.words.clone()),
        Content::Note(note) => Some(note.words.clone()),
        Content::Dimension(_) | Content::Figure(_) | Content::Symbol(_) => None,
    }
}
