//! Papers: made as a task, listed, and handed out.

use super::Answer;
use crate::command::{held_against, issue_day};
use crate::making::{STEPS, make};
use crate::outcome::Complaint;
use crate::serve::body::Sent;
use crate::serve::drawn::UNREADABLE;
use crate::serve::refusal::Refusal;
use crate::serve::store::{Seen, disk};
use crate::serve::tasks::{Steps, Tasks};
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse as _, Response};
use papers::compose::Issue;
use papers::view::Attachment;
use serde::Deserialize;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::sync::Arc;

/// The sort of task.
const WHAT: &str = "papers";
/// The list of what was made, beside it.
const LIST: &str = "papers.json";

/// What can be asked of papers.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Wanted {
    /// The day that they carry; today when missing.
    date: Option<String>,
}

/// Begins to make the papers of what the files say now; where they are being made already, tells by which task.
pub(super) async fn begin(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Sent(wanted): Sent<Wanted>,
) -> Result<Response, Refusal> {
    let day = issue_day(wanted.date.as_deref()).map_err(|why| {
        Refusal::unusable(why.to_string(), "Write a day such as 2026-05-04.").at("date")
    })?;
    let looked_at = name.clone();
    let seen = workbench
        .blocking(move |bench| {
            let job = bench.job(&looked_at)?;
            bench.look(&job)
        })
        .await??;
    let output = place(&workbench, &name);
    let task = Tasks::begin(&workbench, &name, (WHAT, STEPS), move |steps| {
        made(&seen, day, &output, steps)
    })?;
    Ok((StatusCode::ACCEPTED, Json(json!({ "task": task }))).into_response())
}

/// Makes the papers and puts them in the place of the old ones.
fn made(
    seen: &Seen,
    day: papers::view::Day,
    output: &std::path::Path,
    steps: &mut Steps<'_>,
) -> Result<Value, Complaint> {
    let site = seen
        .site
        .as_deref()
        .ok_or_else(|| Complaint(UNREADABLE.to_owned()))?;
    let issue = Issue {
        day,
        maker: format!("gatewright {}", env!("CARGO_PKG_VERSION")),
        fingerprint: seen.files.fingerprint(),
        attachments: vec![Attachment {
            name: disk::SITE_FILE.to_owned(),
            media_type: "application/toml".to_owned(),
            description: "The site file that everything here was made from".to_owned(),
            bytes: seen.text().as_bytes().to_vec(),
        }],
        walks: held_against(site, seen.files.kept_walks()),
        since: None,
    };
    let made = make(site, issue, &mut |says| steps.next(says))?;
    let list = json!({
        "revision": seen.revision,
        "summary": made.summary,
        "all_hold": made.all_hold,
        "left_out": made.left_out,
        "papers": made.papers.iter().map(|paper| json!({
            "name": paper.name, "what": paper.what, "bytes": paper.bytes.len(), "kind": kind(&paper.name),
        })).collect::<Vec<_>>(),
    });
    let failed = |error: std::io::Error| {
        Complaint::about(output, format_args!("cannot be written ({error})"))
    };
    let unfinished = output.with_extension("unfinished");
    let _ = std::fs::remove_dir_all(&unfinished);
    std::fs::create_dir_all(&unfinished).map_err(failed)?;
    for paper in &made.papers {
        std::fs::write(unfinished.join(&paper.name), &paper.bytes).map_err(failed)?;
    }
    std::fs::write(unfinished.join(LIST), list.to_string()).map_err(failed)?;
    let _ = std::fs::remove_dir_all(output);
    std::fs::rename(&unfinished, output).map_err(failed)?;
    Ok(list)
}

/// The papers that were made last, and whether they are of what the files say now.
pub(super) async fn list(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Answer {
    workbench
        .blocking(move |bench| {
            let job = bench.job(&name)?;
            let seen = bench.look(&job)?;
            let text = std::fs::read(place(bench, &name).join(LIST)).unwrap_or_default();
            let mut list: Value =
                serde_json::from_slice(&text).unwrap_or_else(|_| json!({ "papers": [] }));
            list["is_of_now"] = json!(list["revision"] == seen.revision);
            list["task"] = json!(bench.tasks().running(&name, WHAT));
            Ok(Json(list))
        })
        .await?
}

/// One paper.
pub(super) async fn file(
    State(workbench): State<Arc<Workbench>>,
    Path((name, file)): Path<(String, String)>,
) -> Result<Response, Refusal> {
    let wanted = file.clone();
    let bytes = workbench
        .blocking(move |bench| {
            bench.job(&name)?;
            let folder = place(bench, &name);
            let text = std::fs::read(folder.join(LIST)).unwrap_or_default();
            let list: Value = serde_json::from_slice(&text).unwrap_or_default();
            // Only what is on the list has a name: no name leads elsewhere.
            let mut papers = list["papers"].as_array().into_iter().flatten();
            papers
                .any(|paper| paper["name"] == wanted.as_str())
                .then(|| std::fs::read(folder.join(&wanted)).ok())
                .flatten()
                .ok_or_else(|| {
                    Refusal::absent(
                        "There is no such paper.",
                        "Make the papers first; the list shows their names.",
                    )
                    .at(wanted)
                })
        })
        .await??;
    let headers = [
        (CONTENT_TYPE, kind(&file).to_owned()),
        (CONTENT_DISPOSITION, format!("inline; filename=\"{file}\"")),
    ];
    Ok((headers, bytes).into_response())
}

fn place(workbench: &Workbench, name: &str) -> PathBuf {
    workbench.own(&format!("{name}.papers"))
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("pdf") => "application/pdf",
        Some("svg") => "image/svg+xml",
        Some("json") => "application/json",
        Some("xlsx") => "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        Some("dxf") => "image/vnd.dxf",
        _ => "application/octet-stream",
    }
}
