//! Tasks: how far they are, and stopping them.

use super::Answer;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use serde_json::json;
use std::sync::Arc;

/// How far a task is.
pub(super) async fn one(State(workbench): State<Arc<Workbench>>, Path(id): Path<u64>) -> Answer {
    workbench
        .tasks()
        .progress(id)
        .map(|progress| Json(json!(progress)))
}

/// Has a task stop.
pub(super) async fn stop(State(workbench): State<Arc<Workbench>>, Path(id): Path<u64>) -> Answer {
    workbench
        .tasks()
        .stop(id)
        .map(|progress| Json(json!(progress)))
}
