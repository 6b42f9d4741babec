//! What the two pole formulas share: the post, the ground, and how deep the ground counts.

use super::concrete::within;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, PressurePerDepth, Quantity as _, Ratio};

/// Depth below which sideways bearing is not counted to grow, in meters: 12 ft.
pub(super) const DEEPEST_COUNTED: f64 = 12.0 * 0.3048;

/// A post in the ground, in meters and pascals per meter.
pub(super) struct Ground {
    pub(super) height: f64,
    pub(super) width: f64,
    /// Sideways bearing for each meter of depth, the factor included.
    pub(super) lateral: f64,
}

/// The post and its ground, refused outside what the formulas take.
pub(super) fn checked(
    height: Length,
    width: Length,
    lateral: PressurePerDepth,
    factor: Ratio,
) -> Result<Ground, OutOfReach> {
    not_negative("height", height, "6 ft")?;
    positive("width", width, "18 in")?;
    positive("lateral", lateral, "150 psf/ft")?;
    within(
        "lateral_factor",
        factor,
        1.0,
        2.67,
        "give 1; 2 for a pole that takes no harm from 1/2 in of movement at the ground; up to 2.67 where the code in force adds a third for wind",
    )?;
    Ok(Ground {
        height: height.base(),
        width: width.base(),
        lateral: lateral.base() * factor.base(),
    })
}
