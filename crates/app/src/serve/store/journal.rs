//! Every change of a site file, one line each, so that all of them can be undone, now or after a restart.
//!
//! A line is on the disk before the text takes the place of the file, and the file is on the disk before anybody is told that
//! a change is kept. After a sudden end, the file has either the state of the last line or the one before it: then the last
//! line is void.

use super::disk::sync_folder;
use super::splice::Splice;
use crate::folder::in_digits;
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use std::fs::{File, OpenOptions};
use std::io::{Read as _, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

/// One line.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", tag = "line")]
enum Line {
    /// The text when the journal began.
    Begin { text: String },
    /// A change made here, or found on the disk.
    Change {
        splice: Splice,
        found: bool,
        gives: String,
    },
    /// The last change was taken back.
    Undo { gives: String },
    /// The last change that was taken back was made again.
    Redo { gives: String },
    /// The line before this one never came into the file.
    Void,
}

/// The journal of one site file.
#[derive(Debug)]
pub(super) struct Journal {
    file: File,
    now: State,
    /// The state before the last line.
    before: Option<State>,
}

/// The text, and what can be taken back and made again.
#[derive(Debug, Clone, Default)]
struct State {
    text: String,
    changes: Vec<Splice>,
    /// How many of the changes are in the text.
    done: usize,
}

impl Journal {
    /// Opens the journal at `path` for a file that now has this text; begins one where there is none or it cannot be followed.
    pub(super) fn open(path: &Path, text: &str) -> std::io::Result<Self> {
        let (file, lines) = read(path)?;
        if lines.is_empty() {
            return Self::begin(file, text);
        }
        if let Some(States { now, before }) = followed(lines) {
            return Self { file, now, before }.settled(text);
        }
        set_aside(path)?;
        let (file, _) = read(path)?;
        Self::begin(file, text)
    }

    /// Changes that can be taken back, and made again.
    pub(super) fn counts(&self) -> (usize, usize) {
        (self.now.done, self.now.changes.len() - self.now.done)
    }

    /// The text before the last change.
    pub(super) fn undone(&self) -> Option<String> {
        let last = self.now.done.checked_sub(1)?;
        self.now.changes.get(last)?.back(&self.now.text)
    }

    /// The text after the next change.
    pub(super) fn redone(&self) -> Option<String> {
        self.now.changes.get(self.now.done)?.forward(&self.now.text)
    }

    /// Writes down that the last change is taken back.
    pub(super) fn undo(&mut self) -> std::io::Result<()> {
        let text = self.undone().ok_or_else(no_such_change)?;
        self.write(&Line::Undo {
            gives: digest(&text),
        })
    }

    /// Writes down that the next change is made again.
    pub(super) fn redo(&mut self) -> std::io::Result<()> {
        let text = self.redone().ok_or_else(no_such_change)?;
        self.write(&Line::Redo {
            gives: digest(&text),
        })
    }

    /// Writes down a change to this text that is about to be made.
    pub(super) fn change(&mut self, text: &str) -> std::io::Result<()> {
        self.written(text, false)
    }

    /// Writes down that this text was found on the disk.
    pub(super) fn found(&mut self, text: &str) -> std::io::Result<()> {
        if text == self.now.text {
            return Ok(());
        }
        self.written(text, true)
    }

    /// The last line never came into the file.
    pub(super) fn void(&mut self) -> std::io::Result<()> {
        append(&mut self.file, &Line::Void)?;
        if let Some(before) = self.before.take() {
            self.now = before;
        }
        Ok(())
    }

    fn written(&mut self, text: &str, found: bool) -> std::io::Result<()> {
        self.write(&Line::Change {
            splice: Splice::between(&self.now.text, text),
            found,
            gives: digest(text),
        })
    }

    /// The file still has the text `before`, so that the last line is void.
    fn settled(mut self, text: &str) -> std::io::Result<Self> {
        let before = self.before.as_ref().map(|before| before.text.as_str());
        if self.now.text != text && before == Some(text) {
            self.void()?;
        }
        self.found(text)?;
        Ok(self)
    }

    fn begin(mut file: File, text: &str) -> std::io::Result<Self> {
        let text = text.to_owned();
        append(&mut file, &Line::Begin { text: text.clone() })?;
        let now = State {
            text,
            ..State::default()
        };
        Ok(Self {
            file,
            now,
            before: None,
        })
    }

    fn write(&mut self, line: &Line) -> std::io::Result<()> {
        append(&mut self.file, line)?;
        self.before = Some(self.now.clone());
        self.now.follow(line).ok_or_else(no_such_change)
    }
}

impl State {
    /// Goes one line on; nothing where the line does not fit.
    fn follow(&mut self, line: &Line) -> Option<()> {
        let gives = match line {
            Line::Begin { .. } | Line::Void => return None,
            Line::Change { splice, gives, .. } => {
                self.text = splice.forward(&self.text)?;
                self.changes.truncate(self.done);
                self.changes.push(splice.clone());
                self.done += 1;
                gives
            }
            Line::Undo { gives } => {
                let last = self.done.checked_sub(1)?;
                self.text = self.changes.get(last)?.back(&self.text)?;
                self.done = last;
                gives
            }
            Line::Redo { gives } => {
                self.text = self.changes.get(self.done)?.forward(&self.text)?;
                self.done += 1;
                gives
            }
        };
        (digest(&self.text) == *gives).then_some(())
    }
}

/// The state after all lines, and the one before the last of them.
struct States {
    now: State,
    before: Option<State>,
}

/// Follows the lines from the first; nothing where one does not fit.
fn followed(lines: Vec<Line>) -> Option<States> {
    let mut valid: Vec<Line> = Vec::with_capacity(lines.len());
    for line in lines {
        match line {
            Line::Void => drop(valid.pop()?),
            line => valid.push(line),
        }
    }
    let mut valid = valid.into_iter();
    let Line::Begin { text } = valid.next()? else {
        return None;
    };
    let last = valid.next_back();
    let mut now = State {
        text,
        ..State::default()
    };
    for line in valid {
        now.follow(&line)?;
    }
    let before = last.is_some().then(|| now.clone());
    if let Some(last) = last {
        now.follow(&last)?;
    }
    Some(States { now, before })
}

/// The lines that were written whole; a last one that was not is cut off.
fn read(path: &Path) -> std::io::Result<(File, Vec<Line>)> {
    let is_new = !path.exists();
    let mut file = OpenOptions::new()
        .read(true)
        .write(true)
        .create(true)
        .truncate(false)
        .open(path)?;
    if let Some(folder) = path.parent().filter(|_| is_new) {
        sync_folder(folder)?;
    }
    let mut bytes = Vec::new();
    file.read_to_end(&mut bytes)?;
    let whole = bytes
        .iter()
        .rposition(|byte| *byte == b'\n')
        .map_or(0, |last| last + 1);
    file.set_len(whole as u64)?;
    file.seek(SeekFrom::End(0))?;
    let lines = bytes[..whole]
        .split(|byte| *byte == b'\n')
        .filter(|line| !line.is_empty())
        .map(serde_json::from_slice)
        .collect::<Result<Vec<Line>, _>>();
    // A line that cannot be read stands for a journal that cannot be followed.
    Ok((file, lines.unwrap_or_else(|_| vec![Line::Void])))
}

/// Adds a line; when this returns, it is on the disk.
fn append(file: &mut File, line: &Line) -> std::io::Result<()> {
    let mut bytes = serde_json::to_vec(line)?;
    bytes.push(b'\n');
    let begin = file.stream_position()?;
    let done = file.write_all(&bytes).and_then(|()| file.sync_data());
    if done.is_err() {
        // What cannot be kept is not there: the next line begins where this one did.
        file.set_len(begin)?;
        file.seek(SeekFrom::Start(begin))?;
    }
    done
}

/// Keeps a journal that cannot be followed under another name: nothing of it is lost.
fn set_aside(path: &Path) -> std::io::Result<()> {
    let other = (1..=u32::MAX)
        .map(|number| PathBuf::from(format!("{}.{number}", path.display())))
        .find(|other| !other.exists());
    match other {
        Some(other) => std::fs::rename(path, other),
        None => Ok(()),
    }
}

fn no_such_change() -> std::io::Error {
    std::io::Error::other("there is no such change")
}

fn digest(text: &str) -> String {
    in_digits(&Sha256::digest(text)[..8])
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::Journal;
    use std::fs;

    /// What is done, in turn: a text that is written, or a step back or forward.
    const STEPS: &[&str] = &[
        "b", "bc", "undo", "undo", "redo", "bX", "bXé", "undo", "redo", "", "undo",
    ];

    /// Does the steps; gives the bytes of the journal and the text after each line of it.
    fn worked(path: &std::path::Path) -> (Vec<u8>, Vec<String>) {
        let mut journal = Journal::open(path, "a").unwrap();
        let mut texts = vec!["a".to_owned()];
        for step in STEPS {
            match *step {
                "undo" => {
                    texts.push(journal.undone().unwrap());
                    journal.undo().unwrap();
                }
                "redo" => {
                    texts.push(journal.redone().unwrap());
                    journal.redo().unwrap();
                }
                text => {
                    texts.push(text.to_owned());
                    journal.change(text).unwrap();
                }
            }
        }
        (fs::read(path).unwrap(), texts)
    }

    #[test]
    fn wherever_the_journal_breaks_off_the_text_on_the_disk_counts_and_all_before_it_can_be_undone()
    {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("x.journal");
        let (bytes, texts) = worked(&path);
        // At, before and behind each end of a line, and at some places within.
        let ends = |at: usize| at.checked_sub(1).and_then(|at| bytes.get(at)) == Some(&b'\n');
        let cuts = (0..=bytes.len()).filter(|at| at % 23 == 0 || (*at..at + 3).any(ends));
        for cut in cuts {
            let lines = bytes[..cut].split(|byte| *byte == b'\n').count() - 1;
            // The line came into the file, or it did not.
            for at in [lines.checked_sub(1), lines.checked_sub(2)]
                .into_iter()
                .flatten()
            {
                fs::write(&path, &bytes[..cut]).unwrap();
                let journal = Journal::open(&path, &texts[at]).unwrap();
                assert_eq!(journal.now.text, texts[at], "cut at {cut}");
                assert!(journal.now.changes.len() < STEPS.len());
                let again = Journal::open(&path, &texts[at]).unwrap();
                assert_eq!(again.counts(), journal.counts(), "cut at {cut}");
                let mut back = again;
                while let Some(text) = back.undone() {
                    back.undo().unwrap();
                    assert_eq!(back.now.text, text);
                }
                assert_eq!(back.now.text, "a", "cut at {cut}");
            }
        }
    }

    #[test]
    fn a_text_that_is_in_no_line_is_a_change_that_can_be_undone() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("x.journal");
        let (_, texts) = worked(&path);
        let mut journal = Journal::open(&path, "something else").unwrap();
        journal.undo().unwrap();
        assert_eq!(Some(&journal.now.text), texts.last());
    }

    #[test]
    fn a_journal_that_cannot_be_followed_is_kept_under_another_name() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("x.journal");
        let (bytes, _) = worked(&path);
        let other = [b"nonsense\n".as_slice(), &bytes].concat();
        fs::write(&path, &other).unwrap();
        let journal = Journal::open(&path, "a").unwrap();
        assert_eq!(journal.counts(), (0, 0));
        assert_eq!(fs::read(folder.path().join("x.journal.1")).unwrap(), other);
    }
}
