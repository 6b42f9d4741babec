//! A gate as it is shown on a screen: plan and elevation as SVG in site coordinates with the leaf at any opening, and the
//! list of the things on it that a person may point at or move.
//!
//! The same scenes as on paper, without words and lengths: a page draws names where it has room and measures by itself.
//! Each layer is a group with a class that never changes; what moves with a leaf carries its motion as `data-…`
//! attributes, so that a page can move it without asking again.

mod elevation;
mod items;
mod motion;
mod names;
mod plan;
mod reach;
mod touched;
mod zones;

pub use elevation::elevation;
pub use items::Item;
pub use plan::plan;
pub use touched::{TouchedMap, touched};
pub use zones::Zone;

use draw::Point;

/// A gate as a screen shows it.
#[derive(Debug, Clone, PartialEq)]
pub struct Live {
    /// What is shown, in words: `Plan of gate main`.
    pub title: String,
    /// The drawing, in site coordinates (m), y downward.
    pub svg: String,
    /// The lower left corner of what is shown at first.
    pub low: Point,
    /// The upper right corner of what is shown at first.
    pub high: Point,
    /// What can be pointed at, in the order of the drawing.
    pub items: Vec<Item>,
    /// The layers that can be shown and hidden.
    pub layers: Vec<Layer>,
    /// The hazard zones, by the numbers that stand on the plan.
    pub zones: Vec<Zone>,
    /// Names of what has no place yet.
    pub without_place: Vec<String>,
}

/// A layer that can be shown and hidden.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layer {
    /// The class of its group: `layer-devices`.
    pub class: String,
    /// Its name in plain words.
    pub name: String,
    /// Whether it is shown at first.
    pub shown: bool,
}

impl Layer {
    fn new(class: &str, name: &str, shown: bool) -> Self {
        Self {
            class: format!("layer-{class}"),
            name: name.to_owned(),
            shown,
        }
    }

    /// The group of the layer.
    fn group(&self) -> draw::Group {
        let hidden = if self.shown { "" } else { " off" };
        draw::Group::new(format!("layer {}{hidden}", self.class))
    }
}

/// Screen units that the width of what is shown at first is taken to have.
const WIDE: f64 = 1000.0;

/// Meters to a screen unit at first.
fn unit((low, high): (Point, Point)) -> quantity::Length {
    let wide = high.x - low.x;
    let tall = (high.y - low.y) * 1.4;
    (if wide > tall { wide } else { tall }) / WIDE
}
