//! The room that a radio wave takes up on its way.

use super::wave::wavelength;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Frequency, Length, Quantity as _};

formula! {
    /// Radius of the first Fresnel zone at a place between two antennas.
    ///
    /// A radio wave takes up a long spindle around the straight line. What stands in its outer parts throws waves that put
    /// the direct one out: 60 % of this radius is kept free, and a wave that is short needs less room.
    pub struct FresnelRadius = "fresnel-radius" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// Distance from the one antenna to the place.
        near ("d1"): Length,
        /// Distance from the place to the other antenna.
        far ("d2"): Length,
    }
    gives
    /// The first Fresnel zone at the place.
    pub struct FresnelZone {
        /// Its radius.
        radius ("r"): Length,
    }
    formula "r = √(λ · d1 · d2 / (d1 + d2)),  λ = c / f"
    valid "Places more than a few wavelengths from both antennas."
    source { work: "ITU-R P.526", clause: "Fresnel ellipsoids and Fresnel zones, formula (2)", evidence: Seen, seen: "public copies of editions 7 and 8, text of the first pages" }
    by fresnel_radius
}

fn fresnel_radius(place: &FresnelRadius) -> Result<FresnelZone, OutOfReach> {
    positive("near", place.near, "100 ft")?;
    positive("far", place.far, "100 ft")?;
    let wave = wavelength(place.frequency)?;
    let (near, far) = (place.near.base(), place.far.base());
    let radius = (wave.base() * near * (far / (near + far))).sqrt();
    Ok(FresnelZone {
        radius: Length::from_base(radius),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn radius(near: f64, far: f64) -> f64 {
        let place = FresnelRadius {
            frequency: Frequency::from_base(5.8e9),
            near: Length::from_base(near),
            far: Length::from_base(far),
        };
        place.evaluate().unwrap().radius.base()
    }

    proptest! {
        #[test]
        fn it_is_widest_half_way_and_the_same_from_both_ends(near in 1.0..499.0) {
            let far = 1000.0 - near;
            prop_assert!(radius(near, far) <= radius(500.0, 500.0));
            prop_assert!((radius(near, far) - radius(far, near)).abs() < 1e-9);
        }

        /// By definition the way over the rim of the zone is half a wave longer than the straight way.
        #[test]
        fn the_way_over_its_rim_is_half_a_wave_longer(near in 100.0..900.0) {
            let far = 1000.0 - near;
            let r = radius(near, far);
            let longer = near.hypot(r) + far.hypot(r) - 1000.0;
            prop_assert!((longer / (299_792_458.0 / 5.8e9 / 2.0) - 1.0).abs() < 1e-3);
        }
    }

    #[test]
    fn a_place_at_an_antenna_is_refused() {
        let place = FresnelRadius {
            frequency: Frequency::from_base(5.8e9),
            near: Length::from_base(0.0),
            far: Length::from_base(10.0),
        };
        assert_eq!(place.evaluate().unwrap_err().input, "near");
    }
}
