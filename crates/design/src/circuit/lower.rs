//! Parts turned into a network with numbers: each cable by its resistance, each source by its voltage.

use super::parts::Place;
use super::taker::Amounts;
use super::{Circuits, How, Part, PowerCase, Run, Takes};
use crate::asking::{Asking, End};
use crate::circuit::conductor::resistance;
use crate::outcome::Halt;
use quantity::{Current, Power, Quantity as _, Resistance, Voltage};
use sim::network::{Branch, Case, Draw, Grid, Network, Node};

/// What a taker draws, where it is not a supply.
pub(super) enum Asks {
    Amounts(Amounts),
    /// A supply: its power in each case comes from what it feeds.
    Supply(Vec<Power>),
}

impl Asks {
    /// What it draws in a case.
    pub(super) fn draw(&self, case: PowerCase, own: bool) -> Draw {
        match self {
            Self::Amounts(amounts) => amounts.draw(case, own),
            Self::Supply(powers) => {
                let at = super::CASES.iter().position(|other| *other == case);
                let power = at.and_then(|at| powers.get(at).copied());
                Draw::Power(power.unwrap_or(Power::from_base(0.0)))
            }
        }
    }
}

/// Parts with numbers.
pub(crate) struct Lowered {
    pub(crate) grid: Grid,
    /// For each part, the node of each place.
    pub(super) nodes: Vec<Vec<Node>>,
    /// For each part, the branch of each run.
    pub(super) branches: Vec<Vec<Branch>>,
    /// Each held node with the voltage behind it.
    pub(super) held: Vec<(Node, Voltage)>,
    /// For each part, what each taker asks for.
    pub(super) asks: Vec<Vec<Asks>>,
}

/// Supplies behind supplies, at most: more would be a circle.
pub(super) const CHAIN: usize = 8;

/// A part with numbers: nodes of its places, branches of its runs, what its takers ask for.
type LoweredPart = (Vec<Node>, Vec<Branch>, Vec<Asks>);

/// Terminals of a source in a network, and what holds them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Terminal {
    pub(super) source: usize,
    pub(super) node: Node,
}

/// What is being lowered.
pub(super) struct Lowering<'c, 's, 'a> {
    pub(super) circuits: &'c Circuits<'s>,
    pub(super) asking: &'a mut Asking<'s>,
    pub(super) how: How,
    pub(super) network: Network,
    pub(super) terminals: Vec<Terminal>,
    pub(super) held: Vec<(Node, Voltage)>,
}

impl<'c, 's, 'a> Lowering<'c, 's, 'a> {
    pub(super) fn new(circuits: &'c Circuits<'s>, asking: &'a mut Asking<'s>, how: How) -> Self {
        Self {
            circuits,
            asking,
            how,
            network: Network::new(),
            terminals: Vec::new(),
            held: Vec::new(),
        }
    }

    /// Lowers parts together; each source among them that has no terminals yet is held at its own voltage.
    pub(super) fn parts(mut self, parts: &[&Part<'s>], depth: usize) -> Result<Lowered, Halt> {
        let mut whole = Ok(());
        let (mut nodes, mut branches, mut asks) = (Vec::new(), Vec::new(), Vec::new());
        for part in parts {
            match self.part(part, depth) {
                Ok((of_part, runs, loads)) => {
                    nodes.push(of_part);
                    branches.push(runs);
                    asks.push(loads);
                }
                Err(halt) => whole = Err(halt),
            }
        }
        whole?;
        Ok(Lowered {
            grid: self.network.prepared(),
            nodes,
            branches,
            held: self.held,
            asks,
        })
    }

    /// The conductors of a part without anything that draws.
    pub(super) fn conductors(self, part: &Part<'s>) -> Result<Lowered, Halt> {
        let bare = Part {
            places: part.places.clone(),
            runs: part.runs.clone(),
            takers: Vec::new(),
        };
        self.parts(&[&bare], 1)
    }

    fn part(&mut self, part: &Part<'s>, depth: usize) -> Result<LoweredPart, Halt> {
        let mut nodes = Vec::new();
        let mut whole = Ok(());
        for place in &part.places {
            match self.node(*place) {
                Ok(node) => nodes.push(node),
                Err(halt) => whole = Err(halt),
            }
        }
        let mut resistances = Vec::new();
        for run in &part.runs {
            match self.resistance(run) {
                Ok(resistance) => resistances.push(resistance),
                Err(halt) => whole = Err(halt),
            }
        }
        let mut asks = Vec::new();
        for taker in &part.takers {
            match self.asks(taker.takes, depth) {
                Ok(load) => asks.push(load),
                Err(halt) => whole = Err(halt),
            }
        }
        whole?;
        let mut branches = Vec::new();
        for (run, resistance) in part.runs.iter().zip(resistances) {
            let joined = self
                .network
                .join(nodes[run.from], nodes[run.to], resistance);
            branches.push(self.asking.in_reach(joined)?);
        }
        Ok((nodes, branches, asks))
    }

    fn node(&mut self, place: Place) -> Result<Node, Halt> {
        match place {
            Place::End => Ok(self.network.node()),
            Place::Source(source) => {
                let known = self.terminals.iter().find(|known| known.source == source);
                if let Some(known) = known {
                    return Ok(known.node);
                }
                let node = self.source(source)?;
                self.terminals.push(Terminal { source, node });
                Ok(node)
            }
        }
    }

    /// A source at its own voltage, its inner resistance behind its terminals.
    fn source(&mut self, at: usize) -> Result<Node, Halt> {
        let source = self.circuits.sources[at];
        let voltage = source.voltage(self.asking, self.how)?;
        let behind = self.network.held();
        self.held.push((behind, voltage));
        if !source.gives_way() {
            return Ok(behind);
        }
        let inner = self.inner(at)?;
        let node = self.network.node();
        let joined = self.network.join(behind, node, inner);
        self.asking.in_reach(joined)?;
        Ok(node)
    }

    fn inner(&mut self, at: usize) -> Result<Resistance, Halt> {
        let source = self.circuits.sources[at];
        let value = match source {
            super::Source::Supply(supply) => supply.inner_resistance.as_ref(),
            super::Source::Battery(battery) => battery.inner_resistance.as_ref(),
        };
        self.how.read(
            self.asking,
            (source.origin(), "inner_resistance"),
            value,
            End::High,
        )
    }

    /// Both conductors of a run at their hottest, and its fuse.
    pub(super) fn resistance(&mut self, run: &Run<'s>) -> Result<Resistance, Halt> {
        let cable = run.cable;
        let length = self.how.read(
            self.asking,
            (&cable.origin, "length"),
            cable.length.as_ref(),
            End::High,
        );
        let each = resistance(self.asking, cable);
        let side_by_side = f64::from(cable.cores_per_pole.unwrap_or(1).max(1));
        let (length, each) = (length?, each?);
        let conductors = 2.0 * length.base() * each.base() / side_by_side;
        let fuse = run.fuse.and_then(|fuse| {
            let place = (&fuse.origin, "resistance");
            self.how
                .read_if_there(self.asking, place, fuse.resistance.as_ref(), End::High)
        });
        Ok(Resistance::from_base(
            conductors + fuse.map_or(0.0, Resistance::base),
        ))
    }

    fn asks(&mut self, takes: Takes<'s>, depth: usize) -> Result<Asks, Halt> {
        match takes {
            Takes::Operator(operator) => {
                Amounts::of_operator(self.asking, operator, self.how).map(Asks::Amounts)
            }
            Takes::Device(device) => {
                Amounts::of_device(self.asking, device, self.how).map(Asks::Amounts)
            }
            Takes::Supply(supply) => {
                super::output::input_of(self.circuits, self.asking, supply, depth).map(Asks::Supply)
            }
            Takes::Heater(enclosure) => {
                Amounts::of_heater(self.asking, enclosure, self.how).map(Asks::Amounts)
            }
        }
    }
}

impl Lowered {
    /// The network's case for an operating case; what the question is about draws its own greatest.
    pub(super) fn case(
        &self,
        parts: &[&Part<'_>],
        case: PowerCase,
        own: Option<&site::Id>,
    ) -> Result<Case, formula::OutOfReach> {
        let mut network_case = Case::new();
        for (node, voltage) in &self.held {
            network_case.hold(*node, *voltage)?;
        }
        for ((part, nodes), asks) in parts.iter().zip(&self.nodes).zip(&self.asks) {
            for (taker, asks) in part.takers.iter().zip(asks) {
                let about = own == Some(taker.takes.id());
                network_case.draw(nodes[taker.place], asks.draw(case, about))?;
            }
        }
        Ok(network_case)
    }

    /// Current through the sources of all parts.
    pub(super) fn given(&self, solved: &sim::network::Solved<'_>) -> Current {
        self.held
            .iter()
            .map(|(node, _)| solved.given(*node))
            .fold(Current::from_base(0.0), |sum, current| sum + current)
    }
}
