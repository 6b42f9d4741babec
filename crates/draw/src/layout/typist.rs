//! Sets the words around the drawing line by line, downward from a top edge.

use crate::flat::Spot;
use crate::lettering::wrapped;
use crate::mark::{Letter, Mark, Slant};
use crate::{Anchor, Ink};

/// From one base line to the next, in heights of capitals.
const LINE: f64 = 1.75;

/// A style of words.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Style {
    /// Height of capitals (mm).
    pub(crate) height: f64,
    /// How strong.
    pub(crate) slant: Slant,
    /// In which ink.
    pub(crate) ink: Ink,
}

/// Small gray words that say what stands below them.
pub(crate) const CAPTION: Style = Style {
    height: 1.5,
    slant: Slant::Plain,
    ink: Ink::Gray,
};
/// Ordinary words.
pub(crate) const PLAIN: Style = Style {
    height: 2.1,
    slant: Slant::Plain,
    ink: Ink::Black,
};
/// The title.
pub(crate) const TITLE: Style = Style {
    height: 3.6,
    slant: Slant::Strong,
    ink: Ink::Black,
};

/// A place to set words in: a left edge, a width and the next free height.
#[derive(Debug, Clone)]
pub(crate) struct Typist {
    /// Left edge (mm).
    left: f64,
    /// Widest line (mm).
    wide: f64,
    /// Upper edge of the next line (mm).
    pub(crate) top: f64,
    /// What has been set.
    pub(crate) marks: Vec<Mark>,
}

impl Typist {
    /// Begins at an upper left corner.
    pub(crate) fn new(left: f64, top: f64, wide: f64) -> Self {
        Self {
            left,
            wide,
            top,
            marks: Vec::new(),
        }
    }

    /// Sets words, broken into as many lines as they need.
    pub(crate) fn set(&mut self, words: &str, style: Style) {
        for line in wrapped(words, style.height * strength(style.slant), self.wide) {
            let base = self.top - style.height * 1.15;
            self.marks.push(letters(
                Spot::new(self.left, base),
                line,
                style,
                Anchor::Start,
            ));
            self.top -= style.height * LINE;
        }
    }

    /// Leaves clear paper (mm).
    pub(crate) fn skip(&mut self, height: f64) {
        self.top -= height;
    }
}

/// How much wider strong letters are.
pub(crate) fn strength(slant: Slant) -> f64 {
    match slant {
        Slant::Plain => 1.0,
        Slant::Strong => 1.04,
    }
}

/// One line of words on a base line.
pub(crate) fn letters(at: Spot, words: String, style: Style, anchor: Anchor) -> Mark {
    let Style { height, slant, ink } = style;
    Mark::Letters(Letter {
        at,
        words,
        height,
        anchor,
        angle: 0.0,
        ink,
        slant,
    })
}
