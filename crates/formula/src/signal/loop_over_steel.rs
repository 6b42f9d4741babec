//! What reinforcing steel under a loop takes from it.

use super::rectangle::Rectangle;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Inductance, Length, Quantity as _, Ratio};

formula! {
    /// Inductance of a loop over steel, and how much of its field is left at a height, with the steel as a closed sheet.
    ///
    /// A sheet answers with currents like those of a second loop, as far below the sheet as the first is above it and wound the
    /// other way. A closed sheet is the worst: bars that are not tied into rings take less, a mesh with wide openings less
    /// too. So what really is left lies between this and the loop without steel; a meter at the cabinet says where.
    pub struct LoopOverSteel = "loop-over-steel" in Signal {
        /// One side of the loop.
        length ("A"): Length,
        /// The other side.
        width ("B"): Length,
        /// Number of turns.
        turns ("N"): u32,
        /// Inductance of the loop without steel.
        inductance ("L"): Inductance,
        /// Depth of the steel below the wire.
        steel ("t"): Length,
        /// Height above the wire at which the field is asked for: the underside of a vehicle.
        height ("h"): Length,
    }
    gives
    /// What is left over steel.
    pub struct OverSteel {
        /// Inductance left.
        left ("Lt"): Inductance,
        /// Share of the field that is left at that height.
        field ("q"): Ratio,
    }
    formula "Lt = L − N² · M(2 · t)\nq = 1 − M(h + 2 · t) / M(h), with M(z) of two turns as in loop-inductance"
    valid "Steel that reaches well beyond the loop; not steel nearer than the stack of turns is high."
    source { work: "images of currents in a conducting plane, and Neumann's integral", clause: "", evidence: Physics, seen: "worked again by numerical integration in another library, see the cases; a handbook of traffic detectors models mesh as a shorted turn" }
    by over_steel
}

/// Heights up to which the field is worked, in lengths and widths of the loop together.
const FARTHEST: f64 = 20.0;

fn over_steel(at: &LoopOverSteel) -> Result<OverSteel, OutOfReach> {
    positive("length", at.length, "8 ft")?;
    positive("width", at.width, "4 ft")?;
    positive("inductance", at.inductance, "120 µH")?;
    positive("steel", at.steel, "2 in")?;
    positive("height", at.height, "24 in")?;
    let ring = Rectangle::centered(at.length.base(), at.width.base());
    let turns = f64::from(at.turns);
    let image = ring.mutual(&ring, 2.0 * at.steel.base());
    let left = at.inductance.base() - turns * turns * image;
    if left <= 0.0 {
        return Err(OutOfReach::new(
            "steel",
            "the steel lies at the wire itself; measure the inductance at the cabinet",
        ));
    }
    let field = |height: f64| ring.mutual(&ring, height);
    let height = at.height.base();
    if height > FARTHEST * (at.length.base() + at.width.base()) {
        return Err(OutOfReach::new(
            "height",
            "nothing of the loop is felt so far above it; give the height of an underside, such as 24 in",
        ));
    }
    Ok(OverSteel {
        left: Inductance::from_base(left),
        field: Ratio::from_base(1.0 - field(height + 2.0 * at.steel.base()) / field(height)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(steel: f64, height: f64) -> LoopOverSteel {
        LoopOverSteel {
            length: Length::from_base(2.4),
            width: Length::from_base(1.2),
            turns: 4,
            inductance: Inductance::from_base(127e-6),
            steel: Length::from_base(steel),
            height: Length::from_base(height),
        }
    }

    proptest! {
        #[test]
        fn deeper_steel_takes_less_and_a_higher_bed_sees_less(steel in 0.02..1.0, height in 0.1..1.5) {
            let (near, deep) = (at(steel, height).evaluate().unwrap(), at(1.2 * steel, height).evaluate().unwrap());
            prop_assert!(deep.left > near.left && deep.left.base() < 127e-6 && deep.field > near.field);
            let higher = at(steel, 1.2 * height).evaluate().unwrap();
            prop_assert!(higher.field < near.field && higher.field.base() > 0.0 && near.field.base() < 1.0);
        }
    }

    #[test]
    fn steel_at_the_wire_is_refused() {
        assert_eq!(at(0.0001, 0.5).evaluate().unwrap_err().input, "steel");
        assert_eq!(at(0.0, 0.5).evaluate().unwrap_err().input, "steel");
    }
}
