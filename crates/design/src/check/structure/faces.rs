//! Which face of a footing presses on the soil.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::{Evidence, Source};
use quantity::Length;
use site::Foundation;

static SQUARE: Source = Source {
    work: "IBC: a square post or footing counts with its diagonal",
    clause: "1807.3.2.1, meaning of b",
    evidence: Evidence::Seen,
    seen: "text of the section at up.codes",
};

/// Widths with which a footing counts against a push along and across the gate line.
#[derive(Debug, Clone, Copy)]
pub(super) enum Faces {
    Round(Length),
    Box { along: Length, across: Length },
}

impl Faces {
    pub(super) fn widest(self) -> Length {
        match self {
            Self::Round(diameter) => diameter,
            Self::Box { along, across } => {
                if along > across {
                    along
                } else {
                    across
                }
            }
        }
    }
}

pub(super) fn faces<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
) -> Result<Faces, Halt> {
    let round = foundation.length.is_none() && foundation.width.is_none();
    if round {
        return Ok(Faces::Round(read!(asking, foundation.diameter)?));
    }
    let length = read!(asking, foundation.length);
    let width = read!(asking, foundation.width);
    let (length, width) = (length?, width?);
    asking.rest_on(&SQUARE);
    let narrow = if length < width { length } else { width };
    let counted = |face: Length| {
        let diagonal = narrow * 2f64.sqrt();
        if face > diagonal { face } else { diagonal }
    };
    // A push along the gate line presses the face that is as wide as the footing is across it.
    Ok(Faces::Box {
        along: counted(width),
        across: counted(length),
    })
}
