//! How stiff parts of a body are when they are struck.

use crate::OutOfReach;
use quantity::{ForcePerLength, Quantity as _};

quantity::words! {
    /// Part of the body that is struck.
    pub enum StruckPart {
        /// Skull and forehead.
        Skull = "skull",
        /// Face.
        Face = "face",
        /// Side of the neck.
        Neck = "neck",
        /// Back and shoulders.
        Back = "back and shoulders",
        /// Chest.
        Chest = "chest",
        /// Belly.
        Abdomen = "abdomen",
    }
}

formula! {
    /// Stiffness of a part of the body, for reckoning what a leaf does to it.
    ///
    /// From the rules on robots that share a space with people. A stiffer part gets the higher peak from the same leaf.
    /// The force and pressure limits of those rules are stricter than those for gates, come from healthy adults, and are
    /// not used here: a gate is held to its own standard, and proved by measuring.
    pub struct BodyStiffness = "body-stiffness" in Protection {
        /// Part of the body that is struck.
        part ("–"): StruckPart,
    }
    gives
    /// Stiffness of a part of the body.
    pub struct PartStiffness {
        /// Stiffness.
        stiffness ("K"): ForcePerLength,
    }
    formula "K: skull 150, face 75, neck 50, back and shoulders 35, chest 25, abdomen 10 N/mm"
    valid "Healthy adults; children are softer and hurt sooner."
    source { work: "ISO/TS 15066:2016", clause: "table A.3", evidence: Seen, seen: "a public page that tabulates the spring constants; the specification itself was not at hand" }
    by stiffness
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    clippy::unnecessary_wraps,
    reason = "every calculation takes its inputs by reference and may refuse"
)]
fn stiffness(body: &BodyStiffness) -> Result<PartStiffness, OutOfReach> {
    let newtons_per_millimeter = match body.part {
        StruckPart::Skull => 150.0,
        StruckPart::Face => 75.0,
        StruckPart::Neck => 50.0,
        StruckPart::Back => 35.0,
        StruckPart::Chest => 25.0,
        StruckPart::Abdomen => 10.0,
    };
    Ok(PartStiffness {
        stiffness: ForcePerLength::from_base(newtons_per_millimeter * 1e3),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn parts_get_softer_from_the_skull_down() {
        let of = |part: &StruckPart| {
            BodyStiffness { part: *part }
                .evaluate()
                .unwrap()
                .stiffness
                .base()
        };
        let all: Vec<f64> = StruckPart::ALL.iter().rev().map(of).collect();
        assert!(all.is_sorted());
    }
}
