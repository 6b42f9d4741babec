//! Linear dimensions: what is measured, between which points, and where the dimension line stands.

use crate::Point;
use quantity::Length;

/// In which direction a dimension measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Straight from the first point to the last.
    Aligned,
    /// Along x only.
    Horizontal,
    /// Along y only.
    Vertical,
}

/// Where the dimension line stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DimensionLine {
    /// Through this point.
    Through(Point),
    /// This far on the paper beyond the outermost measured point, above a horizontal dimension, to the right of a
    /// vertical one, to the left of an aligned one looking from the first point to the last; negative for the other
    /// side.
    Away(Length),
    /// This far on the paper beyond a point of the site, on the side that [`DimensionLine::Away`] tells, so that rows
    /// of dimensions stand evenly beside a drawing.
    Beyond(Point, Length),
}

/// A linear dimension, or a chain of them along one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Dimension {
    /// In which direction it measures.
    pub measure: Measure,
    /// The measured points in order: two for a single dimension, more for a chain.
    pub points: Vec<Point>,
    /// Where its line stands.
    pub line: DimensionLine,
    /// Words for each stretch in turn instead of the measured length; an empty or missing one shows the length.
    pub words: Vec<String>,
}

impl Dimension {
    /// A dimension along x through two or more points.
    pub fn horizontal(points: impl Into<Vec<Point>>, line: DimensionLine) -> Self {
        Self {
            measure: Measure::Horizontal,
            points: points.into(),
            line,
            words: Vec::new(),
        }
    }

    /// A dimension along y through two or more points.
    pub fn vertical(points: impl Into<Vec<Point>>, line: DimensionLine) -> Self {
        Self {
            measure: Measure::Vertical,
            points: points.into(),
            line,
            words: Vec::new(),
        }
    }

    /// A dimension straight from the first point to the last.
    pub fn aligned(points: impl Into<Vec<Point>>, line: DimensionLine) -> Self {
        Self {
            measure: Measure::Aligned,
            points: points.into(),
            line,
            words: Vec::new(),
        }
    }

    /// The same dimension with words of its own for each stretch.
    #[must_use]
    pub fn words(mut self, words: impl Into<Vec<String>>) -> Self {
        self.words = words.into();
        self
    }
}
