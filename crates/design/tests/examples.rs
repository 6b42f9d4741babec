//! The example sites: what is built well holds or says what is open, and every deliberate fault is found.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "a test may stop at the first surprise"
)]

use design::{Answers, Finding, State, Verdict, answers};
use site::{Site, SourceFile};
use std::path::{Path, PathBuf};

/// The sites that are built well; each has a copy with faults.
const WELL_BUILT: [&str; 4] = ["boatyard", "vineyard", "quarry", "clinic"];

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name)
}

fn read(folder: &Path, name: &str) -> SourceFile {
    SourceFile {
        name: name.to_owned(),
        text: std::fs::read_to_string(folder.join(name)).expect(name),
    }
}

fn site(name: &str) -> Site {
    let folder = folder(name);
    let loaded = site::load(
        read(&folder, "site.toml"),
        vec![
            read(&folder, "parts.toml"),
            read(&folder, "price-book.toml"),
        ],
    );
    assert!(loaded.problems.is_empty(), "{name}: {:?}", loaded.problems);
    loaded.site.expect(name)
}

fn failing(answers: &Answers) -> Vec<String> {
    let fails = |finding: &&Finding| finding.verdict == Verdict::Fails;
    answers
        .findings()
        .filter(fails)
        .map(|finding| {
            format!(
                "{} {}: {}",
                finding.question, finding.subject.name, finding.sentence
            )
        })
        .collect()
}

#[test]
fn nothing_fails_on_what_is_built_well() {
    for name in WELL_BUILT {
        assert_eq!(
            failing(&answers(&site(name))),
            Vec::<String>::new(),
            "{name}"
        );
    }
}

/// A row of the list of faults: the question and the verdict expected, where the tool covers it today.
fn expected(row: &str) -> Option<(String, Verdict)> {
    let cells: Vec<&str> = row.split('|').map(str::trim).collect();
    let [_, _, _, _, question, verdict, "now", _] = cells[..] else {
        return None;
    };
    let verdict = match verdict {
        "fails" => Verdict::Fails,
        "unknown" => Verdict::UnknownUntil,
        _ => return None,
    };
    Some((question.trim_matches('`').to_owned(), verdict))
}

#[test]
fn every_deliberate_fault_that_is_covered_is_found() {
    for name in WELL_BUILT {
        let (clean, faulty) = (
            answers(&site(name)),
            answers(&site(&format!("{name}-faulty"))),
        );
        let list =
            std::fs::read_to_string(folder(&format!("{name}-faulty")).join("FAULTS.md")).unwrap();
        let expected: Vec<(String, Verdict)> = list.lines().filter_map(expected).collect();
        assert!(expected.len() >= 6, "{name}: {expected:?}");
        for (question, verdict) in expected {
            let count = |answers: &Answers| {
                answers
                    .findings()
                    .filter(|finding| finding.question == question && finding.verdict == verdict)
                    .count()
            };
            assert!(
                count(&faulty) > count(&clean),
                "{name}: {question} {verdict:?}"
            );
        }
    }
}

#[test]
fn no_question_is_skipped() {
    let site = site("boatyard");
    let answers = answers(&site);
    let asked = design::questions()
        .iter()
        .filter(|question| question.codes.contains(&site.site.code_basis));
    for question in asked {
        let covered = answers
            .coverage
            .iter()
            .find(|covered| covered.question == question.id);
        let other_kinds = match &question.kinds {
            design::Kinds::All => false,
            design::Kinds::These(kinds) => !site.gate.iter().any(|gate| kinds.contains(&gate.kind)),
        };
        assert_eq!(
            covered.is_none(),
            other_kinds || !question.drives.is_empty(),
            "{}",
            question.id
        );
    }
    for covered in &answers.coverage {
        let has_findings = !covered.findings.is_empty();
        let expects = matches!(
            covered.state,
            State::Answered | State::AnsweredInPart | State::Unknown
        );
        assert_eq!(has_findings, expects, "{}", covered.question);
        assert!(
            covered.state == State::Answered || !covered.note.is_empty(),
            "{}",
            covered.question
        );
    }
    for finding in &answers.findings {
        assert!(
            answers
                .coverage
                .iter()
                .any(|covered| covered.question == finding.question),
            "{}",
            finding.question
        );
    }
}

#[test]
fn the_same_site_gives_the_same_bytes() {
    let text = || serde_json::to_string(&answers(&site("vineyard"))).unwrap();
    assert_eq!(text(), text());
}

#[test]
fn the_quick_verdicts_are_those_of_the_findings() {
    let faulty = WELL_BUILT.map(|name| format!("{name}-faulty"));
    let names = WELL_BUILT
        .into_iter()
        .chain(faulty.iter().map(String::as_str));
    for name in names {
        let site = site(name);
        let findings = design::findings(&site);
        for quick in design::verdicts(&site) {
            let same = findings.iter().any(|finding| {
                finding.question == quick.question
                    && finding.subject.name == quick.subject
                    && finding.verdict == quick.verdict
            });
            assert!(same, "{name}: {quick:?}");
        }
    }
}

#[test]
fn worst_comes_first() {
    let findings = design::findings(&site("boatyard-faulty"));
    let order = |finding: &Finding| (finding.standing, finding.severity);
    assert!(
        findings
            .windows(2)
            .all(|pair| order(&pair[0]) <= order(&pair[1]))
    );
}
