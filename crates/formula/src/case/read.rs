//! Reading a file of outside cases, strictly.

use super::CaseKind;
use quantity::Word as _;
use serde::Deserialize;
use std::collections::BTreeMap;

/// Where the expected values of a case were printed.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CaseSource {
    /// The work with its edition.
    pub work: String,
    /// Where we saw it.
    pub seen: String,
}

/// One outside case, its values as the source states them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Case {
    /// Its name in the file.
    pub id: String,
    /// The calculation that it tries.
    pub calculation: String,
    /// How the expected value is known.
    pub kind: CaseKind,
    /// Where it stands.
    pub source: CaseSource,
    /// The inputs by name.
    pub given: BTreeMap<String, String>,
    /// The outputs by name as printed; empty when a refusal is expected.
    pub gives: BTreeMap<String, String>,
    /// The input that must be refused, if that is what the case expects.
    pub refuses: Option<String>,
    /// A tolerance wider than the print, with the reason for it.
    pub tolerance: Option<(String, String)>,
}

/// What is wrong with a case file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{file}{}: {what}", case.as_ref().map(|case| format!(", case {case}")).unwrap_or_default())]
pub struct Problem {
    /// The file.
    pub file: String,
    /// The case in it, where the problem is in one.
    pub case: Option<String>,
    /// What is so and what was expected.
    pub what: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FileText {
    source: Option<CaseSource>,
    #[serde(default, rename = "case")]
    cases: Vec<CaseText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CaseText {
    id: String,
    calculation: String,
    kind: String,
    source: Option<CaseSource>,
    given: BTreeMap<String, String>,
    #[serde(default)]
    gives: BTreeMap<String, String>,
    refuses: Option<String>,
    tolerance: Option<String>,
    because: Option<String>,
}

/// The cases of a file, and everything that is wrong with the others.
pub fn cases(file: &str, text: &str) -> (Vec<Case>, Vec<Problem>) {
    let read: FileText = match toml::from_str(text) {
        Ok(read) => read,
        Err(error) => {
            let what = error.to_string().trim_end().to_owned();
            return (Vec::new(), vec![problem(file, None, what)]);
        }
    };
    let mut problems = Vec::new();
    if read.cases.is_empty() {
        let what = "there is no case in it; write one under `[[case]]`".to_owned();
        problems.push(problem(file, None, what));
    }
    let mut cases: Vec<Case> = Vec::new();
    for text in read.cases {
        let id = text.id.clone();
        if cases.iter().any(|case| case.id == id) {
            let what = "another case has this id; give each its own".to_owned();
            problems.push(problem(file, Some(&id), what));
            continue;
        }
        match case(text, read.source.as_ref()) {
            Ok(case) => cases.push(case),
            Err(what) => problems.push(problem(file, Some(&id), what)),
        }
    }
    (cases, problems)
}

pub(super) fn problem(file: &str, case: Option<&str>, what: String) -> Problem {
    Problem {
        file: file.to_owned(),
        case: case.map(str::to_owned),
        what,
    }
}

/// One case, or what is wrong with it.
fn case(text: CaseText, of_file: Option<&CaseSource>) -> Result<Case, String> {
    let Some(kind) = CaseKind::from_word(&text.kind) else {
        return Err(format!(
            "`{}` is no kind of evidence; write one of {}",
            text.kind,
            CaseKind::WORDS.join(", ")
        ));
    };
    let Some(source) = text.source.or_else(|| of_file.cloned()) else {
        return Err("it has no source; write `[source]` with `work` and `seen`".to_owned());
    };
    if text.gives.is_empty() == text.refuses.is_none() {
        return Err(
            "write what it `gives`, or the input that it `refuses`: one of the two".to_owned(),
        );
    }
    let tolerance = match (text.tolerance, text.because) {
        (Some(tolerance), Some(because)) => Some((tolerance, because)),
        (Some(_), None) => {
            return Err("a tolerance wider than the print needs a reason: write `because`".into());
        }
        (None, Some(_)) => return Err("`because` gives the reason of a `tolerance`".into()),
        (None, None) => None,
    };
    Ok(Case {
        id: text.id,
        calculation: text.calculation,
        kind,
        source,
        given: text.given,
        gives: text.gives,
        refuses: text.refuses,
        tolerance,
    })
}
