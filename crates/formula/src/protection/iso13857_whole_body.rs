//! Whether a whole body gets through an opening, by ISO 13857.

use super::OpeningShape;
use super::limit::is_at_most;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _};

quantity::words! {
    /// What gets through an opening.
    pub enum Passage {
        /// A whole body.
        Body = "a whole body",
        /// Limbs at most.
        Limbs = "limbs at most",
    }
}

formula! {
    /// Whether an opening is so wide that a whole body gets through it, by ISO 13857.
    ///
    /// What passes a body is no guard at all: the danger behind it is protected in another way. Children get through
    /// less than adults, and a head can be caught in less than a body needs: see `cpsc-entrapment-opening`.
    pub struct Iso13857WholeBody = "iso13857-whole-body" in Protection {
        /// Shape of the opening.
        shape ("–"): OpeningShape,
        /// Smallest dimension of the opening: width, side or diameter.
        opening ("e"): Length,
    }
    gives
    /// What gets through an opening.
    pub struct BodyPassage {
        /// Widest opening that keeps a body out.
        limit ("emax"): Length,
        /// What gets through.
        passage ("–"): Passage,
    }
    formula "a whole body where e > 180 mm (slot) or e > 240 mm (square, round)"
    valid "People of 14 years and over."
    source { work: "ISO 13857, lower limbs", clause: "", evidence: Seen, seen: "an engineering consultant's page for the slot and two public pages for the hole (addresses withheld); the standard itself was not at hand" }
    by whole_body
}

fn whole_body(guard: &Iso13857WholeBody) -> Result<BodyPassage, OutOfReach> {
    positive("opening", guard.opening, "100 mm")?;
    let limit = Length::from_base(match guard.shape {
        OpeningShape::Slot => 0.18,
        OpeningShape::Square | OpeningShape::Round => 0.24,
    });
    Ok(BodyPassage {
        limit,
        passage: if is_at_most(guard.opening, limit) {
            Passage::Limbs
        } else {
            Passage::Body
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn passes(shape: OpeningShape, opening: f64) -> bool {
        let opening = Length::from_base(opening);
        Iso13857WholeBody { shape, opening }
            .evaluate()
            .unwrap()
            .passage
            == Passage::Body
    }

    proptest! {
        #[test]
        fn a_slot_passes_whatever_a_hole_passes(opening in 0.001..0.5) {
            prop_assert!(!passes(OpeningShape::Square, opening) || passes(OpeningShape::Slot, opening));
        }
    }

    #[test]
    fn no_opening_is_refused() {
        let guard = Iso13857WholeBody {
            shape: OpeningShape::Slot,
            opening: Length::from_base(0.0),
        };
        assert_eq!(guard.evaluate().unwrap_err().input, "opening");
    }
}
