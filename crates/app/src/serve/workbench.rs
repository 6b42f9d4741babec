//! The workbench: the folder with its jobs, what is being worked, and who listens.

use super::answering::{Answered, Answering};
use super::drawn::Drawn;
use super::events::{Event, Told};
use super::lock;
use super::page::Plans;
use super::refusal::Refusal;
use super::store::{Job, Seen, disk, is_name};
use super::tasks::Tasks;
use super::walked::{FirstLook, first_looks};
use crate::outcome::Complaint;
use design::Standing;
use papers::pictures::{Group, groups};
use serde::Serialize;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::time::Duration;
use tokio::sync::broadcast;

/// What the program keeps beside the jobs: journals and papers.
const OWN_FOLDER: &str = ".gatewright";
/// Events that a slow listener may be behind.
const BEHIND: usize = 256;
/// The longest that somebody waits for answers.
const PATIENCE: Duration = Duration::from_mins(1);

/// The workbench.
pub(crate) struct Workbench {
    folder: PathBuf,
    port: u16,
    jobs: Mutex<BTreeMap<String, Arc<Job>>>,
    answering: Answering,
    tasks: Tasks,
    pictured: Drawn<Vec<Group>>,
    looked: Drawn<Vec<FirstLook>>,
    plans: Plans,
    events: broadcast::Sender<Event>,
}

/// A line in the list of jobs.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct JobLine {
    /// Name of its folder.
    pub(crate) name: String,
    /// What it is called.
    pub(crate) title: String,
    /// When one of its files was written last.
    pub(crate) touched: String,
    /// Problems of its files.
    pub(crate) problems: usize,
    /// The answers of this state are there; else the counts are those of an earlier one, or nothing.
    pub(crate) ready: bool,
    /// Findings that hold.
    pub(crate) holds: usize,
    /// Findings that fail, or do so within their tolerances.
    pub(crate) fails: usize,
    /// Findings that wait for a fact, or lie outside what the tool can answer.
    pub(crate) unknown: usize,
    /// The worst of what does not hold, as a sentence.
    pub(crate) worst: Option<String>,
    /// Why it cannot be opened.
    pub(crate) refused: Option<serde_json::Value>,
}

impl Workbench {
    /// Opens the folder of jobs.
    pub(super) fn open(folder: &Path, port: u16) -> Result<Self, Complaint> {
        let own = folder.join(OWN_FOLDER);
        std::fs::create_dir_all(&own)
            .map_err(|error| Complaint::about(&own, format_args!("cannot be made ({error})")))?;
        Ok(Self {
            folder: folder.to_path_buf(),
            port,
            jobs: Mutex::default(),
            answering: Answering::default(),
            tasks: Tasks::default(),
            pictured: Drawn::default(),
            looked: Drawn::default(),
            plans: Plans::default(),
            events: broadcast::Sender::new(BEHIND),
        })
    }

    /// The port that is listened at.
    pub(super) fn port(&self) -> u16 {
        self.port
    }

    /// The folder of jobs.
    pub(crate) fn folder(&self) -> &Path {
        &self.folder
    }

    /// What is being worked.
    pub(super) fn answering(&self) -> &Answering {
        &self.answering
    }

    /// Long work.
    pub(super) fn tasks(&self) -> &Tasks {
        &self.tasks
    }

    /// The pictures of a state of a job.
    pub(crate) fn pictured(&self, seen: &Seen) -> Result<Arc<Vec<Group>>, Refusal> {
        self.pictured.of(seen, groups)
    }

    /// The drawings that pages look at.
    pub(super) fn plans(&self) -> &Plans {
        &self.plans
    }

    /// Begins to answer and to draw a state that is about to be kept; nobody is told before it is.
    pub(super) fn foresee(&self, job: &Arc<Job>, seen: &Arc<Seen>) {
        self.answering.foresee(job, seen);
        self.plans.foresee(job.name(), seen);
    }

    /// A first look at the walks past each gate of a state of a job.
    pub(super) fn looked(&self, seen: &Seen) -> Result<Arc<Vec<FirstLook>>, Refusal> {
        self.looked.of(seen, first_looks)
    }

    /// Does something that reads or writes files, or takes long, where nobody waits behind it.
    pub(crate) async fn blocking<T: Send + 'static>(
        self: &Arc<Self>,
        work: impl FnOnce(&Self) -> T + Send + 'static,
    ) -> Result<T, Refusal> {
        let workbench = self.clone();
        tokio::task::spawn_blocking(move || work(&workbench))
            .await
            .map_err(|_| {
                Refusal::failed(
                    "The program came upon something that it was not made for.",
                    "Take back the last change. What was kept is kept.",
                )
            })
    }

    /// Names of the folders with a site file, in order.
    pub(crate) fn names(&self) -> Vec<String> {
        let Ok(entries) = std::fs::read_dir(&self.folder) else {
            return Vec::new();
        };
        let mut names: Vec<String> = entries
            .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
            .filter(|name| is_name(name) && self.folder.join(name).join(disk::SITE_FILE).is_file())
            .collect();
        names.sort();
        names
    }

    /// A job by its name.
    pub(crate) fn job(&self, name: &str) -> Result<Arc<Job>, Refusal> {
        let folder = self.folder.join(name);
        if !is_name(name) || !folder.join(disk::SITE_FILE).is_file() {
            lock(&self.jobs).remove(name);
            return Err(Refusal::absent(
                "There is no such job in this folder.",
                "Choose one from the list of jobs at /.",
            )
            .at(name)
            .expected("the name of a folder with a site.toml in it"));
        }
        let make = || Arc::new(Job::new(name, folder, self.own(&format!("{name}.journal"))));
        Ok(lock(&self.jobs)
            .entry(name.to_owned())
            .or_insert_with(make)
            .clone())
    }

    /// A path among what the program keeps for itself.
    pub(crate) fn own(&self, name: &str) -> PathBuf {
        self.folder.join(OWN_FOLDER).join(name)
    }

    /// What the files of a job say now; its answers begin to be worked where they are not known.
    pub(crate) fn look(&self, job: &Arc<Job>) -> Result<Arc<Seen>, Refusal> {
        let seen = job.look()?;
        self.noticed(job, &seen);
        Ok(seen)
    }

    /// Tells everybody of a state that is new, and has its answers worked.
    pub(crate) fn noticed(&self, job: &Arc<Job>, seen: &Arc<Seen>) {
        if self.answering.want(job, seen) {
            self.tell(Event {
                job: job.name().to_owned(),
                told: Told::Changed {
                    revision: seen.revision.clone(),
                    undo: seen.undo,
                    redo: seen.redo,
                },
            });
        }
    }

    /// Tells everybody who listens.
    pub(crate) fn tell(&self, event: Event) {
        // Nobody may be listening.
        let _ = self.events.send(event);
    }

    /// Listens from now on.
    pub(crate) fn listen(&self) -> broadcast::Receiver<Event> {
        self.events.subscribe()
    }

    /// The answers to what the files of a job say now, once they are there.
    pub(crate) async fn answered(
        self: &Arc<Self>,
        name: &str,
    ) -> Result<(Arc<Seen>, Arc<Answered>), Refusal> {
        let name = name.to_owned();
        let job = self.blocking(move |bench| bench.job(&name)).await??;
        let mut answered = job.answered().subscribe();
        let begun = tokio::time::Instant::now();
        loop {
            let looked_at = job.clone();
            let seen = self.blocking(move |bench| bench.look(&looked_at)).await??;
            let known = answered.borrow_and_update().clone();
            if let Some(known) = known.filter(|known| known.revision == seen.revision) {
                return Ok((seen, known));
            }
            let left = PATIENCE.saturating_sub(begun.elapsed());
            if !matches!(
                tokio::time::timeout(left, answered.changed()).await,
                Ok(Ok(()))
            ) {
                return Err(Refusal::failed(
                    "The answers are not there yet.",
                    "Ask again: they are still being worked.",
                ));
            }
        }
    }

    /// The jobs, the one that was touched last first.
    pub(crate) fn jobs(&self) -> Vec<JobLine> {
        let mut lines: Vec<JobLine> = self.names().iter().map(|name| self.line(name)).collect();
        lines.sort_by(|one, other| other.touched.cmp(&one.touched));
        lines
    }

    fn line(&self, name: &str) -> JobLine {
        let mut line = JobLine {
            name: name.to_owned(),
            title: name.to_owned(),
            touched: touched(&self.folder.join(name)),
            problems: 0,
            ready: false,
            holds: 0,
            fails: 0,
            unknown: 0,
            worst: None,
            refused: None,
        };
        let seen = self.job(name).and_then(|job| Ok((self.look(&job)?, job)));
        let (seen, job) = match seen {
            Ok(found) => found,
            Err(refusal) => {
                line.refused = Some(refusal.to_json());
                return line;
            }
        };
        line.problems = seen.to_be_put_right();
        if let Some(site) = &seen.site {
            line.title = site.site.name.to_string();
        }
        if let Some(known) = job.answered().borrow().as_ref() {
            line.ready = known.revision == seen.revision;
            for finding in &known.answers.findings {
                match finding.standing {
                    Standing::Fails | Standing::TurnsWithinTolerance => line.fails += 1,
                    Standing::Unknown | Standing::Outside => line.unknown += 1,
                    Standing::Holds => line.holds += 1,
                    Standing::Figure => {}
                }
            }
            let worst = known.answers.findings.first();
            line.worst = worst
                .filter(|finding| !matches!(finding.standing, Standing::Holds | Standing::Figure))
                .map(|finding| finding.sentence.clone());
        }
        line
    }
}

/// When one of the files in a folder was written last.
fn touched(folder: &Path) -> String {
    let entries = std::fs::read_dir(folder).into_iter().flatten();
    entries
        .filter_map(|entry| entry.ok()?.metadata().ok()?.modified().ok())
        .max()
        .and_then(|time| jiff::Timestamp::try_from(time).ok())
        .map_or_else(String::new, |time| {
            time.round(jiff::Unit::Second).unwrap_or(time).to_string()
        })
}
