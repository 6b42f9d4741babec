//! Where a leaf that rises, or an arm, comes down on somebody, and what it rises toward.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use crate::zone::gap::squeezes;
use crate::zone::leaf::{Panel, highest, panel};
use crate::zone::slide::{FAR, aside};
use crate::zone::thing::{Thing, things};
use crate::zone::{CLOSING, Extent, OPENING, Zone, ZoneKind};
use quantity::{Length, Quantity as _};
use site::{Gate, GateKind, Leaf, Site};

/// What stands farther beside the plane of a leaf or an arm than a fist is wide is not what it comes down on.
const BESIDE: f64 = 0.1;

/// A leaf or an arm as it lies when closed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lying<'s> {
    pub(crate) leaf: &'s Leaf,
    pub(crate) panel: Panel,
    pub(crate) from: f64,
    pub(crate) to: f64,
}

/// The leaf or arm of a gate that rises; it lies across the opening unless its end is written.
pub(crate) fn lying<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Lying<'s>, Halt> {
    let Some(leaf) = gate.leaf.first() else {
        return asking.lack(&gate.origin, "leaf", Wants::Written("[{ id = \"leaf\" }]"));
    };
    let panel = panel(asking, site, leaf);
    let length = read!(asking, leaf.length);
    let closed = asking.read_if_there(&leaf.origin, "closed_end", leaf.closed_end.as_ref());
    let from = closed.map_or(0.0, quantity::Quantity::base);
    Ok(Lying {
        leaf,
        panel: panel?,
        from,
        to: from + length?.base(),
    })
}

/// What the lower edge comes down on: the ground over its whole width, and whatever stands in its line.
pub(crate) fn leading<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let lying = lying(asking, site, gate);
    let things = things(asking, site, gate);
    let (lying, things) = (lying?, things?);
    let mut zones = vec![ground(asking, site, gate, &lying)?];
    for thing in &things {
        zones.extend(on_thing(asking, site, gate, (&lying, thing))?);
    }
    Ok(zones)
}

fn ground(
    asking: &mut Asking<'_>,
    site: &Site,
    gate: &Gate,
    lying: &Lying<'_>,
) -> Result<Zone, Halt> {
    let half = lying.panel.half;
    let gap = Length::from_base(lying.panel.bottom);
    let judged = squeezes(asking, site, gate, (gap, Length::from_base(0.0)))?;
    let top = lying.panel.bottom.max(judged.wanted.base());
    Ok(Zone {
        kind: ZoneKind::LeadingEdge,
        leaf: lying.leaf.id.to_string(),
        against: "the ground".to_owned(),
        extent: Extent::spanned([lying.from, -half, 0.0], [lying.to, half, top]),
        least_gap: gap,
        least_at: (lying.from, 0.0),
        on_leaf: Some([(lying.from, 0.0), (lying.to, 0.0)]),
        wanted_gap: judged.wanted,
        live: CLOSING,
        catches: judged.catches,
    })
}

/// How far beside the closed leaf or arm a thing stands, and how far from its lower edge.
fn off(lying: &Lying<'_>, thing: &Thing) -> (f64, f64) {
    let ((low, _), (high, _)) = thing.bounds();
    let along = (low - lying.to).max(lying.from - high).max(0.0);
    let level = along.hypot(aside(thing, lying.panel.half));
    (
        level,
        level.hypot((lying.panel.bottom - thing.height).max(0.0)),
    )
}

/// How near the lower edge comes to anything rigid; nothing where nothing stands there.
pub(crate) fn nearest_rigid<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Option<Length>, Halt> {
    let lying = lying(asking, site, gate);
    let things = things(asking, site, gate);
    let (lying, things) = (lying?, things?);
    let gaps = things.iter().map(|thing| off(&lying, thing).1);
    Ok(gaps.reduce(f64::min).map(Length::from_base))
}

/// A thing below or right beside the lower edge; the gap is what is left between them when it is closed.
fn on_thing(
    asking: &mut Asking<'_>,
    site: &Site,
    gate: &Gate,
    (lying, thing): (&Lying<'_>, &Thing),
) -> Result<Option<Zone>, Halt> {
    let ((low, _), (high, _)) = thing.bounds();
    let Panel { bottom, half, .. } = lying.panel;
    let (level, gap) = off(lying, thing);
    let gap = Length::from_base(gap);
    if level > BESIDE || gap.base() > FAR || thing.height > highest(site) {
        return Ok(None);
    }
    let height = thing.height.min(bottom);
    let judged = squeezes(asking, site, gate, (gap, Length::from_base(height)))?;
    let (from, to) = (
        low.max(lying.from).min(lying.to),
        high.min(lying.to).max(lying.from),
    );
    Ok(Some(Zone {
        kind: ZoneKind::LeadingEdge,
        leaf: lying.leaf.id.to_string(),
        against: thing.name.clone(),
        extent: Extent::spanned(
            [from, -half, height],
            [to, half, height + judged.wanted.base()],
        ),
        least_gap: gap,
        least_at: (from, 0.0),
        on_leaf: Some([(from, 0.0), (to, 0.0)]),
        wanted_gap: judged.wanted,
        live: CLOSING,
        catches: judged.catches,
    }))
}

/// What a leaf that lifts rises toward.
pub(crate) fn above<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let lying = lying(asking, site, gate);
    let room = read!(asking, gate.overhead_room);
    let travel = read!(asking, gate.travel);
    let (lying, room, travel) = (lying?, room?, travel?);
    let leaf = lying.leaf;
    let height = read!(asking, leaf.height)?;
    let open = lying.panel.bottom + height.base() + travel.base();
    let gap = Length::from_base((room.base() - open).max(0.0));
    // Somebody can stand on or hang from the leaf as it rises, so the height above ground does not excuse it.
    let judged = squeezes(asking, site, gate, (gap, Length::from_base(0.0)))?;
    let half = lying.panel.half;
    Ok(vec![Zone {
        kind: ZoneKind::TrailingEdge,
        leaf: lying.leaf.id.to_string(),
        against: "what is above it".to_owned(),
        extent: Extent::spanned([lying.from, -half, open], [lying.to, half, room.base()]),
        least_gap: gap,
        least_at: (lying.from, 0.0),
        on_leaf: Some([(lying.from, 0.0), (lying.to, 0.0)]),
        wanted_gap: judged.wanted,
        live: OPENING,
        catches: judged.catches,
    }])
}

/// The lane under a barrier arm: it comes down on heads and shoulders, whatever is beneath.
pub(crate) fn arm<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    if gate.kind != GateKind::BarrierArm {
        return Ok(Vec::new());
    }
    let lying = lying(asking, site, gate)?;
    let half = lying.panel.half;
    Ok(vec![Zone {
        kind: ZoneKind::UnderArm,
        leaf: lying.leaf.id.to_string(),
        against: "whoever is under it".to_owned(),
        extent: Extent::spanned([lying.from, -half, 0.0], [lying.to, half, highest(site)]),
        least_gap: Length::from_base(0.0),
        least_at: (lying.from, 0.0),
        on_leaf: Some([(lying.from, 0.0), (lying.to, 0.0)]),
        wanted_gap: Length::from_base(highest(site)),
        live: CLOSING,
        catches: true,
    }])
}
