//! A finding: one question answered for one thing.

mod make;
mod moved;
#[cfg(test)]
mod tests;
mod tolerance;
mod working;

pub use tolerance::{Corner, CornerValue, Deciding, Method};
pub use working::{Line, SourceNote, Working};

pub(crate) use make::{judged, made, made_at_the_bad_ends, reading};
pub(crate) use moved::moved;

use crate::question::Severity;
use crate::{Figure, Standing, Verdict};
use serde::Serialize;

/// What a finding is about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Subject {
    /// Its name on the site, safe to type in a command: `reader-in`; `site` for the site as a whole.
    pub name: String,
    /// Its path as a person would say it: `device "reader-in"`.
    pub path: String,
    /// File in which it is described.
    pub file: String,
    /// Line at which its description begins, counted from one.
    pub line: usize,
}

/// A fact that is missing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Missing {
    /// Its path: `gate "slide" · leaf "panel" · mass`.
    pub path: String,
    /// What to measure or find out, as a sentence.
    pub measure: String,
    /// The line to write, with an example value: `mass = "640 lb"`.
    pub write: String,
    /// File to write it into.
    pub file: String,
    /// Line at which the record begins that it belongs to.
    pub line: usize,
}

/// A value of the site that an answer rests on.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Reading {
    /// Its path: `gate "slide" · leaf "panel" · mass`.
    pub path: String,
    /// The value as printed, tolerance included: `640 lb ± 32 lb`.
    pub text: String,
    /// How it is known: stated, measured, data sheet, assumed.
    pub known: String,
    /// It comes from an entry of a parts file.
    pub from_part: bool,
    /// File that it stands in.
    pub file: String,
    /// Line that it stands on, counted from one.
    pub line: usize,
}

/// One question answered for one thing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Finding {
    /// Id of the question.
    pub question: String,
    /// The question as the tradesperson would put it.
    pub ask: String,
    /// What it is about.
    pub subject: Subject,
    /// The worst that follows from a wrong answer.
    pub severity: Severity,
    /// Where it stands with tolerances counted.
    pub standing: Standing,
    /// Verdict at the values as written.
    pub verdict: Verdict,
    /// The answer as a tradesperson would say it.
    pub sentence: String,
    /// Why the verdict is that one, in a few words: `Holds by 0.7 V.`
    pub because: String,
    /// What is asked of the thing.
    pub demand: Option<Figure>,
    /// What the thing can give.
    pub capacity: Option<Figure>,
    /// Demand over capacity; missing where it says nothing.
    pub ratio: Option<f64>,
    /// The worst corner of all tolerances; missing where no value has one.
    pub worst: Option<Corner>,
    /// The measurement whose tolerance moves the answer most.
    pub deciding: Option<Deciding>,
    /// The measurements whose tolerance turns the verdict: each alone, or, where none does, these together.
    pub turned_by: Vec<Reading>,
    /// The working, step by step, at the values as written.
    pub working: Vec<Working>,
    /// The works that the answer rests on, and how each is known.
    pub sources: Vec<SourceNote>,
    /// What is missing, where something is.
    pub missing: Vec<Missing>,
    /// Works known from memory only that have to be looked up before the answer counts.
    pub look_up: Vec<String>,
    /// Values that were assumed and never measured.
    pub assumed: Vec<Reading>,
    /// What is measured or tried on site to confirm it.
    pub confirm: String,
    /// What the answer leaves open; empty where it answers in full.
    pub leaves_open: String,
}

impl Finding {
    /// The name by which it is asked for: question and subject, `power-voltage-at-device/reader-in`.
    pub fn name(&self) -> String {
        format!("{}/{}", self.question, self.subject.name)
    }
}
