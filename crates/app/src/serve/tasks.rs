//! Long work: how far it is, and a way to stop it.

use super::events::{Event, Told};
use super::lock;
use super::refusal::Refusal;
use super::workbench::Workbench;
use crate::outcome::Complaint;
use design::walk::Stop;
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeMap;
use std::panic::AssertUnwindSafe;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex};

/// Tasks whose end is remembered.
const REMEMBERED: usize = 100;

/// All tasks since the start.
#[derive(Default)]
pub(super) struct Tasks {
    last: AtomicU64,
    known: Mutex<BTreeMap<u64, Arc<Task>>>,
}

/// A task.
pub(super) struct Task {
    id: u64,
    job: String,
    what: &'static str,
    stop: Stop,
    progress: Mutex<Progress>,
}

/// How far a task is.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Progress {
    /// Its number.
    pub(crate) task: u64,
    /// The job that it works for.
    pub(crate) job: String,
    /// What it makes.
    pub(crate) what: &'static str,
    /// Where it stands.
    pub(crate) state: TaskState,
    /// Steps that are done.
    pub(crate) done: u64,
    /// All steps.
    pub(crate) of: u64,
    /// What it does now, or why it stopped.
    pub(crate) says: String,
    /// What it gave.
    pub(crate) gives: Value,
}

/// Where a task stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum TaskState {
    /// It goes on.
    Running,
    /// It is through.
    Done,
    /// Somebody stopped it.
    Stopped,
    /// It could not be done.
    Failed,
}

/// Tells how far a task is, from inside.
pub(super) struct Steps<'a> {
    workbench: &'a Workbench,
    task: &'a Task,
    begun: bool,
}

impl Steps<'_> {
    /// What stops the task.
    pub(super) fn stop(&self) -> &Stop {
        &self.task.stop
    }

    /// So much is done of so much, and this goes on.
    pub(super) fn come(&self, (done, of): (u64, u64), says: &str) {
        self.task.tell(self.workbench, |progress| {
            (progress.done, progress.of) = (done, of);
            says.clone_into(&mut progress.says);
        });
    }

    /// The step before is done, and this one begins; refuses where somebody has stopped the task.
    pub(super) fn next(&mut self, says: &str) -> Result<(), Complaint> {
        if self.task.stop.is_asked() {
            return Err(stopped());
        }
        let done = u64::from(self.begun);
        self.begun = true;
        self.task.tell(self.workbench, |progress| {
            progress.done += done;
            says.clone_into(&mut progress.says);
        });
        Ok(())
    }
}

/// Why a task that was stopped gives nothing.
pub(super) fn stopped() -> Complaint {
    Complaint("It was stopped.".to_owned())
}

impl Task {
    fn tell(&self, workbench: &Workbench, change: impl FnOnce(&mut Progress)) {
        let mut progress = lock(&self.progress);
        change(&mut progress);
        let now = progress.clone();
        drop(progress);
        workbench.tell(Event {
            job: self.job.clone(),
            told: Told::Progress { progress: now },
        });
    }
}

impl Tasks {
    /// How far a task is.
    pub(super) fn progress(&self, id: u64) -> Result<Progress, Refusal> {
        self.task(id).map(|task| lock(&task.progress).clone())
    }

    /// Has a task stop.
    pub(super) fn stop(&self, id: u64) -> Result<Progress, Refusal> {
        let task = self.task(id)?;
        task.stop.ask();
        Ok(lock(&task.progress).clone())
    }

    fn task(&self, id: u64) -> Result<Arc<Task>, Refusal> {
        lock(&self.known).get(&id).cloned().ok_or_else(|| {
            Refusal::absent(
                "There is no such task, or it ended long ago.",
                "Begin it again.",
            )
            .at(id.to_string())
        })
    }

    /// The task of this sort that goes on for a job.
    pub(super) fn running(&self, job: &str, what: &str) -> Option<u64> {
        going_on(&lock(&self.known), job, what)
    }

    /// Begins a task on a thread of its own, unless one of this sort goes on for the job; returns its number.
    pub(super) fn begin(
        workbench: &Arc<Workbench>,
        job: &str,
        (what, of): (&'static str, u64),
        work: impl FnOnce(&mut Steps<'_>) -> Result<Value, Complaint> + Send + 'static,
    ) -> Result<u64, Refusal> {
        let tasks = workbench.tasks();
        let mut known = lock(&tasks.known);
        if let Some(id) = going_on(&known, job, what) {
            return Ok(id);
        }
        let id = tasks.last.fetch_add(1, Ordering::Relaxed) + 1;
        let task = Arc::new(Task {
            id,
            job: job.to_owned(),
            what,
            stop: Stop::default(),
            progress: Mutex::new(Progress {
                task: id,
                job: job.to_owned(),
                what,
                state: TaskState::Running,
                done: 0,
                of,
                says: String::new(),
                gives: Value::Null,
            }),
        });
        known.insert(id, task.clone());
        while known.len() > REMEMBERED {
            known.pop_first();
        }
        drop(known);
        let workbench = workbench.clone();
        std::thread::Builder::new()
            .name(what.to_owned())
            .spawn(move || run(&workbench, &task, work))
            .map(|_| id)
            .map_err(|error| {
                Refusal::failed(
                    format!("No thread can be had ({error})."),
                    "Close other programs and begin again.",
                )
            })
    }
}

fn going_on(known: &BTreeMap<u64, Arc<Task>>, job: &str, what: &str) -> Option<u64> {
    let goes_on = |task: &&Arc<Task>| {
        task.job == job && task.what == what && lock(&task.progress).state == TaskState::Running
    };
    known.values().find(goes_on).map(|task| task.id)
}

fn run(
    workbench: &Workbench,
    task: &Task,
    work: impl FnOnce(&mut Steps<'_>) -> Result<Value, Complaint>,
) {
    let mut steps = Steps {
        workbench,
        task,
        begun: false,
    };
    let ended = std::panic::catch_unwind(AssertUnwindSafe(|| work(&mut steps)));
    task.tell(workbench, |progress| match ended {
        Ok(Ok(gives)) => {
            progress.state = TaskState::Done;
            progress.done = progress.of;
            progress.says.clear();
            progress.gives = gives;
        }
        Ok(Err(why)) => {
            progress.state = if task.stop.is_asked() {
                TaskState::Stopped
            } else {
                TaskState::Failed
            };
            progress.says = why.to_string();
        }
        Err(_) => {
            progress.state = TaskState::Failed;
            "The program came upon something in this site that it was not made for."
                .clone_into(&mut progress.says);
        }
    });
}
