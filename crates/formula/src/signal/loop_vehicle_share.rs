//! Share of a loop's inductance that a vehicle takes.

use super::rectangle::{Rectangle, of_strip};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Inductance, Length, Quantity as _, Ratio};

formula! {
    /// Share of a loop's inductance that metal above its middle surely takes away.
    ///
    /// The underside of a vehicle acts as a shorted turn. Whatever other ways the currents find, they only take more, so that
    /// this is the least for metal that closes a ring around that rectangle: a frame, a floor. The ring is taken
    /// four inches broad. A frame that is open, plastic or wood takes less, and a motorcycle upright over the middle next to
    /// nothing: it is seen at the wire.
    pub struct LoopVehicleShare = "loop-vehicle-share" in Signal {
        /// One side of the loop.
        length ("A"): Length,
        /// The other side.
        width ("B"): Length,
        /// Number of turns.
        turns ("N"): u32,
        /// Inductance of the loop, without its lead-in.
        inductance ("L"): Inductance,
        /// Metal along the first side.
        metal_length ("a"): Length,
        /// Metal along the other side.
        metal_width ("b"): Length,
        /// Height of the metal above the wire.
        height ("h"): Length,
    }
    gives
    /// What a vehicle takes.
    pub struct VehicleShare {
        /// Inductance between the loop and the metal.
        mutual ("Mv"): Inductance,
        /// Share of the loop's inductance that it takes.
        share ("S"): Ratio,
    }
    formula "Mv = N · M(h)\nS = Mv² / (L · Lv), with Lv of the metal as one turn of a strip 4 in wide"
    valid "Metal level above the middle of the loop, at least a foot each way, at the frequency of a detector."
    source { work: "a shorted turn as the other winding of a transformer, as in the FHWA Traffic Detector Handbook, 2006, appendix E; Neumann's integral", clause: "", evidence: Physics, seen: "the abstract of that appendix; values worked again by numerical integration in another library, see the cases" }
    by share
}

/// Breadth of the ring in the underside of a vehicle (m).
const STRIP: f64 = 0.1016;

fn share(at: &LoopVehicleShare) -> Result<VehicleShare, OutOfReach> {
    positive("length", at.length, "8 ft")?;
    positive("width", at.width, "4 ft")?;
    positive("inductance", at.inductance, "120 µH")?;
    positive("height", at.height, "24 in")?;
    for (input, side) in [
        ("metal_length", at.metal_length),
        ("metal_width", at.metal_width),
    ] {
        if side.base() < 3.0 * STRIP {
            return Err(OutOfReach::new(
                input,
                "metal that acts as a ring is at least a foot each way; smaller things are tried on site",
            ));
        }
    }
    let ring = Rectangle::centered(at.length.base(), at.width.base());
    let metal = Rectangle::centered(at.metal_length.base(), at.metal_width.base());
    let mutual = f64::from(at.turns) * ring.mutual(&metal, at.height.base());
    let own = metal.own(of_strip(STRIP));
    Ok(VehicleShare {
        mutual: Inductance::from_base(mutual),
        share: Ratio::from_base(mutual * mutual / (at.inductance.base() * own)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(height: f64, metal: f64) -> LoopVehicleShare {
        LoopVehicleShare {
            length: Length::from_base(2.4),
            width: Length::from_base(1.2),
            turns: 4,
            inductance: Inductance::from_base(127e-6),
            metal_length: Length::from_base(metal),
            metal_width: Length::from_base(1.2),
            height: Length::from_base(height),
        }
    }

    proptest! {
        #[test]
        fn a_higher_bed_takes_less_and_never_all(height in 0.15..2.0, metal in 0.4..4.0) {
            let low = at(height, metal).evaluate().unwrap().share.base();
            let high = at(1.1 * height, metal).evaluate().unwrap().share.base();
            prop_assert!(0.0 < high && high < low && low < 1.0, "{low} {high}");
        }
    }

    #[test]
    fn a_bar_is_no_ring() {
        assert_eq!(at(0.5, 0.1).evaluate().unwrap_err().input, "metal_length");
        assert_eq!(at(0.0, 2.0).evaluate().unwrap_err().input, "height");
    }
}
