//! Structure: what results stand for it, and everything that a licensed engineer needs to work them again.

use super::verdict::Verdict;
use serde::Serialize;

/// One question of structure with its findings.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StructureResult {
    /// The question, as the tradesperson would put it.
    pub ask: String,
    /// The worst of its verdicts.
    pub verdict: Verdict,
    /// The largest demand over capacity, printed; empty where none has one.
    pub ratio: String,
    /// Places of its findings in the list of findings, from zero.
    pub findings: Vec<usize>,
}

/// One input or factor.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Input {
    /// What it is: `row spacing`.
    pub what: String,
    /// Its value, printed with unit and tolerance.
    pub value: String,
    /// How it is known.
    pub known: String,
}

/// The inputs of one thing: a foundation, a set of anchors, a post.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct InputGroup {
    /// The thing, and those that are alike.
    pub title: String,
    /// Its stated keys.
    pub inputs: Vec<Input>,
}

/// The structure part of a pack.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StructureView {
    /// Who decides, and what this is for.
    pub statement: String,
    /// The results that stand for structure.
    pub results: Vec<StructureResult>,
    /// Every input, thing by thing.
    pub groups: Vec<InputGroup>,
    /// The factors used, by the step of the working that they stand in, each with its source.
    pub factors: Vec<InputGroup>,
}
