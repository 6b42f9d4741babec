//! Outside cases: what others printed, held against what we compute.

mod printed;
mod read;
mod verify;

pub use read::{Case, CaseSource, Problem, cases};
pub use verify::{Compared, Report, Tried, verify};

quantity::words! {
    /// How the expected value of a case is known. Only the first two make a formula right.
    pub enum CaseKind {
        /// Printed by others.
        Published = "published",
        /// Worked another way, by an outside library or by hand from other constants.
        Independent = "independent",
        /// Recalled; to be looked up.
        Memory = "memory",
        /// A rule of thumb of the trade.
        CommonPractice = "common practice",
    }
}

impl CaseKind {
    /// Whether a case of this kind is evidence that a formula is right.
    pub fn is_evidence(self) -> bool {
        matches!(self, Self::Published | Self::Independent)
    }
}

/// The case files of the crate: name and text, by discipline.
pub fn embedded() -> impl Iterator<Item = (&'static str, &'static str)> {
    [
        crate::wind::CASES,
        crate::leaf::CASES,
        crate::motion::CASES,
        crate::standing::CASES,
        crate::protection::CASES,
        crate::power::CASES,
        crate::mains::CASES,
        crate::life::CASES,
        crate::signal::CASES,
        crate::ways::CASES,
    ]
    .into_iter()
    .flatten()
    .copied()
}
