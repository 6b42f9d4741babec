//! What a wind along the gate line presses on an arm that stands up.

use super::bar::{Bar, on_bar};
use super::load::{Wind, on_leaf};
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::Force;
use site::{Leaf, Site};

/// Force on the arm's narrow side, as on a bar that stands alone.
pub(crate) fn on_upright_arm<'s>(
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
    let bar = Bar {
        width,
        depth,
        length,
    };
    on_bar(asking, site, wind.velocity_pressure, bar)
}
