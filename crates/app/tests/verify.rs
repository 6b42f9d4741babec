//! `gatewright verify`: the cases that come with the tool, and those of a user.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common;
use crate::common::run;
use std::fs;

/// 2 · 1 A · 100 ft · 5 Ω/kft is 1.00 V.
fn case(printed: &str) -> String {
    format!(
        "[source]\nwork = \"my handbook\"\nseen = \"page 1\"\n[[case]]\nid = \"mine\"\ncalculation = \"voltage-drop\"\n\
         kind = \"published\"\ngiven = {{ source = \"12 V\", current = \"1 A\", length = \"100 ft\", resistance = \"5 Ω/kft\" }}\n\
         gives = {{ drop = \"{printed}\" }}\n"
    )
}

/// Verifies one file with this text.
fn verify(text: &str) -> common::Run {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("mine.cases.toml");
    fs::write(&file, text).unwrap();
    run(&["verify", file.to_str().unwrap()])
}

#[test]
fn the_cases_that_come_with_the_tool_hold() {
    let run = run(&["verify"]);
    assert_eq!(run.status, 0, "{}{}", run.printed, run.complaints);
    let (passed, failed) = run.printed.trim_end().split_once(" passed, ").unwrap();
    assert!(passed.parse::<usize>().unwrap() > 100, "{passed}");
    assert_eq!(failed, "0 failed");
}

#[test]
fn all_lists_what_holds_too() {
    let run = run(&["verify", "--all"]);
    assert_eq!(run.status, 0);
    let listed = run.printed.matches("✓ holds").count();
    assert!(
        run.printed
            .ends_with(&format!("\n{listed} passed, 0 failed\n")),
        "{listed} listed"
    );
}

#[test]
fn a_case_of_ones_own_that_holds() {
    let run = verify(&case("1.00 V"));
    assert_eq!(run.status, 0, "{}{}", run.printed, run.complaints);
    assert_eq!(run.printed, "1 passed, 0 failed\n");
}

#[test]
fn a_case_that_fails_shows_both_figures() {
    let run = verify(&case("2.00 V"));
    assert_eq!(run.status, 1);
    assert!(
        run.printed.contains("drop printed 2.00 V, computed 1.000"),
        "{}",
        run.printed
    );
    assert!(
        run.printed.ends_with("0 passed, 1 failed\n"),
        "{}",
        run.printed
    );
}

#[test]
fn a_broken_file_is_bad_input() {
    for text in ["[[case]\n", "[[case]]\nid = \"mine\"\n", &case("2 lbf")] {
        let run = verify(text);
        assert_eq!(run.status, 2, "{text}{}", run.printed);
        assert!(
            run.complaints.contains("mine.cases.toml"),
            "{}",
            run.complaints
        );
    }
}

#[test]
fn a_missing_file_is_bad_input() {
    let run = run(&["verify", "no-such.cases.toml"]);
    assert_eq!(run.status, 2);
    assert!(
        run.complaints
            .starts_with("no-such.cases.toml: cannot be read"),
        "{}",
        run.complaints
    );
}
