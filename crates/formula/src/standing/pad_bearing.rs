//! How hard a pad presses on the soil.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio, Torque};

formula! {
    /// Greatest pressure of a rigid pad on its soil under weight and moment, within the middle third and beyond it.
    ///
    /// While the weight acts within the middle third the whole bottom presses; beyond it a part lifts off and the rest
    /// presses harder. A pad whose weight acts at the edge or outside it tips, and is refused here.
    pub struct PadBearing = "pad-bearing" in Standing {
        /// Weight that presses on the soil.
        weight ("W"): Force,
        /// Moment about the middle of the bottom.
        moment ("M"): Torque,
        /// Length of the pad in the direction of the moment.
        length ("B"): Length,
        /// Width of the pad across it.
        width ("L"): Length,
        /// Allowed bearing pressure of the soil.
        allowed ("q"): Pressure,
    }
    gives
    /// Pressure under a pad.
    pub struct PadPressure {
        /// How far the weight acts from the middle.
        eccentricity ("e"): Length,
        /// Greatest distance from the middle at which the whole bottom still presses.
        kern ("B/6"): Length,
        /// Length of the bottom that presses.
        contact ("Bc"): Length,
        /// Greatest pressure, at the edge.
        greatest ("pmax"): Pressure,
        /// Share of the allowed pressure that is used.
        used ("pmax / q"): Ratio,
    }
    formula "e = M / W\ne ≤ B/6: pmax = W / (B · L) · (1 + 6 · e / B), Bc = B\ne > B/6: pmax = 2 · W / (3 · L · (B / 2 − e)), Bc = 3 · (B / 2 − e)"
    valid "Rigid rectangular pads bent about one axis, soil that presses back in proportion; the weight acts within the pad."
    source { work: "statics of a rigid footing without tension", clause: "", evidence: Physics, seen: "calculations for a freestanding sign in a city archive" }
    by bearing
}

fn bearing(pad: &PadBearing) -> Result<PadPressure, OutOfReach> {
    positive("weight", pad.weight, "2,500 lbf")?;
    not_negative("moment", pad.moment, "2,000 lbf·ft")?;
    positive("length", pad.length, "30 in")?;
    positive("width", pad.width, "30 in")?;
    positive("allowed", pad.allowed, "2,000 psf")?;
    let length = pad.length.base();
    let found = pressure(
        pad.weight.base(),
        pad.moment.base(),
        length,
        pad.width.base(),
    );
    let Some((greatest, contact)) = found else {
        return Err(OutOfReach::new(
            "moment",
            "the weight acts at the edge of the pad or outside it, so the pad tips; make it longer or heavier",
        ));
    };
    Ok(PadPressure {
        eccentricity: Length::from_base(pad.moment.base() / pad.weight.base()),
        kern: pad.length / 6.0,
        contact: Length::from_base(contact),
        greatest: Pressure::from_base(greatest),
        used: Ratio::from_base(greatest / pad.allowed.base()),
    })
}

/// Greatest pressure and length of contact; none where the pad tips.
pub(super) fn pressure(weight: f64, moment: f64, length: f64, width: f64) -> Option<(f64, f64)> {
    let eccentricity = moment / weight;
    let left = length / 2.0 - eccentricity;
    if left <= 1e-9 * length {
        return None;
    }
    if eccentricity <= length / 6.0 {
        let mean = weight / (length * width);
        return Some((mean * (1.0 + 6.0 * eccentricity / length), length));
    }
    Some((2.0 * weight / (3.0 * width * left), 3.0 * left))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn pad(share: f64) -> PadBearing {
        PadBearing {
            weight: Force::from_base(1000.0),
            moment: Torque::from_base(1000.0 * share * 0.6),
            length: Length::from_base(1.2),
            width: Length::from_base(0.8),
            allowed: Pressure::from_base(95e3),
        }
    }

    proptest! {
        #[test]
        fn the_farther_out_the_harder_it_presses(share in 0.0..0.97) {
            let near = pad(share).evaluate().unwrap();
            let far = pad(share + 0.01).evaluate().unwrap();
            prop_assert!(far.greatest > near.greatest);
            prop_assert!(far.contact.base() <= near.contact.base() + 1e-12);
        }

        /// Where a part lifts off, the triangle that presses carries the weight.
        #[test]
        fn the_pressure_carries_the_weight(share in 0.34..0.99) {
            let found = pad(share).evaluate().unwrap();
            let carried = 0.5 * found.greatest.base() * found.contact.base() * 0.8;
            prop_assert!((carried - 1000.0).abs() < 1e-6);
        }
    }

    #[test]
    fn a_pad_that_tips_is_refused() {
        assert_eq!(pad(1.0).evaluate().unwrap_err().input, "moment");
    }
}
