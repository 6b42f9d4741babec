//! Exposure categories of ASCE 7 and how the wind grows with height in each.

use crate::OutOfReach;
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// How open the ground upwind is, as ASCE 7 sorts it.
    pub enum Exposure {
        /// Town, suburb or woods.
        B = "B",
        /// Open country with scattered low obstructions.
        C = "C",
        /// Flat coast, water, mud flats.
        D = "D",
    }
}

/// The power law of one edition: its factor and, for each exposure, the exponent α and the gradient height.
pub(super) struct PowerLaw {
    /// Factor in front: 2.01 or 2.41.
    pub(super) factor: f64,
    /// α and gradient height in feet for B, C and D.
    pub(super) constants: [(f64, f64); 3],
}

/// Height below which the coefficient grows no smaller, in feet.
const LEAST_HEIGHT: f64 = 15.0;
/// One foot in meters.
const FOOT: f64 = 0.3048;

impl PowerLaw {
    /// Velocity pressure exposure coefficient at a height above ground.
    pub(super) fn coefficient(
        &self,
        exposure: Exposure,
        height: Length,
    ) -> Result<f64, OutOfReach> {
        let (exponent, gradient) = match exposure {
            Exposure::B => self.constants[0],
            Exposure::C => self.constants[1],
            Exposure::D => self.constants[2],
        };
        let feet = height.base() / FOOT;
        if !(0.0..=gradient).contains(&feet) {
            return Err(OutOfReach::new(
                "height",
                format!("give a height above ground from 0 to {gradient} ft, such as 6 ft"),
            ));
        }
        Ok(self.factor * (feet.max(LEAST_HEIGHT) / gradient).powf(2.0 / exponent))
    }
}

/// Factor for the thinner air of high ground: `e^(−0.0000362 · z)`, z in feet above the sea.
pub(super) fn elevation_factor(elevation: Length) -> Result<f64, OutOfReach> {
    let feet = elevation.base() / FOOT;
    if !(-1_500.0..=20_000.0).contains(&feet) {
        return Err(OutOfReach::new(
            "ground_elevation",
            "give the ground's height above the sea, from −1,500 ft to 20,000 ft; 0 ft is on the safe side",
        ));
    }
    Ok((-0.0000362 * feet).exp())
}

/// Refuses a topographic factor below one: hills speed the wind up, flat ground has exactly 1.
pub(super) fn check_topography(factor: Ratio) -> Result<(), OutOfReach> {
    if (1.0..=4.0).contains(&factor.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        "topographic_factor",
        "give 1 for flat ground; a ridge, hill or escarpment has more, up to about 3",
    ))
}

/// Refuses a directionality factor outside 0 to 1.
pub(super) fn check_directionality(factor: Ratio) -> Result<(), OutOfReach> {
    if factor.base() > 0.0 && factor.base() <= 1.0 {
        return Ok(());
    }
    Err(OutOfReach::new(
        "directionality_factor",
        "give a factor above 0 and at most 1; for walls, signs and fences it is 0.85",
    ))
}

/// `0.00256 · V²` in pascals, V in miles an hour and the result of the print in pounds on each square foot.
pub(super) fn stagnation_pressure(speed: quantity::Velocity) -> Result<f64, OutOfReach> {
    let miles_per_hour = speed.base() / 0.44704;
    if !(0.0..=400.0).contains(&miles_per_hour) {
        return Err(OutOfReach::new(
            "basic_speed",
            "give the basic wind speed of the place, from 0 to 400 mph, such as 115 mph",
        ));
    }
    Ok(0.00256 * miles_per_hour.powi(2) * super::POUND_PER_SQUARE_FOOT)
}
