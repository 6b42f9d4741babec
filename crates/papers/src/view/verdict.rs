//! The verdicts, and how many of each a document holds.

use serde::Serialize;

/// The verdict on a question, in the order in which the papers show them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Fails at the values as written.
    Fails,
    /// Unknown until something is measured.
    Unknown,
    /// Holds at the values as written but not at the bad end of the tolerances.
    NotSure,
    /// Holds, tolerances included.
    Holds,
    /// A figure that others rest on, with nothing to hold it against.
    Figure,
    /// Outside what this tool can answer.
    Outside,
}

impl Verdict {
    /// The word that stands beside the mark.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fails => "Fails",
            Self::Unknown => "Unknown",
            Self::NotSure => "Not sure",
            Self::Holds => "Holds",
            Self::Figure => "Figure",
            Self::Outside => "Outside",
        }
    }
}

/// How many findings have each verdict, and how many questions the tool does not cover yet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct VerdictCounts {
    /// Findings that fail.
    pub fails: usize,
    /// Findings that are unknown until something is measured.
    pub unknown: usize,
    /// Findings that are not sure.
    pub not_sure: usize,
    /// Findings that hold.
    pub holds: usize,
    /// Findings that are figures only.
    pub figure: usize,
    /// Findings outside what the tool can answer.
    pub outside: usize,
    /// Questions that apply to the site and are not yet covered by the tool.
    pub not_covered: usize,
}

impl VerdictCounts {
    /// Counts the verdicts; `not_covered` is told by the caller.
    pub fn of(verdicts: impl IntoIterator<Item = Verdict>, not_covered: usize) -> Self {
        let mut counts = Self {
            not_covered,
            ..Self::default()
        };
        for verdict in verdicts {
            match verdict {
                Verdict::Fails => counts.fails += 1,
                Verdict::Unknown => counts.unknown += 1,
                Verdict::NotSure => counts.not_sure += 1,
                Verdict::Holds => counts.holds += 1,
                Verdict::Figure => counts.figure += 1,
                Verdict::Outside => counts.outside += 1,
            }
        }
        counts
    }
}
