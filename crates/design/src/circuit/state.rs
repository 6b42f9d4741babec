//! The voltages of a part in each case.

use super::lower::{CHAIN, Lowered, Lowering};
use super::{CASES, Circuits, How, Part, PowerCase, Taker};
use crate::asking::Asking;
use crate::outcome::Halt;
use formula::{Evidence, Source};
use quantity::{Current, Quantity as _, Ratio, Voltage};
use sim::network::{Case, Draw, Unsolved};
use site::Id;

/// What every voltage of a network rests on.
pub(super) static KIRCHHOFF: Source = Source {
    work: "Ohm's law and Kirchhoff's laws",
    clause: "",
    evidence: Evidence::Physics,
    seen: "definitions of resistance, current and voltage, SI brochure",
};

/// Loads in one part, up to which the search tries both ends of every value.
const FEW: usize = 3;

/// What a part is like in one case.
#[derive(Debug, Clone)]
pub(crate) enum State<'s> {
    /// It has voltages.
    Stands {
        case: PowerCase,
        /// Voltage at each taker.
        at: Vec<Voltage>,
        /// Current in each run.
        through: Vec<Current>,
        /// Voltage at the two ends of each run.
        ends: Vec<[Voltage; 2]>,
        /// Current that each taker draws.
        drawn: Vec<Current>,
    },
    /// Its loads ask for more than its conductors can bring.
    Collapses {
        case: PowerCase,
        /// What gives way first.
        first: &'s Id,
        /// Share of the loads that could be carried.
        carried: Ratio,
    },
}

impl State<'_> {
    pub(crate) fn case(&self) -> PowerCase {
        match self {
            Self::Stands { case, .. } | Self::Collapses { case, .. } => *case,
        }
    }

    /// Voltage at a taker; none where the part collapses.
    pub(crate) fn voltage(&self, taker: usize) -> Voltage {
        match self {
            Self::Stands { at, .. } => at[taker],
            Self::Collapses { .. } => Voltage::from_base(0.0),
        }
    }
}

/// The states of a part in all cases that it can be in.
pub(crate) fn states<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    part: &Part<'s>,
    own: Option<&Id>,
) -> Result<Vec<State<'s>>, Halt> {
    let how = if part.takers.len() <= FEW {
        How::Searched
    } else {
        How::BadEnd
    };
    asking.rest_on(&KIRCHHOFF);
    let lowered = lowered(circuits, asking, part, how);
    let ended = at_battery_end(circuits, asking, part);
    let (lowered, ended) = (lowered?, ended?);
    in_each_case(asking, (part, own), &lowered, ended)
}

/// A part with numbers, all read in one way.
pub(super) fn lowered<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    part: &Part<'s>,
    how: How,
) -> Result<Lowered, Halt> {
    Lowering::new(circuits, asking, how).parts(&[part], CHAIN)
}

/// The states of a part with numbers; the last case only where a battery leaves its sources a voltage.
pub(super) fn in_each_case<'s>(
    asking: &mut Asking<'s>,
    (part, own): (&Part<'s>, Option<&Id>),
    lowered: &Lowered,
    ended: Option<Voltage>,
) -> Result<Vec<State<'s>>, Halt> {
    let mut states = Vec::new();
    for case in CASES {
        let network_case = asking.in_reach(lowered.case(&[part], case, own))?;
        let network_case = match (case, ended) {
            (PowerCase::BatteryEnd, None) => continue,
            (PowerCase::BatteryEnd, Some(volts)) => {
                let held = held_at(lowered, network_case, volts);
                asking.in_reach(held)?
            }
            _ => network_case,
        };
        states.push(solved(asking, (part, own), lowered, case, &network_case)?);
    }
    Ok(states)
}

/// The voltage of each source of a part once its batteries are at their end; nothing where none has one.
pub(super) fn at_battery_end<'s>(
    circuits: &Circuits<'s>,
    asking: &mut Asking<'s>,
    part: &Part<'s>,
) -> Result<Option<Voltage>, Halt> {
    let sources = (0..circuits.sources.len()).filter(|source| part.holds(*source));
    let mut least: Option<Voltage> = None;
    for source in sources {
        if let Some(end) = circuits.battery_end(source, asking)? {
            least = Some(match least {
                Some(known) if known < end.terminals => known,
                _ => end.terminals,
            });
        }
    }
    Ok(least)
}

/// The same case with every source at a voltage.
fn held_at(lowered: &Lowered, case: Case, volts: Voltage) -> Result<Case, formula::OutOfReach> {
    let mut case = case;
    for (node, _) in &lowered.held {
        case.hold(*node, volts)?;
    }
    Ok(case)
}

fn solved<'s>(
    asking: &mut Asking<'s>,
    (part, own): (&Part<'s>, Option<&Id>),
    lowered: &Lowered,
    case: PowerCase,
    network_case: &Case,
) -> Result<State<'s>, Halt> {
    let nodes = &lowered.nodes[0];
    let drawn = |solved: &sim::network::Solved<'_>| {
        let takers = part.takers.iter().zip(&lowered.asks[0]);
        takers
            .map(|(taker, asks)| {
                let about = own == Some(taker.takes.id());
                at_voltage(asks.draw(case, about), solved.voltage(nodes[taker.place]))
            })
            .collect()
    };
    match lowered.grid.solve(network_case) {
        Ok(solved) => Ok(State::Stands {
            case,
            at: part
                .takers
                .iter()
                .map(|taker| solved.voltage(nodes[taker.place]))
                .collect(),
            through: lowered.branches[0]
                .iter()
                .map(|branch| solved.current(*branch))
                .collect(),
            ends: part
                .runs
                .iter()
                .map(|run| [run.from, run.to].map(|end| solved.voltage(nodes[end])))
                .collect(),
            drawn: drawn(&solved),
        }),
        Err(Unsolved::Collapse { at, carried }) => {
            let there = |taker: &&Taker<'s>| nodes[taker.place] == at;
            let taker = part.takers.iter().find(there).or(part.takers.first());
            match taker {
                Some(taker) => Ok(State::Collapses {
                    case,
                    first: taker.takes.id(),
                    carried,
                }),
                None => asking.refuse("nothing draws in this circuit"),
            }
        }
        Err(Unsolved::Unfed { .. }) => asking.refuse(
            "no source reaches this circuit: a joint has no cable that comes from a supply",
        ),
        Err(Unsolved::NoVoltage { .. }) => asking.refuse("a supply without voltage feeds nothing"),
    }
}

/// The current of what draws at a voltage.
fn at_voltage(draw: Draw, voltage: Voltage) -> Current {
    match draw {
        Draw::Current(current) => current,
        Draw::Power(power) => power / voltage,
        Draw::Resistance(resistance) => voltage / resistance,
    }
}
