//! What batteries leave at the terminals of their supply when they are at their end and the gate starts all the same.

use super::lower::{CHAIN, Lowering, Terminal};
use super::output::without_doubles;
use super::{Circuits, How, Part, PowerCase, Run};
use crate::asking::{Asking, End, Lack};
use crate::outcome::Halt;
use quantity::{Current, Looked, Quantity as _, Resistance, UnitSystem, Voltage, looking};
use sim::network::Node;
use site::Battery;

/// A supply on batteries at their end.
#[derive(Debug, Clone, Copy)]
pub(crate) struct BatteryEnd {
    /// Voltage at the supply's terminals; none where it collapses.
    pub(crate) terminals: Voltage,
    /// Current of everything together.
    pub(crate) given: Current,
}

/// What batteries leave, or what is missing to tell, and the values that were looked at for it.
pub(super) type EndFound<'s> = (Result<Option<BatteryEnd>, Vec<Lack<'s>>>, Looked);

impl<'s> Circuits<'s> {
    /// What a source's batteries leave; nothing where it has none. Worked once, every value at its bad end.
    pub(crate) fn battery_end(
        &self,
        source: usize,
        asking: &mut Asking<'s>,
    ) -> Result<Option<BatteryEnd>, Halt> {
        let (worked, looked) = self.ends[source].get_or_init(|| {
            looking(|| {
                let mut asking = Asking::new(UnitSystem::Si);
                self.worked_end(source, &mut asking)
                    .map_err(|Halt| asking.lacks.clone())
            })
        });
        looked.look_again();
        match worked {
            Ok(end) => Ok(*end),
            Err(lacks) if lacks.is_empty() => {
                asking.refuse("what hangs on the battery cannot be worked at its end")
            }
            Err(lacks) => {
                for lack in lacks {
                    let _ = asking.lack::<()>(lack.origin, lack.key, lack.wants);
                }
                Err(Halt)
            }
        }
    }

    fn worked_end(
        &self,
        source: usize,
        asking: &mut Asking<'s>,
    ) -> Result<Option<BatteryEnd>, Halt> {
        if !self.sources[source].charges(self.site) {
            return Ok(None);
        }
        let parts: Vec<&Part<'s>> = self.fed_by(source).collect();
        let mut lowering = Lowering::new(self, asking, How::BadEnd);
        let terminals = lowering.network.node();
        let whole = behind_terminals(&mut lowering, source, terminals);
        lowering.terminals.push(Terminal {
            source,
            node: terminals,
        });
        let lowered = lowering.parts(&parts, CHAIN);
        whole?;
        let lowered = lowered?;
        let case = asking.in_reach(without_doubles(&lowered, &parts, PowerCase::BatteryEnd))?;
        Ok(Some(match lowered.grid.solve(&case) {
            Ok(solved) => BatteryEnd {
                terminals: solved.voltage(terminals),
                given: lowered.given(&solved),
            },
            Err(_) => BatteryEnd {
                terminals: Voltage::from_base(0.0),
                given: Current::from_base(0.0),
            },
        }))
    }
}

/// The batteries of a supply at their end, behind its terminals.
pub(super) fn behind_terminals(
    lowering: &mut Lowering<'_, '_, '_>,
    source: usize,
    terminals: Node,
) -> Result<(), Halt> {
    let circuits = lowering.circuits;
    let mut whole = Ok(());
    for battery in circuits.sources[source].batteries(circuits.site) {
        whole = lowering.battery(source, battery, terminals).and(whole);
    }
    whole
}

impl<'s> Lowering<'_, 's, '_> {
    /// A battery at its end behind its own resistance and the cable to its supply.
    fn battery(
        &mut self,
        source: usize,
        battery: &'s Battery,
        terminals: Node,
    ) -> Result<(), Halt> {
        let origin = &battery.origin;
        let end = self.asking.read_at(
            (origin, "end_voltage"),
            battery.end_voltage.as_ref(),
            End::Low,
        );
        let inner = self.asking.read_at(
            (origin, "inner_resistance"),
            battery.inner_resistance.as_ref(),
            End::High,
        );
        let cable = self.cable(source, battery);
        let (end, inner, cable) = (end?, inner?, cable?);
        let behind = self.network.held();
        self.held.push((behind, end));
        let joined = self.network.join(behind, terminals, inner + cable);
        self.asking.in_reach(joined).map(drop)
    }

    /// The cable between a battery and its supply; none where there is no entry for it.
    fn cable(&mut self, source: usize, battery: &Battery) -> Result<Resistance, Halt> {
        let supply = self.circuits.sources[source].id();
        let between = self.circuits.site.cable.iter().find(|cable| {
            (cable.from == battery.id && cable.to == *supply)
                || (cable.to == battery.id && cable.from == *supply)
        });
        match between {
            Some(cable) => self.resistance(&Run {
                cable,
                fuse: None,
                from: 0,
                to: 0,
            }),
            None => Ok(Resistance::from_base(0.0)),
        }
    }
}
