//! Gap that does not crush a part of the body, by ISO 13854.

use super::approach::millimeters;
use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Length, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Part of the body that could get into a closing gap.
    pub enum BodyPart {
        /// Whole body.
        Body = "body",
        /// Head.
        Head = "head",
        /// Leg.
        Leg = "leg",
        /// Foot.
        Foot = "foot",
        /// Toes.
        Toes = "toes",
        /// Arm.
        Arm = "arm",
        /// Hand, wrist or fist.
        Hand = "hand",
        /// Finger.
        Finger = "finger",
    }
}

formula! {
    /// Gap that must stay open between a moving and a fixed thing so that a part of the body is not crushed.
    ///
    /// Ask for the largest part that can get in. The gap answers crushing only: being hit, sheared or drawn in needs
    /// other measures.
    pub struct Iso13854Gap = "iso13854-gap" in Protection {
        /// Part of the body that can get in.
        part ("–"): BodyPart,
    }
    gives
    /// Smallest gap that does not crush.
    pub struct CrushingGap {
        /// Smallest gap that does not crush the part.
        gap ("a"): Length,
    }
    formula "a from the table"
    valid "Crushing between a moving and a fixed thing, or two moving ones; no thick or loose clothing."
    source { work: "EN 349 / ISO 13854", clause: "table 1", evidence: Seen, seen: "lexicon of AUVA, the Austrian workers' compensation board, Safety Distances; the standard itself was not at hand" }
    by gap
}

static GAPS: Stored = LazyLock::new(|| Table::read(include_str!("iso13854_gap.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn gap(place: &Iso13854Gap) -> Result<CrushingGap, OutOfReach> {
    let table = Table::of(&GAPS)?;
    let mut cells = table.column("part").zip(table.column("gap"));
    cells
        .find(|(part, _)| part.words() == Some(place.part.word()))
        .and_then(|(_, gap)| Cell::number(gap))
        .map(|gap| CrushingGap {
            gap: millimeters(gap),
        })
        .ok_or_else(|| OutOfReach::new("part", "the table has no row for this part of the body"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn every_part_has_a_gap_and_none_needs_more_than_the_body() {
        let of = |part: BodyPart| Iso13854Gap { part }.evaluate().unwrap().gap;
        assert!(
            BodyPart::ALL
                .iter()
                .all(|part| of(*part) <= of(BodyPart::Body))
        );
    }
}
