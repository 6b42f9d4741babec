//! The interface for programs, the same that the pages use: JSON, with refusals that say what to do.

mod answers;
mod calculations;
mod create;
pub(super) mod edits;
mod form;
mod jobs;
mod openapi;
mod papers;
mod pictures;
mod plan;
mod removal;
mod tasks;
mod walks;
mod ways;

use super::refusal::Refusal;
use super::store::Seen;
use super::workbench::Workbench;
use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};
use axum::{Json, Router};
use serde_json::Value;
use site::{Gate, Site};
use std::sync::Arc;

/// An answer in JSON, or a refusal.
type Answer = Result<Json<Value>, Refusal>;

/// Tells something of a job as it stands now.
async fn of_job(
    workbench: Arc<Workbench>,
    name: String,
    told: impl FnOnce(&Workbench, &Seen) -> Answer + Send + 'static,
) -> Answer {
    workbench
        .blocking(move |bench| {
            let seen = bench.job(&name).and_then(|job| bench.look(&job))?;
            told(bench, &seen)
        })
        .await?
}

/// The gate of that name, or the first one.
fn gate<'s>(site: &'s Site, wanted: Option<&str>) -> Result<&'s Gate, Refusal> {
    let found = match wanted {
        Some(wanted) => site.gate.iter().find(|gate| gate.id == wanted),
        None => site.gate.first(),
    };
    found.ok_or_else(|| no_gate(site))
}

fn no_gate(site: &Site) -> Refusal {
    let names: Vec<&str> = site.gate.iter().map(|gate| gate.id.as_str()).collect();
    Refusal::absent(
        "There is no such gate on this site.",
        "Take a gate of the site.",
    )
    .at("gate")
    .expected(names.join(", "))
}

/// Bytes that a new job may bring with it: a year of weather is a fifth of it.
const LARGEST_JOB: usize = 8 * 1024 * 1024;

/// Every address below `/api/`.
pub(super) fn routes() -> Router<Arc<Workbench>> {
    Router::new()
        .route(
            "/api/jobs",
            get(jobs::list)
                .post(create::make)
                .layer(DefaultBodyLimit::max(LARGEST_JOB)),
        )
        .route("/api/files", post(create::files))
        .route("/api/survey", get(create::survey))
        .route("/api/calculations", get(calculations::list))
        .route(
            "/api/calculations/{name}",
            get(calculations::by_address).post(calculations::by_body),
        )
        .route("/api/jobs/{job}", get(jobs::one))
        .route("/api/jobs/{job}/site.toml", get(jobs::export))
        .route("/api/jobs/{job}/edits", post(edits::make))
        .route("/api/jobs/{job}/read", post(edits::read))
        .route("/api/jobs/{job}/trial", post(edits::trial))
        .route("/api/jobs/{job}/undo", post(edits::undo))
        .route("/api/jobs/{job}/redo", post(edits::redo))
        .route("/api/jobs/{job}/answers", get(answers::all))
        .route("/api/jobs/{job}/answers/{*finding}", get(answers::one))
        .route("/api/jobs/{job}/plan", get(plan::plan))
        .route("/api/jobs/{job}/form", get(form::form))
        .route("/api/jobs/{job}/parts", get(form::parts))
        .route("/api/jobs/{job}/ways", get(ways::ways))
        .route("/api/jobs/{job}/removal", get(removal::removal))
        .route(
            "/api/jobs/{job}/papers",
            get(papers::list).post(papers::begin),
        )
        .route("/api/jobs/{job}/papers/{file}", get(papers::file))
        .route("/api/jobs/{job}/pictures", get(pictures::list))
        .route("/api/jobs/{job}/pictures/{name}", get(pictures::one))
        .route("/api/jobs/{job}/walks", get(walks::list).post(walks::begin))
        .route("/api/jobs/{job}/walks/{gate}", get(walks::of_gate))
        .route("/api/jobs/{job}/walks/{gate}/{number}", get(walks::one))
        .route("/api/tasks/{id}", get(tasks::one).delete(tasks::stop))
        .route("/api/jobs/{job}/events", get(jobs::events))
        .route("/api/events", get(jobs::all_events))
        .route("/api/openapi.json", get(openapi::description))
}
