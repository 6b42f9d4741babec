//! Jobs: the list, what one says, its text.

use super::Answer;
use crate::serve::events;
use crate::serve::refusal::Refusal;
use crate::serve::store::Seen;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use serde_json::{Value, json};
use std::sync::Arc;

/// The jobs of the folder.
pub(super) async fn list(State(workbench): State<Arc<Workbench>>) -> Answer {
    let jobs = workbench.blocking(Workbench::jobs).await?;
    Ok(Json(json!(jobs)))
}

/// What a job says now.
pub(super) async fn one(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Answer {
    let seen = seen(&workbench, name).await?;
    let mut told = state(&seen);
    told["text"] = json!(seen.text());
    Ok(Json(told))
}

/// The site file, to be kept elsewhere.
pub(super) async fn export(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Result<Response, Refusal> {
    let seen = seen(&workbench, name).await?;
    let headers = [
        (CONTENT_TYPE, "application/toml; charset=utf-8"),
        (CONTENT_DISPOSITION, "attachment; filename=\"site.toml\""),
    ];
    Ok((headers, seen.text().to_owned()).into_response())
}

/// What happens to a job.
pub(super) async fn events(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Result<impl IntoResponse, Refusal> {
    seen(&workbench, name.clone()).await?;
    Ok(events::stream(&workbench, Some(name)))
}

/// What happens to any job.
pub(super) async fn all_events(State(workbench): State<Arc<Workbench>>) -> impl IntoResponse {
    events::stream(&workbench, None)
}

async fn seen(workbench: &Arc<Workbench>, name: String) -> Result<Arc<Seen>, Refusal> {
    workbench
        .blocking(move |bench| bench.job(&name).and_then(|job| bench.look(&job)))
        .await?
}

/// A state without its text.
pub(super) fn state(seen: &Seen) -> Value {
    json!({
        "revision": seen.revision,
        "title": seen.site.as_deref().map(|site| site.site.name.to_string()),
        "problems": seen.problems,
        "unread": seen.files.walks_unread(),
        "undo": seen.undo,
        "redo": seen.redo,
    })
}
