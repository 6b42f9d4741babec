//! Works the answers of the newest state of each job, one after the other, and keeps those of the last few states.

use super::drawn::UNREADABLE;
use super::events::{Event, Told};
use super::lock;
use super::page::Listed;
use super::store::{Job, Seen};
use super::workbench::Workbench;
use crate::command::{answer_by_walks, held_against, threads};
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
    /// The answers as the page lists them.
    pub(crate) listed: Listed,
}

/// What is waiting to be answered.
#[derive(Default)]
pub(crate) struct Answering {
    waiting: Mutex<VecDeque<Waiting>>,
    bell: Condvar,
    kept: Mutex<VecDeque<(String, Arc<Answers>)>>,
    /// What simulations found: an edit costs what it touches.
    remembered: Mutex<Remembered>,
}

/// A state that is to be answered.
struct Waiting {
    job: Arc<Job>,
    seen: Arc<Seen>,
    /// It is on the disk: its answers are told. Before that they are only worked.
    is_kept: bool,
}

impl Waiting {
    fn is(&self, job: &Arc<Job>, seen: &Seen) -> bool {
        Arc::ptr_eq(&self.job, job) && self.seen.revision == seen.revision
    }
}

impl Answering {
    /// Has a state answered, before all others; false where it is already, or waits.
    pub(super) fn want(&self, job: &Arc<Job>, seen: &Arc<Seen>) -> bool {
        let mut waiting = lock(&self.waiting);
        let is_told = |known: &Arc<Answered>| known.revision == seen.revision;
        if job.answered().borrow().as_ref().is_some_and(is_told) {
            return false;
        }
        self.first(&mut waiting, (job, seen), true)
    }

    /// Begins to answer a state that is about to be kept; nobody is told before it is.
    pub(super) fn foresee(&self, job: &Arc<Job>, seen: &Arc<Seen>) {
        self.first(&mut lock(&self.waiting), (job, seen), false);
    }

    /// Puts a state before all others, in the place of the one of the same job; true where it did not wait to be told before.
    fn first(
        &self,
        waiting: &mut VecDeque<Waiting>,
        (job, seen): (&Arc<Job>, &Arc<Seen>),
        is_kept: bool,
    ) -> bool {
        let was_to_be_told = waiting.iter().any(|one| one.is(job, seen) && one.is_kept);
        waiting.retain(|one| !Arc::ptr_eq(&one.job, job));
        waiting.push_front(Waiting {
            job: job.clone(),
            seen: seen.clone(),
            is_kept: is_kept || was_to_be_told,
        });
        self.bell.notify_one();
        !was_to_be_told
    }

    /// The next state that waits; it stays in the queue until it is answered.
    fn next(&self) -> (Arc<Job>, Arc<Seen>) {
        let mut waiting = lock(&self.waiting);
        loop {
            if let Some(one) = waiting.front() {
                return (one.job.clone(), one.seen.clone());
            }
            waiting = self
                .bell
                .wait(waiting)
                .unwrap_or_else(std::sync::PoisonError::into_inner);
        }
    }

    /// A state was worked: whether it is to be told. One that is not kept yet is wanted again once it is.
    fn is_to_be_told(&self, job: &Arc<Job>, seen: &Seen) -> bool {
        let mut waiting = lock(&self.waiting);
        let is_to_be_told = waiting.iter().any(|one| one.is(job, seen) && one.is_kept);
        if !is_to_be_told {
            waiting.retain(|one| !one.is(job, seen));
        }
        is_to_be_told
    }

    fn done(&self, job: &Arc<Job>, seen: &Seen) {
        lock(&self.waiting).retain(|one| !one.is(job, seen));
    }

    /// The answers of a state, those of walks that were kept and still hold in the place of the quick ones.
    pub(super) fn worked(&self, seen: &Seen) -> Result<Arc<Answers>, String> {
        let Some(site) = &seen.site else {
            return Err(UNREADABLE.to_owned());
        };
        let mut remembered = lock(&self.remembered);
        let asked = || {
            let mut answers = design::answers_remembering(site, threads(), &mut remembered);
            let walks = held_against(site, seen.files.kept_walks());
            answer_by_walks(&mut answers, site, &walks);
            answers
        };
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
                let answering = workbench.answering();
                let (job, seen) = answering.next();
                let worked = answers_of(answering, &seen);
                if answering.is_to_be_told(&job, &seen) {
                    tell(&workbench, (&job, &seen), worked);
                    answering.done(&job, &seen);
                }
            }
        })
        .map(drop)
        .map_err(|error| Complaint(format!("No thread can be had ({error}).")))
}

/// The answers of a state, which may be known from before.
fn answers_of(answering: &Answering, seen: &Seen) -> Result<Arc<Answers>, String> {
    if let Some(known) = answering.known(&seen.revision) {
        return Ok(known);
    }
    let worked = answering.worked(seen);
    worked.inspect(|answers| answering.keep(&seen.revision, answers))
}

/// Puts the answers of a state in the place of those before, and tells everybody.
fn tell(
    workbench: &Workbench,
    (job, seen): (&Arc<Job>, &Arc<Seen>),
    worked: Result<Arc<Answers>, String>,
) {
    let (answers, refused) = match worked {
        Ok(answers) => (answers, None),
        Err(why) => (Arc::new(nothing()), Some(why)),
    };
    let before = job.answered().borrow().clone();
    let turned = match &before {
        Some(before) if before.refused.is_none() && refused.is_none() => {
            turned(&before.answers, &answers)
        }
        _ => BTreeMap::new(),
    };
    let unread = seen.files.walks_unread();
    let told = (&*answers, &turned);
    let listed = Listed::of(job.name(), told, unread.as_deref(), before.as_deref());
    let answered = Arc::new(Answered {
        revision: seen.revision.clone(),
        answers,
        turned,
        refused,
        listed,
    });
    job.told(before);
    job.answered().send_replace(Some(answered));
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
