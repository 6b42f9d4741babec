//! Verdicts on a question, and the order in which findings are shown.

use serde::Serialize;

/// The verdict on one question about one thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Capacity covers demand, or the rule is kept.
    Holds,
    /// Demand is above capacity, or the rule is broken.
    Fails,
    /// A fact is missing, or a figure behind the answer is known from memory only.
    UnknownUntil,
    /// The calculation stops being true for these values.
    OutsideThisTool,
    /// The answer is a figure; there is nothing here to hold it against.
    FigureOnly,
}

impl Verdict {
    /// The verdict in the words of the papers.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Holds => "holds",
            Self::Fails => "fails",
            Self::UnknownUntil => "unknown until",
            Self::OutsideThisTool => "outside this tool",
            Self::FigureOnly => "figure only",
        }
    }
}

/// Where a finding stands once tolerances are counted, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Fails at the values as written.
    Fails,
    /// Holds at the values as written, and fails at the bad end of their tolerances.
    TurnsWithinTolerance,
    /// Unknown until something is measured or looked up.
    Unknown,
    /// Outside what this tool can answer, at the values as written or at the bad end of their tolerances.
    Outside,
    /// Holds, tolerances included.
    Holds,
    /// A figure with nothing to hold it against.
    Figure,
}

impl Standing {
    /// The standing from the verdict at the values as written and the one at the worst corner, if there are tolerances.
    pub fn of(nominal: Verdict, worst: Option<Verdict>) -> Self {
        match (nominal, worst) {
            (Verdict::Fails, _) => Self::Fails,
            (Verdict::Holds, Some(Verdict::Fails)) => Self::TurnsWithinTolerance,
            (Verdict::UnknownUntil, _) | (Verdict::Holds, Some(Verdict::UnknownUntil)) => {
                Self::Unknown
            }
            (Verdict::OutsideThisTool, _) | (Verdict::Holds, Some(Verdict::OutsideThisTool)) => {
                Self::Outside
            }
            (Verdict::FigureOnly, _) => Self::Figure,
            (Verdict::Holds, _) => Self::Holds,
        }
    }
}
