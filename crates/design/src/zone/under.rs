//! What is under the bottom edge of a swing leaf, wherever the level of the ground was taken.

use crate::asking::{Asking, Wants};
use crate::outcome::Halt;
use crate::zone::gap::closing;
use crate::zone::swing::{Turn, bounds, turns};
use crate::zone::{BOTH_WAYS, Extent, OPENING, Zone, ZoneKind};
use formula::protection::{SwingEntrapmentZone, ZoneVerdict};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, Gate, Site};
use std::f64::consts::FRAC_PI_2;

/// How levels of the ground are written.
const LEVELS: &str = "[[\"4 ft\", \"0 ft\", \"0 in\"], [\"4 ft\", \"4 ft\", \"1 in\"], [\"0 ft\", \"8 ft\", \"2 in\"]]";
/// A level this near to the sweep counts as under it.
const NEAR: f64 = 0.10;
/// Widest gap under a swing leaf that is no zone in the United States: 4 in.
const US_GAP: f64 = 4.0 * 0.0254;

/// The gap under a leaf over its sweep.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Below {
    /// Least gap, and the place where it is.
    pub(crate) least: (Length, (f64, f64)),
    /// Greatest gap.
    pub(crate) widest: Length,
}

/// The gap under each leaf.
pub(crate) fn under<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let turns = turns(asking, site, gate)?;
    let zones: Vec<_> = turns
        .iter()
        .map(|turn| {
            let below = below(asking, gate, turn)?;
            zone(asking, site, turn, below)
        })
        .collect();
    zones.into_iter().collect()
}

/// The gap at every level taken under the sweep, at the closed leaf, and at its tip by the fall across the gate line.
pub(crate) fn below<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    turn: &Turn<'s>,
) -> Result<Below, Halt> {
    let sweep = &turn.sweep;
    let rise = turn
        .leaf
        .hinges
        .as_ref()
        .and_then(|hinges| asking.read_if_there(&hinges.origin, "rise", hinges.rise.as_ref()));
    let rise = rise.map_or(0.0, quantity::Quantity::base);
    let gap = |level: f64, angle: f64| {
        let share = (angle / sweep.travel).clamp(0.0, 1.0);
        Length::from_base((turn.panel.bottom + rise * share - level).max(0.0))
    };
    let mut gaps = vec![(gap(0.0, 0.0), sweep.at(0.0)[1])];
    let mut beyond_the_line = false;
    for (at, level) in levels(asking, gate)? {
        let radius = (at.0 - sweep.hinge.0).hypot(at.1 - sweep.hinge.1);
        let (bearing, slack) = (sweep.bearing(at), NEAR / radius.max(NEAR));
        if radius <= sweep.length + NEAR && (-slack..=sweep.travel + slack).contains(&bearing) {
            beyond_the_line |= bearing > slack;
            gaps.push((gap(level, bearing), at));
        }
    }
    if !beyond_the_line {
        return asking.lack(&gate.origin, "ground", Wants::Written(LEVELS));
    }
    let fall = asking.read_if_there(&gate.origin, "cross_slope", gate.cross_slope.as_ref());
    if let Some(fall) = fall {
        let deepest = sweep.travel.min(FRAC_PI_2);
        let tip = sweep.at(deepest)[1];
        gaps.push((gap(fall.base() * tip.1, deepest), tip));
    }
    let mut least = gaps[0];
    let mut widest = gaps[0].0;
    for (gap, at) in gaps {
        least = if gap < least.0 { (gap, at) } else { least };
        widest = if gap > widest { gap } else { widest };
    }
    Ok(Below { least, widest })
}

/// A place seen from above with its level.
type Level = ((f64, f64), f64);

/// Levels of the ground as they were taken.
fn levels<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Level>, Halt> {
    let mut levels = Vec::new();
    for position in &gate.ground {
        let [x, y, z] = asking.position(&gate.origin, "ground", Some(position))?;
        levels.push(((x.base(), y.base()), z.base()));
    }
    Ok(levels)
}

fn zone(asking: &mut Asking<'_>, site: &Site, turn: &Turn<'_>, below: Below) -> Result<Zone, Halt> {
    let (least, at) = below.least;
    let us = site.site.code_basis == CodeBasis::Us;
    let (wanted, catches) = if us {
        let zone = is_us_zone(asking, below.widest)? || is_us_zone(asking, least)?;
        (Length::from_base(US_GAP), zone)
    } else {
        let found = closing(asking, below.widest, least)?;
        (found.wanted, found.catches)
    };
    let sweep = &turn.sweep;
    let (closed, open) = (sweep.at(0.0), sweep.at(sweep.travel));
    let half_way = sweep.at(sweep.travel / 2.0)[1];
    let (low, high) = bounds(&[closed[0], closed[1], half_way, open[1]]);
    Ok(Zone {
        kind: ZoneKind::UnderEdge,
        leaf: turn.leaf.id.to_string(),
        against: "the ground".to_owned(),
        extent: Extent::spanned([low.0, low.1, 0.0], [high.0, high.1, turn.panel.bottom]),
        least_gap: least,
        least_at: at,
        on_leaf: Some(closed),
        wanted_gap: wanted,
        live: if us { BOTH_WAYS } else { OPENING },
        catches,
    })
}

/// Any gap between 4 and 16 in is a zone.
fn is_us_zone(asking: &mut Asking<'_>, bottom_gap: Length) -> Result<bool, Halt> {
    let found = asking.work(&SwingEntrapmentZone { bottom_gap })?;
    Ok(found.verdict == ZoneVerdict::Zone)
}
