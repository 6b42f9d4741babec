//! The sheet of a calculation: what it takes, what it gives, where it comes from, and where it stops being true.

use quantity::Sort;

quantity::words! {
    /// The part of the trade that a calculation belongs to.
    pub enum Discipline {
        /// Wind on the leaf.
        Wind = "wind",
        /// Leaf, frame, wheels and hinges.
        Leaf = "leaf",
        /// Mass, force, speed and travel.
        Motion = "motion",
        /// Posts, pads and anchors.
        Standing = "standing",
        /// Protection of people.
        Protection = "protection",
        /// Conductors, supplies, batteries and enclosures.
        Power = "power",
        /// Wear, growth and rust.
        Life = "life",
        /// Data, radio and cameras.
        Signal = "signal",
        /// Conduits and pulls.
        Ways = "ways",
    }
}

quantity::words! {
    /// How a figure is known. Only the first two let a finding pass a gate.
    pub enum Evidence {
        /// Read in the named work, or in a named reprint or retelling of it.
        Seen = "seen",
        /// Follows from physics or from definitions alone.
        Physics = "physics",
        /// Recalled; to be looked up before anything rests on it.
        Memory = "memory",
        /// A rule of thumb of the trade.
        CommonPractice = "common practice",
    }
}

impl Evidence {
    /// Whether a figure known in this way may let a finding hold; any other may only warn.
    pub fn may_pass_a_gate(self) -> bool {
        matches!(self, Self::Seen | Self::Physics)
    }
}

/// Where a formula or a figure stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Source {
    /// The work with its edition.
    pub work: &'static str,
    /// The clause, equation or table in it; empty where it has none.
    pub clause: &'static str,
    /// How we know it.
    pub evidence: Evidence,
    /// Where it was seen, or what was recomputed.
    pub seen: &'static str,
}

impl Source {
    /// The work with its clause, as people name it.
    pub fn name(&self) -> String {
        format!("{} {}", self.work, self.clause)
            .trim_end()
            .to_owned()
    }
}

/// One input or output of a calculation.
#[derive(Debug, Clone, Copy)]
pub struct Symbol {
    /// Its name, as written on the command line: `load_current`.
    pub name: &'static str,
    /// Its letter in the literature: `I`.
    pub letter: &'static str,
    /// What it means, in one line.
    pub meaning: &'static str,
    /// The sort of value it takes.
    pub sort: Sort,
}

/// All that is said about a calculation, once.
#[derive(Debug, Clone, Copy)]
pub struct Sheet {
    /// Its name: `voltage-drop`.
    pub name: &'static str,
    /// The part of the trade it belongs to.
    pub discipline: Discipline,
    /// What it computes, in prose: the doc comment of its type, each line with a space before it; see
    /// [`Sheet::paragraphs`].
    pub prose: &'static str,
    /// The formula as the literature prints it.
    pub formula: &'static str,
    /// What it takes.
    pub inputs: &'static [Symbol],
    /// What it gives.
    pub outputs: &'static [Symbol],
    /// The range in which it holds.
    pub validity: &'static str,
    /// Where it comes from.
    pub source: Source,
}

impl Sheet {
    /// What it computes, in one sentence: the first paragraph of its prose.
    pub fn title(&self) -> String {
        self.paragraphs().into_iter().next().unwrap_or_default()
    }

    /// The prose, a paragraph at a time, as one line each; the first one is the title.
    pub fn paragraphs(&self) -> Vec<String> {
        let lines: Vec<&str> = self.prose.lines().map(str::trim).collect();
        lines
            .split(|line| line.is_empty())
            .filter(|paragraph| !paragraph.is_empty())
            .map(|paragraph| paragraph.join(" "))
            .collect()
    }
}

/// Why a calculation gives no answer for these inputs.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{input}: {why}")]
pub struct OutOfReach {
    /// The input that is outside the range, by its name in the sheet.
    pub input: &'static str,
    /// What it is, what it may be, and what to do instead.
    pub why: String,
}

impl OutOfReach {
    /// A refusal that names the input and says why.
    pub fn new(input: &'static str, why: impl Into<String>) -> Self {
        Self {
            input,
            why: why.into(),
        }
    }
}
