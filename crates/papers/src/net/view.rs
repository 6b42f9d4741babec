//! What the diagram shows, before it has a place: things, the line to each from its left, and what hangs on it at its right.
//! It knows nothing of networks alone: any lines that branch can be shown so.

use crate::power::words::{short, width};
use draw::Symbol;

/// Half the width of a symbol (mm).
pub(super) const BOX: f64 = 4.0;
/// Clear paper between words and the next line (mm).
pub(super) const GAP: f64 = 2.4;
/// Height of a thing's name (mm).
pub(super) const NAME: f64 = 2.8;
/// Height of all other words (mm).
pub(super) const SMALL: f64 = 2.2;
/// Shortest line (mm).
const SHORTEST: f64 = 16.0;

/// What carries a line's signals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Carrier {
    /// Copper pairs.
    Copper,
    /// Fiber.
    Fiber,
    /// Radio.
    Radio,
    /// A patch cord.
    Cord,
}

/// Words, and whether they say that something fails.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Said {
    pub(super) words: String,
    pub(super) fails: bool,
}

impl Said {
    pub(super) fn plain(words: impl Into<String>) -> Self {
        Self {
            words: words.into(),
            fails: false,
        }
    }

    pub(super) fn fails(words: impl Into<String>) -> Self {
        Self {
            words: words.into(),
            fails: true,
        }
    }
}

/// A line with the words over it and under it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Line {
    pub(super) carrier: Carrier,
    pub(super) over: String,
    pub(super) under: String,
}

/// A thing of the diagram.
#[derive(Debug, Clone)]
pub(super) struct Thing {
    pub(super) symbol: Symbol,
    /// Its name, as it stands beside it.
    pub(super) name: String,
    /// What else stands beside it.
    pub(super) said: Vec<Said>,
    /// The line to it; none where it begins a tree.
    pub(super) line: Option<Line>,
    pub(super) next: Vec<Thing>,
}

impl Thing {
    /// Width of its symbol and what stands beside it (mm).
    pub(super) fn width(&self) -> f64 {
        let said = self.said.iter().map(|said| width(&said.words, SMALL));
        let words = said.fold(width(&short(&self.name), NAME), f64::max);
        2.0 * BOX + GAP / 2.0 + words + GAP
    }

    /// Length of the line to it (mm).
    pub(super) fn line_width(&self) -> f64 {
        let Some(line) = &self.line else {
            return 0.0;
        };
        let words = width(&line.over, SMALL).max(width(&line.under, SMALL));
        (words + 2.0 * GAP).max(SHORTEST)
    }

    /// Length of the lines to what hangs on it: all alike (mm).
    pub(super) fn lines(&self) -> f64 {
        self.next.iter().map(Self::line_width).fold(0.0, f64::max)
    }

    /// How many rows it takes with all that hangs on it.
    pub(super) fn rows(&self) -> usize {
        let below: usize = self.next.iter().map(Self::rows).sum();
        below.max(self.own_rows())
    }

    /// How many rows its own words take.
    pub(super) fn own_rows(&self) -> usize {
        if self.said.len() > 2 { 2 } else { 1 }
    }
}
