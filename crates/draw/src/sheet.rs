//! The sheet of paper: its size, scale, north and the words of its title block.

use crate::{North, ScaleChoice};

/// A sheet to lay a scene out on.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Size of the paper.
    pub paper: Paper,
    /// Which way it lies.
    pub orientation: Orientation,
    /// How its scale is chosen.
    pub scale: ScaleChoice,
    /// What is known about north.
    pub north: North,
    /// The words in the title block.
    pub title_block: TitleBlock,
}

/// The words in the title block. All are printed as they are given; the title itself is the scene's.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TitleBlock {
    /// Name or address of the site.
    pub site: String,
    /// Date of the drawing.
    pub date: String,
    /// Which sheet of how many: `2 of 5`.
    pub sheet_number: String,
    /// Which revision.
    pub revision: String,
    /// One or two sentences of caution along the lower edge; may be empty.
    pub caution: String,
}

/// Paper sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// ANSI A, 8 1/2 by 11 in.
    Letter,
    /// ANSI B, 11 by 17 in.
    Tabloid,
    /// ISO 216 A4, 210 by 297 mm.
    A4,
    /// ISO 216 A3, 297 by 420 mm.
    A3,
}

/// Which way the paper lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Orientation {
    /// Long edge upright.
    Portrait,
    /// Long edge level.
    Landscape,
}

impl Paper {
    /// Short and long edge (mm).
    pub(crate) fn edges(self) -> (f64, f64) {
        match self {
            Paper::Letter => (215.9, 279.4),
            Paper::Tabloid => (279.4, 431.8),
            Paper::A4 => (210.0, 297.0),
            Paper::A3 => (297.0, 420.0),
        }
    }

    /// The paper in words: `letter paper, 8 1/2 by 11 in`.
    pub fn words(self) -> &'static str {
        match self {
            Paper::Letter => "letter paper, 8 1/2 by 11 in",
            Paper::Tabloid => "tabloid paper, 11 by 17 in",
            Paper::A4 => "A4 paper, 210 by 297 mm",
            Paper::A3 => "A3 paper, 297 by 420 mm",
        }
    }
}

impl Sheet {
    /// A sheet with the largest scale that fits.
    pub fn new(
        paper: Paper,
        orientation: Orientation,
        north: North,
        title_block: TitleBlock,
    ) -> Self {
        Self {
            paper,
            orientation,
            scale: ScaleChoice::LargestThatFits,
            north,
            title_block,
        }
    }

    /// The same sheet with its scale chosen otherwise.
    #[must_use]
    pub fn scale(mut self, scale: ScaleChoice) -> Self {
        self.scale = scale;
        self
    }

    /// Width and height of the paper as it lies (mm).
    pub(crate) fn size(&self) -> (f64, f64) {
        let (short, long) = self.paper.edges();
        match self.orientation {
            Orientation::Portrait => (short, long),
            Orientation::Landscape => (long, short),
        }
    }
}
