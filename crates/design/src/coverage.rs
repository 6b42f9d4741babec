//! Every question that applies to a site, and where it stands: nothing is silently skipped.

use crate::check::Check;
use crate::question::{Kinds, Question, questions};
use crate::{Finding, Severity, Standing};
use serde::Serialize;
use site::{GateKind, Site};
use std::sync::Arc;

/// Where a question stands for a site.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// Findings answer it in full.
    Answered,
    /// Findings answer a part of it.
    AnsweredInPart,
    /// It waits for something to be measured or looked up.
    Unknown,
    /// The site describes nothing that it could be asked of.
    NothingToAsk,
    /// This tool has no calculation for it yet; the tradesperson answers it.
    NotYetCovered,
}

impl State {
    /// The state in the words of the papers.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Answered => "answered",
            Self::AnsweredInPart => "answered in part",
            Self::Unknown => "unknown until",
            Self::NothingToAsk => "nothing to ask it of",
            Self::NotYetCovered => "not yet covered",
        }
    }
}

/// One question with where it stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Covered {
    /// Id of the question.
    pub question: String,
    /// The question as the tradesperson would put it.
    pub ask: String,
    /// The worst that follows from a wrong answer.
    pub severity: Severity,
    /// Where it stands.
    pub state: State,
    /// Places of its findings in the list of findings.
    pub findings: Vec<usize>,
    /// What to measure, what is left open, or what the person must do instead.
    pub note: String,
}

/// Where every question that applies to the site stands.
pub(crate) fn coverage(site: &Site, checks: &[Check], findings: &[Arc<Finding>]) -> Vec<Covered> {
    questions()
        .iter()
        .filter(|question| applies(question, site))
        .map(|question| covered(question, checks, findings))
        .collect()
}

/// The question is asked under this code basis, of these kinds of gate and drive.
pub(crate) fn applies(question: &Question, site: &Site) -> bool {
    question.codes.contains(&site.site.code_basis)
        && of_a_kind(question, site)
        && of_a_drive(question, site)
}

fn of_a_kind(question: &Question, site: &Site) -> bool {
    let these = |kinds: &[GateKind]| site.gate.iter().any(|gate| kinds.contains(&gate.kind));
    match &question.kinds {
        Kinds::All => true,
        Kinds::These(kinds) => these(kinds),
    }
}

/// A drive that is not yet known may be any.
fn of_a_drive(question: &Question, site: &Site) -> bool {
    question.drives.is_empty()
        || site.operator.is_empty()
        || site.operator.iter().any(|operator| {
            operator
                .drive
                .is_none_or(|drive| question.drives.contains(&drive))
        })
}

fn covered(question: &Question, checks: &[Check], findings: &[Arc<Finding>]) -> Covered {
    let of_it: Vec<usize> = (0..findings.len())
        .filter(|at| findings[*at].question == question.id)
        .collect();
    let check = checks.iter().find(|check| check.question == question.id);
    let (state, note) = match check {
        _ if !of_it.is_empty() => answered(&of_it, findings),
        Some(check) => (
            State::NothingToAsk,
            format!(
                "The site describes nothing to ask it of; it is asked of {}.",
                check.concerns
            ),
        ),
        None => (State::NotYetCovered, instead(question)),
    };
    Covered {
        question: question.id.clone(),
        ask: question.ask.clone(),
        severity: question.severity,
        state,
        findings: of_it,
        note,
    }
}

fn answered(of_it: &[usize], findings: &[Arc<Finding>]) -> (State, String) {
    let open = |at: &&usize| findings[**at].standing == Standing::Unknown;
    if let Some(at) = of_it.iter().find(open) {
        return (State::Unknown, findings[*at].because.clone());
    }
    match of_it.first().map(|at| findings[*at].leaves_open.as_str()) {
        Some("") | None => (State::Answered, String::new()),
        Some(left) => (State::AnsweredInPart, format!("Left open: {left}.")),
    }
}

/// What the person must do instead of the tool.
fn instead(question: &Question) -> String {
    let confirm = match question.confirm.strip_prefix("none: ") {
        Some(by_eye) => by_eye,
        None => question.confirm.as_str(),
    };
    format!(
        "Not yet covered by this tool. The rule: {}. To be answered by you: {confirm}.",
        question.rule.trim_end_matches('.')
    )
}
