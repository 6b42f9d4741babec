//! Reading the question files, strictly.

use super::{Kinds, Question, Severity, Stage};
use quantity::Word;
use serde::Deserialize;
use site::{CodeBasis, DriveKind, GateKind};

/// What the files held: the questions, and every fault found. A test holds the faults to none.
pub(super) struct Read {
    /// The questions in the order of the files.
    pub(super) questions: Vec<Question>,
    /// What could not be read, and where.
    #[cfg_attr(not(test), allow(dead_code, reason = "a test reads it"))]
    pub(super) faults: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    question: Vec<Raw>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Raw {
    id: String,
    ask: String,
    needs: Vec<String>,
    fields: Vec<String>,
    rule: String,
    basis: String,
    kinds: Vec<String>,
    #[serde(default)]
    drives: Vec<String>,
    codes: Vec<String>,
    stages: Vec<String>,
    severity: String,
    confirm: String,
}

/// Reads the files, each given with its topic and title.
pub(super) fn read(files: &[(&str, &str, &str)]) -> Read {
    let mut read = Read {
        questions: Vec::new(),
        faults: Vec::new(),
    };
    for (topic, _, text) in files {
        match toml::from_str::<File>(text) {
            Ok(file) => file.question.into_iter().for_each(|raw| read.add(raw)),
            Err(error) => read.faults.push(format!("{topic}: {error}")),
        }
    }
    read
}

impl Read {
    fn add(&mut self, raw: Raw) {
        let id = raw.id.clone();
        match question(raw) {
            Ok(question) => self.questions.push(question),
            Err(fault) => self.faults.push(format!("{id}: {fault}")),
        }
    }
}

fn question(raw: Raw) -> Result<Question, String> {
    Ok(Question {
        kinds: kinds(&raw.kinds)?,
        drives: words::<DriveKind>(&raw.drives)?,
        codes: words::<CodeBasis>(&raw.codes)?,
        stages: words::<Stage>(&raw.stages)?,
        severity: word::<Severity>(&raw.severity)?,
        id: raw.id,
        ask: raw.ask,
        needs: raw.needs,
        fields: raw.fields,
        rule: raw.rule,
        basis: raw.basis,
        confirm: raw.confirm,
    })
}

fn kinds(texts: &[String]) -> Result<Kinds, String> {
    if texts == ["all"] {
        return Ok(Kinds::All);
    }
    words::<GateKind>(texts).map(Kinds::These)
}

fn words<W: Word>(texts: &[String]) -> Result<Vec<W>, String> {
    texts.iter().map(|text| word(text)).collect()
}

fn word<W: Word>(text: &str) -> Result<W, String> {
    W::from_word(text).ok_or_else(|| format!("`{text}` is none of {}", W::WORDS.join(", ")))
}
