//! What a wind pushes a sliding leaf along its travel.

use super::load::{Wind, on_leaf};
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::{Evidence, Source};
use quantity::{Force, Quantity as _, Velocity};
use site::{Leaf, Site};

/// Share of the velocity pressure that rubs along each face of a slatted or boarded leaf.
const RUBBING: f64 = 0.04;
/// Force coefficient of the leaf's end.
const END: f64 = 2.0;
/// Least solid share of a leaf whose faces count as rubbed along.
pub(super) const CLOSED: f64 = 0.7;

static FRICTION: Source = Source {
    work: "EN 1991-1-4, friction of wind along very rough faces",
    clause: "7.5 (table 7.10)",
    evidence: Evidence::Seen,
    seen: "Steel Buildings in Europe, single-storey part 3, page 27, prints 0.03 (https://infosteel.be/images/Steel-Buildings-in-Europe/SSB03/37); the 0.04 that is recalled of the standard is greater and taken",
};

/// Speed of the wind, and its push along the travel of a leaf whose faces are nearly closed.
pub(crate) fn along<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    wind: Wind,
) -> Result<(Velocity, Force), Halt> {
    let square = on_leaf(asking, site, leaf, wind);
    let length = read!(asking, leaf.length);
    let height = read!(asking, leaf.height);
    let thickness = read!(asking, leaf.thickness);
    let solidity = read!(asking, leaf.solidity);
    let (square, length, height) = (square?, length?, height?);
    let (thickness, solidity) = (thickness?, solidity?);
    asking.rest_on(&FRICTION);
    let end = square.velocity_pressure * (thickness * height) * END;
    if solidity.base() < CLOSED {
        return asking.refuse(
            "what a wind pushes along the bars of a see-through leaf is not printed anywhere known here: pull the released leaf with a scale, and give its catch what a storm needs",
        );
    }
    let sides = square.velocity_pressure * (length * height) * (2.0 * RUBBING);
    asking.note(|print| {
        format!(
            "Along its travel the wind pushes {} on the leaf's end and {} on its faces.",
            print.q(end),
            print.q(sides)
        )
    });
    Ok((square.speed, end + sides))
}
