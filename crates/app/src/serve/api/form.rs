//! The model as a form: the records, and one of them with its keys.

use super::{Answer, of_job};
use crate::serve::body::Given;
use crate::serve::refusal::Refusal;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use serde::Deserialize;
use serde_json::json;
use std::sync::Arc;

/// Which record.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Which {
    /// Its path; the list of records when missing.
    path: Option<String>,
}

/// The records of a site, or one with its keys.
pub(super) async fn form(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Given(which): Given<Which>,
) -> Answer {
    of_job(workbench, name, move |_, seen| {
        let (main, beside) = (&seen.files.main, &seen.files.beside);
        let Some(path) = which.path else {
            return Ok(Json(json!({
                "revision": seen.revision, "records": site::records(main, beside),
            })));
        };
        let form = site::form(main, beside, &path, seen.units()).ok_or_else(|| {
            Refusal::absent(
                "There is no such record in this site.",
                "Take a path from the list of records.",
            )
            .at(path)
            .expected("a path such as device.reader-in, or nothing for the site as a whole")
        })?;
        let mut told = json!(form);
        told["revision"] = json!(seen.revision);
        Ok(Json(told))
    })
    .await
}

/// The entries of the parts files that a record could be bought as, with what each brings.
pub(super) async fn parts(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Given(which): Given<Which>,
) -> Answer {
    of_job(workbench, name, move |_, seen| {
        let (files, path) = (&seen.files, which.path.unwrap_or_default());
        let parts = site::parts_for(&files.main, &files.beside, &path, seen.units());
        Ok(Json(json!({ "revision": seen.revision, "parts": parts })))
    })
    .await
}
