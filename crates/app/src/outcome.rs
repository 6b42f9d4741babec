//! How a command ends, and how it says so.

use std::fmt::Display;
use std::process::ExitCode;

/// Exit status for input that could not be used.
pub(crate) const BAD_INPUT: u8 = 2;

/// How a command that could run has ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// Everything asked for holds.
    Holds,
    /// Something fails or is not known yet.
    Open,
    /// The input has problems; what could be answered was.
    BadInput,
}

impl Outcome {
    pub(crate) fn exit_code(self) -> ExitCode {
        match self {
            Self::Holds => ExitCode::SUCCESS,
            Self::Open => ExitCode::from(1),
            Self::BadInput => ExitCode::from(BAD_INPUT),
        }
    }
}

/// Why a command could not run, in words for the person who can mend it.
#[derive(Debug)]
pub(crate) struct Complaint(pub(crate) String);

impl Complaint {
    /// A complaint about a file or folder.
    pub(crate) fn about(path: &std::path::Path, what: impl Display) -> Self {
        Self(format!("{}: {what}", path.display()))
    }
}

impl Display for Complaint {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

/// Prints a complaint where a person looks for one.
#[allow(
    clippy::print_stderr,
    reason = "the command line is what speaks to people"
)]
pub(crate) fn complain(complaint: &impl Display) {
    anstream::eprintln!("{complaint}");
}

/// Prints a line of an answer; a closed pipe is not an error.
pub(crate) fn say(line: &impl Display) {
    use std::io::Write as _;
    let _ = writeln!(anstream::stdout(), "{line}");
}
