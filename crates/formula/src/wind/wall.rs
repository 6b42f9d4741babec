//! What the wall calculations of ASCE 7 share: proportions of the face and the factor for its openings.

use crate::OutOfReach;
use quantity::{Length, Quantity as _, Ratio};

/// Share of the gross area that must be solid for a wall or sign to count as solid.
pub(super) const LEAST_SOLIDITY: f64 = 0.7;

/// Proportions of a face, as the figure wants them.
pub(super) struct Proportions {
    /// B/s, width over height of the face.
    pub(super) aspect: f64,
    /// s/h, height of the face over height of its top above ground.
    pub(super) clearance: f64,
}

impl Proportions {
    /// The proportions of a face `width` wide and `face` high whose top is at `top`.
    pub(super) fn of(width: Length, face: Length, top: Length) -> Result<Self, OutOfReach> {
        if width.base() <= 0.0 {
            return Err(OutOfReach::new(
                "width",
                "give the width of the face, such as 20 ft",
            ));
        }
        if face.base() <= 0.0 {
            return Err(OutOfReach::new(
                "face_height",
                "give the height of the face itself, gap below left out, such as 6 ft",
            ));
        }
        let clearance = face.base() / top.base();
        if !(clearance > 0.0 && clearance <= 1.0 + 1e-9) {
            return Err(OutOfReach::new(
                "top_height",
                "the top of the face cannot be lower than the face is high; give its height above ground",
            ));
        }
        Ok(Self {
            aspect: width.base() / face.base(),
            clearance: clearance.min(1.0),
        })
    }
}

/// Factor for openings in a solid wall or sign: `1 − (1 − ε)^1.5`, ε the solid share of the gross area.
pub(super) fn opening_factor(solidity: Ratio) -> Result<f64, OutOfReach> {
    let solidity = solidity.base();
    if (LEAST_SOLIDITY..=1.0).contains(&solidity) {
        return Ok(1.0 - (1.0 - solidity).powf(1.5));
    }
    Err(OutOfReach::new(
        "solidity",
        "a solid wall or sign has a solid share from 70 % to 100 %; for a more open leaf use asce7-open-sign-force",
    ))
}

/// Refuses a gust-effect factor that no rigid wall has.
pub(super) fn check_gust(factor: Ratio) -> Result<(), OutOfReach> {
    if (0.5..=3.0).contains(&factor.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(
        "gust_factor",
        "give 0.85 for a rigid leaf; only a computed factor differs, and it lies near 1",
    ))
}

/// Refuses a negative velocity pressure.
pub(super) fn check_pressure(pressure: quantity::Pressure) -> Result<(), OutOfReach> {
    if pressure.base() >= 0.0 {
        return Ok(());
    }
    Err(OutOfReach::new(
        "velocity_pressure",
        "a velocity pressure is not below zero; give one such as 24 psf",
    ))
}
