//! What holds a leaf against the wind at its free end.

use super::load::{LeafWind, Wind, on_leaf};
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::wind::WindOnTurningLeaf;
use quantity::{Angle, Force, Quantity as _, Ratio};
use site::{Leaf, Site};
use std::f64::consts::FRAC_PI_2;

/// Share of the length by which the wind's force is taken off the middle of the leaf, toward its free end.
const OFF_MIDDLE: f64 = 0.2;

/// The wind on a leaf and the force at its free end that holds it; the other end is held by hinges, pivot or guides.
/// The wind may come from anywhere, so it is taken square to the leaf.
pub(crate) fn at_free_end<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    wind: Wind,
) -> Result<(LeafWind, Force), Halt> {
    let wind = on_leaf(asking, site, leaf, wind);
    let length = read!(asking, leaf.length);
    let (wind, length) = (wind?, length?);
    let moment = asking.work(&WindOnTurningLeaf {
        square_force: wind.force,
        length,
        middle: length / 2.0,
        eccentricity: Ratio::from_base(OFF_MIDDLE),
        angle: Angle::from_base(FRAC_PI_2),
    })?;
    Ok((wind, moment.end_force))
}
