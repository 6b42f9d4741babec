//! Loss of a radio wave over distance in free space.

use super::wave::wavelength;
use crate::OutOfReach;
use quantity::{Frequency, Gain, Length, Quantity as _};

formula! {
    /// How much weaker a radio wave is after a distance, with nothing in its way and nothing that reflects it.
    ///
    /// Twice the distance or twice the frequency lose 6 dB more. Nearer than a wavelength an antenna does not send a wave
    /// yet, and the figure says nothing.
    pub struct FreeSpaceLoss = "free-space-loss" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// Distance from antenna to antenna.
        distance ("d"): Length,
    }
    gives
    /// What free space takes.
    pub struct PathLoss {
        /// Loss between two antennas that send evenly in all directions.
        loss ("L"): Gain,
    }
    formula "L = 20 · log₁₀(4 · π · d · f / c)"
    valid "From one wavelength on. Speed of light 299,792,458 m/s."
    source { work: "ITU-R P.525", clause: "free-space attenuation", evidence: Physics, seen: "a wave spreads over a sphere; worked examples of radio manuals, see the cases" }
    by free_space_loss
}

fn free_space_loss(path: &FreeSpaceLoss) -> Result<PathLoss, OutOfReach> {
    let wave = wavelength(path.frequency)?.base();
    let distance = path.distance.base();
    if distance < wave {
        return Err(OutOfReach::new(
            "distance",
            format!(
                "nearer than one wavelength, {wave:.2} m, this says nothing; give a longer way"
            ),
        ));
    }
    let turns = 4.0 * std::f64::consts::PI * distance / wave;
    Ok(PathLoss {
        loss: Gain::from_base(20.0 * turns.log10()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn loss(megahertz: f64, meters: f64) -> f64 {
        let path = FreeSpaceLoss {
            frequency: Frequency::from_base(megahertz * 1e6),
            distance: Length::from_base(meters),
        };
        path.evaluate().unwrap().loss.base()
    }

    proptest! {
        #[test]
        fn twice_the_way_or_the_frequency_loses_six_decibels(f in 300.0..60_000.0, d in 10.0..10_000.0) {
            let six = 20.0 * 2.0_f64.log10();
            prop_assert!((loss(f, 2.0 * d) - loss(f, d) - six).abs() < 1e-9);
            prop_assert!((loss(2.0 * f, d) - loss(f, d) - six).abs() < 1e-9);
        }
    }

    #[test]
    fn too_near_and_no_frequency_are_refused() {
        let mut path = FreeSpaceLoss {
            frequency: Frequency::from_base(433.92e6),
            distance: Length::from_base(0.2),
        };
        assert_eq!(path.evaluate().unwrap_err().input, "distance");
        path.frequency = Frequency::from_base(0.0);
        assert_eq!(path.evaluate().unwrap_err().input, "frequency");
    }
}
