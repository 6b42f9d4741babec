//! Asks a site every question of the trade: applies calculations, carries tolerances, and returns findings.
//!
//! [`answers`] gives everything: the findings with their working, worst first, and where each question that applies
//! stands. [`verdicts`] gives only the verdicts at the values as written, in well under a millisecond.

mod answers;
mod asking;
pub mod bill;
pub mod bus;
mod check;
mod choose;
mod circuit;
mod coverage;
pub mod curves;
pub mod cutting;
pub mod eye;
pub mod field;
mod figure;
mod finding;
pub mod heat;
pub mod loops;
mod network;
pub mod offer;
mod outcome;
mod plain;
pub mod plan;
pub mod pulling;
mod question;
pub mod queue;
pub mod radio;
mod remembered;
mod routes;
pub mod signs;
mod subject;
pub mod sunlit;
pub mod swept;
pub mod vehicle;
mod verdict;
mod verdicts;
pub mod walk;
mod weather;
pub mod wiring;
pub mod zone;

pub use answers::{Answers, LookedUpInVain, answers, answers_on, answers_remembering, findings};
pub use check::is_answered;
pub use choose::{
    AnchorChoice, AnchorWay, Candidate, Change, Choice, Choosable, ConductorChoice, ConductorLine,
    ConductorRun, ConductorVoltage, Mounted, PadChoice, PadSize, Pin, ProtectionChoice,
    ProtectionSet, RouteChoice, RouteWay, RuledOut, anchor_choices, choose, conductor_choice,
    mountings, pad_choices, protection_choices, route_choice,
};
pub use circuit::shown as power;
pub use coverage::{Covered, State};
pub use figure::Figure;
pub use finding::{
    Corner, CornerValue, Deciding, Finding, Line, Method, Missing, Reading, SourceNote, Subject,
    Working,
};
pub use network::shown as data_network;
pub use question::{Kinds, Question, Severity, Stage, question, questions, topic_title};
pub use remembered::Remembered;
pub use verdict::{Standing, Verdict};
pub use verdicts::{QuickVerdict, verdicts, verdicts_about};
