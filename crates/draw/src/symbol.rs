//! Symbols: small named groups of figures in paper millimeters, and where they are placed.

use crate::{Figure, Point};
use quantity::{Angle, Length, Quantity};

/// A symbol of the legend. Its points are distances on the paper from its origin, whatever the scale.
#[derive(Debug, Clone, PartialEq)]
pub struct Symbol {
    /// What it stands for, as in the legend: `photo-eye`.
    pub name: String,
    /// Its figures, in paper lengths.
    pub figures: Vec<Figure>,
    /// Letters inside it; they stay upright when the symbol is turned.
    pub letters: Vec<Letters>,
}

impl Symbol {
    /// A symbol without letters.
    pub fn new(name: impl Into<String>, figures: impl Into<Vec<Figure>>) -> Self {
        Self {
            name: name.into(),
            figures: figures.into(),
            letters: Vec::new(),
        }
    }

    /// The same symbol with letters centered on a point.
    #[must_use]
    pub fn lettered(mut self, at: Point, words: impl Into<String>, height: Length) -> Self {
        self.letters.push(Letters {
            at,
            words: words.into(),
            height,
        });
        self
    }
}

/// Letters inside a symbol.
#[derive(Debug, Clone, PartialEq)]
pub struct Letters {
    /// Their center, on the paper from the symbol's origin.
    pub at: Point,
    /// The letters, on one line.
    pub words: String,
    /// Height of capitals on the paper.
    pub height: Length,
}

/// A symbol put on a point of the scene.
#[derive(Debug, Clone, PartialEq)]
pub struct Placement {
    /// What is drawn.
    pub symbol: Symbol,
    /// Where its origin stands on the site.
    pub at: Point,
    /// How far it is turned, counter-clockwise.
    pub rotation: Angle,
}

impl Placement {
    /// A symbol that isn't turned.
    pub fn new(symbol: Symbol, at: Point) -> Self {
        Self {
            symbol,
            at,
            rotation: Angle::from_base(0.0),
        }
    }

    /// The same placement, turned.
    #[must_use]
    pub fn rotation(mut self, rotation: Angle) -> Self {
        self.rotation = rotation;
        self
    }
}
