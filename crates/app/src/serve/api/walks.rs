//! The walk test for programs: what was kept, walking as a task, one walk to be played.

use super::{Answer, gate, no_gate, of_job};
use crate::serve::body::Sent;
use crate::serve::drawn::readable;
use crate::serve::refusal::Refusal;
use crate::serve::walked::{self, FirstLook, MOST, Test, WALKS};
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Response};
use design::walk::{GateWalk, Seed};
use serde::Deserialize;
use serde_json::{Value, json};
use site::Site;
use std::sync::Arc;

/// What can be asked of a walk.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Wanted {
    /// Walks past each gate.
    walks: Option<u64>,
    /// Only this gate.
    gate: Option<String>,
    /// Whether it is kept beside the site file, for the papers.
    #[serde(default)]
    keep: bool,
}

/// Every gate.
pub(super) async fn list(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Answer {
    let job = name.clone();
    of_job(workbench, name, move |bench, seen| {
        let all = walked::tests(bench, &job, seen)?;
        let gates = all.of_gates.iter();
        let gates = gates.map(|test| told(test, &all.looks[test.at]));
        Ok(Json(json!({
            "revision": seen.revision,
            "task": all.task,
            "unread": all.unread,
            "gates": gates.collect::<Vec<_>>(),
        })))
    })
    .await
}

fn told(test: &Test, look: &FirstLook) -> Value {
    json!({
        "gate": look.gate,
        "refused": look.refused.as_ref().map(|finding| &finding.sentence),
        "first_look": look.worst,
        "kept": test.kept.as_ref().map(|kept| json!({
            "at": kept.when(),
            "beside_the_site": kept.beside,
            "is_of_now": kept.is_of_now,
            "finding": kept.finding,
            "record": kept.record,
        })),
        "assumptions": look.assumptions,
    })
}

/// One gate, with its maps.
pub(super) async fn of_gate(
    State(workbench): State<Arc<Workbench>>,
    Path((name, wanted)): Path<(String, String)>,
) -> Answer {
    let job = name.clone();
    of_job(workbench, name, move |bench, seen| {
        let all = walked::tests(bench, &job, seen)?;
        let mut tests = all.of_gates.iter();
        let test = tests.find(|test| all.looks[test.at].gate == wanted);
        let test = test.map_or_else(|| Err(no_gate(readable(seen)?)), Ok)?;
        let look = &all.looks[test.at];
        let mut told = told(test, look);
        let maps = look.maps.iter();
        let maps = maps.map(|map| {
            json!({ "direction": map.direction, "title": map.title, "svg": map.svg, "words": map.words })
        });
        told["revision"] = json!(seen.revision);
        told["maps"] = json!(maps.collect::<Vec<_>>());
        Ok(Json(told))
    })
    .await
}

/// One walk, to be played.
pub(super) async fn one(
    State(workbench): State<Arc<Workbench>>,
    Path((name, gate, number)): Path<(String, String, String)>,
) -> Answer {
    of_job(workbench, name, move |_, seen| {
        let site = readable(seen)?;
        let seed: Seed = number.parse().map_err(|expected: &str| {
            Refusal::unusable("This is no walk.", "Take one of the worst cases.")
                .at(number)
                .expected(expected.to_owned())
        })?;
        let walk = walk(site, &gate)?;
        let played = walk.trace(seed).zip(walk.staged(seed));
        let (trace, stage) = played.ok_or_else(|| {
            Refusal::unusable(
                "This walk cannot be worked.",
                "Take one of the worst cases.",
            )
        })?;
        Ok(Json(
            json!({ "revision": seen.revision, "trace": trace, "stage": stage }),
        ))
    })
    .await
}

fn walk<'s>(site: &'s Site, name: &str) -> Result<GateWalk<'s>, Refusal> {
    GateWalk::of(site, gate(site, Some(name))?).map_err(|finding| {
        Refusal::unusable(
            finding.sentence.clone(),
            "Write what is missing; the answers name it.",
        )
    })
}

/// Begins to walk; where somebody does already, tells by which task.
pub(super) async fn begin(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Sent(wanted): Sent<Wanted>,
) -> Result<Response, Refusal> {
    let walks = wanted.walks.unwrap_or(WALKS);
    if !(1..=MOST).contains(&walks) {
        return Err(Refusal::unusable(
            "So many walks are not worked here.",
            "Write how many walks past each gate.",
        )
        .at("walks")
        .expected(format!("1 to {MOST}")));
    }
    let looked_at = name.clone();
    let seen = workbench
        .blocking(move |bench| {
            let job = bench.job(&looked_at)?;
            bench.look(&job)
        })
        .await??;
    if let Some(gate) = &wanted.gate {
        walk(readable(&seen)?, gate)?;
    }
    let asked = walked::Wanted {
        walks,
        gate: wanted.gate,
        keep: wanted.keep,
    };
    let task = walked::begin(&workbench, &name, seen, asked)?;
    Ok((StatusCode::ACCEPTED, Json(json!({ "task": task }))).into_response())
}
