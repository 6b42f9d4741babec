//! Which gaps catch somebody, by the codes of the site.

use crate::asking::Asking;
use crate::outcome::Halt;
use crate::zone::leaf::slides;
use formula::protection::{
    BodyPart, FINGER_GAP_RECALLED, Iso13854Gap, SlideEntrapmentZone, SwingSideEntrapmentZone,
    ZoneVerdict,
};
use formula::{Evidence, Formula as _, Source};
use quantity::{Length, Quantity as _, Word as _};
use site::{CodeBasis, Gate, Site};

/// Narrowest gap that catches nobody in the United States: 16 in.
const US_GAP: f64 = 16.0 * 0.0254;

/// How a gap stands to the rule.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Judged {
    /// Gap that would catch nobody.
    pub(crate) wanted: Length,
    /// The gap catches somebody.
    pub(crate) catches: bool,
}

/// Whether a body is squeezed in a gap that a moving leaf leaves to a fixed thing, with the place's height above ground.
pub(crate) fn squeezes(
    asking: &mut Asking<'_>,
    site: &Site,
    gate: &Gate,
    (gap, height): (Length, Length),
) -> Result<Judged, Halt> {
    match site.site.code_basis {
        CodeBasis::Us => {
            let verdict = if slides(gate) {
                asking.work(&SlideEntrapmentZone { gap, height })?.verdict
            } else {
                asking
                    .work(&SwingSideEntrapmentZone { gap, height })?
                    .verdict
            };
            Ok(Judged {
                wanted: Length::from_base(US_GAP),
                catches: verdict == ZoneVerdict::Zone,
            })
        }
        CodeBasis::Eu => {
            let wanted = asking
                .work(&Iso13854Gap {
                    part: BodyPart::Body,
                })?
                .gap;
            Ok(Judged {
                wanted,
                catches: gap.base() < wanted.base() - 1e-9,
            })
        }
    }
}

/// Parts of the body with the width of a slot that lets each in, in meters: a finger by the recalled European rule, hand
/// and arm by the steps of ISO 13857 table 4, a child's head by the playground handbook (3.5 in), a body by ISO 13857.
const ENTERS: [(BodyPart, f64); 5] = [
    (BodyPart::Finger, 0.008),
    (BodyPart::Hand, 0.02),
    (BodyPart::Arm, 0.04),
    (BodyPart::Head, 3.5 * 0.0254),
    (BodyPart::Body, 0.18),
];
/// A gap that changes by no more than this does not close on anything: what a tape can tell.
const STEADY: f64 = 0.002;

static ENTRY: Source = Source {
    work: "ISO 13857 table 4 and lower limbs; CPSC Public Playground Safety Handbook",
    clause: "openings that let a hand, an arm, a head or a body in",
    evidence: Evidence::Seen,
    seen: "an engineering consultant's page (address withheld) and the standard Caring for Our Children 6.2.1.9; neither original was at hand",
};

/// Whether a gap that is wider at one moment than at another crushes the largest part of the body that gets into it at its
/// widest. A gap that stays as it is crushes nothing; one into which no finger fits catches nobody.
pub(crate) fn closing(
    asking: &mut Asking<'_>,
    widest: Length,
    least: Length,
) -> Result<Judged, Halt> {
    asking.rest_on(&ENTRY);
    let enters = |(_, slot): &&(BodyPart, f64)| widest.base() > slot + 1e-9;
    let Some((part, _)) = ENTERS.iter().rev().find(enters) else {
        asking.rest_on(&FINGER_GAP_RECALLED);
        return Ok(Judged {
            wanted: least,
            catches: false,
        });
    };
    let wanted = asking.work(&Iso13854Gap { part: *part })?.gap;
    let closes = widest.base() - least.base() > STEADY;
    Ok(Judged {
        wanted,
        catches: closes && least.base() < wanted.base() - 1e-9,
    })
}

/// The parts of the body that a gap of this width crushes: those whose least gap is wider. In words.
pub(crate) fn parts(gap: Length) -> String {
    let crushed = BodyPart::ALL.iter().filter(|part| {
        let needed = Iso13854Gap { part: **part }.evaluate();
        needed.is_ok_and(|needed| gap < needed.gap)
    });
    let words: Vec<&str> = crushed.map(|part| part.word()).collect();
    words.join(", ")
}
