//! `gatewright check`: what it prints, and how it ends.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::{BARE, check, example, run, site};

#[test]
fn what_is_built_well_fails_nowhere() {
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        let run = check(&example(name), &[]);
        assert_eq!(run.status, 1, "{name}: figures from memory are still open");
        assert_eq!(run.complaints, "", "{name}");
        assert!(!run.printed.contains("✗ fails"), "{name}: {}", run.printed);
        assert!(run.printed.contains("▒ unknown"), "{name}: {}", run.printed);
    }
}

#[test]
fn what_is_built_wrong_fails() {
    for name in [
        "boatyard-faulty",
        "vineyard-faulty",
        "quarry-faulty",
        "clinic-faulty",
    ] {
        let run = check(&example(name), &[]);
        assert_eq!(run.status, 1, "{name}");
        assert_eq!(run.complaints, "", "{name}");
        assert!(run.printed.contains("✗ fails"), "{name}: {}", run.printed);
    }
}

#[test]
fn status_zero_when_everything_asked_for_holds() {
    let folder = site(ALL_HOLDS);
    let run = check(folder.path(), &[]);
    assert_eq!(run.status, 0, "{}{}", run.printed, run.complaints);
    assert!(run.printed.contains("0 fail, 0 unknown"), "{}", run.printed);
}

/// A site without a gate yet: a reader's contact, and an authority that was asked.
const ALL_HOLDS: &str = r#"
[site]
name = "Cleared ground"
code_basis = "us"
authority = "county building department"
property = "boatyard"
permits = ["electrical permit, licensed electrician"]
wind_code = "ASCE 7-22"
protection_code = "UL 325 from 2018"
installed = 2026-11-25
[[device]]
id = "reader"
kind = "reader"
contact = { least_current = "1 mA", input_current = "5 mA ± 10 %" }
"#;

#[test]
fn the_file_is_as_good_as_its_folder() {
    let folder = check(&example("boatyard"), &[]);
    let file = check(&example("boatyard").join("site.toml"), &[]);
    assert_eq!(folder.printed, file.printed);
}

#[test]
fn the_list_reads_like_a_person() {
    insta::assert_snapshot!(check(&example("boatyard-faulty"), &[]).printed);
}

#[test]
fn a_failing_finding_is_explained_to_the_last_step() {
    let run = check(
        &example("boatyard-faulty"),
        &["--explain", "power-voltage-at-device/reader-entry"],
    );
    assert_eq!(run.status, 1);
    insta::assert_snapshot!(run.printed);
}

#[test]
fn an_unknown_finding_says_what_to_measure_and_what_to_write() {
    let run = check(
        &example("boatyard-faulty"),
        &["--explain", "pull-tension/c-12"],
    );
    assert_eq!(run.status, 1);
    insta::assert_snapshot!(run.printed);
}

#[test]
fn every_finding_can_be_asked_for_by_its_name() {
    let example = example("vineyard-faulty");
    let all = check(&example, &["--explain", "all"]);
    assert_eq!(all.status, 1);
    for name in names(&check(&example, &["--json"]).printed) {
        assert!(all.printed.contains(&name), "{name}");
        let safe = |letter: char| letter.is_ascii_alphanumeric() || "-/.".contains(letter);
        assert!(name.chars().all(safe), "`{name}` needs quotes in a shell");
    }
}

/// Names of all findings of a site, each given once.
fn names(json: &str) -> Vec<String> {
    let all: serde_json::Value = serde_json::from_str(json).unwrap();
    let names: Vec<String> = all["findings"]
        .as_array()
        .unwrap()
        .iter()
        .map(|finding| {
            let question = finding["question"].as_str().unwrap();
            format!(
                "{question}/{}",
                finding["subject"]["name"].as_str().unwrap()
            )
        })
        .collect();
    let distinct: std::collections::BTreeSet<&String> = names.iter().collect();
    assert_eq!(distinct.len(), names.len(), "two findings of one name");
    names
}

#[test]
fn a_wrong_name_gets_the_nearest_one() {
    let run = check(&example("boatyard"), &["--explain", "force-slide/driv"]);
    assert_eq!(run.status, 2);
    assert_eq!(
        run.complaints,
        "There is no finding named force-slide/driv. Nearest: force-slide/drive\n"
    );
}

#[test]
fn json_holds_findings_coverage_and_problems() {
    let run = check(&example("vineyard"), &["--json"]);
    assert_eq!(run.status, 1);
    let all: serde_json::Value = serde_json::from_str(&run.printed).unwrap();
    assert!(all["findings"].as_array().unwrap().len() > 40);
    assert!(all["coverage"].as_array().unwrap().len() > 200);
    assert_eq!(all["problems"], serde_json::json!([]));
}

#[test]
fn json_places_problems_too() {
    let folder = site(format!("{BARE}[[gate]]\nid = \"main\"\nkind = \"slid\"\n"));
    let run = check(folder.path(), &["--json"]);
    assert_eq!(run.status, 2);
    assert_eq!(run.complaints, "", "problems are in the JSON");
    let all: serde_json::Value = serde_json::from_str(&run.printed).unwrap();
    assert_eq!(all["problems"][0]["line"], 6, "{}", all["problems"]);
    assert!(all["findings"].is_array());
}

#[test]
fn every_question_that_applies_is_listed_when_asked() {
    let run = check(&example("boatyard"), &["--questions"]);
    for question in design::questions().iter().filter(|question| {
        question.codes.contains(&site::CodeBasis::Us)
            && matches!(question.kinds, design::Kinds::All)
            && question.drives.is_empty()
    }) {
        assert!(run.printed.contains(&question.id), "{}", question.id);
    }
}

#[test]
fn all_problems_are_shown_and_the_rest_is_answered() {
    let folder = site(format!(
        "{BARE}[[gate]]\nid = \"main\"\nkind = \"track-slide\"\nclear_openning = \"20 ft\"\nslope = \"3 lb\"\nrun_timer = \"30 s\"\n"
    ));
    let run = check(folder.path(), &[]);
    assert_eq!(run.status, 2);
    insta::assert_snapshot!(run.complaints);
    assert!(
        run.printed.contains("motion-travel-time/main"),
        "{}",
        run.printed
    );
}

#[test]
fn a_file_without_a_site_is_a_problem_and_no_more() {
    let run = check(site("name = \"yard\"\n").path(), &[]);
    assert_eq!(run.status, 2);
    assert_eq!(run.printed, "");
    assert!(run.complaints.contains("site.toml:1"), "{}", run.complaints);
}

#[test]
fn a_missing_folder_is_said_plainly() {
    let run = run(&["check", "no-such-place"]);
    assert_eq!(run.status, 2);
    assert!(
        run.complaints.starts_with("no-such-place: cannot be read"),
        "{}",
        run.complaints
    );
    assert!(run.complaints.contains("site.toml"), "{}", run.complaints);
}

#[test]
fn a_missing_parts_file_is_named() {
    let folder = site(format!("{BARE}parts = [\"parts.toml\"]\n"));
    let run = check(folder.path(), &[]);
    assert_eq!(run.status, 2);
    assert!(run.complaints.contains("parts.toml"), "{}", run.complaints);
    assert!(
        run.complaints.contains("cannot be read"),
        "{}",
        run.complaints
    );
}

#[test]
fn bytes_that_are_no_text_are_placed() {
    let run = check(site(b"[site]\nname = \"\xff\"\n").path(), &[]);
    assert_eq!(run.status, 2);
    assert!(
        run.complaints
            .contains("line 2 holds bytes that are not UTF-8"),
        "{}",
        run.complaints
    );
}
