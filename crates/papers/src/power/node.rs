//! The tree of the diagram before it has a place: what is drawn, how many rows it takes and how wide it is.

use super::words;
use design::power::{PowerShown, ShownCable, SourceKind, Step, Twig};
use quantity::UnitSystem;

/// Half the width of a symbol with two connections (mm).
pub(super) const HALF: f64 = 5.0;
/// Half the width of a supply (mm).
pub(super) const BOX: f64 = 4.0;
/// Clear paper between words and the next line (mm).
pub(super) const GAP: f64 = 2.4;

/// Something drawn, and what hangs on it to its right.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Node {
    pub(super) kind: Kind,
    pub(super) next: Vec<Node>,
    /// It stands elsewhere in the diagram already, and goes on here.
    pub(super) continued: bool,
}

#[derive(Debug, Clone, PartialEq)]
pub(super) enum Kind {
    /// A source, and its input among the loads where another one feeds it.
    Source(usize, Option<usize>),
    Fuse(usize),
    Cable(ShownCable),
    NoCable,
    Joint(String),
    /// Terminals of a device from which another cable goes on.
    Terminals(String),
    /// A joint or source that is drawn already.
    Back(String),
    Load(usize),
    /// Goes on elsewhere.
    Onward(String),
    /// Goes on here.
    From(String),
    /// A source that feeds nothing.
    Nothing,
}

/// What is asked for sizes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Shown<'p> {
    pub(super) power: &'p PowerShown,
    pub(super) units: UnitSystem,
}

impl Node {
    /// The tree of a source.
    pub(super) fn root(power: &PowerShown, source: usize) -> Self {
        let branches = power.sources.get(source).map(|source| &source.branches);
        let mut next: Vec<Self> = branches.into_iter().flatten().map(Self::of).collect();
        if next.is_empty() {
            next.push(Self::leaf(Kind::Nothing));
        }
        Self {
            kind: Kind::Source(source, None),
            next,
            continued: false,
        }
    }

    fn of(twig: &Twig) -> Self {
        let kind = match &twig.step {
            Step::Fuse(at) => Kind::Fuse(*at),
            Step::Cable(cable) => Kind::Cable(cable.clone()),
            Step::NoCable => Kind::NoCable,
            Step::Joint(name) => Kind::Joint(name.clone()),
            Step::Terminals(name) => Kind::Terminals(name.clone()),
            Step::Back(name) => Kind::Back(name.clone()),
            Step::Load(at) => Kind::Load(*at),
            Step::Source { source, load } => Kind::Source(*source, Some(*load)),
        };
        let mut next: Vec<Self> = twig.next.iter().map(Self::of).collect();
        if next.is_empty() && !kind.ends() {
            next.push(Self::leaf(Kind::Nothing));
        }
        Self {
            kind,
            next,
            continued: false,
        }
    }

    pub(super) fn leaf(kind: Kind) -> Self {
        Self {
            kind,
            next: Vec::new(),
            continued: false,
        }
    }

    /// How many rows it takes.
    pub(super) fn rows(&self, shown: Shown<'_>) -> usize {
        let below: usize = self.next.iter().map(|node| node.rows(shown)).sum();
        let own = match self.kind {
            Kind::Source(at, _) if !self.continued => {
                let source = shown.power.sources.get(at);
                source.map_or(2, |source| {
                    (source.panels.len().max(1) + source.stores.len()).max(2)
                })
            }
            _ => 1,
        };
        below.max(own)
    }

    /// Its width where it stands behind a cable of a width (mm).
    pub(super) fn width(&self, shown: Shown<'_>, before: f64) -> f64 {
        if self.continued {
            return flagged(&self.name(shown));
        }
        match &self.kind {
            Kind::Source(at, load) => source_width(shown, *at, *load, before),
            Kind::Fuse(at) => {
                let label = words::fuse(shown, *at);
                (words::width(&label, words::SMALL) + GAP).max(2.0 * HALF + GAP)
            }
            Kind::Cable(cable) => {
                words::width(&words::cable(cable, shown.units), words::SMALL) + 2.0 * GAP
            }
            Kind::NoCable => words::width(words::NO_CABLE, words::SMALL) + 2.0 * GAP,
            Kind::Joint(name) => words::width(&words::short(name), words::SMALL) + 2.0 * GAP,
            Kind::Terminals(_) => GAP,
            Kind::From(name) => flagged(&words::from(name)),
            Kind::Back(_) | Kind::Load(_) | Kind::Onward(_) | Kind::Nothing => 0.0,
        }
    }

    /// How far it reaches to the right, all that hangs on it counted (mm).
    pub(super) fn reach(&self, shown: Shown<'_>, before: f64) -> f64 {
        let own = self.width(shown, before);
        let after = if matches!(self.kind, Kind::Cable(_)) {
            own
        } else {
            0.0
        };
        let below = self.next.iter().map(|node| node.reach(shown, after));
        own + below.fold(0.0, f64::max)
    }

    /// Its name, where it has one by which it can go on elsewhere.
    pub(super) fn name(&self, shown: Shown<'_>) -> String {
        let name = match &self.kind {
            Kind::Source(at, _) => shown.power.sources.get(*at).map(|it| it.id.clone()),
            Kind::Fuse(at) => shown.power.fuses.get(*at).map(|it| it.id.clone()),
            Kind::Cable(cable) => Some(cable.id.clone()),
            Kind::Joint(name) | Kind::Terminals(name) => Some(name.clone()),
            _ => None,
        };
        let name = words::short(&name.unwrap_or_default());
        if self.continued {
            format!("{name}, continued")
        } else {
            name
        }
    }
}

/// Width that a source takes with its words.
fn source_width(shown: Shown<'_>, at: usize, load: Option<usize>, before: f64) -> f64 {
    let lines = words::source(shown, at, load);
    let words = lines
        .iter()
        .map(|line| words::width(&line.words, words::SMALL))
        .fold(0.0, f64::max);
    let Some(source) = shown.power.sources.get(at) else {
        return words;
    };
    if source.kind == SourceKind::Mains && load.is_none() {
        let switches = 2.0 * BOX + 4.0 * HALF + GAP;
        return (2.0 * BOX + GAP / 2.0 + words + GAP).max(switches);
    }
    left(shown, at, before) + 2.0 * BOX + GAP / 2.0 + words + GAP
}

impl Kind {
    /// Nothing comes after it.
    fn ends(&self) -> bool {
        matches!(
            self,
            Self::Back(_) | Self::Load(_) | Self::Onward(_) | Self::Nothing
        )
    }

    /// It may go on elsewhere.
    pub(super) fn is_named(&self) -> bool {
        matches!(
            self,
            Self::Source(..) | Self::Fuse(_) | Self::Joint(_) | Self::Terminals(_)
        )
    }
}

/// Width of a flag with words over the line after it (mm).
fn flagged(words: &str) -> f64 {
    2.0 * HALF + words::width(words, words::SMALL) + 2.0 * GAP
}

/// Room to the left of a supply for its batteries and panels, beside the cable before it (mm).
pub(super) fn left(shown: Shown<'_>, at: usize, before: f64) -> f64 {
    let labels = words::inputs(shown, at);
    if labels.is_empty() {
        return 0.0;
    }
    let widest = labels
        .iter()
        .map(|label| words::width(label, words::SMALL))
        .fold(0.0, f64::max);
    (2.0 * HALF + widest + 2.0 * GAP - (before - GAP).max(0.0)).max(GAP)
}
