//! Room for a leaf that slides or rises.

use super::covers::lengths;
use crate::asking::{Asking, Wants, read};
use crate::outcome::{Comparison, Halt, Labeled};
use quantity::{Length, Quantity as _};
use site::{Gate, GateKind, Site};

/// A slide leaf closed, open, and in its run-back. The tail of a cantilever leaf lies beyond the opening, and laps over it.
pub(super) fn slide<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Comparison>, Halt> {
    let opening = read!(asking, gate.clear_opening);
    let travel = read!(asking, gate.travel);
    let run_back = read!(asking, gate.run_back);
    let Some(leaf) = gate.leaf.first() else {
        return asking.lack(&gate.origin, "leaf", Wants::Written("[{ id = \"leaf\" }]"));
    };
    let length = read!(asking, leaf.length);
    let closed_end = read!(asking, leaf.closed_end);
    let (opening, travel, length, closed_end) = (opening?, travel?, length?, closed_end?);
    let lapped = -closed_end;
    let lapping = closed_end + length - opening;
    let lesser = if lapped < lapping { lapped } else { lapping };
    Ok(vec![
        Comparison::below(
            Labeled::new("opening", opening),
            Labeled::new("covered with the lesser overlap", opening + lesser),
        ),
        Comparison::at_most(
            Labeled::new("opening", opening),
            Labeled::new("free with the leaf open", closed_end + travel),
        ),
        Comparison::below(
            Labeled::new(
                "leaf beyond the opening when open",
                closed_end + travel + length - opening,
            ),
            Labeled::new("run-back", run_back?),
        ),
    ])
}

/// A leaf or an arm that rises: the room above it, and the tallest vehicle below a leaf that lifts.
pub(super) fn overhead<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Comparison>, Halt> {
    let lengths = lengths(asking, gate);
    let Some(leaf) = gate.leaf.first() else {
        return Err(Halt);
    };
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    let room = read!(asking, gate.overhead_room);
    let rises = match gate.kind {
        GateKind::VerticalLift => read!(asking, gate.travel),
        _ => lengths.map(longest),
    };
    let tallest = match gate.kind {
        GateKind::VerticalLift => tallest(asking, site).map(Some),
        _ => Ok(None),
    };
    let (clearance, rises) = (clearance?, rises?);
    let top = Comparison::below(
        Labeled::new("top of the open leaf", clearance + height? + rises),
        Labeled::new("room overhead", room?),
    );
    let below = tallest?.map(|tallest| {
        Comparison::below(
            Labeled::new("tallest vehicle", tallest),
            Labeled::new("free below the open leaf", clearance + rises),
        )
    });
    Ok([Some(top), below].into_iter().flatten().collect())
}

fn longest(lengths: Vec<Length>) -> Length {
    lengths
        .into_iter()
        .fold(Length::from_base(0.0), |most, length| {
            if length > most { length } else { most }
        })
}

fn tallest<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Length, Halt> {
    if site.vehicle.is_empty() {
        return asking.lack(
            &site.origin,
            "vehicle",
            Wants::Table("[[vehicle]]\nid = \"truck\"\nwhat = \"fire engine\"\nheight = \"12 ft\""),
        );
    }
    let heights: Vec<_> = site
        .vehicle
        .iter()
        .map(|vehicle| read!(asking, vehicle.height))
        .collect();
    let heights: Result<Vec<Length>, Halt> = heights.into_iter().collect();
    heights.map(longest)
}
