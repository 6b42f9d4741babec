//! Temperatures on a scale and differences between them, which must not mix.

use crate::{Quantity as _, Temperature, TemperatureDifference};

/// Zero degrees Celsius in kelvin, by definition of the scale (SI brochure, 9th edition, 2.3.1).
const ICE_POINT: f64 = 273.15;

/// A temperature from degrees Celsius.
pub fn celsius(degrees: f64) -> Temperature {
    Temperature::from_base(degrees + ICE_POINT)
}

/// A difference of so many kelvin.
pub fn kelvin_of(kelvin: f64) -> TemperatureDifference {
    TemperatureDifference::from_base(kelvin)
}

/// How much hotter `hot` is than `cold`; negative when it is the colder of the two.
pub fn difference(hot: Temperature, cold: Temperature) -> TemperatureDifference {
    TemperatureDifference::from_base(hot.base() - cold.base())
}

/// The temperature reached from `start` by a rise.
pub fn warmed(start: Temperature, rise: TemperatureDifference) -> Temperature {
    Temperature::from_base(start.base() + rise.base())
}
