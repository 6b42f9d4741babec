//! A fact that is missing: what it is, and what to write once it is known.

use super::example::example;
use crate::plain::plain;
use quantity::Sort;
use site::Origin;

/// What a missing fact would hold.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Wants {
    /// A quantity, a count, a conductor size or a word.
    Sort(Sort),
    /// A position.
    Position,
    /// Something else, whose value is written like this.
    Written(&'static str),
    /// A whole table, written like this.
    Table(&'static str),
}

/// A fact that an answer needs and the site file does not hold.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lack<'s> {
    pub(crate) origin: &'s Origin,
    pub(crate) key: &'static str,
    pub(crate) wants: Wants,
}

impl Lack<'_> {
    /// The line to write, with an example value.
    pub(crate) fn line(&self) -> String {
        match self.wants {
            Wants::Sort(Sort::Quantity(kind)) => {
                format!("{} = \"{}\"", self.key, example(self.key, kind))
            }
            Wants::Sort(Sort::Count) => format!("{} = 2", self.key),
            Wants::Sort(Sort::Conductor) => format!("{} = \"18 AWG\"", self.key),
            Wants::Sort(Sort::Words(words)) => {
                format!("{} = \"{}\"", self.key, words.first().unwrap_or(&""))
            }
            Wants::Position => format!("{} = [\"-2 ft\", \"3 ft\", \"21 in\"]", self.key),
            Wants::Written(example) => format!("{} = {example}", self.key),
            Wants::Table(example) => example.to_owned(),
        }
    }

    /// Where the line belongs, and the line: `gate main: travel = "14 ft"`.
    pub(crate) fn told(&self) -> String {
        format!("{}: {}", plain(&self.origin.path), self.line())
    }

    /// What may be written, where only certain words will do.
    pub(crate) fn choice(&self) -> Option<String> {
        match self.wants {
            Wants::Sort(Sort::Words(words)) => Some(format!("one of {}", words.join(", "))),
            _ => None,
        }
    }

    /// The key as words: `cruise speed`.
    pub(crate) fn words(&self) -> String {
        self.key.replace(['.', '_'], " ")
    }

    /// How it comes to be known.
    pub(crate) fn verb(&self) -> &'static str {
        match self.wants {
            Wants::Sort(Sort::Quantity(_)) | Wants::Position => {
                "measure, or read off the data sheet:"
            }
            _ => "find out:",
        }
    }
}
