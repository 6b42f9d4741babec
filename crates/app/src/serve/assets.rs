//! What pages are dressed in and moved by, from inside the program.

pub(super) mod files;

use super::refusal::Refusal;
use super::workbench::Workbench;
use axum::Router;
use axum::extract::Path;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE, ETAG, IF_NONE_MATCH};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse as _, Response};
use axum::routing::get;
use sha2::{Digest as _, Sha256};
use std::sync::Arc;

pub(super) fn routes() -> Router<Arc<Workbench>> {
    Router::new().route("/assets/{file}", get(file))
}

/// A file by its name. A browser that has it asks only whether it is still the same.
async fn file(Path(name): Path<String>, asked: HeaderMap) -> Result<Response, Refusal> {
    let (_, kind, bytes) = files::FILES
        .iter()
        .find(|(known, ..)| *known == name)
        .ok_or_else(|| {
            Refusal::absent(
                format!("There is no file {name} here."),
                "Load the page again.",
            )
        })?;
    let digest = crate::folder::in_digits(&Sha256::digest(bytes)[..8]);
    let tag = format!("\"{digest}\"");
    let same = asked
        .get(IF_NONE_MATCH)
        .is_some_and(|known| known.as_bytes() == tag.as_bytes());
    let headers = [
        (CONTENT_TYPE, (*kind).to_owned()),
        (CACHE_CONTROL, "no-cache".to_owned()),
        (ETAG, tag),
    ];
    Ok(if same {
        (StatusCode::NOT_MODIFIED, headers).into_response()
    } else {
        (headers, *bytes).into_response()
    })
}
