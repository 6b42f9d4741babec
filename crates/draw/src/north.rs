//! What is known about north.

use quantity::Angle;

/// Where north is on a drawing. Every sheet says it, also when it isn't known.
#[derive(Debug, Clone, PartialEq)]
pub enum North {
    /// True north is in this direction, counter-clockwise from +x.
    Toward {
        /// Direction of true north.
        direction: Angle,
        /// What is printed under the arrow, such as `leaf line bears 84°`; may be empty.
        caption: String,
    },
    /// Nobody has measured it; the sheet says so in place of the arrow.
    NotMeasured,
    /// The drawing isn't a plan of the site: an elevation, a section, a circuit, a plot, a detail that may be mirrored.
    NotSeenFromAbove,
}
