//! Loss of a radio wave over level ground, which reflects it.

use super::free_space_loss::FreeSpaceLoss;
use super::wave::wavelength;
use crate::check::positive;
use crate::{Formula as _, OutOfReach};
use quantity::{Frequency, Gain, Length, Quantity as _};

formula! {
    /// How much weaker a radio wave is after a distance over level ground.
    ///
    /// The ground throws back a second wave that meets the first out of step. Beyond the break the two put each other out
    /// more and more: twice the distance loses 12 dB, and the frequency no longer counts. Nearer than the break they
    /// strengthen and weaken each other by turns, and free space is the fair mean; the larger of the two losses counts.
    pub struct PlaneEarthLoss = "plane-earth-loss" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// Distance from antenna to antenna.
        distance ("d"): Length,
        /// Height of the one antenna above the ground.
        first_height ("h1"): Length,
        /// Height of the other antenna above the ground.
        second_height ("h2"): Length,
    }
    gives
    /// What level ground and distance take.
    pub struct GroundPath {
        /// Distance from which on the ground takes more than free space.
        break_distance ("db"): Length,
        /// Loss between two antennas that send evenly in all directions.
        loss ("L"): Gain,
    }
    formula "db = 4 · π · h1 · h2 · f / c\nL = the larger of 20 · log₁₀(4 · π · d · f / c) and 40 · log₁₀(d) − 20 · log₁₀(h1 · h2), lengths in meters"
    valid "Level ground that reflects well, antennas low against the distance. Some texts give a break of 4 · h1 · h2 · f / c."
    source { work: "plane-earth (two-ray) model", clause: "", evidence: Physics, seen: "a textbook appendix on path loss over a reflecting surface, formulas B.1 to B.9" }
    by plane_earth_loss
}

fn plane_earth_loss(path: &PlaneEarthLoss) -> Result<GroundPath, OutOfReach> {
    positive("first_height", path.first_height, "5 ft")?;
    positive("second_height", path.second_height, "5 ft")?;
    let wave = wavelength(path.frequency)?.base();
    let free = FreeSpaceLoss {
        frequency: path.frequency,
        distance: path.distance,
    };
    let free = free.evaluate()?.loss.base();
    let heights = path.first_height.base() * path.second_height.base();
    let ground = 40.0 * path.distance.base().log10() - 20.0 * heights.log10();
    Ok(GroundPath {
        break_distance: Length::from_base(4.0 * std::f64::consts::PI * heights / wave),
        loss: Gain::from_base(free.max(ground)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;

    fn path(meters: f64) -> PlaneEarthLoss {
        PlaneEarthLoss {
            frequency: Frequency::from_base(433.92e6),
            distance: Length::from_base(meters),
            first_height: Length::from_base(3.0),
            second_height: Length::from_base(1.0),
        }
    }

    proptest! {
        #[test]
        fn beyond_the_break_twice_the_way_loses_twelve_decibels(d in 60.0..5000.0) {
            let near = path(d).evaluate().unwrap().loss.base();
            let far = path(2.0 * d).evaluate().unwrap().loss.base();
            prop_assert!((far - near - 40.0 * 2.0_f64.log10()).abs() < 1e-9);
        }

        #[test]
        fn it_never_loses_less_than_free_space(d in 1.0..5000.0) {
            let free = FreeSpaceLoss { frequency: path(d).frequency, distance: path(d).distance };
            prop_assert!(path(d).evaluate().unwrap().loss >= free.evaluate().unwrap().loss);
        }
    }

    #[test]
    fn an_antenna_on_the_ground_is_refused() {
        let buried = PlaneEarthLoss {
            first_height: Length::from_base(0.0),
            ..path(100.0)
        };
        assert_eq!(buried.evaluate().unwrap_err().input, "first_height");
    }
}
