//! The length of a radio wave.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Frequency, Length, Quantity as _};

/// Speed of light in meters per second (SI brochure, 9th edition: exact).
const LIGHT: f64 = 299_792_458.0;

/// Length of one wave in free space.
pub(super) fn wavelength(frequency: Frequency) -> Result<Length, OutOfReach> {
    positive("frequency", frequency, "433.92 MHz")?;
    let wave = LIGHT / frequency.base();
    if wave.is_finite() && wave > 0.0 {
        Ok(Length::from_base(wave))
    } else {
        Err(OutOfReach::new(
            "frequency",
            "no radio works there; give a frequency such as 433.92 MHz",
        ))
    }
}
