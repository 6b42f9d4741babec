//! Sections of posts, rails and other members, as the trade writes them.

use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use quantity::{Known, Length, Quantity as _};

/// A section, written like `"HSS 4x4x1/4"`, `"pipe 3"`, `"tube 40x40x3 mm"`, `"round tube 48.3x3.2 mm"`,
/// `"flat 50x6 mm"` or `"rod 12 mm"`. The first side lies in the plane of the leaf, the second across it.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    written: String,
    shape: SectionShape,
}

/// What a section is, with its sizes as they are ordered.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SectionShape {
    /// Hollow structural section of the United States, by nominal wall; sharp-edged sizes in inches.
    Hss {
        /// Side in the plane of the leaf.
        depth: Length,
        /// Side across it.
        width: Length,
        /// Nominal wall.
        wall: Length,
    },
    /// Standard-weight pipe of the United States, by nominal size.
    Pipe {
        /// Nominal size; the pipe is thicker.
        nominal: Length,
    },
    /// Square or rectangular tube.
    Tube {
        /// Side in the plane of the leaf.
        depth: Length,
        /// Side across it.
        width: Length,
        /// Wall.
        wall: Length,
    },
    /// Round tube.
    RoundTube {
        /// Outer diameter.
        diameter: Length,
        /// Wall.
        wall: Length,
    },
    /// Solid rectangle: flat bar, plate on edge, board.
    Flat {
        /// Side in the plane of the leaf.
        depth: Length,
        /// Side across it.
        width: Length,
    },
    /// Solid round bar.
    Rod {
        /// Diameter.
        diameter: Length,
    },
}

/// The names of the shapes, the longer before the shorter that begin alike, with the number of sizes of each.
const NAMES: &[(&str, usize)] = &[
    ("round tube", 2),
    ("HSS", 3),
    ("pipe", 1),
    ("tube", 3),
    ("flat", 2),
    ("rod", 1),
];

impl Section {
    /// Reads a section; nothing when it is not one.
    pub fn read(text: &str) -> Option<Self> {
        let written = text.trim();
        let (name, count) = NAMES.iter().find(|(name, _)| {
            written
                .get(..name.len())
                .is_some_and(|head| head.eq_ignore_ascii_case(name))
        })?;
        let sizes = sizes(written.get(name.len()..)?)?;
        if sizes.len() != *count || sizes.iter().any(|size| size.base() <= 0.0) {
            return None;
        }
        let shape = match (*name, sizes.as_slice()) {
            ("HSS", &[depth, width, wall]) => SectionShape::Hss { depth, width, wall },
            ("pipe", &[nominal]) => SectionShape::Pipe { nominal },
            ("tube", &[depth, width, wall]) => SectionShape::Tube { depth, width, wall },
            ("round tube", &[diameter, wall]) => SectionShape::RoundTube { diameter, wall },
            ("flat", &[depth, width]) => SectionShape::Flat { depth, width },
            ("rod", &[diameter]) => SectionShape::Rod { diameter },
            _ => return None,
        };
        shape.is_hollow_enough().then(|| Self {
            written: written.to_owned(),
            shape,
        })
    }

    /// What it is.
    pub fn shape(&self) -> SectionShape {
        self.shape
    }

    /// The section as it was written.
    pub fn as_str(&self) -> &str {
        &self.written
    }
}

impl SectionShape {
    /// The walls of a tube leave a hollow between them.
    fn is_hollow_enough(self) -> bool {
        match self {
            Self::Hss { depth, width, wall } | Self::Tube { depth, width, wall } => {
                wall * 2.0 < depth && wall * 2.0 < width
            }
            Self::RoundTube { diameter, wall } => wall * 2.0 < diameter,
            Self::Pipe { .. } | Self::Flat { .. } | Self::Rod { .. } => true,
        }
    }
}

/// Sizes such as `4x4x1/4`, inches where no unit stands behind the last.
fn sizes(text: &str) -> Option<Vec<Length>> {
    let text = text.trim();
    let (numbers, unit) = match text.strip_suffix("mm") {
        Some(numbers) => (numbers, "mm"),
        None => (text.strip_suffix("in").unwrap_or(text), "in"),
    };
    numbers
        .split(['x', '×', 'X'])
        .map(|number| quantity::read::<Length>(&format!("{} {unit}", number.trim())).ok())
        .collect()
}

impl std::fmt::Display for Section {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.written)
    }
}

impl Field for Section {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let expected = "a section such as `HSS 4x4x1/4`, `pipe 3`, `tube 40x40x3 mm`, `round tube 48.3x3.2 mm`, `flat 50x6 mm` or `rod 12 mm`";
        let Some(text) = node.text() else {
            reader.refuse_type(node, expected, "\"HSS 4x4x1/4\"");
            return None;
        };
        let read = Self::read(text);
        if read.is_none() {
            let what = format!("{} is not a section: {text}", node.key_in_words());
            let problem = reader
                .problem(node, Code::NotASection, what)
                .expected(expected);
            reader.report(problem);
        }
        read
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, self, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(definitions: &mut Definitions) -> serde_json::Value {
        definitions.shared("Section", || {
            serde_json::json!({
                "description": "A section by its shape and sizes; the first side lies in the plane of the leaf.",
                "type": "string",
                "pattern": "^(HSS|[Pp]ipe|[Tt]ube|[Rr]ound tube|[Ff]lat|[Rr]od) ",
                "examples": ["HSS 4x4x1/4", "tube 40x40x3 mm"],
            })
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    fn inches(number: f64) -> Length {
        Length::from_base(number * 0.0254)
    }

    #[test]
    fn reads_what_the_trade_writes() {
        let quarter = Section::read("HSS 4x4x1/4").unwrap();
        let SectionShape::Hss { depth, width, wall } = quarter.shape() else {
            unreachable!("{quarter:?}")
        };
        assert!(depth == inches(4.0) && width == inches(4.0) && wall == inches(0.25));
        assert!(Section::read("pipe 2-1/2").is_some());
        assert!(Section::read("round tube 48.3x3.2 mm").is_some());
        assert!(Section::read("flat 100x22 mm").is_some());
    }

    #[test]
    fn refuses_what_is_none() {
        for text in [
            "",
            "HSS",
            "HSS 4x4",
            "beam 4x4",
            "tube 40x40x20 mm",
            "rod 0 mm",
            "tube 4x4xa",
        ] {
            assert!(Section::read(text).is_none(), "{text}");
        }
    }
}
