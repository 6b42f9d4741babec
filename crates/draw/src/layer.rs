//! Layers: what a line means decides how heavy it is, how it is broken and in which ink it is drawn.

/// A layer of a scene: lines that mean the same thing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layer {
    /// Its name in plain words, as in the legend and in the CAD file: `posts`, `buried conduit`.
    pub name: String,
    /// How heavy its lines are.
    pub weight: LineWeight,
    /// How its lines are broken.
    pub pattern: LinePattern,
    /// In which ink it is drawn.
    pub ink: Ink,
    /// One sentence on what is on it, for the accessible description; may be empty.
    pub description: String,
}

impl Layer {
    /// A layer of unbroken lines in ink.
    pub fn new(name: impl Into<String>, weight: LineWeight) -> Self {
        Self {
            name: name.into(),
            weight,
            pattern: LinePattern::Unbroken,
            ink: Ink::Black,
            description: String::new(),
        }
    }

    /// The same layer with its lines broken.
    #[must_use]
    pub fn pattern(mut self, pattern: LinePattern) -> Self {
        self.pattern = pattern;
        self
    }

    /// The same layer in another ink.
    #[must_use]
    pub fn ink(mut self, ink: Ink) -> Self {
        self.ink = ink;
        self
    }

    /// The same layer with a sentence on what it holds.
    #[must_use]
    pub fn describe(mut self, description: impl Into<String>) -> Self {
        self.description = description.into();
        self
    }
}

/// How heavy a line is, by its meaning.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LineWeight {
    /// Dimensions, notes, hatching, center lines (0.18 mm).
    Fine,
    /// Visible and hidden edges (0.35 mm).
    Medium,
    /// Cut edges and outlines (0.7 mm).
    Heavy,
}

impl LineWeight {
    /// Width of the line on paper (mm); the steps are those of ISO 128-2, from memory.
    pub(crate) fn millimeters(self) -> f64 {
        match self {
            LineWeight::Fine => 0.18,
            LineWeight::Medium => 0.35,
            LineWeight::Heavy => 0.7,
        }
    }
}

/// How a line is broken, by its meaning.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LinePattern {
    /// Seen edges.
    Unbroken,
    /// Hidden or buried.
    Dashed,
    /// Center lines and axes.
    DashDot,
    /// Boundaries of property and other limits that are not built.
    DashDotDot,
    /// Other positions of a moving part, beams and reach.
    Dotted,
}

impl LinePattern {
    /// Every pattern.
    pub(crate) const ALL: [LinePattern; 5] = [
        LinePattern::Unbroken,
        LinePattern::Dashed,
        LinePattern::DashDot,
        LinePattern::DashDotDot,
        LinePattern::Dotted,
    ];

    /// Lengths of drawn and open stretches in turn on paper (mm); empty for an unbroken line.
    pub(crate) fn dashes(self) -> &'static [f64] {
        match self {
            LinePattern::Unbroken => &[],
            LinePattern::Dashed => &[3.0, 1.2],
            LinePattern::DashDot => &[7.0, 1.2, 0.6, 1.2],
            LinePattern::DashDotDot => &[8.0, 1.2, 0.6, 1.2, 0.6, 1.2],
            LinePattern::Dotted => &[0.6, 1.0],
        }
    }
}

/// The ink of a layer or a filled area.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ink {
    /// Black: all that is built or measured.
    Black,
    /// Gray: what was there before, and ground that only gives place.
    Gray,
    /// A light tint for filled areas.
    Tint,
    /// Chalk-line blue: what a person can touch on a screen; not used on paper.
    Touch,
    /// Survey-flag orange: this fails. Nothing else is ever orange.
    Fails,
    /// The paper itself, to cover what lies beneath.
    Paper,
}

impl Ink {
    /// Color as red, green and blue, 0 to 255 each.
    pub(crate) fn color(self) -> [u8; 3] {
        match self {
            Ink::Black => [0x1a, 0x1a, 0x1a],
            Ink::Gray => [0x70, 0x70, 0x70],
            Ink::Tint => [0xe6, 0xe3, 0xdc],
            Ink::Touch => [0x1f, 0x4e, 0x9c],
            Ink::Fails => [0xd9, 0x4f, 0x00],
            Ink::Paper => [0xff, 0xff, 0xff],
        }
    }
}
