//! One job: what its files say now, and changes that are kept before anybody is told so.

use super::disk::{self, Files, Stamp, Unfinished};
use super::edit::{Edit, all_made};
use super::journal::Journal;
use super::named::names_only_what_is_there;
use crate::serve::answering::Answered;
use crate::serve::lock;
use crate::serve::refusal::Refusal;
use axum::http::StatusCode;
use quantity::UnitSystem;
use serde_json::json;
use site::{Code, KnownParts, Problem, Problems, Severity, Site, Understood};
use std::collections::VecDeque;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use tokio::sync::watch;

/// The text at the other end of a step.
type TextThere = fn(&Journal) -> Option<String>;
/// Writes a step into the journal.
type Written = fn(&mut Journal) -> std::io::Result<()>;

/// Told what stands there next before it is written.
type Foreseen<'f> = &'f dyn Fn(&Arc<Seen>);

/// A job.
pub(crate) struct Job {
    name: String,
    folder: PathBuf,
    journal: PathBuf,
    open: Mutex<Option<Open>>,
    answered: watch::Sender<Option<Arc<Answered>>>,
    /// Answers that pages may still show, the newest first.
    shown: Mutex<VecDeque<Arc<Answered>>>,
}

/// States whose answers a page may still show while it asks for newer ones.
const SHOWN: usize = 4;

/// What is held of a job that was looked at.
struct Open {
    journal: Journal,
    seen: Arc<Seen>,
    stamp: Stamp,
}

/// What the files of a job say.
#[derive(Debug, Clone)]
pub(crate) struct Seen {
    /// Digits that tell this state of the files from every other.
    pub(crate) revision: String,
    /// The files.
    pub(crate) files: Arc<Files>,
    /// The site, as far as it can be read.
    pub(crate) site: Option<Arc<Site>>,
    /// What is wrong or doubtful.
    pub(crate) problems: Problems,
    /// Changes that can be taken back.
    pub(crate) undo: usize,
    /// Changes that can be made again.
    pub(crate) redo: usize,
    /// What was found in the files beside it.
    known: Arc<Mutex<KnownParts>>,
}

impl Seen {
    /// What a site file in this folder says; where it names other files than were read with it, those are read.
    fn of(
        folder: &Path,
        files: Files,
        (undo, redo): (usize, usize),
        known: &Arc<Mutex<KnownParts>>,
    ) -> Self {
        let mut parts = lock(known);
        let mut load = |files: &Files| {
            let (main, beside) = (files.main.clone(), files.beside.clone());
            let loaded = site::load_knowing(main, beside, &mut parts);
            (files.naming_others(folder, parts.files_named()), loaded)
        };
        let (others, loaded) = load(&files);
        let (files, loaded) = match others {
            Some(others) => {
                let (_, loaded) = load(&others);
                (others, loaded)
            }
            None => (files, loaded),
        };
        drop(parts);
        Self {
            revision: files.revision(),
            files: Arc::new(files),
            site: loaded.site.map(Arc::new),
            problems: loaded.problems,
            undo,
            redo,
            known: known.clone(),
        }
    }

    /// How many things are to be put right in the files.
    pub(crate) fn to_be_put_right(&self) -> usize {
        self.problems.len() + usize::from(self.files.walks_unread().is_some())
    }

    /// The text of the site file.
    pub(crate) fn text(&self) -> &str {
        &self.files.main.text
    }

    /// What the files would say with these changes, and how each is understood; nothing is kept.
    pub(crate) fn with(
        &self,
        folder: &Path,
        edits: &[Edit],
    ) -> Result<(Self, Vec<Option<Understood>>), Refusal> {
        let (text, understood) = all_made(self.text(), edits, self.units())?;
        let files = self.files.with_text(folder, text);
        let seen = Self::of(folder, files, (self.undo, self.redo), &self.known);
        if seen.site.is_none() && self.site.is_some() {
            return Err(match seen.problems.iter().next() {
                Some(problem) => Refusal::problem(problem),
                None => Refusal::unusable(
                    "With this change the site cannot be read any more.",
                    "Take another value.",
                ),
            });
        }
        let zero = |problem: &&Problem| {
            problem.code == Code::Zero && edits.iter().any(|edit| edit.wrote(problem))
        };
        if let Some(zero) = seen.problems.iter().find(zero) {
            let edit = edits.iter().find(|edit| edit.wrote(zero));
            return Err(Refusal::problem(zero).at(edit.map_or("", Edit::path)));
        }
        if edits.iter().any(Edit::removes) {
            names_only_what_is_there(&self.problems, &seen.problems)?;
        }
        // A record that is new has to read; what a changed value does elsewhere is said and left to whoever changes it.
        let adds = edits.iter().any(Edit::adds);
        match seen.new_problem(self).filter(|_| adds) {
            Some(problem) => Err(Refusal::problem(problem)),
            None => Ok((seen, understood)),
        }
    }

    /// A problem that was not there before.
    fn new_problem(&self, before: &Self) -> Option<&Problem> {
        let same = |one: &Problem, other: &Problem| {
            (one.code, &one.path, &one.what) == (other.code, &other.path, &other.what)
        };
        self.problems.iter().find(|problem| {
            problem.severity == Severity::Wrong
                && !before.problems.iter().any(|known| same(known, problem))
        })
    }

    /// The units that the site is written in.
    pub(crate) fn units(&self) -> UnitSystem {
        self.site
            .as_ref()
            .map_or(UnitSystem::UsCustomary, |site| site.site.unit_system())
    }
}

impl Job {
    /// The job in a folder, with its journal beside the jobs.
    pub(crate) fn new(name: &str, folder: PathBuf, journal: PathBuf) -> Self {
        Self {
            name: name.to_owned(),
            folder,
            journal,
            open: Mutex::new(None),
            answered: watch::Sender::new(None),
            shown: Mutex::default(),
        }
    }

    /// Its name.
    pub(crate) fn name(&self) -> &str {
        &self.name
    }

    /// Its folder.
    pub(crate) fn folder(&self) -> &Path {
        &self.folder
    }

    /// The answers that were worked last.
    pub(crate) fn answered(&self) -> &watch::Sender<Option<Arc<Answered>>> {
        &self.answered
    }

    /// These answers were told, and others take their place.
    pub(crate) fn told(&self, before: Option<Arc<Answered>>) {
        let mut shown = lock(&self.shown);
        shown.extend(before);
        while shown.len() > SHOWN {
            shown.pop_front();
        }
    }

    /// The answers of a state that were told not long ago.
    pub(crate) fn shown(&self, revision: &str) -> Option<Arc<Answered>> {
        let shown = lock(&self.shown);
        let of_it = |answered: &&Arc<Answered>| answered.revision == revision;
        shown.iter().rev().find(of_it).cloned()
    }

    /// What its files say now. Files that nobody has touched are not read again.
    pub(crate) fn look(&self) -> Result<Arc<Seen>, Refusal> {
        let mut open = lock(&self.open);
        if let Some(open) = open.as_ref()
            && open.stamp == open.seen.files.stamp(&self.folder)
        {
            return Ok(open.seen.clone());
        }
        self.read(&mut open).map(|open| open.seen.clone())
    }

    /// Makes changes to the state `expects`, keeps them, and tells how each is understood. `foreseen` is told of the state
    /// before it is on the disk, so that its answers may be worked meanwhile.
    pub(crate) fn edit(
        &self,
        (expects, edits): (&str, &[Edit]),
        foreseen: impl Fn(&Arc<Seen>),
    ) -> Result<(Arc<Seen>, Vec<Option<Understood>>), Refusal> {
        let mut open = lock(&self.open);
        let open = self.read(&mut open)?;
        expected(expects, open)?;
        let (next, understood) = open.seen.with(&self.folder, edits)?;
        if next.text() == open.seen.text() {
            return Ok((open.seen.clone(), understood));
        }
        let next = Arc::new(next);
        foreseen(&next);
        let kept = self.keep(open, &next, |journal| journal.change(next.text()))?;
        Ok((kept, understood))
    }

    /// Takes the last change back.
    pub(crate) fn undo(
        &self,
        expects: Option<&str>,
        foreseen: impl Fn(&Arc<Seen>),
    ) -> Result<Arc<Seen>, Refusal> {
        let none = "There is no change to take back.";
        self.step(expects, (Journal::undone, Journal::undo), (none, &foreseen))
    }

    /// Makes the next change again.
    pub(crate) fn redo(
        &self,
        expects: Option<&str>,
        foreseen: impl Fn(&Arc<Seen>),
    ) -> Result<Arc<Seen>, Refusal> {
        let none = "There is no change to make again.";
        self.step(expects, (Journal::redone, Journal::redo), (none, &foreseen))
    }

    /// Goes to the text before or after, once the journal has its line.
    fn step(
        &self,
        expects: Option<&str>,
        (text, written): (TextThere, Written),
        (none, foreseen): (&'static str, Foreseen<'_>),
    ) -> Result<Arc<Seen>, Refusal> {
        let mut open = lock(&self.open);
        let open = self.read(&mut open)?;
        expects.map_or(Ok(()), |expects| expected(expects, open))?;
        let text = text(&open.journal)
            .ok_or_else(|| Refusal::new(StatusCode::CONFLICT, none, "Go on from here."))?;
        let files = open.seen.files.with_text(&self.folder, text);
        let next = Arc::new(Seen::of(&self.folder, files, (0, 0), &open.seen.known));
        foreseen(&next);
        self.keep(open, &next, written)
    }

    /// Reads the files again, and writes into the journal what somebody else has changed.
    fn read<'a>(&self, open: &'a mut Option<Open>) -> Result<&'a mut Open, Refusal> {
        // The stamp comes first: what is written after it is found the next time.
        let before = disk::written(&self.folder.join(disk::SITE_FILE));
        let known = open.as_ref().map(|open| &*open.seen.files);
        let files = Files::read(&self.folder, known)?;
        let whole = files.stamp(&self.folder);
        let stamp = if whole.first() == Some(&before) {
            whole
        } else {
            Stamp::new()
        };
        let known = open.take();
        let is_known = known
            .as_ref()
            .is_some_and(|known| *known.seen.files == files);
        let read = match known {
            Some(known) if is_known => Open { stamp, ..known },
            Some(Open {
                mut journal, seen, ..
            }) => {
                journal
                    .found(&files.main.text)
                    .map_err(|error| not_kept(&error))?;
                let seen = Arc::new(Seen::of(&self.folder, files, journal.counts(), &seen.known));
                Open {
                    journal,
                    seen,
                    stamp,
                }
            }
            None => {
                let journal = Journal::open(&self.journal, &files.main.text)
                    .map_err(|error| not_kept(&error))?;
                let seen = Arc::new(Seen::of(
                    &self.folder,
                    files,
                    journal.counts(),
                    &Arc::default(),
                ));
                Open {
                    journal,
                    seen,
                    stamp,
                }
            }
        };
        Ok(open.insert(read))
    }

    /// Puts the next text in the place of the site file once the journal has its line; both are brought to the disk together.
    fn keep(
        &self,
        open: &mut Open,
        next: &Arc<Seen>,
        write_line: impl FnOnce(&mut Journal) -> std::io::Result<()>,
    ) -> Result<Arc<Seen>, Refusal> {
        let (folder, text) = (&self.folder, next.text());
        let (unfinished, line) = std::thread::scope(|scope| {
            let unfinished = scope.spawn(|| Unfinished::write(folder, text));
            let line = write_line(&mut open.journal);
            (unfinished.join(), line)
        });
        line.map_err(|error| not_kept(&error))?;
        let unfinished = unfinished.unwrap_or_else(|why| std::panic::resume_unwind(why));
        if let Err(error) = unfinished.and_then(|unfinished| unfinished.take_its_place()) {
            open.journal.void().map_err(|error| not_kept(&error))?;
            return Err(not_kept(&error));
        }
        let (undo, redo) = open.journal.counts();
        open.stamp = next.files.stamp(&self.folder);
        open.seen = Arc::new(Seen {
            undo,
            redo,
            ..Seen::clone(next)
        });
        Ok(open.seen.clone())
    }
}

/// Refuses changes to a state that is not there any more.
fn expected(expects: &str, open: &Open) -> Result<(), Refusal> {
    if expects == open.seen.revision {
        Ok(())
    } else {
        Err(stale(&open.seen))
    }
}

/// What was looked at is not there any more; this is what stands there now.
pub(crate) fn stale(now: &Seen) -> Refusal {
    Refusal::new(
        StatusCode::CONFLICT,
        "The site was changed elsewhere since you looked at it.",
        "Look at what stands there now, and make the change again if it is still meant.",
    )
    .at("expects")
    .expected(now.revision.clone())
    .now(json!({
        "revision": now.revision,
        "text": now.text(),
        "undo": now.undo,
        "redo": now.redo,
    }))
}

fn not_kept(error: &std::io::Error) -> Refusal {
    Refusal::failed(
        format!("The change is not kept: the disk refuses it ({error})."),
        "See that there is room on the disk and that the folder may be written to.",
    )
}
