//! The questions that the trade, the codes and physics ask of a gate site: data, read once.

mod files;
mod parse;
mod words;

pub use words::{Severity, Stage};

use serde::Serialize;
use site::{CodeBasis, DriveKind, GateKind};
use std::sync::LazyLock;

/// Kinds of gate that a question is asked of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Kinds {
    /// Every kind.
    All,
    /// Only these.
    These(Vec<GateKind>),
}

/// One question.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Question {
    /// Its name, never used again for another question: `power-voltage-at-device`.
    pub id: String,
    /// The question as the tradesperson would put it.
    pub ask: String,
    /// The facts that an answer needs, in words.
    pub needs: Vec<String>,
    /// Those of them that a site file can hold: `gate.leaf.mass`.
    pub fields: Vec<String>,
    /// Demand against capacity, or the rule that must hold.
    pub rule: String,
    /// How the rule is known, with the work named.
    pub basis: String,
    /// Kinds of gate that it is asked of.
    #[serde(skip)]
    pub kinds: Kinds,
    /// Kinds of drive to which it is narrowed; empty where any will do.
    #[serde(skip)]
    pub drives: Vec<DriveKind>,
    /// Code bases under which it is asked.
    #[serde(skip)]
    pub codes: Vec<CodeBasis>,
    /// Stages at which an answer is needed or taken again.
    pub stages: Vec<Stage>,
    /// The worst that follows from a wrong answer.
    pub severity: Severity,
    /// What is measured or tried on site to confirm the answer.
    pub confirm: String,
}

impl Question {
    /// The topic: the first word of the id, `power`.
    pub fn topic(&self) -> &str {
        self.id
            .split_once('-')
            .map_or(self.id.as_str(), |(topic, _)| topic)
    }
}

static READ: LazyLock<parse::Read> = LazyLock::new(|| parse::read(files::FILES));

/// Every question, topic by topic.
pub fn questions() -> &'static [Question] {
    &READ.questions
}

/// The question of that name.
pub fn question(id: &str) -> Option<&'static Question> {
    questions().iter().find(|question| question.id == id)
}

/// Title of a topic, the first word of a question's id: `Data buses and readers` for `bus`.
pub fn topic_title(topic: &str) -> Option<&'static str> {
    let of = |(name, title, _): &(&str, &'static str, &str)| (*name == topic).then_some(*title);
    files::FILES.iter().find_map(of)
}

#[cfg(test)]
mod tests;
