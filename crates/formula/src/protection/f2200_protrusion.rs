//! What counts as a protrusion of a gate, by ASTM F2200.

use super::limit::is_at_least;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Length, Quantity as _};

quantity::words! {
    /// Whether a thing on a gate is a protrusion.
    pub enum ProtrusionVerdict {
        /// It is, and protrusions are not permitted.
        Protrusion = "protrusion",
        /// It is not, by this definition.
        None = "no protrusion",
    }
}

formula! {
    /// Whether a fixed thing on a gate is a protrusion, which ASTM F2200 does not permit.
    ///
    /// Small things that reach past the faces of the gate can hook, cut or carry a person along. The specification lists
    /// exceptions that were not read. A larger thing is no protrusion by this definition; it may still push or catch.
    pub struct F2200Protrusion = "f2200-protrusion" in Protection {
        /// How far the thing reaches past the gate's face.
        reach ("l"): Length,
        /// Its cross-section.
        cross_section ("A"): Area,
    }
    gives
    /// Whether a thing is a protrusion.
    pub struct Protrusion {
        /// What the definition says.
        verdict ("–"): ProtrusionVerdict,
    }
    formula "protrusion where l > 0 and A < 9 in²"
    valid "Fixed things on powered vehicle gates, United States."
    source { work: "ASTM F2200-02", clause: "3.11", evidence: Seen, seen: "a transcript of the definitions: https://pdfkiwi.com/documents/automated-vehicular-gate-construction1-5dcc74fd8fab2" }
    by protrusion
}

/// Cross-section from which a thing is no protrusion: 9 in².
const LARGE: f64 = 9.0 * 0.0254 * 0.0254;

fn protrusion(thing: &F2200Protrusion) -> Result<Protrusion, OutOfReach> {
    not_negative("reach", thing.reach, "1 in")?;
    positive("cross_section", thing.cross_section, "2 in²")?;
    let large = is_at_least(thing.cross_section, Area::from_base(LARGE));
    Ok(Protrusion {
        verdict: if thing.reach.base() > 0.0 && !large {
            ProtrusionVerdict::Protrusion
        } else {
            ProtrusionVerdict::None
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn thing(reach: f64, area: f64) -> F2200Protrusion {
        F2200Protrusion {
            reach: Length::from_base(reach),
            cross_section: Area::from_base(area),
        }
    }

    proptest! {
        #[test]
        fn reaching_farther_never_makes_it_flush(reach in 0.001..0.3, more in 0.0..0.3, area in 1e-6..0.02) {
            let verdict = |reach| thing(reach, area).evaluate().unwrap().verdict;
            prop_assert_eq!(verdict(reach), verdict(reach + more));
        }
    }

    #[test]
    fn a_thing_without_a_cross_section_is_refused() {
        assert_eq!(
            thing(0.1, 0.0).evaluate().unwrap_err().input,
            "cross_section"
        );
    }
}
