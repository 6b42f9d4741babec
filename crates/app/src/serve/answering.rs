//! Works the answers of the newest state of each job, one after the other, and keeps those of the last few states.

use super::events::{Event, Told};
use super::lock;
use super::store::{Job, Seen};
use super::workbench::Workbench;
use crate::command::threads;
use crate::outcome::Complaint;
use design::{Answers, Remembered, Standing};
use std::collections::{BTreeMap, VecDeque};
use std::panic::AssertUnwindSafe;
use std::sync::{Arc, Condvar, Mutex};

/// States whose answers are kept, over all jobs: going back and forth costs nothing.
const KEPT: usize = 24;

/// The answers of one state of a job.
#[derive(Debug)]
pub(crate) struct Answered {
    /// The state.
    pub(crate) revision: String,
    /// The answers.
    pub(crate) answers: Arc<Answers>,
    /// Findings that stood otherwise in the state before, and how.
    pub(crate) turned: BTreeMap<String, Option<Standing>>,
    /// Why there are none, where the site cannot be answered.
    pub(crate) refused: Option<String>,
}

/// What is waiting to be answered.
#[derive(Default)]
pub(crate) struct Answering {
    waiting: Mutex<VecDeque<(Arc<Job>, Arc<Seen>)>>,
    bell: Condvar,
    kept: Mutex<VecDeque<(String, Arc<Answers>)>>,
    /// What simulations found: an edit costs what it touches.
    remembered: Mutex<Remembered>,
}

impl Answering {
    /// Has a state answered, before all others; false where it is already, or waits.
    pub(super) fn want(&self, job: &Arc<Job>, seen: &Arc<Seen>) -> bool {
        let mut waiting = lock(&self.waiting);
        let known = job.answered().borrow();
        if known
            .as_ref()
            .is_some_and(|known| known.revision == seen.revision)
        {
            return false;
        }
        drop(known);
        let old = waiting.iter().position(|(one, _)| Arc::ptr_eq(one, job));
        let same = old.is_some_and(|at| waiting[at].1.revision == seen.revision);
        if let Some(at) = old {
            waiting.remove(at);
        }
        waiting.push_front((job.clone(), seen.clone()));
        self.bell.notify_one();
        !same
    }

    /// The next state that waits; it stays in the queue until it is answered.
    fn next(&self) -> (Arc<Job>, Arc<Seen>) {
        let mut waiting = lock(&self.waiting);
        loop {
            if let Some((job, seen)) = waiting.front() {
                return (job.clone(), seen.clone());
            }
            waiting = self
                .bell
                .wait(waiting)
                .unwrap_or_else(std::sync::PoisonError::into_inner);
        }
    }

    fn done(&self, job: &Arc<Job>, seen: &Arc<Seen>) {
        lock(&self.waiting)
            .retain(|(one, state)| !(Arc::ptr_eq(one, job) && state.revision == seen.revision));
    }

    /// The answers of a state.
    pub(super) fn worked(&self, seen: &Seen) -> Result<Arc<Answers>, String> {
        let Some(site) = &seen.site else {
            return Err("The site file has no name or no code basis that can be read.".to_owned());
        };
        let mut remembered = lock(&self.remembered);
        let asked = || design::answers_remembering(site, threads(), &mut remembered);
        // Whatever a site brings out must not stop the workbench for the others.
        std::panic::catch_unwind(AssertUnwindSafe(asked))
            .map(Arc::new)
            .map_err(|_| "The program came upon something in this site that it was not made for. Take back the last change.".to_owned())
    }

    fn known(&self, revision: &str) -> Option<Arc<Answers>> {
        lock(&self.kept)
            .iter()
            .find(|(known, _)| known == revision)
            .map(|(_, answers)| answers.clone())
    }

    fn keep(&self, revision: &str, answers: &Arc<Answers>) {
        let mut kept = lock(&self.kept);
        kept.retain(|(known, _)| known != revision);
        kept.push_front((revision.to_owned(), answers.clone()));
        kept.truncate(KEPT);
    }
}

/// Starts the thread that answers.
pub(super) fn start(workbench: &Arc<Workbench>) -> Result<(), Complaint> {
    let workbench = workbench.clone();
    std::thread::Builder::new()
        .name("answers".to_owned())
        .spawn(move || {
            loop {
                let (job, seen) = workbench.answering().next();
                answer(&workbench, &job, &seen);
                workbench.answering().done(&job, &seen);
            }
        })
        .map(drop)
        .map_err(|error| Complaint(format!("No thread can be had ({error}).")))
}

/// Answers one state and tells everybody.
fn answer(workbench: &Workbench, job: &Arc<Job>, seen: &Arc<Seen>) {
    let known = workbench.answering().known(&seen.revision);
    let worked = match known {
        Some(known) => Ok(known),
        None => workbench
            .answering()
            .worked(seen)
            .inspect(|answers| workbench.answering().keep(&seen.revision, answers)),
    };
    let (answers, refused) = match worked {
        Ok(answers) => (answers, None),
        Err(why) => (Arc::new(nothing()), Some(why)),
    };
    let before = job.answered().borrow().clone();
    let turned = match before {
        Some(before) if before.refused.is_none() && refused.is_none() => {
            turned(&before.answers, &answers)
        }
        _ => BTreeMap::new(),
    };
    job.answered().send_replace(Some(Arc::new(Answered {
        revision: seen.revision.clone(),
        answers,
        turned,
        refused,
    })));
    workbench.tell(Event {
        job: job.name().to_owned(),
        told: Told::Answered {
            revision: seen.revision.clone(),
        },
    });
}

/// Findings that stand otherwise after than before, with how they stood; nothing for those that are new.
pub(super) fn turned(before: &Answers, after: &Answers) -> BTreeMap<String, Option<Standing>> {
    let stood: BTreeMap<String, Standing> = before
        .findings
        .iter()
        .map(|finding| (finding.name(), finding.standing))
        .collect();
    after
        .findings
        .iter()
        .filter_map(|finding| {
            let name = finding.name();
            let was = stood.get(&name).copied();
            (was != Some(finding.standing)).then_some((name, was))
        })
        .collect()
}

fn nothing() -> Answers {
    Answers {
        findings: Vec::new(),
        coverage: Vec::new(),
        looked_up_in_vain: Vec::new(),
    }
}
