//! Changes of a site file, one after the other, each refused with the reason where it does not read.

use crate::serve::items::path;
use crate::serve::refusal::Refusal;
use quantity::UnitSystem;
use serde::Deserialize;
use site::{Problem, Understood};

/// One change.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Edit {
    /// What to do.
    #[serde(rename = "do")]
    act: Act,
    /// The value, the thing or the list: `device.reader-in.least_voltage`.
    #[serde(default)]
    path: String,
    /// What to write.
    #[serde(default)]
    value: String,
}

/// What can be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Act {
    /// Write a value, whether there is one or not.
    Set,
    /// Add a record, whose lines are the value, to a list or in its place.
    Add,
    /// Take out a record or a value.
    Remove,
}

impl Edit {
    /// It brings a record, which has to read as a whole.
    pub(crate) fn adds(&self) -> bool {
        self.act == Act::Add
    }

    /// How the value is understood, where one is written.
    pub(crate) fn understood(&self, text: &str, units: UnitSystem) -> Option<Understood> {
        match self.act {
            Act::Set => site::understood(text, &self.path, &self.value, units).ok(),
            Act::Add | Act::Remove => None,
        }
    }

    /// It writes the value that a problem is about.
    pub(crate) fn wrote(&self, problem: &Problem) -> bool {
        self.act == Act::Set && path(&problem.path) == self.path
    }

    /// Where.
    pub(crate) fn path(&self) -> &str {
        &self.path
    }

    /// The text with the change; whether the whole still reads is for whoever reads it next.
    pub(crate) fn made(&self, text: &str) -> Result<String, Box<Problem>> {
        match self.act {
            Act::Set => site::write_value(text, &self.path, &self.value),
            Act::Add => site::add_record(text, &self.path, &self.value),
            Act::Remove => site::remove(text, &self.path),
        }
    }
}

/// The text with all changes, or the first one that cannot be made.
pub(crate) fn all_made(text: &str, edits: &[Edit]) -> Result<String, Refusal> {
    let mut text = text.to_owned();
    for edit in edits {
        text = edit
            .made(&text)
            .map_err(|problem| Refusal::problem(&problem).at(edit.path.clone()))?;
    }
    Ok(text)
}
