//! What a wind presses on a bar that stands alone: an arm, a post, a mast and what is on top of it.

use crate::asking::Asking;
use crate::outcome::Halt;
use formula::wind::{Asce7OpenSignForce, En1991RectangularMember, MemberShape};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio};
use site::{CodeBasis, Site};

/// Gust-effect factor of a rigid member in ASCE 7.
const RIGID: f64 = 0.85;
/// Solid share that stands for a single bar in the table of open frames of ASCE 7: its most open row.
const ALONE: f64 = 0.05;

/// A bar as the wind meets it; flat-sided, which is the safe side for a round one.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bar {
    /// Side across the wind.
    pub(crate) width: Length,
    /// Side along the wind.
    pub(crate) depth: Length,
    /// Length.
    pub(crate) length: Length,
}

/// Force on the bar.
pub(crate) fn on_bar(
    asking: &mut Asking<'_>,
    site: &Site,
    velocity_pressure: Pressure,
    bar: Bar,
) -> Result<Force, Halt> {
    let Bar {
        width,
        depth,
        length,
    } = bar;
    match site.site.code_basis {
        CodeBasis::Us => asking
            .work(&Asce7OpenSignForce {
                velocity_pressure,
                gust_factor: Ratio::from_base(RIGID),
                solid_area: width * length,
                solidity: Ratio::from_base(ALONE),
                member_shape: MemberShape::Flat,
                member_width: width,
            })
            .map(|sign| sign.force),
        CodeBasis::Eu => asking
            .work(&En1991RectangularMember {
                peak_pressure: velocity_pressure,
                width,
                depth,
                length,
            })
            .map(|bar| bar.force),
    }
}
