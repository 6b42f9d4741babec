//! Dew point of moist air.

use crate::OutOfReach;
use quantity::{Pressure, Quantity as _, Ratio, Temperature};

formula! {
    /// Temperature at which moist air begins to wet a surface.
    ///
    /// Saturation is over ice below the freezing point of water and over liquid water above it; below freezing the answer
    /// is the frost point. The pressure of the air does not matter.
    pub struct DewPoint = "dew-point" in Power {
        /// Temperature of the air.
        air ("T"): Temperature,
        /// Relative humidity: 1 for saturated air.
        humidity ("φ"): Ratio,
    }
    gives
    /// Moisture of the air.
    pub struct Moisture {
        /// Pressure of the water vapor in it.
        vapor ("e"): Pressure,
        /// Its dew point.
        dew_point ("Td"): Temperature,
    }
    formula "ln pₛ(T) = C₁/T + C₂ + C₃·T + C₄·T² + C₅·T³ + C₆·T⁴ + C₇·ln T\ne = φ · pₛ(T)\npₛ(Td) = e"
    valid "Air of −50 to 100 °C; relative humidity above 0 and at most 1."
    source { work: "ASHRAE Handbook, Fundamentals", clause: "2017, chapter 1, equations 5 and 6", evidence: Seen, seen: "its printed saturation pressures, repeated in the tests of public psychrometric libraries" }
    by dew_point
}

/// Coefficients over ice.
const ICE: [f64; 7] = [
    -5.674_535_9e3,
    6.392_524_7,
    -9.677_843e-3,
    6.221_570_1e-7,
    2.074_782_5e-9,
    -9.484_024e-13,
    4.163_501_9,
];

/// Coefficients over liquid water.
const WATER: [f64; 7] = [
    -5.800_220_6e3,
    1.391_499_3,
    -4.864_023_9e-2,
    4.176_476_8e-5,
    -1.445_209_3e-8,
    0.0,
    6.545_967_3,
];

/// Triple point of water, in kelvin: below it ice, above it water.
const TRIPLE: f64 = 273.16;

/// Coldest and hottest air, in kelvin.
const REACH: (f64, f64) = (223.15, 373.15);

fn dew_point(air: &DewPoint) -> Result<Moisture, OutOfReach> {
    let (temperature, humidity) = (air.air.base(), air.humidity.base());
    if !(REACH.0..=REACH.1).contains(&temperature) {
        return Err(OutOfReach::new(
            "air",
            "give the temperature of air, from −50 to 100 °C",
        ));
    }
    if !(humidity > 0.0 && humidity <= 1.0) {
        return Err(OutOfReach::new(
            "humidity",
            "give a relative humidity above 0 and at most 100 %",
        ));
    }
    let vapor = humidity * saturation(temperature);
    Ok(Moisture {
        vapor: Pressure::from_base(vapor),
        dew_point: Temperature::from_base(inverse(vapor, temperature)),
    })
}

/// Saturation pressure in pascals at a temperature in kelvin.
fn saturation(kelvin: f64) -> f64 {
    let [c1, c2, c3, c4, c5, c6, c7] = if kelvin < TRIPLE { ICE } else { WATER };
    let powers = c3 + kelvin * (c4 + kelvin * (c5 + kelvin * c6));
    (c1 / kelvin + c2 + kelvin * powers + c7 * kelvin.ln()).exp()
}

/// The temperature at which the air is saturated, at most its own: halved in between until nothing is left.
fn inverse(vapor: f64, air: f64) -> f64 {
    let (mut low, mut high) = (100.0, air);
    for _ in 0..80 {
        let middle = f64::midpoint(low, high);
        if saturation(middle) < vapor {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::celsius;

    fn at(degrees: f64, humidity: f64) -> DewPoint {
        DewPoint {
            air: celsius(degrees),
            humidity: Ratio::from_base(humidity),
        }
    }

    proptest! {
        #[test]
        fn saturated_air_is_at_its_dew_point(degrees in -45.0..60.0) {
            let moist = at(degrees, 1.0).evaluate().unwrap();
            prop_assert!((moist.dew_point.base() - degrees - 273.15).abs() < 1e-6);
        }

        #[test]
        fn damper_air_wets_sooner(degrees in -40.0..60.0, humidity in 0.05..0.95) {
            let drier = at(degrees, humidity).evaluate().unwrap();
            let damper = at(degrees, humidity + 0.05).evaluate().unwrap();
            prop_assert!(damper.dew_point > drier.dew_point);
            prop_assert!(damper.dew_point.base() <= degrees + 273.15 + 1e-9);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(at(150.0, 0.5).evaluate().unwrap_err().input, "air");
        assert_eq!(at(20.0, 0.0).evaluate().unwrap_err().input, "humidity");
        assert_eq!(at(20.0, 1.2).evaluate().unwrap_err().input, "humidity");
    }
}
