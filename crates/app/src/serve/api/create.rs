//! New jobs: from a survey, from another job, or from a text.

use super::Answer;
use super::jobs::state;
use crate::serve::body::Sent;
use crate::serve::refusal::Refusal;
use crate::serve::store::{checked, disk};
use crate::serve::survey::Survey;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Response};
use serde::Deserialize;
use serde_json::json;
use std::path::Path;
use std::sync::Arc;

/// A new job.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct New {
    /// Name of its folder.
    name: String,
    /// What it begins with.
    from: Begins,
}

/// What a job begins with.
#[derive(Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
enum Begins {
    /// Eight answers.
    Survey(Survey),
    /// Another job, with the files beside it.
    Job(String),
    /// The text of a site file.
    Text(String),
}

/// Makes a job.
pub(super) async fn make(
    State(workbench): State<Arc<Workbench>>,
    Sent(new): Sent<New>,
) -> Result<Response, Refusal> {
    let told = workbench
        .blocking(move |bench| {
            made(bench, &new)?;
            let job = bench.job(&new.name)?;
            let seen = bench.look(&job)?;
            let mut told = state(&seen);
            told["name"] = json!(new.name);
            Ok::<_, Refusal>(told)
        })
        .await??;
    Ok((StatusCode::CREATED, Json(told)).into_response())
}

/// The questions of the survey, for whoever asks them.
pub(super) async fn survey() -> Answer {
    Ok(Json(Survey::questions()))
}

fn made(workbench: &Workbench, new: &New) -> Result<(), Refusal> {
    let name = checked(&new.name)?;
    let (text, beside) = match &new.from {
        Begins::Survey(survey) => (survey.site()?, Vec::new()),
        Begins::Text(text) => {
            // The largest request is far below the largest file.
            (text.clone(), Vec::new())
        }
        Begins::Job(other) => {
            let seen = workbench.job(other)?.look()?;
            (seen.text().to_owned(), seen.files.beside.clone())
        }
    };
    let folder = workbench.folder().join(name);
    std::fs::create_dir(&folder).map_err(|error| {
        if error.kind() == std::io::ErrorKind::AlreadyExists {
            Refusal::new(
                StatusCode::CONFLICT,
                "There is a folder of this name already.",
                "Choose another name.",
            )
            .at("name")
        } else {
            not_made(&folder, &error)
        }
    })?;
    // The site file comes last: until it is there, there is no job.
    let written = beside.iter().try_for_each(|file| {
        let path = folder.join(&file.name);
        if let Some(above) = path.parent() {
            std::fs::create_dir_all(above)?;
        }
        disk::write_new(&path, file.text.as_bytes())
    });
    written
        .and_then(|()| disk::write_new(&folder.join(disk::SITE_FILE), text.as_bytes()))
        .and_then(|()| disk::sync_folder(&folder))
        .and_then(|()| disk::sync_folder(workbench.folder()))
        .map_err(|error| not_made(&folder, &error))
}

fn not_made(folder: &Path, error: &std::io::Error) -> Refusal {
    Refusal::failed(
        format!("The folder of the job cannot be filled ({error})."),
        "See that there is room on the disk and that the folder may be written to.",
    )
    .at(folder.display().to_string())
}
