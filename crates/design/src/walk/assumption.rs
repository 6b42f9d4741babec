//! What a walk test rests on: each value, how it is known, where it comes from.

use crate::asking::{Asking, End};
use crate::finding::reading;
use crate::plain::plain;
use quantity::Known;
use serde::Serialize;

/// One value that a walk test rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Assumption {
    /// What it is.
    pub what: String,
    /// Its value, as it was taken.
    pub value: String,
    /// How it is known: measured, data sheet, by design, assumed, default of this tool.
    pub known: String,
    /// Where it comes from: file and line, a work, a rule of this tool.
    pub source: String,
    /// The site or one of its parts files gives it.
    #[serde(skip)]
    pub of_the_site: bool,
}

impl Assumption {
    /// A value that the site does not give.
    pub(super) fn default(
        what: impl Into<String>,
        value: impl Into<String>,
        source: impl Into<String>,
    ) -> Self {
        Self {
            what: what.into(),
            value: value.into(),
            known: "default of this tool".to_owned(),
            source: source.into(),
            of_the_site: false,
        }
    }
}

/// The values of the site that were read, each at the end of its tolerance that was taken; positions as one.
pub(super) fn of_the_site(asking: &Asking<'_>) -> Vec<Assumption> {
    let print = asking.print();
    let mut all: Vec<Assumption> = Vec::with_capacity(asking.facts.len());
    for fact in &asking.facts {
        let read = reading(fact, print);
        let taken = print.value(&fact.at(End::Low));
        if let ("y" | "z", Some(position)) = (fact.part, all.last_mut()) {
            position.value = format!("{}, {taken}", position.value);
            continue;
        }
        let written = print.value(&fact.at(End::Nominal));
        let value = if taken == written {
            taken
        } else {
            format!("{taken}, the bad end of {}", read.text)
        };
        all.push(Assumption {
            what: plain(read.path.trim_end_matches(" x")),
            value,
            known: known(fact.known, read.from_part).to_owned(),
            source: format!("{}:{}", read.file, read.line),
            of_the_site: true,
        });
    }
    all
}

fn known(known: Known, from_part: bool) -> &'static str {
    match known {
        Known::Measured => "measured",
        Known::Assumed => "assumed",
        Known::DataSheet => "data sheet",
        Known::Stated if from_part => "data sheet",
        Known::Stated => "by design",
    }
}
