//! Curves over axes: one quantity over another, told apart by the pattern of their lines, legible in black and white.
//!
//! A [`Plot`] becomes a [`Scene`] on paper without scale: axes with even ticks in the units of the site, a fine grid,
//! each series in a line pattern of its own, points marked with words, and stretches of the axis below named.

mod axis;
mod chart;
mod levels;
mod room;
mod scene;
mod screen;

pub use axis::Axis;
pub use chart::{Chart, Curve, Mark, Span};
pub use levels::{Level, LevelOf, Levels};

use crate::LinePattern;
use quantity::Quantity;

/// One quantity over another.
#[derive(Debug, Clone, PartialEq)]
pub struct Plot<X, Y> {
    /// What is shown: `Pull along the travel`.
    pub title: String,
    /// One or two sentences that say what is to be seen, for those who can't see it.
    pub description: String,
    /// What runs along the axis below, without its unit: `opening`.
    pub across: String,
    /// What runs up the axis on the left, without its unit: `force on the leaf`.
    pub up: String,
    /// The curves.
    pub series: Vec<Series<X, Y>>,
    /// Points that are pointed out.
    pub marked: Vec<Marked<X, Y>>,
    /// Stretches of the axis below that have a name.
    pub stretches: Vec<Stretch<X>>,
    /// Whole sentences under the plot.
    pub remarks: Vec<String>,
}

/// A curve: points that are joined by straight lines.
#[derive(Debug, Clone, PartialEq)]
pub struct Series<X, Y> {
    /// What it is, as in the legend.
    pub name: String,
    /// Its points in order.
    pub points: Vec<(X, Y)>,
    /// Whether it is what is asked, what there is to meet it, or something to compare with.
    pub part: Part,
}

/// What a curve is to the reader; it decides weight and pattern of its line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// What is asked: heavy and unbroken.
    Demand,
    /// Another demand beside the first: medium and unbroken.
    OtherDemand,
    /// What there is to meet it: heavy and dashed.
    Capacity,
    /// A limit or a value to compare with: medium, dash and dot.
    Limit,
    /// Anything else: medium and dotted.
    Aside,
}

impl Part {
    /// Its name for style sheets and programs.
    pub fn word(self) -> &'static str {
        match self {
            Part::Demand => "demand",
            Part::OtherDemand => "other-demand",
            Part::Capacity => "capacity",
            Part::Limit => "limit",
            Part::Aside => "aside",
        }
    }

    /// How its line is broken.
    pub(crate) fn pattern(self) -> LinePattern {
        match self {
            Part::Demand | Part::OtherDemand => LinePattern::Unbroken,
            Part::Capacity => LinePattern::Dashed,
            Part::Limit => LinePattern::DashDot,
            Part::Aside => LinePattern::Dotted,
        }
    }
}

/// A point with words.
#[derive(Debug, Clone, PartialEq)]
pub struct Marked<X, Y> {
    /// Where it is.
    pub at: (X, Y),
    /// What is there; `\n` begins a new line.
    pub words: String,
}

/// A part of the axis below with a name.
#[derive(Debug, Clone, PartialEq)]
pub struct Stretch<X> {
    /// Where it begins.
    pub from: X,
    /// Where it ends.
    pub to: X,
    /// What it is called.
    pub name: String,
}

impl<X: Quantity, Y: Quantity> Plot<X, Y> {
    /// A plot without curves.
    pub fn new(title: impl Into<String>, across: impl Into<String>, up: impl Into<String>) -> Self {
        Self {
            title: title.into(),
            description: String::new(),
            across: across.into(),
            up: up.into(),
            series: Vec::new(),
            marked: Vec::new(),
            stretches: Vec::new(),
            remarks: Vec::new(),
        }
    }
}
