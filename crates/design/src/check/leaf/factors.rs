//! Factors on loads and strength of steel, by the code basis.

use crate::asking::Asking;
use formula::{Evidence, Source};
use site::CodeBasis;

static AISC: Source = Source {
    work: "AISC 360, allowable strength: yield over 1.67; ASCE 7, D + 0.6 W",
    clause: "AISC 360 chapters D and F; ASCE 7-16 2.4",
    evidence: Evidence::Seen,
    seen: "Structural Steel Designer's Handbook, p. 5.29 (Ω = 1.67); load combinations as retold in design guides",
};

static EUROCODE: Source = Source {
    work: "EN 1990, 1.35 G + 1.5 Q; EN 1993-1-1, γM0 = 1.0",
    clause: "EN 1990 table A1.2(B); EN 1993-1-1 6.1(1)",
    evidence: Evidence::Seen,
    seen: "Steel Buildings in Europe, parts 3 and 10, tables of recommended values; a national annex may give others",
};

/// Factors on loads and on the yield strength.
#[derive(Debug, Clone, Copy)]
pub(super) struct Factors {
    /// On weight.
    pub(super) weight: f64,
    /// On a person who climbs.
    pub(super) climber: f64,
    /// On the design wind of the code.
    pub(super) wind: f64,
    /// Under the yield strength.
    pub(super) yield_over: f64,
}

impl Factors {
    /// Those of the code basis; the answer rests on their source.
    pub(super) fn of(asking: &mut Asking<'_>, basis: CodeBasis) -> Self {
        match basis {
            CodeBasis::Us => {
                asking.rest_on(&AISC);
                Self {
                    weight: 1.0,
                    climber: 1.0,
                    wind: 0.6,
                    yield_over: 1.67,
                }
            }
            CodeBasis::Eu => {
                asking.rest_on(&EUROCODE);
                Self {
                    weight: 1.35,
                    climber: 1.5,
                    wind: 1.5,
                    yield_over: 1.0,
                }
            }
        }
    }
}
