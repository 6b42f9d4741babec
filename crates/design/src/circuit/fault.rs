//! What a dead short at the far end of a cable draws.

use super::ends::behind_terminals;
use super::lower::{Lowering, Terminal};
use super::state::KIRCHHOFF;
use super::{Circuits, How, Part, Run, Source};
use crate::asking::{Asking, End};
use crate::outcome::Halt;
use quantity::{Current, Quantity as _};
use sim::network::Case;

/// Current of a dead short at the far end of a run, conductors hot, at the weakest of what it feeds.
///
/// A supply that charges batteries is taken for those batteries alone; one without gives no more than its data sheet says,
/// however short the cable.
pub(crate) fn fault_at_far_end<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    part: &Part<'s>,
    run: &Run<'s>,
) -> Result<Current, Halt> {
    let Some(source) = part.begins_at(run) else {
        return asking.refuse("this cable begins at no source");
    };
    asking.rest_on(&KIRCHHOFF);
    let limit = limit(circuits, asking, source);
    let mut lowering = Lowering::new(circuits, asking, How::BadEnd);
    let mut whole = Ok(());
    if circuits.sources[source].charges(circuits.site) {
        let node = lowering.network.node();
        whole = behind_terminals(&mut lowering, source, node);
        lowering.terminals.push(Terminal { source, node });
    }
    let lowered = lowering.conductors(part);
    whole?;
    let (limit, lowered) = (limit?, lowered?);
    let mut sources = Case::new();
    for (node, voltage) in &lowered.held {
        let held = sources.hold(*node, *voltage);
        asking.in_reach(held)?;
    }
    let ends = part.behind(run).map(|taker| taker.place).chain([run.to]);
    let mut least: Option<Current> = None;
    for end in ends {
        let Ok(fault) = lowered.grid.fault(lowered.nodes[0][end], &sources) else {
            return asking.refuse("no source reaches the end of this cable");
        };
        let current = fault.current();
        least = Some(match least {
            Some(known) if known < current => known,
            _ => current,
        });
    }
    let least = least.unwrap_or(Current::from_base(0.0));
    Ok(match limit {
        Some(limit) if limit < least => limit,
        _ => least,
    })
}

/// The most that a supply without batteries gives into a short.
fn limit<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    source: usize,
) -> Result<Option<Current>, Halt> {
    match circuits.sources[source] {
        Source::Supply(supply) if !circuits.sources[source].charges(circuits.site) => asking
            .read_at(
                (&supply.origin, "fault_current"),
                supply.fault_current.as_ref(),
                End::Low,
            )
            .map(Some),
        _ => Ok(None),
    }
}
