//! Changes: made, taken back, made again.

use super::Answer;
use super::jobs::state;
use crate::serve::answering::turned;
use crate::serve::body::Sent;
use crate::serve::refusal::Refusal;
use crate::serve::store::{Edit, Job, Seen, stale};
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;

/// Changes to a state.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::serve) struct Edits {
    /// The revision that they are meant for.
    expects: String,
    /// One after the other; all or none are kept.
    edits: Vec<Edit>,
}

/// A step back or forward.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::serve) struct Step {
    /// The revision that it is meant for.
    expects: Option<String>,
}

/// Makes changes and keeps them.
pub(in crate::serve) async fn make(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Sent(asked): Sent<Edits>,
) -> Answer {
    let (mut told, understood) = kept(workbench, name, move |job, foreseen| {
        job.edit((&asked.expects, &asked.edits), foreseen)
    })
    .await?;
    told["understood"] = json!(understood);
    Ok(Json(told))
}

/// A value that might be written.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Reading {
    /// Where.
    path: String,
    /// What.
    value: String,
}

/// How a value would be understood; nothing is written.
pub(super) async fn read(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Sent(asked): Sent<Reading>,
) -> Answer {
    let understood = workbench
        .blocking(move |bench| {
            let seen = bench.job(&name).and_then(|job| bench.look(&job))?;
            site::understood(seen.text(), &asked.path, &asked.value, seen.units())
                .map_err(|problem| Refusal::problem(&problem).at(asked.path))
        })
        .await??;
    Ok(Json(json!(understood)))
}

/// What would turn with these changes; nothing is kept.
pub(super) async fn trial(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Sent(asked): Sent<Edits>,
) -> Answer {
    let (before, answered) = workbench.answered(&name).await?;
    if asked.expects != before.revision {
        return Err(stale(&before));
    }
    let told = workbench
        .blocking(move |bench| {
            let job = bench.job(&name)?;
            let (tried, _) = before.with(job.folder(), &asked.edits)?;
            let answers = bench.answering().worked(&tried).map_err(|why| Refusal::unusable(why, "Try another value."))?;
            let turned = turned(&answered.answers, &answers);
            let findings: Vec<_> = answers
                .findings
                .iter()
                .filter_map(|finding| {
                    let was = turned.get(&finding.name())?;
                    Some(json!({
                        "name": finding.name(), "question": finding.question, "ask": finding.ask, "was": was,
                        "verdict": finding.standing, "sentence": finding.sentence, "ratio": finding.ratio,
                    }))
                })
                .collect();
            let gone: Vec<String> = answered
                .answers
                .findings()
                .map(design::Finding::name)
                .filter(|name| answers.findings.iter().all(|finding| finding.name() != *name))
                .collect();
            Ok::<_, Refusal>(json!({
                "revision": before.revision, "problems": tried.problems, "turned": findings, "gone": gone,
            }))
        })
        .await??;
    Ok(Json(told))
}

/// Takes the last change back.
pub(in crate::serve) async fn undo(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Sent(step): Sent<Step>,
) -> Answer {
    let kept = kept(workbench, name, move |job, foreseen| {
        Ok((job.undo(step.expects.as_deref(), foreseen)?, ()))
    });
    Ok(Json(kept.await?.0))
}

/// Makes the change again that was taken back.
pub(in crate::serve) async fn redo(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Sent(step): Sent<Step>,
) -> Answer {
    let kept = kept(workbench, name, move |job, foreseen| {
        Ok((job.redo(step.expects.as_deref(), foreseen)?, ()))
    });
    Ok(Json(kept.await?.0))
}

/// Does something to a job, and tells everybody what it says now.
async fn kept<T: Send + 'static>(
    workbench: Arc<Workbench>,
    name: String,
    act: impl FnOnce(&Job, &dyn Fn(&Arc<Seen>)) -> Result<(Arc<Seen>, T), Refusal> + Send + 'static,
) -> Result<(Value, T), Refusal> {
    let (seen, told) = workbench
        .blocking(move |bench| {
            let job = bench.job(&name)?;
            let (seen, told) = act(&job, &|seen| bench.foresee(&job, seen))?;
            bench.noticed(&job, &seen);
            Ok::<_, Refusal>((seen, told))
        })
        .await??;
    Ok((state(&seen), told))
}
