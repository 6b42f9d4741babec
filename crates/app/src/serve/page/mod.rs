//! Pages: functions from values to markup.

mod jobs;
mod shell;

use super::workbench::Workbench;
use axum::Router;
use axum::routing::get;
use std::sync::Arc;

/// Every page.
pub(super) fn routes() -> Router<Arc<Workbench>> {
    Router::new().route("/", get(jobs::page))
}
