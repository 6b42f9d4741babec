//! The questions that apply, by topic, and where each stands.

use crate::view::{QuestionGroup, QuestionRow, QuestionState};
use design::{Covered, State};
use quantity::Word as _;

/// The questions by topic, in the order in which they come.
pub(super) fn groups(coverage: &[Covered]) -> Vec<QuestionGroup> {
    let mut groups: Vec<QuestionGroup> = Vec::new();
    for covered in coverage {
        let topic = topic(&covered.question);
        if groups.last().is_none_or(|group| group.title != topic) {
            groups.push(QuestionGroup {
                title: topic,
                rows: Vec::new(),
            });
        }
        if let Some(group) = groups.last_mut() {
            group.rows.push(row(covered));
        }
    }
    groups
}

/// The topic of a question in words.
fn topic(id: &str) -> String {
    let word = id.split('-').next().unwrap_or(id);
    design::topic_title(word).unwrap_or(word).to_owned()
}

/// How the person answers what the tool does not.
fn by_hand(id: &str) -> String {
    design::question(id)
        .map(|question| question.confirm.trim_start_matches("none: ").to_owned())
        .unwrap_or_default()
}

/// Said of a question whose findings leave something open, which they tell themselves.
const IN_PART: &str = "in part";

fn row(covered: &Covered) -> QuestionRow {
    QuestionRow {
        id: covered.question.clone(),
        ask: covered.ask.clone(),
        state: match covered.state {
            State::Answered | State::AnsweredInPart => QuestionState::Answered,
            State::Unknown => QuestionState::Unknown,
            State::NothingToAsk | State::NotYetCovered => QuestionState::NotCovered,
        },
        note: match covered.state {
            State::Answered => String::new(),
            State::AnsweredInPart => IN_PART.to_owned(),
            State::Unknown | State::NothingToAsk => covered.note.clone(),
            State::NotYetCovered => by_hand(&covered.question),
        },
        severity: covered.severity.word().to_owned(),
    }
}
