//! An invented structure part.

use papers::view::{Input, InputGroup, StructureResult, StructureView, Verdict};

fn input(what: &str, value: &str, known: &str) -> Input {
    Input {
        what: what.to_owned(),
        value: value.to_owned(),
        known: known.to_owned(),
    }
}

/// The part.
pub(crate) fn part() -> StructureView {
    let group = |index: usize| InputGroup {
        title: format!("Foundation pad-{index}"),
        inputs: vec![
            input("length", "30 in ± 1/2 in", "measured"),
            input("strength", "3500 psi", "assumed"),
            input(
                "bars",
                "No. 4 at 10 in both ways, top and bottom, hooked at both ends",
                "stated",
            ),
        ],
    };
    StructureView {
        statement: "A licensed engineer decides where the law wants one.".to_owned(),
        results: vec![StructureResult {
            ask: "Will the anchor pull out?".to_owned(),
            verdict: Verdict::Holds,
            ratio: "0.61".to_owned(),
            findings: vec![0, 1],
        }],
        groups: (1..40).map(group).collect(),
        factors: vec![InputGroup {
            title: "Force of the wind (ASCE 7, 2.3.1)".to_owned(),
            inputs: vec![input("load factor on wind", "1.0", "")],
        }],
    }
}
