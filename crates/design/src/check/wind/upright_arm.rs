//! What a wind along the gate line presses on an arm that stands up.

use super::load::{Wind, on_leaf};
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::wind::{Asce7OpenSignForce, En1991RectangularMember, MemberShape};
use quantity::{Force, Quantity as _, Ratio};
use site::{CodeBasis, Leaf, Site};

/// Gust-effect factor of a rigid member in ASCE 7.
const RIGID: f64 = 0.85;
/// Solid share that stands for a single bar in the table of open frames of ASCE 7: its most open row.
const ALONE: f64 = 0.05;

/// Force on the arm's narrow side, as on a bar that stands alone.
pub(super) fn on_upright_arm<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    wind: Wind,
) -> Result<Force, Halt> {
    let wind = on_leaf(asking, site, leaf, wind);
    let length = read!(asking, leaf.length);
    let width = read!(asking, leaf.thickness);
    let depth = read!(asking, leaf.height);
    let (wind, length, width, depth) = (wind?, length?, width?, depth?);
    match site.site.code_basis {
        CodeBasis::Us => asking
            .work(&Asce7OpenSignForce {
                velocity_pressure: wind.velocity_pressure,
                gust_factor: Ratio::from_base(RIGID),
                solid_area: width * length,
                solidity: Ratio::from_base(ALONE),
                member_shape: MemberShape::Flat,
                member_width: width,
            })
            .map(|sign| sign.force),
        CodeBasis::Eu => asking
            .work(&En1991RectangularMember {
                peak_pressure: wind.velocity_pressure,
                width,
                depth,
                length,
            })
            .map(|bar| bar.force),
    }
}
