//! Questions of five parts of the trade, of every state.

use papers::view::{QuestionGroup, QuestionRow, QuestionState};

pub(crate) fn all() -> Vec<QuestionGroup> {
    [
        "Survey",
        "Motion",
        "Standing",
        "Power",
        "Protection of people",
    ]
    .map(group)
    .into()
}

fn group(title: &str) -> QuestionGroup {
    QuestionGroup {
        title: title.to_owned(),
        rows: (1..=14).map(|number| row(title, number)).collect(),
    }
}

fn row(title: &str, number: usize) -> QuestionRow {
    let stem = title.to_lowercase().replace(' ', "-");
    let (state, note) = match number % 3 {
        0 => (
            QuestionState::Answered,
            "Holds by 0.7 V at reader R1, by 1.2 V at reader R2",
        ),
        1 => (
            QuestionState::Unknown,
            "Measure the length of conduit 4 along its bends, and how well it is known",
        ),
        _ => (
            QuestionState::NotCovered,
            "On site: look at the nameplate, and keep a photograph of it in the record",
        ),
    };
    QuestionRow {
        id: format!("{stem}-question-{number}"),
        ask: "Which single measurement decides this answer, and do I know it closely enough to build on it?".to_owned(),
        state,
        note: note.to_owned(),
        severity: ["life", "fire", "damage", "nuisance", "cost"][number % 5].to_owned(),
    }
}
