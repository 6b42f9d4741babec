//! The weakest signal that a receiver can take out of its own noise.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Frequency, Gain, PowerLevel, Quantity as _, Temperature};

formula! {
    /// The weakest signal that a receiver can take out of the noise of warm matter and its own.
    ///
    /// A receiver that listens to a wide band hears more noise: each tenfold width costs 10 dB. Supplies and lamps that hum
    /// on the channel come on top, and only a measurement on site shows them.
    pub struct ReceiverSensitivity = "receiver-sensitivity" in Signal {
        /// Width of the band that the receiver listens to.
        bandwidth ("B"): Frequency,
        /// Temperature of what the antenna looks at; 290 K by custom.
        temperature ("T"): Temperature,
        /// Noise that the receiver adds of its own.
        noise_figure ("F"): Gain,
        /// How far the signal has to stand above the noise.
        signal_to_noise ("S"): Gain,
    }
    gives
    /// Noise and weakest signal.
    pub struct Sensitivity {
        /// Noise of warm matter in the band.
        noise ("N"): PowerLevel,
        /// Weakest signal at the receiver's antenna socket.
        least_signal ("P"): PowerLevel,
    }
    formula "N = 10 · log₁₀(k · T · B / 1 mW)\nP = N + F + S"
    valid "Noise of warm matter only. Boltzmann constant 1.380649·10⁻²³ J/K."
    source { work: "thermal noise, k T B", clause: "", evidence: Physics, seen: "SI brochure, 9th edition, for the constant" }
    by receiver_sensitivity
}

/// Boltzmann constant in joules per kelvin (SI brochure, 9th edition: exact).
const BOLTZMANN: f64 = 1.380_649e-23;

fn receiver_sensitivity(receiver: &ReceiverSensitivity) -> Result<Sensitivity, OutOfReach> {
    positive("bandwidth", receiver.bandwidth, "200 kHz")?;
    positive("temperature", receiver.temperature, "62 °F")?;
    not_negative("noise_figure", receiver.noise_figure, "6 dB")?;
    let watts = BOLTZMANN * receiver.temperature.base() * receiver.bandwidth.base();
    let noise = 10.0 * (watts / 1e-3).log10();
    if !noise.is_finite() {
        return Err(OutOfReach::new(
            "bandwidth",
            "no receiver listens so; give a width such as 200 kHz",
        ));
    }
    let least = noise + receiver.noise_figure.base() + receiver.signal_to_noise.base();
    Ok(Sensitivity {
        noise: PowerLevel::from_base(noise),
        least_signal: PowerLevel::from_base(least),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn receiver(hertz: f64) -> ReceiverSensitivity {
        ReceiverSensitivity {
            bandwidth: Frequency::from_base(hertz),
            temperature: Temperature::from_base(290.0),
            noise_figure: Gain::from_base(6.0),
            signal_to_noise: Gain::from_base(10.0),
        }
    }

    proptest! {
        #[test]
        fn ten_times_the_width_costs_ten_decibels(hertz in 1e3..1e8) {
            let narrow = receiver(hertz).evaluate().unwrap();
            let wide = receiver(10.0 * hertz).evaluate().unwrap();
            prop_assert!((wide.least_signal.base() - narrow.least_signal.base() - 10.0).abs() < 1e-9);
        }
    }

    #[test]
    fn no_band_is_refused() {
        assert_eq!(receiver(0.0).evaluate().unwrap_err().input, "bandwidth");
    }
}
