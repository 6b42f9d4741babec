//! New jobs: from a survey, from another job, or from a text.

use super::jobs::state;
use crate::serve::body::Sent;
use crate::serve::refusal::Refusal;
use crate::serve::store::{checked, disk, is_name};
use crate::serve::survey::Survey;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use site::SourceFile;
use std::collections::BTreeMap;
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
    /// Files beside a site file that is brought from elsewhere: parts, prices, weather, by their names.
    #[serde(default)]
    files: BTreeMap<String, String>,
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
pub(super) async fn survey() -> Json<Value> {
    Json(Survey::questions())
}

/// The text of a site file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Text {
    text: String,
}

/// The files beside it that a site file asks for, each with what it is for.
pub(super) async fn files(Sent(Text { text }): Sent<Text>) -> Json<Value> {
    let named = site::files_named_for(&text).into_iter();
    let named = named.map(|(name, what_for)| json!({ "name": name, "for": what_for }));
    Json(named.collect())
}

fn made(workbench: &Workbench, new: &New) -> Result<(), Refusal> {
    let name = checked(&new.name)?;
    let (text, beside) = match &new.from {
        Begins::Survey(survey) => (survey.site()?, Vec::new()),
        Begins::Text(text) => (text.clone(), brought(&new.files)?),
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

/// Files that come with a text, each with a name that leads nowhere else.
fn brought(files: &BTreeMap<String, String>) -> Result<Vec<SourceFile>, Refusal> {
    files
        .iter()
        .map(|(name, text)| {
            if is_name(name) && name != disk::SITE_FILE {
                let (name, text) = (name.clone(), text.clone());
                return Ok(SourceFile { name, text });
            }
            Err(Refusal::unusable(
                "A file beside a site cannot have this name.",
                "Give it another name, and write that into the site file.",
            )
            .at(name.clone())
            .expected("a name without folders, such as parts.toml"))
        })
        .collect()
}

fn not_made(folder: &Path, error: &std::io::Error) -> Refusal {
    Refusal::failed(
        format!("The folder of the job cannot be filled ({error})."),
        "See that there is room on the disk and that the folder may be written to.",
    )
    .at(folder.display().to_string())
}
