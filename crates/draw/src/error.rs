//! What keeps a scene from being drawn.

use thiserror::Error;

/// A scene that can't be laid out, in words for the person who can mend it.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum DrawError {
    /// A coordinate, length or angle has no value.
    #[error(
        "{shape} has a coordinate or length without a value; every point of a drawing needs a number"
    )]
    NoValue {
        /// Which shape, by its title or its place in the scene.
        shape: String,
    },
    /// A point lies farther out than any site.
    #[error(
        "{shape} lies more than 1000 km from the origin; measure the drawing from a point on the site"
    )]
    TooFar {
        /// Which shape, by its title or its place in the scene.
        shape: String,
    },
    /// The scale that was asked for makes the drawing larger than the sheet.
    #[error(
        "at {scale} the drawing needs {needed}, and the sheet has {room} for it; choose a smaller scale or larger paper"
    )]
    DoesNotFit {
        /// The scale asked for.
        scale: String,
        /// Width and height that the drawing takes on paper.
        needed: String,
        /// Width and height that the sheet has for it.
        room: String,
    },
}
