//! Every outside case of the crate holds, and every calculation has enough of them.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use formula::case::{CaseKind, embedded, verify};
use formula::registry;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

#[test]
fn every_outside_case_holds() {
    let mut faults = Vec::new();
    for (file, text) in embedded() {
        let report = verify(file, text);
        faults.extend(report.problems.iter().map(ToString::to_string));
        for tried in &report.tried {
            for compared in tried.compared.iter().filter(|compared| !compared.holds) {
                faults.push(format!(
                    "{file}, case {}: {} is printed {}, ours is {}",
                    tried.case.id, compared.name, compared.expected, compared.ours
                ));
            }
        }
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn every_calculation_has_two_outside_cases() {
    let mut count: BTreeMap<String, usize> = BTreeMap::new();
    for (file, text) in embedded() {
        let (cases, _) = formula::case::cases(file, text);
        let is_evidence =
            |case: &&formula::case::Case| case.kind.is_evidence() && case.refuses.is_none();
        for case in cases.iter().filter(is_evidence) {
            *count.entry(case.calculation.clone()).or_default() += 1;
        }
    }
    let short: Vec<&str> = registry()
        .iter()
        .map(|calculation| calculation.sheet.name)
        .filter(|name| count.get(*name).copied().unwrap_or(0) < 2)
        .collect();
    assert!(short.is_empty(), "fewer than two outside cases: {short:?}");
}

#[test]
fn every_case_file_is_embedded() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut on_disk = BTreeSet::new();
    for discipline in std::fs::read_dir(&source).unwrap() {
        let folder = discipline.unwrap().path();
        if !folder.is_dir() {
            continue;
        }
        for file in std::fs::read_dir(&folder).unwrap() {
            let path = file.unwrap().path();
            let name = path.strip_prefix(&source).unwrap().to_str().unwrap();
            if name.ends_with(".cases.toml") {
                on_disk.insert(name.to_owned());
            }
        }
    }
    let listed: BTreeSet<String> = embedded().map(|(file, _)| file.to_owned()).collect();
    assert_eq!(on_disk, listed);
}

#[test]
fn names_are_given_once() {
    let mut names: Vec<&str> = registry().iter().map(|known| known.sheet.name).collect();
    names.sort_unstable();
    let all = names.len();
    names.dedup();
    assert_eq!(names.len(), all);
    let mut ids = BTreeSet::new();
    for (file, text) in embedded() {
        for case in formula::case::cases(file, text).0 {
            assert!(
                ids.insert(case.id.clone()),
                "{file}: {} is used twice",
                case.id
            );
        }
    }
}

fn one_case(body: &str) -> formula::case::Report {
    let head = "[source]\nwork = \"a book\"\nseen = \"on a shelf\"\n[[case]]\nid = \"one\"\n";
    verify("mine.cases.toml", &format!("{head}{body}"))
}

const GIVEN: &str = "calculation = \"voltage-drop\"\nkind = \"published\"\n\
    given = { source = \"12 V\", current = \"0.5 A\", length = \"100 ft\", resistance = \"7.77 Ω/kft\" }\n";

#[test]
fn the_printed_digits_set_the_tolerance() {
    for (printed, holds) in [
        ("0.777 V", true),
        ("0.78 V", true),
        ("0.778 V", false),
        ("777 mV", true),
        ("0.8 V", true),
        ("0.7 V", false),
    ] {
        let report = one_case(&format!("{GIVEN}gives = {{ drop = \"{printed}\" }}\n"));
        assert!(report.problems.is_empty(), "{:?}", report.problems);
        assert_eq!(report.holds(), holds, "{printed}");
    }
}

#[test]
fn a_stated_tolerance_widens_the_print() {
    let body = format!("{GIVEN}gives = {{ drop = \"0.780 V\" }}\n");
    assert!(!one_case(&body).holds());
    let reason = "because = \"the source rounds\"\n";
    assert!(one_case(&format!("{body}tolerance = \"0.5 %\"\n{reason}")).holds());
    assert!(one_case(&format!("{body}tolerance = \"4 mV\"\n{reason}")).holds());
    assert!(!one_case(&format!("{body}tolerance = \"2 mV\"\n{reason}")).holds());
    let bare = one_case(&format!("{body}tolerance = \"0.5 %\"\n"));
    assert!(bare.problems[0].what.contains("because"));
}

#[test]
fn faults_in_a_file_are_named() {
    for (body, part) in [
        (
            format!("{GIVEN}gives = {{ dorp = \"1 V\" }}\n"),
            "`dorp` is no output",
        ),
        (GIVEN.to_owned(), "gives"),
        (format!("{GIVEN}gives = {{ drop = \"1 A\" }}\n"), "drop"),
        (
            format!("{GIVEN}gives = {{ drop = \"1 V\" }}\nremark = \"x\"\n"),
            "remark",
        ),
        (
            GIVEN.replace("voltage-drop", "voltage-dorp") + "gives = { drop = \"1 V\" }\n",
            "did you mean `voltage-drop`",
        ),
        (
            GIVEN.replace("current = \"0.5 A\", ", "") + "gives = { drop = \"1 V\" }\n",
            "current",
        ),
        (
            GIVEN.replace("published", "hearsay") + "gives = { drop = \"1 V\" }\n",
            "hearsay",
        ),
        (
            format!("{GIVEN}refuses = \"colour\"\n"),
            "`colour` is no input",
        ),
    ] {
        let report = one_case(&body);
        let said: Vec<String> = report.problems.iter().map(ToString::to_string).collect();
        assert!(
            said.len() == 1 && said[0].contains(part),
            "{part}: {said:?}"
        );
        assert!(said[0].starts_with("mine.cases.toml"));
    }
}

#[test]
fn a_refusal_can_be_expected() {
    let refused = GIVEN.replace("12 V", "0 V") + "refuses = \"source\"\n";
    assert!(one_case(&refused).holds());
    let report = one_case(&format!("{GIVEN}refuses = \"source\"\n"));
    assert!(report.problems.is_empty() && !report.holds());
    assert_eq!(report.tried[0].case.kind, CaseKind::Published);
}
