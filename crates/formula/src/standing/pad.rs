//! A rectangular pad of concrete, as the calculations of pads take it.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, MassDensity, Quantity as _};

/// Standard gravity in m/s².
const GRAVITY: f64 = 9.806_65;

/// A pad, in meters and newtons.
pub(super) struct Pad {
    pub(super) length: f64,
    pub(super) weight: f64,
}

impl Pad {
    /// The pad of these sizes, refused where one of them is no size.
    pub(super) fn checked(
        length: Length,
        width: Length,
        thickness: Length,
        density: MassDensity,
    ) -> Result<Self, OutOfReach> {
        positive("length", length, "30 in")?;
        positive("width", width, "30 in")?;
        positive("thickness", thickness, "18 in")?;
        if !(500.0..=5000.0).contains(&density.base()) {
            return Err(OutOfReach::new(
                "density",
                "give the density of the concrete, such as 150 lb/ft³, from 32 to 312 lb/ft³",
            ));
        }
        Ok(Self {
            length: length.base(),
            weight: weight(
                length.base(),
                width.base(),
                thickness.base(),
                density.base(),
            ),
        })
    }
}

/// Weight of a block in newtons.
pub(super) fn weight(length: f64, width: f64, thickness: f64, density: f64) -> f64 {
    density * GRAVITY * length * width * thickness
}
