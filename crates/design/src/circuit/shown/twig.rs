//! What hangs on each source as a tree: fuses, cables, joints, loads, and supplies behind supplies.

use super::{ShownFuse, ShownLoad, nominal};
use crate::circuit::parts::Place;
use crate::circuit::{Circuits, Part, Run, Takes};
use quantity::Length;
use site::Cable;
use std::collections::BTreeSet;

/// A cable.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownCable {
    /// Its number.
    pub id: String,
    /// Conductor size, with the cores of a pole where there are more: `2 × 18 AWG`.
    pub size: Option<String>,
    /// Its length.
    pub length: Option<Length>,
}

/// One thing on the way from a source, and what comes after it.
#[derive(Debug, Clone, PartialEq)]
pub struct Twig {
    /// The thing.
    pub step: Step,
    /// What comes after it, nothing at its end.
    pub next: Vec<Twig>,
}

/// One thing on the way from a source.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// A fuse, by its place among all.
    Fuse(usize),
    /// A cable.
    Cable(ShownCable),
    /// No cable is written.
    NoCable,
    /// A joint.
    Joint(String),
    /// Terminals of a device from which another cable goes on.
    Terminals(String),
    /// A joint or a source that is in the tree already.
    Back(String),
    /// Something that takes power, by its place among all loads.
    Load(usize),
    /// A source that is fed here, by its place among all sources; what it feeds comes after it.
    Source {
        /// Its place among the sources.
        source: usize,
        /// Its input, by its place among the loads.
        load: usize,
    },
}

impl ShownCable {
    pub(super) fn of(cable: &Cable) -> Self {
        let cores = cable.cores_per_pole.unwrap_or(1).max(1);
        let size = cable.size.map(|size| match cores {
            1 => size.to_string(),
            _ => format!("{cores} × {size}"),
        });
        Self {
            id: cable.id.to_string(),
            size,
            length: nominal(cable.length.as_ref()),
        }
    }
}

/// The trees of all sources.
pub(super) struct Trees {
    /// For each source, what hangs on it; a source that another one feeds stands there too.
    pub(super) branches: Vec<Vec<Twig>>,
    /// Those that no other one feeds.
    pub(super) roots: Vec<usize>,
}

/// Grows the tree of every source.
pub(super) fn trees(
    circuits: &Circuits<'_>,
    loads: &[ShownLoad],
    fuses: &mut [ShownFuse],
) -> Trees {
    let mut growing = Growing {
        circuits,
        loads,
        fuses,
        seen: BTreeSet::new(),
        grown: BTreeSet::new(),
    };
    let mut branches = vec![Vec::new(); circuits.sources.len()];
    let mut roots = Vec::new();
    let fed = |at: &usize| {
        let id = circuits.sources[*at].id();
        loads
            .iter()
            .any(|load| !load.without_cable && *load.id == *id.as_str())
    };
    let all = 0..circuits.sources.len();
    let (fed, free): (Vec<usize>, Vec<usize>) = all.partition(fed);
    for at in free.into_iter().chain(fed) {
        if growing.grown.contains(&at) {
            continue;
        }
        roots.push(at);
        branches[at] = growing.source(at, &[]);
    }
    Trees { branches, roots }
}

/// Trees as they grow.
struct Growing<'c, 's> {
    circuits: &'c Circuits<'s>,
    loads: &'c [ShownLoad],
    fuses: &'c [ShownFuse],
    /// Places that stand in a tree already, by part and number.
    seen: BTreeSet<(usize, usize)>,
    /// Sources that stand in a tree already.
    grown: BTreeSet<usize>,
}

impl<'s> Growing<'_, 's> {
    /// What hangs on a source.
    fn source(&mut self, source: usize, passed: &[usize]) -> Vec<Twig> {
        self.grown.insert(source);
        let mut next = Vec::new();
        let circuits = self.circuits;
        for (number, part) in circuits.parts.iter().enumerate() {
            let here = part
                .places
                .iter()
                .position(|place| matches!(place, Place::Source(at) if *at == source));
            if let Some(here) = here {
                self.seen.insert((number, here));
                self.onward((number, part), here, passed, &mut next);
            }
        }
        let id = circuits.sources[source].id().as_str();
        for (at, load) in self.loads.iter().enumerate() {
            if load.without_cable && load.source == id {
                let end = Twig::end(Step::Load(at));
                next.push(Twig {
                    step: Step::NoCable,
                    next: vec![end],
                });
            }
        }
        next
    }

    /// What takes power at a place, and the cables that go on from there.
    fn onward(
        &mut self,
        (number, part): (usize, &Part<'s>),
        place: usize,
        passed: &[usize],
        next: &mut Vec<Twig>,
    ) {
        for at in 0..part.takers.len() {
            if part.takers[at].place == place {
                next.extend(self.taker(number, part, at, passed));
            }
        }
        for run in part.runs.iter().filter(|run| run.from == place) {
            let chain = self.chain(part, run, passed);
            let passed: Vec<usize> = passed.iter().chain(&chain).copied().collect();
            let twig = Twig {
                step: Step::Cable(ShownCable::of(run.cable)),
                next: self.end((number, part), run, &passed),
            };
            hang(next, &chain, twig);
        }
    }

    /// What is at the far end of a cable.
    fn end(
        &mut self,
        (number, part): (usize, &Part<'s>),
        run: &Run<'s>,
        passed: &[usize],
    ) -> Vec<Twig> {
        let name = run.cable.to.to_string();
        if !self.seen.insert((number, run.to)) {
            return vec![Twig::end(Step::Back(name))];
        }
        let mut next = Vec::new();
        self.onward((number, part), run.to, passed, &mut next);
        let joint = self
            .circuits
            .site
            .joint
            .iter()
            .any(|it| it.id == run.cable.to);
        match (joint, next.len()) {
            (true, _) => vec![Twig {
                step: Step::Joint(name),
                next,
            }],
            (false, 0 | 1) => next,
            (false, _) => vec![Twig {
                step: Step::Terminals(name),
                next,
            }],
        }
    }

    /// A taker, and what it feeds where it is a supply.
    fn taker(
        &mut self,
        number: usize,
        part: &Part<'s>,
        at: usize,
        passed: &[usize],
    ) -> Option<Twig> {
        let here = |load: &ShownLoad| load.at == Some((number, at));
        let load = self.loads.iter().position(here)?;
        let Takes::Supply(supply) = part.takers[at].takes else {
            return Some(Twig::end(Step::Load(load)));
        };
        let source = self.circuits.source(&supply.id)?;
        if self.grown.contains(&source) {
            return Some(Twig::end(Step::Back(supply.id.to_string())));
        }
        let next = self.source(source, passed);
        Some(Twig {
            step: Step::Source { source, load },
            next,
        })
    }

    /// The fuses of a cable that no fuse before it stands for, the one nearest to the source first.
    fn chain(&self, part: &Part<'s>, run: &Run<'s>, passed: &[usize]) -> Vec<usize> {
        let mut chain = Vec::new();
        let mut name = super::fuse::name(part, run).map(ToString::to_string);
        while let Some(id) = &name {
            let Some(at) = self.fuses.iter().position(|fuse| fuse.id == *id) else {
                break;
            };
            if chain.contains(&at) || passed.contains(&at) {
                break;
            }
            chain.insert(0, at);
            name.clone_from(&self.fuses[at].behind);
        }
        chain
    }
}

impl Twig {
    fn end(step: Step) -> Self {
        Self {
            step,
            next: Vec::new(),
        }
    }
}

/// Hangs a twig behind a chain of fuses, each drawn once.
fn hang(next: &mut Vec<Twig>, chain: &[usize], twig: Twig) {
    let Some((first, rest)) = chain.split_first() else {
        next.push(twig);
        return;
    };
    let step = Step::Fuse(*first);
    let known = next.iter().position(|other| other.step == step);
    let at = known.unwrap_or_else(|| {
        next.push(Twig::end(step));
        next.len() - 1
    });
    hang(&mut next[at].next, rest, twig);
}
