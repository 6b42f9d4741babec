//! What happens, told to every page that is open; and the watch over files that an editor may change.

use super::tasks::Progress;
use super::workbench::Workbench;
use axum::response::sse;
use serde::Serialize;
use std::convert::Infallible;
use std::sync::Arc;
use std::time::Duration;
use tokio_stream::wrappers::BroadcastStream;
use tokio_stream::{Stream, StreamExt as _};

/// How often the files of open jobs are looked at.
const GLANCE: Duration = Duration::from_millis(400);

/// Something that happened to a job.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Event {
    /// The job.
    pub(crate) job: String,
    /// What happened.
    #[serde(flatten)]
    pub(crate) told: Told,
}

/// What can happen.
#[derive(Debug, Clone, Serialize)]
#[serde(rename_all = "kebab-case", untagged)]
pub(crate) enum Told {
    /// Its files say something else than before.
    Changed {
        /// The state that they have now.
        revision: String,
        /// Changes that can be taken back.
        undo: usize,
        /// Changes that can be made again.
        redo: usize,
    },
    /// The answers of a state are there.
    Answered {
        /// The state.
        revision: String,
    },
    /// A task has come further.
    Progress {
        /// How far it is.
        progress: Progress,
    },
}

impl Told {
    /// The name of the event in the stream.
    fn name(&self) -> &'static str {
        match self {
            Self::Changed { .. } => "changed",
            Self::Answered { .. } => "answered",
            Self::Progress { .. } => "progress",
        }
    }
}

/// The events of one job, or of all.
pub(super) fn stream(
    workbench: &Arc<Workbench>,
    job: Option<String>,
) -> sse::Sse<impl Stream<Item = Result<sse::Event, Infallible>> + use<>> {
    let events = BroadcastStream::new(workbench.listen()).filter_map(move |event| {
        // A page that was too slow has missed some: the next one brings it up to date.
        let event = event.ok()?;
        let wanted = job.as_ref().is_none_or(|job| *job == event.job);
        let told = sse::Event::default().event(event.told.name());
        wanted
            .then(|| told.json_data(&event).ok().map(Ok))
            .flatten()
    });
    // The first line tells the page that it is heard.
    let begun = tokio_stream::once(Ok(sse::Event::default().comment("listening")));
    sse::Sse::new(begun.chain(events)).keep_alive(sse::KeepAlive::default())
}

/// Looks at the files of the jobs for as long as the program runs.
pub(super) async fn watch_the_disk(workbench: Arc<Workbench>) {
    loop {
        // A job that cannot be read is refused when somebody asks for it.
        let _ = workbench
            .blocking(|workbench| {
                for job in workbench.names() {
                    let _ = workbench.job(&job).and_then(|job| workbench.look(&job));
                }
            })
            .await;
        tokio::time::sleep(GLANCE).await;
    }
}
