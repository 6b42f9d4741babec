//! `gatewright walk`: what it prints, and how it ends.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::served::{Served, jobs};
use crate::common::{BARE, Run, example, run, site};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::path::Path;

/// Walks past the gate of a site, with few walks.
fn walk(name: &str, more: &[&str]) -> Run {
    let folder = example(name);
    let mut arguments = vec!["walk", folder.to_str().unwrap(), "--walks", "200000"];
    arguments.extend(more);
    run(&arguments)
}

/// Nobody is hit at the boatyard, as the words of a walk tell.
fn nobody_is_hit_and_what_that_rests_on_is_told(walked: &Run) {
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
fn the_result_is_data() {
    let jobs = jobs(&["boatyard-faulty"]);
    let folder = jobs.path().join("boatyard-faulty");
    let site = folder.to_str().unwrap();
    let walked = run(&["walk", site, "--walks", "20000", "--keep", "--json"]);
    let all: Value = serde_json::from_str(&walked.printed).unwrap();
    assert_eq!(all[0]["gate"], "main");
    assert_eq!(all[0]["sweep"]["walks"], 20_000);
    assert_eq!(all[0]["families"].as_array().unwrap().len(), 112);
    let kept = std::fs::read_to_string(folder.join("walk.json")).unwrap();
    let kept: Value = serde_json::from_str(&kept).unwrap();
    for part in ["gate", "sweep", "families", "margins"] {
        assert_eq!(kept[0][part], all[0][part], "{part}");
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
    let trace: Value = serde_json::from_str(&walked.printed).unwrap();
    assert_eq!(trace["gate"], "main");
    let frames = trace["frames"].as_array().unwrap();
    assert!(frames.len() > 100, "{}", frames.len());
    assert!(
        trace["cylinders"]
            .as_array()
            .is_some_and(|all| !all.is_empty())
    );
}

/// The trace of a walk.
fn trace(name: &str, seed: &str) -> Value {
    let walked = walk(name, &["--seed", seed, "--trace"]);
    serde_json::from_str(&walked.printed).unwrap()
}

#[test]
fn an_arm_is_traced_from_the_road() {
    let mut trace = trace("clinic", ARM);
    let frames = trace["frames"].as_array_mut().unwrap();
    let some = [0, frames.len() / 2, frames.len() - 1].map(|at| frames[at].clone());
    *frames = some.to_vec();
    to_nanometers(&mut trace);
    insta::assert_snapshot!(format!("{trace:#}"));
}

/// Rounds every number to nine places: the last bits of a sine are not the same on every computer.
fn to_nanometers(value: &mut Value) {
    match value {
        Value::Array(all) => all.iter_mut().for_each(to_nanometers),
        Value::Object(all) => all.values_mut().for_each(to_nanometers),
        Value::Number(number) if number.is_f64() => {
            let exact = number.as_f64().unwrap();
            *value = json!((exact * 1e9).round() / 1e9);
        }
        _ => {}
    }
}

/// A walk under the arm of the clinic that ends with a touch.
const ARM: &str = "124851";

#[test]
fn each_key_of_a_trace_is_told_in_its_page_and_none_more() {
    let mut keys = BTreeSet::new();
    for (name, seed) in [
        ("boatyard", "1024474"),
        ("vineyard", "1024474"),
        ("clinic", ARM),
    ] {
        let trace = trace(name, seed);
        for (key, value) in trace.as_object().unwrap() {
            keys.insert(key.clone());
            let inner = match key.as_str() {
                "frames" => value[0].as_object(),
                "touch" => value.as_object(),
                _ => None,
            };
            let inner = inner.into_iter().flatten();
            keys.extend(inner.map(|(inner, _)| format!("{key}.{inner}")));
        }
    }
    let page = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/trace.md");
    let page = std::fs::read_to_string(page).unwrap();
    let rows = page.lines().filter_map(|line| line.strip_prefix("| `"));
    let told: BTreeSet<String> = rows
        .map(|row| row.split('`').next().unwrap().to_owned())
        .collect();
    assert_eq!(told, keys);
}

#[test]
fn a_walk_that_is_spelled_out_is_the_same_walk() {
    let number = trace("clinic", ARM);
    let (seed, bodies) = ("0,0,in,cross,0,-0.1,0.5,1.2,5", "adult");
    let spelled = trace("clinic", seed);
    assert_eq!(spelled["seed"], seed);
    assert_eq!(spelled["body"], bodies);
    assert_eq!(number["seed"], 124_851);
    let crosses = spelled["frames"].as_array().unwrap().iter();
    let apart = |frame: &&Value| (frame["time"].as_f64().unwrap() - 5.0).abs();
    let there = crosses.min_by(|one, other| apart(one).total_cmp(&apart(other)));
    let there = there.unwrap()["body"].as_array().unwrap();
    assert!((there[0].as_f64().unwrap() + 0.1).abs() < 0.01, "{there:?}");
    assert!(there[1].as_f64().unwrap().abs() < 0.01, "{there:?}");
    for wrong in [
        "fast",
        "0,0,in",
        "0,99,in,cross,0,0,0,1,0",
        "9,0,in,cross,0,0,0,1,0",
    ] {
        let walked = walk("clinic", &["--seed", wrong]);
        assert_eq!(walked.status, 2, "{wrong}: {}", walked.printed);
        assert!(!walked.complaints.is_empty());
    }
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
fn nobody_is_hit_at_the_boatyard_and_that_is_kept_until_something_changes_that_it_rests_on() {
    let jobs = jobs(&["boatyard"]);
    let folder = jobs.path().join("boatyard");
    let site = folder.to_str().unwrap();
    let bench = Served::start(jobs.path());
    assert_eq!(walked_in_answers(&bench), 0);
    // All kinds of walk are proved once for everything that is asked of the result here.
    let walked = run(&["walk", site, "--walks", "200000", "--keep"]);
    nobody_is_hit_and_what_that_rests_on_is_told(&walked);
    let kept = std::fs::read_to_string(folder.join("walk.json")).unwrap();
    let kept: Value = serde_json::from_str(&kept).unwrap();
    assert_eq!(kept[0]["gate"], "main");
    assert_eq!(kept[0]["sweep"]["walks"], 200_000);
    assert_eq!(kept[0]["families"].as_array().unwrap().len(), 114);
    assert_eq!(kept[0]["margins"].as_array().unwrap().len(), 4);
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
    assert!(findings.contains("none of 200000 walks ends badly"));
    let file = folder.join("site.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    std::fs::write(
        &file,
        format!("# A word beside it changes nothing.\n{text}"),
    )
    .unwrap();
    proved("none of 200000 walks ends badly");
    let faster = text.replace("cruise_speed = \"0.85 ft/s", "cruise_speed = \"0.86 ft/s");
    assert!(faster != text);
    std::fs::write(&file, faster).unwrap();
    proved("run gatewright walk");
}

/// Answers of a served boatyard that rest on walks that were kept.
fn walked_in_answers(bench: &Served) -> usize {
    let answers = bench.get("/api/jobs/boatyard/answers").good();
    let rests_on_walks = |finding: &&Value| {
        let sentence = finding["sentence"].as_str().unwrap();
        sentence.contains("none of 200000 walks ends badly")
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
