//! Pull and shove at once.

use super::factors::is_european;
use super::mode::{AnchorMode, Mode, worst};
use super::set::AnchorSet;
use super::works::Works;
use crate::standing::AnchorInteraction;
use quantity::Quantity as _;

/// What pull and shove use together.
#[derive(Debug, Clone, Copy)]
pub struct Together {
    /// The way to fail in tension that is used most.
    pub tension: Mode,
    /// The way to fail in shear that is used most.
    pub shear: Mode,
    /// Share that is used by the rule that allows more; at most 1 where the anchors hold.
    pub used: f64,
}

/// Pull and shove together, where there are both.
pub fn together<W: Works>(
    set: &AnchorSet,
    tension: &[Mode],
    shear: &[Mode],
    works: &mut W,
) -> Result<Option<Together>, W::Stop> {
    let passing: Vec<Mode> = tension
        .iter()
        .copied()
        .filter(|mode| mode.way != AnchorMode::LastingBond)
        .collect();
    let (Some(tension), Some(shear)) = (worst(&passing).copied(), worst(shear).copied()) else {
        return Ok(None);
    };
    if tension.strength.base() <= 0.0 || shear.strength.base() <= 0.0 {
        return Ok(Some(Together {
            tension,
            shear,
            used: f64::INFINITY,
        }));
    }
    let found = works.work(&AnchorInteraction {
        pull: tension.demand,
        tension_strength: tension.strength,
        shove: shear.demand,
        shear_strength: shear.strength,
    })?;
    let (straight, power) = (found.straight.base(), found.power.base());
    let used = if is_european(set) {
        straight
    } else {
        straight.min(power)
    };
    Ok(Some(Together {
        tension,
        shear,
        used,
    }))
}
