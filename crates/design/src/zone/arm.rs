//! What the moving arm of a drive squeezes: between itself, the leaf and what carries it.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use crate::zone::gap::{closing, squeezes};
use crate::zone::leaf::{highest, swings};
use crate::zone::{BOTH_WAYS, Extent, Zone, ZoneKind};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, DriveKind, Gate, GateKind, Operator, Site};

/// An arm reaches about so far around the place of its drive.
const REACH: f64 = 0.3;

/// The arm of each drive that is not covered; one underground has none in reach.
pub(crate) fn drive_arms<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let turns_up = matches!(gate.kind, GateKind::BarrierArm | GateKind::VerticalPivot);
    if !swings(gate) && !turns_up {
        return Ok(Vec::new());
    }
    let with_arm = |operator: &&Operator| operator.drive != Some(DriveKind::Underground);
    let operators = site.operators_of(gate).filter(with_arm);
    let zones: Vec<_> = operators
        .map(|operator| of(asking, site, gate, operator))
        .collect();
    let zones: Result<Vec<_>, Halt> = zones.into_iter().collect();
    Ok(zones?.into_iter().flatten().collect())
}

fn of<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Result<Option<Zone>, Halt> {
    let Some(covered) = operator.arm_covered else {
        return asking.lack(&operator.origin, "arm_covered", Wants::Written("true"));
    };
    if covered {
        return Ok(None);
    }
    let gap = read!(asking, operator.arm_gap);
    let place = asking.position(&operator.origin, "at", operator.at.as_ref());
    let widest = match site.site.code_basis {
        CodeBasis::Us => Ok(Length::from_base(0.0)),
        CodeBasis::Eu => read!(asking, operator.arm_gap_widest),
    };
    let (gap, [x, y, z], widest) = (gap?, place?, widest?);
    let (x, y, z) = (x.base(), y.base(), z.base());
    if z > highest(site) {
        return Ok(None);
    }
    let judged = match site.site.code_basis {
        CodeBasis::Us => squeezes(asking, site, gate, (gap, Length::from_base(z)))?,
        CodeBasis::Eu => closing(asking, widest, gap)?,
    };
    let leaf = operator
        .leaf
        .as_ref()
        .or(gate.leaf.first().map(|leaf| &leaf.id));
    Ok(Some(Zone {
        kind: ZoneKind::DriveArm,
        leaf: leaf.map(ToString::to_string).unwrap_or_default(),
        against: operator.id.to_string(),
        extent: Extent::spanned(
            [x - REACH, y - REACH, z - REACH / 2.0],
            [x + REACH, y + REACH, z + REACH / 2.0],
        ),
        least_gap: gap,
        least_at: (x, y),
        on_leaf: None,
        wanted_gap: judged.wanted,
        live: BOTH_WAYS,
        catches: judged.catches,
    }))
}
