//! The hinge side of a swing leaf: the gap between its heel and what carries it.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use crate::zone::gap::closing;
use crate::zone::swing::{Turn, turns};
use crate::zone::{BOTH_WAYS, Extent, Zone, ZoneKind};
use formula::protection::{SwingPivotEntrapmentZone, ZoneVerdict};
use quantity::{Argument as _, Length, Quantity as _};
use site::{CodeBasis, Gate, HingeSide, Site};

/// How the gaps of the hinge side are written.
const GAPS: &str = "[{ angle = \"0°\", gap = \"30 mm\" }, { angle = \"30°\", gap = \"30 mm\" }, { angle = \"60°\", gap = \"30 mm\" }, { angle = \"90°\", gap = \"30 mm\" }]";
/// Fewest angles at which a gap is taped before its least and its greatest count.
const ANGLES: usize = 3;

/// The hinge side of each leaf. Covered ones catch nobody.
pub(crate) fn hinge_side<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    if !super::leaf::swings(gate) {
        return Ok(Vec::new());
    }
    let turns = turns(asking, site, gate)?;
    let zones: Vec<_> = turns.iter().map(|turn| zone(asking, site, turn)).collect();
    zones.into_iter().collect()
}

fn zone<'s>(asking: &mut Asking<'s>, site: &Site, turn: &Turn<'s>) -> Result<Zone, Halt> {
    let leaf = turn.leaf;
    let basis = site.site.code_basis;
    let Some(side) = &leaf.hinge_side else {
        return match basis {
            CodeBasis::Us => asking.lack(
                &leaf.origin,
                "hinge_side.pivot_to_end",
                Wants::Sort(Length::SORT),
            ),
            CodeBasis::Eu => asking.lack(&leaf.origin, "hinge_side.gap", Wants::Written(GAPS)),
        };
    };
    let (gap, wanted, catches) = match basis {
        CodeBasis::Us => us(asking, side)?,
        CodeBasis::Eu => eu(asking, side)?,
    };
    let hinge = turn.sweep.hinge;
    let reach = gap.base().max(0.05);
    Ok(Zone {
        kind: ZoneKind::HingeSide,
        leaf: leaf.id.to_string(),
        against: "what carries it".to_owned(),
        extent: Extent::spanned(
            [hinge.0 - reach, hinge.1 - reach, turn.panel.bottom],
            [hinge.0 + reach, hinge.1 + reach, turn.panel.top],
        ),
        least_gap: gap,
        least_at: hinge,
        on_leaf: Some([hinge; 2]),
        wanted_gap: wanted,
        live: BOTH_WAYS,
        catches: catches && side.covered != Some(true),
    })
}

/// From the pivot to the end of the post, at most 4 in.
fn us<'s>(asking: &mut Asking<'s>, side: &'s HingeSide) -> Result<(Length, Length, bool), Halt> {
    let distance = read!(asking, side.pivot_to_end)?;
    let found = asking.work(&SwingPivotEntrapmentZone { distance })?;
    let wanted = distance + found.margin;
    Ok((distance, wanted, found.verdict == ZoneVerdict::Zone))
}

/// A gap that closes on whatever part of the body fits into it at its widest.
fn eu<'s>(asking: &mut Asking<'s>, side: &'s HingeSide) -> Result<(Length, Length, bool), Halt> {
    if side.gap.len() < ANGLES {
        return asking.lack(&side.origin, "gap", Wants::Written(GAPS));
    }
    let mut least = Length::from_base(f64::INFINITY);
    let mut widest = Length::from_base(0.0);
    for gap in &side.gap {
        let taped = asking.given(&gap.origin, "gap", &gap.gap);
        least = if taped < least { taped } else { least };
        widest = if taped > widest { taped } else { widest };
    }
    let found = closing(asking, widest, least)?;
    Ok((least, found.wanted, found.catches))
}
