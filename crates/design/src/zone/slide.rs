//! What the edges of a slide leaf move toward.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use crate::zone::gap::squeezes;
use crate::zone::leaf::{Panel, panel};
use crate::zone::thing::{Thing, things};
use crate::zone::{CLOSING, Extent, OPENING, Zone, ZoneKind};
use quantity::{Length, Quantity as _};
use site::{Gate, Leaf, Site};

/// Farther away than this, a thing is no part of the question.
pub(crate) const FAR: f64 = 1.0;
/// Two places along the gate line nearer than this are the same.
pub(crate) const TOUCH: f64 = 1e-3;

/// A slide leaf with the ends of its travel, along the gate line.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Run<'s> {
    pub(crate) leaf: &'s Leaf,
    pub(crate) panel: Panel,
    pub(crate) length: f64,
    /// Where its leading edge is when the leaf has run on to its closed stop.
    pub(crate) closed: f64,
    /// Where its leading edge is when the leaf has run on to its open stop.
    pub(crate) open: f64,
}

impl Run<'_> {
    /// Where its trailing edge is when it is closed, and when it is open.
    pub(crate) fn tail(&self) -> (f64, f64) {
        (self.closed + self.length, self.open + self.length)
    }
}

/// The leaf of a slide gate and its way between the positive stops.
pub(crate) fn run<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Run<'s>, Halt> {
    let Some(leaf) = gate.leaf.first() else {
        return asking.lack(&gate.origin, "leaf", Wants::Written("[{ id = \"leaf\" }]"));
    };
    let panel = panel(asking, site, leaf);
    let closed = read!(asking, leaf.closed_end);
    let length = read!(asking, leaf.length);
    let travel = read!(asking, gate.travel);
    let over = gate.motion.as_ref().and_then(|motion| {
        asking.read_if_there(&motion.origin, "stop_gap", motion.stop_gap.as_ref())
    });
    let over = over.map_or(0.0, quantity::Quantity::base);
    let (closed, length, travel) = (closed?, length?, travel?);
    Ok(Run {
        leaf,
        panel: panel?,
        length: length.base(),
        closed: closed.base() - over,
        open: (closed + travel).base() + over,
    })
}

/// How far a thing stands beside the faces of a leaf; zero where the leaf would run into it.
pub(crate) fn aside(thing: &Thing, half: f64) -> f64 {
    let ((_, low), (_, high)) = thing.bounds();
    (low - half).max(-half - high).max(0.0)
}

/// What the closing edge moves toward.
pub(crate) fn leading<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let run = run(asking, site, gate);
    let things = things(asking, site, gate);
    let (run, things) = (run?, things?);
    let ahead = |thing: &&Thing| {
        let ((low, _), (high, _)) = thing.bounds();
        let in_the_way = aside(thing, run.panel.half) <= TOUCH && low < run.open - TOUCH;
        in_the_way || high <= run.closed + TOUCH
    };
    let ahead = things.iter().filter(ahead);
    let zones = ahead.map(|thing| {
        let ((_, _), (face, _)) = thing.bounds();
        let edge = (ZoneKind::LeadingEdge, run.closed.max(face));
        zone(asking, site, gate, (&run, thing), edge)
    });
    let zones: Result<Vec<_>, Halt> = zones.collect();
    Ok(zones?.into_iter().flatten().collect())
}

/// What the trailing edge moves toward.
pub(crate) fn trailing<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let run = run(asking, site, gate);
    let things = things(asking, site, gate);
    let (run, things) = (run?, things?);
    let (tail_closed, tail_open) = run.tail();
    let behind = |thing: &&Thing| {
        let ((low, _), (high, _)) = thing.bounds();
        let in_the_way = aside(thing, run.panel.half) <= TOUCH && high > tail_closed + TOUCH;
        in_the_way || low >= tail_open - TOUCH
    };
    let behind = things.iter().filter(behind);
    let zones = behind.map(|thing| {
        let ((face, _), _) = thing.bounds();
        let edge = (ZoneKind::TrailingEdge, tail_open.min(face));
        zone(asking, site, gate, (&run, thing), edge)
    });
    let zones: Result<Vec<_>, Halt> = zones.collect();
    Ok(zones?.into_iter().flatten().collect())
}

/// The zone at one edge of the leaf, which comes no farther than `edge`; none where the thing is far away or lower than
/// the leaf's bottom.
fn zone<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    (run, thing): (&Run<'s>, &Thing),
    (kind, edge): (ZoneKind, f64),
) -> Result<Option<Zone>, Halt> {
    let Panel { bottom, top, half } = run.panel;
    let ((low, _), (high, _)) = thing.bounds();
    let closing = kind == ZoneKind::LeadingEdge;
    let along = if closing {
        run.closed - high
    } else {
        low - run.tail().1
    };
    let taken = along.max(0.0).hypot(aside(thing, half));
    let gap = thing.measured.unwrap_or(Length::from_base(taken));
    if thing.height <= bottom || gap.base() > FAR || bottom >= top {
        return Ok(None);
    }
    let judged = squeezes(asking, site, gate, (gap, Length::from_base(bottom)))?;
    let reach = if closing {
        edge + judged.wanted.base()
    } else {
        edge - judged.wanted.base()
    };
    let face = if closing {
        high.min(edge)
    } else {
        low.max(edge)
    };
    let top = top.min(thing.height);
    let own = if closing { run.closed } else { run.tail().0 };
    Ok(Some(Zone {
        kind,
        leaf: run.leaf.id.to_string(),
        against: thing.name.clone(),
        extent: Extent::spanned([face, -half, bottom], [reach, half, top]),
        least_gap: gap,
        least_at: (face, 0.0),
        on_leaf: Some([(own, 0.0); 2]),
        wanted_gap: judged.wanted,
        live: if closing { CLOSING } else { OPENING },
        catches: judged.catches,
    }))
}
