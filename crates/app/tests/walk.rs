//! `gatewright walk`: what it prints, and how it ends.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::served::{Served, jobs};
use crate::common::{BARE, Run, example, run, site};
use serde_json::json;
use std::path::Path;

/// Walks past the gate of a site, with few walks.
fn walk(name: &str, more: &[&str]) -> Run {
    let folder = example(name);
    let mut arguments = vec!["walk", folder.to_str().unwrap(), "--walks", "200000"];
    arguments.extend(more);
    run(&arguments)
}

#[test]
fn nobody_is_hit_at_the_boatyard_and_what_that_rests_on_is_told() {
    let walked = walk("boatyard", &[]);
    assert_eq!(
        walked.status, 1,
        "sizes of bodies are still to be looked up"
    );
    assert!(!walked.printed.contains("✗"), "{}", walked.printed);
    for words in [
        "How 200,000 walks end",
        "kinds of walk",
        "How far it may go",
        "What this rests on",
        "A simulation is no force test",
    ] {
        assert!(
            walked.printed.contains(words),
            "{words}: {}",
            walked.printed
        );
    }
}

#[test]
fn one_walk_is_told_with_what_happens_when() {
    let walked = walk("boatyard", &["--seed", "1024474"]);
    insta::assert_snapshot!(walked.printed);
}

#[test]
fn one_walk_is_a_trace_for_drawing() {
    let walked = walk("boatyard", &["--seed", "1024474", "--trace"]);
    let trace: serde_json::Value = serde_json::from_str(&walked.printed).unwrap();
    assert_eq!(trace["gate"], "main");
    let frames = trace["frames"].as_array().unwrap();
    assert!(frames.len() > 100, "{}", frames.len());
    assert!(
        trace["cylinders"]
            .as_array()
            .is_some_and(|all| !all.is_empty())
    );
}

#[test]
fn a_gate_that_is_not_there_is_told_in_words() {
    let walked = walk("boatyard", &["--gate", "man"]);
    assert_eq!(walked.status, 2);
    assert!(
        walked.complaints.contains("Nearest: main"),
        "{}",
        walked.complaints
    );
    let bare = site(BARE);
    assert_eq!(run(&["walk", bare.path().to_str().unwrap()]).status, 2);
}

#[test]
fn the_result_is_data_and_is_kept_until_something_changes_that_it_rests_on() {
    let jobs = jobs(&["boatyard"]);
    let folder = jobs.path().join("boatyard");
    let site = folder.to_str().unwrap();
    let bench = Served::start(jobs.path());
    assert_eq!(walked_in_answers(&bench), 0);
    let walked = run(&["walk", site, "--walks", "20000", "--keep", "--json"]);
    let all: serde_json::Value = serde_json::from_str(&walked.printed).unwrap();
    assert_eq!(all[0]["gate"], "main");
    assert_eq!(all[0]["sweep"]["walks"], 20_000);
    assert_eq!(all[0]["families"].as_array().unwrap().len(), 114);
    let proved = |words: &str| {
        let checked = run(&["check", site, "--json"]);
        assert!(checked.printed.contains(words), "{words}");
    };
    follow_what_is_kept(&bench, &folder.join("walk.json"));
    let papers = folder.join("papers");
    let papers = papers.to_str().unwrap();
    run(&["pack", site, "-o", papers, "--date", "2026-11-25"]);
    let findings = folder.join("papers/findings.json");
    let findings = std::fs::read_to_string(findings).unwrap();
    assert!(findings.contains("none of 20000 walks ends badly"));
    let file = folder.join("site.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    std::fs::write(
        &file,
        format!("# A word beside it changes nothing.\n{text}"),
    )
    .unwrap();
    proved("none of 20000 walks ends badly");
    let faster = text.replace("cruise_speed = \"0.85 ft/s", "cruise_speed = \"0.86 ft/s");
    assert!(faster != text);
    std::fs::write(&file, faster).unwrap();
    proved("run gatewright walk");
}

/// Answers of a served boatyard that rest on walks that were kept.
fn walked_in_answers(bench: &Served) -> usize {
    let answers = bench.get("/api/jobs/boatyard/answers").good();
    let rests_on_walks = |finding: &&serde_json::Value| {
        let sentence = finding["sentence"].as_str().unwrap();
        sentence.contains("none of 20000 walks ends badly")
    };
    let findings = answers["findings"].as_array().unwrap().iter();
    findings.filter(rests_on_walks).count()
}

/// The answers of the workbench are those of the walks that are kept, as long as these hold and are there.
fn follow_what_is_kept(bench: &Served, kept: &Path) {
    assert_eq!(walked_in_answers(bench), 1);
    let speed = "gate.main.motion.cruise_speed";
    let revision = bench.revision("boatyard");
    bench.set("boatyard", &revision, speed, "0.86 ft/s").good();
    assert_eq!(walked_in_answers(bench), 0);
    bench.post("/api/jobs/boatyard/undo", &json!({})).good();
    assert_eq!(walked_in_answers(bench), 1);
    let text = std::fs::read(kept).unwrap();
    for unusable in [Some("no records"), None] {
        match unusable {
            Some(words) => std::fs::write(kept, words).unwrap(),
            None => std::fs::remove_file(kept).unwrap(),
        }
        assert_eq!(walked_in_answers(bench), 0);
    }
    std::fs::write(kept, text).unwrap();
    assert_eq!(walked_in_answers(bench), 1);
}
