//! Answers: the findings by the questions of the trade, worst first, and each with its working.

use super::Answer;
use crate::serve::answering::Answered;
use crate::serve::items::items;
use crate::serve::refusal::Refusal;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use design::{Covered, Finding, question, topic_title};
use serde_json::{Value, json};
use std::sync::Arc;

/// Every answer of the newest state.
pub(super) async fn all(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Answer {
    let (_, answered) = workbench.answered(&name).await?;
    Ok(Json(json!({
        "revision": answered.revision,
        "refused": answered.refused,
        "groups": groups(&answered),
        "findings": answered.answers.findings.iter().map(|finding| brief(finding, &answered)).collect::<Vec<_>>(),
    })))
}

/// One answer in full.
pub(super) async fn one(
    State(workbench): State<Arc<Workbench>>,
    Path((name, wanted)): Path<(String, String)>,
) -> Answer {
    let (_, answered) = workbench.answered(&name).await?;
    let finding = answered
        .answers
        .findings
        .iter()
        .find(|finding| finding.name() == wanted)
        .ok_or_else(|| {
            Refusal::absent(
                format!("There is no finding {wanted} any more."),
                "Look at the list of findings again.",
            )
            .at(wanted.clone())
        })?;
    let mut told = brief(finding, &answered);
    told["finding"] = json!(**finding);
    told["question_in_full"] = json!(question(&finding.question));
    told["revision"] = json!(answered.revision);
    Ok(Json(told))
}

/// A finding on one line, with what it speaks of.
pub(super) fn brief(finding: &Finding, answered: &Answered) -> Value {
    let name = finding.name();
    let turned = answered.turned.get(&name);
    json!({
        "question": finding.question,
        "topic": question(&finding.question).map(design::Question::topic),
        "ask": finding.ask,
        "severity": finding.severity,
        "verdict": finding.standing,
        "sentence": finding.sentence,
        "because": finding.because,
        "ratio": finding.ratio,
        "decided_by": finding.deciding.as_ref().map(|deciding| json!({
            "path": deciding.reading.path, "text": deciding.reading.text, "known": deciding.reading.known, "turns": deciding.turns,
        })),
        "missing": finding.missing,
        "items": items(finding),
        "turned": turned.map(|was| json!({ "was": was })),
        "name": name,
    })
}

/// The topics of the trade in their order, each with its questions and how many findings stand how.
fn groups(answered: &Answered) -> Vec<Value> {
    let mut topics: Vec<(&str, Vec<&Covered>)> = Vec::new();
    for covered in &answered.answers.coverage {
        let topic = question(&covered.question).map_or("", design::Question::topic);
        match topics.last_mut().filter(|(known, _)| *known == topic) {
            Some((_, of_it)) => of_it.push(covered),
            None => topics.push((topic, vec![covered])),
        }
    }
    topics
        .iter()
        .map(|(topic, questions)| {
            let findings = questions
                .iter()
                .flat_map(|covered| &covered.findings)
                .filter_map(|at| answered.answers.findings.get(*at).map(AsRef::as_ref));
            json!({
                "topic": topic,
                "title": topic_title(topic),
                "counts": counts(findings),
                "questions": questions.iter().map(|covered| asked(covered, answered)).collect::<Vec<_>>(),
            })
        })
        .collect()
}

fn asked(covered: &Covered, answered: &Answered) -> Value {
    let named = |at: &usize| Some(answered.answers.findings.get(*at)?.name());
    json!({
        "question": covered.question,
        "ask": covered.ask,
        "severity": covered.severity,
        "state": covered.state,
        "note": covered.note,
        "findings": covered.findings.iter().filter_map(named).collect::<Vec<_>>(),
    })
}

/// How many findings stand how.
fn counts<'f>(findings: impl Iterator<Item = &'f Finding>) -> Value {
    let mut counts = serde_json::Map::new();
    for finding in findings {
        let standing = json!(finding.standing);
        let standing = standing.as_str().unwrap_or_default();
        let count = counts.get(standing).and_then(Value::as_u64).unwrap_or(0);
        counts.insert(standing.to_owned(), json!(count + 1));
    }
    Value::Object(counts)
}
