//! A scene: shapes on layers in site coordinates, before any paper, scale or file format.

use crate::{Dimension, Figure, Label, Layer, Note, Placement, Text};
use quantity::UnitSystem;

/// A drawing before it has a scale: shapes on layers in site coordinates.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// What the drawing shows: `Plan of the entrance`.
    pub title: String,
    /// One or two sentences that say what is to be seen, for those who can't see it; may be empty.
    pub description: String,
    /// The units of its dimensions, scale and scale bar.
    pub units: UnitSystem,
    /// Whole sentences that stand under the drawing, numbered: what was assumed, what is missing.
    pub remarks: Vec<String>,
    layers: Vec<Layer>,
    shapes: Vec<Shape>,
}

/// Which layer of its scene a shape is on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LayerId(pub(crate) usize);

/// A shape on a layer.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// The layer it is on.
    pub layer: LayerId,
    /// What is drawn.
    pub content: Content,
    /// What it is in plain words, shown when pointed at and read aloud: `north post, 6 in square`.
    pub title: Option<String>,
}

/// What a shape draws.
#[derive(Debug, Clone, PartialEq)]
pub enum Content {
    /// Plain geometry in site coordinates.
    Figure(Figure),
    /// Text on a point.
    Text(Text),
    /// A name beside a point.
    Label(Label),
    /// A note with an arrow.
    Note(Note),
    /// A dimension or a chain of them.
    Dimension(Dimension),
    /// A symbol on a point.
    Symbol(Placement),
}

/// Lets `scene.add(layer, Figure::line(…))` take every kind of content.
macro_rules! content_from {
    ($($type:ident => $kind:ident),* $(,)?) => {
        $(impl From<$type> for Content {
            fn from(content: $type) -> Self { Content::$kind(content) }
        })*
    };
}

content_from!(Figure => Figure, Text => Text, Label => Label, Note => Note, Dimension => Dimension, Placement => Symbol);

impl Scene {
    /// An empty scene.
    pub fn new(title: impl Into<String>, units: UnitSystem) -> Self {
        Self {
            title: title.into(),
            description: String::new(),
            units,
            remarks: Vec::new(),
            layers: Vec::new(),
            shapes: Vec::new(),
        }
    }

    /// The same scene with a description for those who can't see it.
    #[must_use]
    pub fn describe(mut self, description: impl Into<String>) -> Self {
        self.description = description.into();
        self
    }

    /// Adds a sentence to stand under the drawing; one that stands there already is not repeated.
    pub fn remark(&mut self, sentence: impl Into<String>) {
        let sentence = sentence.into();
        if !self.remarks.contains(&sentence) {
            self.remarks.push(sentence);
        }
    }

    /// Adds a layer; later layers are drawn over earlier ones. A layer of a name that is there already is that layer.
    pub fn layer(&mut self, layer: Layer) -> LayerId {
        if let Some(index) = self
            .layers
            .iter()
            .position(|known| known.name == layer.name)
        {
            return LayerId(index);
        }
        self.layers.push(layer);
        LayerId(self.layers.len() - 1)
    }

    /// Adds a shape to a layer of this scene.
    pub fn add(&mut self, layer: LayerId, content: impl Into<Content>) {
        self.shapes.push(Shape {
            layer,
            content: content.into(),
            title: None,
        });
    }

    /// Adds a shape that says in plain words what it is.
    pub fn add_titled(
        &mut self,
        layer: LayerId,
        title: impl Into<String>,
        content: impl Into<Content>,
    ) {
        self.shapes.push(Shape {
            layer,
            content: content.into(),
            title: Some(title.into()),
        });
    }

    /// The same scene with some of its shapes.
    pub(crate) fn only(&self, keep: impl Fn(&Shape) -> bool) -> Self {
        let shapes = self.shapes.iter().filter(|shape| keep(shape));
        Self {
            shapes: shapes.cloned().collect(),
            title: self.title.clone(),
            description: self.description.clone(),
            units: self.units,
            remarks: self.remarks.clone(),
            layers: self.layers.clone(),
        }
    }

    /// The layers, lowest first.
    pub fn layers(&self) -> &[Layer] {
        &self.layers
    }

    /// The shapes in the order in which they were added.
    pub fn shapes(&self) -> &[Shape] {
        &self.shapes
    }
}
