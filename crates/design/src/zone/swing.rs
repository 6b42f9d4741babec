//! Where a swing leaf squeezes somebody: against what it closes on, and what stands behind it when it is open.

use crate::asking::{Asking, Wants};
use crate::check::leaf::arc::{self, Sweep};
use crate::check::plane::{self, Piece, Point};
use crate::outcome::Halt;
use crate::zone::gap::squeezes;
use crate::zone::leaf::{Panel, panel};
use crate::zone::sector::{Nearest, When, over_sweep};
use crate::zone::slide::{FAR, TOUCH};
use crate::zone::thing::{Thing, things};
use crate::zone::{BOTH_WAYS, CLOSING, Extent, OPENING, Zone, ZoneKind};
use quantity::{Length, Quantity as _};
use site::{Direction, Gate, Leaf, Site};

/// Nearer to the hinge than this along the leaf, a gap is a matter of the hinge side: 4 in.
const HEEL: f64 = 4.0 * 0.0254;

/// A swing leaf with its sweep; the way that it may run on to its stops is counted.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Turn<'s> {
    pub(crate) leaf: &'s Leaf,
    pub(crate) panel: Panel,
    pub(crate) sweep: Sweep,
}

/// The leaves of a swing gate.
pub(crate) fn turns<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Turn<'s>>, Halt> {
    if gate.leaf.is_empty() {
        return asking.lack(&gate.origin, "leaf", Wants::Written("[{ id = \"leaf\" }]"));
    }
    let sweeps = arc::of_gate(asking, gate);
    let over = gate.motion.as_ref().and_then(|motion| {
        asking.read_if_there(&motion.origin, "stop_gap", motion.stop_gap.as_ref())
    });
    let over = over.map_or(0.0, quantity::Quantity::base);
    let panels: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| panel(asking, site, leaf))
        .collect();
    let panels: Result<Vec<_>, Halt> = panels.into_iter().collect();
    let (sweeps, panels) = (sweeps?, panels?);
    let both = gate.leaf.iter().zip(panels).zip(sweeps);
    Ok(both
        .map(|((leaf, panel), sweep)| Turn {
            leaf,
            panel,
            sweep: Sweep {
                travel: sweep.travel + over / sweep.length.max(0.1),
                ..sweep
            },
        })
        .collect())
}

/// What the free end closes on: the other leaf, posts and things in front.
pub(crate) fn leading<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let turns = turns(asking, site, gate);
    let things = things(asking, site, gate);
    let (turns, things) = (turns?, things?);
    let mut zones = Vec::new();
    if let [one, other] = turns.as_slice() {
        zones.push(meeting(asking, site, gate, (one, other))?);
        zones.push(meeting(asking, site, gate, (other, one))?);
    }
    for (turn, thing) in pairs(&turns, &things) {
        let Some((piece, found)) = nearest(&turn.sweep, thing) else {
            continue;
        };
        if found.when != When::Open && found.along > HEEL {
            let live = if found.when == When::Closed {
                CLOSING
            } else {
                BOTH_WAYS
            };
            let side = Side {
                thing,
                piece,
                found,
                kind: ZoneKind::LeadingEdge,
                live,
            };
            zones.extend(zone(asking, site, gate, turn, &side)?);
        }
    }
    Ok(zones)
}

/// What stands behind the open leaf.
pub(crate) fn behind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    if !super::leaf::swings(gate) {
        return Ok(Vec::new());
    }
    let turns = turns(asking, site, gate);
    let things = things(asking, site, gate);
    let (turns, things) = (turns?, things?);
    let mut zones = Vec::new();
    for (turn, thing) in pairs(&turns, &things) {
        let Some((piece, found)) = nearest(&turn.sweep, thing) else {
            continue;
        };
        if found.when == When::Open && found.along > HEEL {
            let side = Side {
                thing,
                piece,
                found,
                kind: ZoneKind::BehindOpen,
                live: OPENING,
            };
            zones.extend(zone(asking, site, gate, turn, &side)?);
        }
    }
    Ok(zones)
}

fn pairs<'t, 's>(
    turns: &'t [Turn<'s>],
    things: &'t [Thing],
) -> impl Iterator<Item = (&'t Turn<'s>, &'t Thing)> {
    turns
        .iter()
        .flat_map(move |turn| things.iter().map(move |thing| (turn, thing)))
}

/// The side of a thing that the leaf comes nearest to.
fn nearest(sweep: &Sweep, thing: &Thing) -> Option<(Piece, Nearest)> {
    let found = thing
        .outline
        .iter()
        .map(|piece| (*piece, over_sweep(sweep, piece)));
    found.min_by(|(_, one), (_, other)| one.gap.total_cmp(&other.gap))
}

/// The place where the free ends of two leaves meet.
fn meeting(
    asking: &mut Asking<'_>,
    site: &Site,
    gate: &Gate,
    (turn, other): (&Turn<'_>, &Turn<'_>),
) -> Result<Zone, Halt> {
    let Panel { bottom, top, half } = turn.panel;
    let (tip, far) = (turn.sweep.at(0.0)[1], other.sweep.at(0.0)[1]);
    let apart = (tip.0 - far.0).hypot(tip.1 - far.1);
    let gap = Length::from_base(if apart < TOUCH { 0.0 } else { apart });
    let judged = squeezes(asking, site, gate, (gap, Length::from_base(bottom)))?;
    let back = turn.sweep.place(0.0, turn.sweep.length, half);
    let front = turn.sweep.place(0.0, turn.sweep.length, -half);
    Ok(Zone {
        kind: ZoneKind::LeadingEdge,
        leaf: turn.leaf.id.to_string(),
        against: other.leaf.id.to_string(),
        extent: Extent::spanned([front.0, front.1, bottom], [far.0, back.1, top]),
        least_gap: gap,
        least_at: tip,
        on_leaf: Some([tip; 2]),
        wanted_gap: judged.wanted,
        live: CLOSING,
        catches: judged.catches,
    })
}

/// The side of a thing toward a leaf, and how the leaf comes to it.
struct Side<'t> {
    thing: &'t Thing,
    piece: Piece,
    found: Nearest,
    kind: ZoneKind,
    live: &'static [Direction],
}

/// The zone between a leaf and a thing; none where the thing is far away or lower than the leaf's bottom.
fn zone(
    asking: &mut Asking<'_>,
    site: &Site,
    gate: &Gate,
    turn: &Turn<'_>,
    side: &Side<'_>,
) -> Result<Option<Zone>, Halt> {
    let Panel { bottom, top, half } = turn.panel;
    let taken = Length::from_base((side.found.gap - half).max(0.0));
    let gap = side.thing.measured.unwrap_or(taken);
    if side.thing.height <= bottom || gap.base() > FAR || bottom >= top {
        return Ok(None);
    }
    let judged = squeezes(asking, site, gate, (gap, Length::from_base(bottom)))?;
    let (low, high) = between(&turn.sweep, side);
    let top = top.min(side.thing.height);
    Ok(Some(Zone {
        kind: side.kind,
        leaf: turn.leaf.id.to_string(),
        against: side.thing.name.clone(),
        extent: Extent::spanned([low.0, low.1, bottom], [high.0, high.1, top]),
        least_gap: gap,
        least_at: side.found.at,
        on_leaf: Some(part(&turn.sweep, side)),
        wanted_gap: judged.wanted,
        live: side.live,
        catches: judged.catches,
    }))
}

/// The part of the closed leaf that comes to a thing: all that lies along what stands behind the open leaf, else the place
/// that comes nearest.
fn part(sweep: &Sweep, side: &Side<'_>) -> Piece {
    let place = |along: f64| sweep.place(0.0, along, 0.0);
    if side.kind != ZoneKind::BehindOpen {
        return [place(side.found.along); 2];
    }
    let open = sweep.at(sweep.travel);
    side.piece.map(|point| {
        let foot = plane::nearest(point, &open);
        place((foot.0 - sweep.hinge.0).hypot(foot.1 - sweep.hinge.1))
    })
}

/// Corners of the box between a leaf, turned to where the gap is least, and the side of a thing.
fn between(sweep: &Sweep, side: &Side<'_>) -> (Point, Point) {
    let angle = match side.found.when {
        When::Closed => 0.0,
        When::Open => sweep.travel,
        When::Passing | When::Through => sweep.bearing(side.found.at),
    };
    let leaf = sweep.at(angle);
    let feet = side.piece.map(|point| plane::nearest(point, &leaf));
    let faces = feet.map(|foot| plane::nearest(foot, &side.piece));
    let all = [feet[0], feet[1], faces[0], faces[1]];
    bounds(&all)
}

/// Corners of the box around some points.
pub(super) fn bounds(points: &[Point]) -> (Point, Point) {
    points.iter().fold(
        (
            (f64::INFINITY, f64::INFINITY),
            (f64::NEG_INFINITY, f64::NEG_INFINITY),
        ),
        |(low, high), at| {
            (
                (low.0.min(at.0), low.1.min(at.1)),
                (high.0.max(at.0), high.1.max(at.1)),
            )
        },
    )
}
