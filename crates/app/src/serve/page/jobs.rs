//! The jobs of the folder.

use super::shell::{Place, Shell};
use crate::serve::refusal::Refusal;
use crate::serve::workbench::Workbench;
use axum::extract::State;
use maud::{Markup, html};
use std::sync::Arc;

/// The list of jobs.
pub(super) async fn page(State(workbench): State<Arc<Workbench>>) -> Result<Markup, Refusal> {
    let jobs = workbench.blocking(Workbench::jobs).await?;
    let shell = Shell {
        title: "Jobs",
        place: Place::Jobs,
        ..Shell::default()
    };
    Ok(shell.around(&html! {
        h1 { "Jobs" }
        ul { @for job in &jobs { li { a href={ "/jobs/" (job.name) } { (job.title) } } } }
    }))
}
