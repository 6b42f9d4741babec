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

    /// It takes something out.
    pub(crate) fn removes(&self) -> bool {
        self.act == Act::Remove
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
    fn made(&self, text: &str, units: UnitSystem) -> Result<Made, Box<Problem>> {
        let made = match self.act {
            Act::Set => {
                let written = site::write_value(text, &self.path, &self.value)?;
                let understood = written.understood(units);
                return Ok((written.text, understood));
            }
            Act::Add => site::add_record(text, &self.path, &self.value),
            Act::Remove => site::remove(text, &self.path),
        };
        made.map(|text| (text, None))
    }
}

/// A changed text, and how the value is understood, where one was written.
type Made = (String, Option<Understood>);

/// The text with all changes and how each is understood, or the first one that cannot be made.
pub(crate) fn all_made(
    text: &str,
    edits: &[Edit],
    units: UnitSystem,
) -> Result<(String, Vec<Option<Understood>>), Refusal> {
    let (mut text, mut all) = (text.to_owned(), Vec::with_capacity(edits.len()));
    for edit in edits {
        let (changed, understood) = edit
            .made(&text, units)
            .map_err(|problem| Refusal::problem(&problem).at(edit.path.clone()))?;
        text = changed;
        all.push(understood);
    }
    Ok((text, all))
}
