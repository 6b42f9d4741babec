//! What the report of an anchor's product, or the shape of a cast-in one, adds to its strengths.
//!
//! Without a category the lowest one counts; without bond stresses the least that the code allows outdoors.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::standing::AnchorCategory;
use formula::standing::anchor_group::ProductValues;
use quantity::{Quantity as _, Ratio};
use site::{Anchor, AnchorKind};

/// Power to which stronger concrete raises a pull-out strength, where the report does not say: none.
const NO_GROWTH: f64 = 0.0;

pub(super) fn product<'s>(
    asking: &mut Asking<'s>,
    anchor: &'s Anchor,
) -> Result<ProductValues, Halt> {
    let origin = &anchor.origin;
    let needed = needed(asking, anchor);
    let bond_cracked = asking.read_if_there(origin, "bond_cracked", anchor.bond_cracked.as_ref());
    let bond_uncracked =
        asking.read_if_there(origin, "bond_uncracked", anchor.bond_uncracked.as_ref());
    let exponent = asking.read_if_there(
        origin,
        "pull_out_exponent",
        anchor.pull_out_exponent.as_ref(),
    );
    let coefficient = asking.read_if_there(
        origin,
        "breakout_coefficient",
        anchor.breakout_coefficient.as_ref(),
    );
    let critical_edge =
        asking.read_if_there(origin, "critical_edge", anchor.critical_edge.as_ref());
    let bond = match (bond_cracked, bond_uncracked) {
        (Some(cracked), Some(uncracked)) => Some([cracked, uncracked]),
        (Some(cracked), None) => Some([cracked, read!(asking, anchor.bond_uncracked)?]),
        (None, Some(uncracked)) => Some([read!(asking, anchor.bond_cracked)?, uncracked]),
        (None, None) => None,
    };
    let category = match anchor.category {
        Some(1) => AnchorCategory::One,
        Some(2) => AnchorCategory::Two,
        Some(3) | None => AnchorCategory::Three,
        Some(_) => {
            return asking.refuse("reports of products know the categories 1, 2 and 3");
        }
    };
    Ok(ProductValues {
        category,
        pull_out_exponent: exponent.unwrap_or(Ratio::from_base(NO_GROWTH)),
        bond,
        breakout_coefficient: coefficient,
        critical_edge,
        ..needed?
    })
}

/// What the kind of anchor cannot do without.
fn needed<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<ProductValues, Halt> {
    let nothing = ProductValues {
        category: AnchorCategory::Three,
        bearing_area: None,
        hook_length: None,
        pull_out: None,
        pull_out_exponent: Ratio::from_base(NO_GROWTH),
        bond: None,
        breakout_coefficient: None,
        critical_edge: None,
    };
    Ok(match anchor.kind {
        Some(AnchorKind::HeadedBolt | AnchorKind::HeadedStud) => ProductValues {
            bearing_area: Some(read!(asking, anchor.bearing_area)?),
            ..nothing
        },
        Some(AnchorKind::HookedBolt) => ProductValues {
            hook_length: Some(read!(asking, anchor.hook_length)?),
            ..nothing
        },
        Some(AnchorKind::Expansion | AnchorKind::Undercut | AnchorKind::Screw) => ProductValues {
            pull_out: Some(read!(asking, anchor.pull_out)?),
            ..nothing
        },
        Some(AnchorKind::Adhesive) | None => nothing,
    })
}
