//! The command line as a person uses it: what it prints, and how it ends.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use assert_cmd::Command;
use std::fs;
use std::path::{Path, PathBuf};

fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name)
}

/// Runs the program; gives its exit status, what it printed, and what it complained of.
fn run(arguments: &[&str]) -> (i32, String, String) {
    let output = Command::cargo_bin("gatewright")
        .unwrap()
        .args(arguments)
        .output()
        .unwrap();
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).unwrap();
    (
        output.status.code().unwrap(),
        text(output.stdout),
        text(output.stderr),
    )
}

fn check(name: &str, more: &[&str]) -> (i32, String, String) {
    let site = example(name);
    let mut arguments = vec!["check", site.to_str().unwrap()];
    arguments.extend(more);
    run(&arguments)
}

/// A site in a folder of its own.
fn site(text: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("site.toml"), text).unwrap();
    folder
}

const HOLDS: &str = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n";

#[test]
fn the_boatyard_has_nothing_that_fails_and_one_figure_to_look_up() {
    let (status, printed, complaints) = check("boatyard", &[]);
    assert_eq!(status, 1, "a figure from memory never passes a gate");
    assert!(complaints.is_empty(), "{complaints}");
    assert!(!printed.contains("✗ fails"), "{printed}");
    assert!(printed.contains("IEEE 485"), "{printed}");
}

#[test]
fn the_faulty_boatyard_reads_as_a_tradesperson_would_say_it() {
    let (status, printed, _) = check("boatyard-faulty", &[]);
    assert_eq!(status, 1);
    insta::assert_snapshot!(printed);
}

#[test]
fn a_failing_finding_is_explained_to_the_last_step() {
    let (status, printed, _) = check(
        "boatyard-faulty",
        &["--explain", "power-voltage-at-device/reader-entry"],
    );
    assert_eq!(status, 1);
    insta::assert_snapshot!(printed);
}

#[test]
fn an_unknown_finding_says_what_to_measure_and_what_to_write() {
    let (_, printed, _) = check("boatyard-faulty", &["--explain", "pull-tension/c-12"]);
    insta::assert_snapshot!(printed);
}

#[test]
fn a_wrong_name_gets_the_nearest_one() {
    let (status, _, complaints) = check("boatyard", &["--explain", "force-slide/driv"]);
    assert_eq!(status, 2);
    assert!(complaints.contains("force-slide/drive"), "{complaints}");
}

#[test]
fn json_holds_findings_coverage_and_problems() {
    let (_, printed, _) = check("vineyard", &["--json"]);
    let all: serde_json::Value = serde_json::from_str(&printed).unwrap();
    assert!(all["findings"].as_array().unwrap().len() > 40);
    assert!(all["coverage"].as_array().unwrap().len() > 200);
    assert_eq!(all["problems"], serde_json::json!([]));
}

#[test]
fn a_site_with_problems_shows_them_all_and_answers_the_rest() {
    let folder = site(&format!(
        "{HOLDS}[[gate]]\nid = \"main\"\nkind = \"track-slide\"\nclear_openning = \"20 ft\"\nslope = \"3 lb\"\n"
    ));
    let (status, printed, complaints) = run(&["check", folder.path().to_str().unwrap()]);
    assert_eq!(status, 2);
    insta::assert_snapshot!(complaints);
    assert!(
        printed.contains("track-slide") || printed.contains("main"),
        "{printed}"
    );
}

#[test]
fn a_folder_without_site_is_said_plainly() {
    let (status, _, complaints) = run(&["check", "no-such-place"]);
    assert_eq!(status, 2);
    assert!(complaints.contains("no-such-place"), "{complaints}");
    assert!(complaints.contains("site.toml"), "{complaints}");
}

#[test]
fn bytes_that_are_no_text_are_placed() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(
        folder.path().join("site.toml"),
        b"[site]\nname = \"\xff\"\n",
    )
    .unwrap();
    let (status, _, complaints) = run(&["check", folder.path().to_str().unwrap()]);
    assert_eq!(status, 2);
    assert!(complaints.contains("line 2"), "{complaints}");
}

#[test]
fn a_drop_of_a_tenth_gives_a_length() {
    let arguments = [
        "calc",
        "voltage-drop",
        "source=12 V",
        "current=0.5 A",
        "resistance=6.385 Ω/kft",
        "length=?",
        "drop=10 %",
    ];
    let (status, printed, _) = run(&arguments);
    assert_eq!(status, 0);
    // 12 V · 10 % / (2 · 0.5 A · 6.385 Ω/kft) = 187.94 ft, by hand.
    assert!(printed.contains("length = 187 ft 11 5/16 in"), "{printed}");
}

#[test]
fn missing_inputs_are_listed_with_what_to_write() {
    let (status, _, complaints) = run(&["calc", "voltage-drop", "source=12 V"]);
    assert_eq!(status, 2);
    for input in ["current", "length", "resistance"] {
        assert!(complaints.contains(input), "{complaints}");
    }
}

#[test]
fn the_cases_that_come_with_the_tool_hold() {
    let (status, printed, complaints) = run(&["verify"]);
    assert_eq!(status, 0, "{printed}{complaints}");
    assert!(printed.trim_end().ends_with("0 failed"), "{printed}");
}

#[test]
fn a_case_that_fails_shows_both_figures() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.cases.toml");
    fs::write(
        &file,
        "[source]\nwork = \"my handbook\"\nseen = \"page 1\"\n[[case]]\nid = \"wrong\"\ncalculation = \"voltage-drop\"\nkind = \"published\"\n\
         given = { source = \"12 V\", current = \"1 A\", length = \"100 ft\", resistance = \"5 Ω/kft\" }\ngives = { drop = \"2.00 V\" }\n",
    )
    .unwrap();
    let (status, printed, _) = run(&["verify", file.to_str().unwrap()]);
    assert_eq!(status, 1);
    assert!(printed.contains("printed 2.00 V"), "{printed}");
    assert!(printed.contains("0 passed, 1 failed"), "{printed}");
}

#[test]
fn one_value_is_set_and_nothing_else_changes() {
    let text = format!("# ours\n{HOLDS}\n[climate]  # cold\nhottest = \"95 °F\"   # south wall\n");
    let folder = site(&text);
    let path = folder.path().to_str().unwrap();
    let (status, _, complaints) = run(&["set", path, "climate.hottest", "101 °F"]);
    assert_eq!(status, 0, "{complaints}");
    let changed = fs::read_to_string(folder.path().join("site.toml")).unwrap();
    assert_eq!(changed, text.replace("95 °F", "101 °F"));
    let (status, _, complaints) = run(&["set", path, "climate.hottest", "12 lb"]);
    assert_eq!(status, 2);
    assert!(complaints.contains("temperature"), "{complaints}");
}

#[test]
fn the_pack_is_written_whole_and_the_same_twice() {
    let folder = tempfile::tempdir().unwrap();
    let pack = |name: &str| {
        let output = folder.path().join(name);
        let site = example("vineyard");
        let arguments = [
            "pack",
            site.to_str().unwrap(),
            "-o",
            output.to_str().unwrap(),
            "--date",
            "2026-11-25",
        ];
        assert_eq!(run(&arguments).0, 1);
        [
            "pack.pdf",
            "schedules.xlsx",
            "findings.json",
            "gate-plan.svg",
            "gate-plan.dxf",
            "site-plan.svg",
        ]
        .map(|file| fs::read(output.join(file)).unwrap())
    };
    assert!(
        pack("one") == pack("two"),
        "the same site gives the same bytes"
    );
}
