//! Words on a drawing: text that stands where it is put, labels that make room for each other, and notes with an arrow.

use crate::Point;
use quantity::{Angle, Length, Quantity};

/// How tall capital letters are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TextHeight {
    /// A height on the paper, whatever the scale: 1.5 mm to 30 mm.
    Paper(Length),
    /// A height on the site, which grows with the scale; kept between 1.5 mm and 30 mm on the paper.
    Site(Length),
}

impl TextHeight {
    /// 2.5 mm on the paper, the ordinary height of notes and dimensions.
    pub fn ordinary() -> Self {
        TextHeight::Paper(Length::from_base(0.0025))
    }

    /// Height of capitals on the paper (mm) at so many millimeters to the meter.
    pub(crate) fn millimeters(self, per_meter: f64) -> f64 {
        let wanted = match self {
            TextHeight::Paper(height) => height.base() * 1000.0,
            TextHeight::Site(height) => height.base() * per_meter,
        };
        if wanted.is_finite() {
            wanted.clamp(1.5, 30.0)
        } else {
            2.5
        }
    }
}

/// Which part of the text stands on its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Where the first line begins.
    Start,
    /// The middle of the first line.
    Middle,
    /// Where the first line ends.
    End,
}

/// Text with its base line on a point. It moves, with a line back to its point, only when other text is in its way.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// Where the base line of the first line stands.
    pub at: Point,
    /// The words; `\n` begins a new line.
    pub words: String,
    /// Which part stands on the point.
    pub anchor: Anchor,
    /// How tall it is.
    pub height: TextHeight,
    /// Direction of reading, counter-clockwise from +x.
    pub rotation: Angle,
}

impl Text {
    /// Level text of ordinary height, centered on a point.
    pub fn new(at: Point, words: impl Into<String>) -> Self {
        let rotation = Angle::from_base(0.0);
        Self {
            at,
            words: words.into(),
            anchor: Anchor::Middle,
            height: TextHeight::ordinary(),
            rotation,
        }
    }

    /// The same text with another part on the point.
    #[must_use]
    pub fn anchor(mut self, anchor: Anchor) -> Self {
        self.anchor = anchor;
        self
    }

    /// The same text in another height.
    #[must_use]
    pub fn height(mut self, height: TextHeight) -> Self {
        self.height = height;
        self
    }

    /// The same text turned to read in another direction.
    #[must_use]
    pub fn rotation(mut self, rotation: Angle) -> Self {
        self.rotation = rotation;
        self
    }
}

/// A short name beside a point, such as a device's number. It stands wherever there is room near the point, with a
/// thin line to it when it had to move away.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// What is named.
    pub at: Point,
    /// The words; `\n` begins a new line.
    pub words: String,
    /// How tall it is.
    pub height: TextHeight,
}

impl Label {
    /// A label of ordinary height.
    pub fn new(at: Point, words: impl Into<String>) -> Self {
        Self {
            at,
            words: words.into(),
            height: TextHeight::ordinary(),
        }
    }
}

/// A note with an arrow to what it is about. It stands where there is room, if it can on the side asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// Where the arrow's tip touches.
    pub at: Point,
    /// The words; `\n` begins a new line.
    pub words: String,
    /// In which direction from the tip the words should stand, counter-clockwise from +x.
    pub toward: Angle,
    /// How tall the words are.
    pub height: TextHeight,
}

impl Note {
    /// A note of ordinary height, standing in this direction from the tip of its arrow.
    pub fn new(at: Point, words: impl Into<String>, toward: Angle) -> Self {
        Self {
            at,
            words: words.into(),
            toward,
            height: TextHeight::ordinary(),
        }
    }
}
