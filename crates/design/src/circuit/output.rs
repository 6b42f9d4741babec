//! What a source gives in each case, and what a supply takes from the one before it. All values at their bad ends.

use super::lower::{CHAIN, Lowered, Lowering};
use super::state::KIRCHHOFF;
use super::{CASES, Circuits, How, Part, PowerCase};
use crate::asking::{Asking, End};
use crate::outcome::Halt;
use quantity::{Current, Power, Quantity as _};
use sim::network::Case;
use site::Supply;

/// Current and power that a source gives, case by case.
#[derive(Debug, Clone, Default)]
pub(crate) struct Outputs(Vec<(Current, Power)>);

impl Outputs {
    /// Current in a case.
    pub(crate) fn in_case(&self, case: PowerCase) -> Current {
        self.of(case).0
    }

    fn of(&self, case: PowerCase) -> (Current, Power) {
        let at = CASES.iter().position(|other| *other == case);
        let given = at.and_then(|at| self.0.get(at).copied());
        given.unwrap_or((Current::from_base(0.0), Power::from_base(0.0)))
    }
}

/// What a source gives in each case.
pub(crate) fn outputs<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    source: usize,
) -> Result<Outputs, Halt> {
    asking.rest_on(&KIRCHHOFF);
    output_of(circuits, asking, source, CHAIN).map(Outputs)
}

/// The power that a supply takes from the one before it, in each case, all values at their bad ends.
pub(super) fn input_of<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    supply: &'s Supply,
    depth: usize,
) -> Result<Vec<Power>, Halt> {
    if depth == 0 {
        return asking.refuse("supplies feed each other in a circle");
    }
    let efficiency = asking.read_at(
        (&supply.origin, "efficiency"),
        supply.efficiency.as_ref(),
        End::Low,
    );
    let output = circuits
        .source(&supply.id)
        .map(|at| output_of(circuits, asking, at, depth - 1));
    let output = output.transpose();
    let (efficiency, output) = (efficiency?, output?.unwrap_or_default());
    if efficiency.base() <= 0.0 {
        return asking.refuse("a supply without efficiency gives nothing");
    }
    Ok(output
        .into_iter()
        .map(|(_, power)| power / efficiency.base())
        .collect())
}

/// Current and power that a source gives in each case, all values at their bad ends.
pub(super) fn output_of<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    source: usize,
    depth: usize,
) -> Result<Vec<(Current, Power)>, Halt> {
    let parts: Vec<&Part<'s>> = circuits.fed_by(source).collect();
    let voltage = circuits.sources[source].voltage(asking, How::BadEnd);
    let lowered = Lowering::new(circuits, asking, How::BadEnd).parts(&parts, depth);
    let (voltage, lowered) = (voltage?, lowered?);
    let mut outputs = Vec::new();
    for case in CASES {
        let once = asking.in_reach(without_doubles(&lowered, &parts, case))?;
        let current = match lowered.grid.solve(&once) {
            Ok(solved) => lowered.given(&solved),
            Err(_) => {
                return asking.refuse("the voltage collapses in what this supply feeds");
            }
        };
        outputs.push((current, current * voltage));
    }
    Ok(outputs)
}

/// A case in which what is fed by several cables is counted once.
pub(super) fn without_doubles(
    lowered: &Lowered,
    parts: &[&Part<'_>],
    case: PowerCase,
) -> Result<Case, formula::OutOfReach> {
    let mut once = Case::new();
    for (node, voltage) in &lowered.held {
        once.hold(*node, *voltage)?;
    }
    for ((part, nodes), asks) in parts.iter().zip(&lowered.nodes).zip(&lowered.asks) {
        for (taker, asks) in part
            .takers
            .iter()
            .zip(asks)
            .filter(|(taker, _)| !taker.again)
        {
            once.draw(nodes[taker.place], asks.draw(case, false))?;
        }
    }
    Ok(once)
}
