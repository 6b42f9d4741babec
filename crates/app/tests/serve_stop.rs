//! Walking past the gates from the workbench is stopped in the middle of each of its stages.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::served::{Served, jobs};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// How far a task is once something is so of it.
fn once(bench: &Served, task: &Value, is_so: impl Fn(&Value) -> bool) -> Value {
    loop {
        let progress = bench.get(&format!("/api/tasks/{task}")).good();
        if is_so(&progress) {
            return progress;
        }
        let state = &progress["state"];
        assert!(state == "running", "{progress}");
    }
}

/// Begins to walk past the gates of a job, and stops once this stage has come so far.
fn stopped_in(job: &str, walks: u64, stage: &str, far: u64) {
    let folder = jobs(&[job]);
    let bench = Served::start(folder.path());
    let at = format!("/api/jobs/{job}/walks");
    let begun = bench.post(&at, &json!({ "walks": walks, "keep": true }));
    let task = begun.json()["task"].clone();
    once(&bench, &task, |progress| {
        let says = progress["says"].as_str().unwrap();
        says.ends_with(stage) && progress["done"].as_u64() >= Some(far)
    });
    let asked = Instant::now();
    let told = bench.ask("DELETE", &format!("/api/tasks/{task}"), &[], b"");
    assert_eq!(told.unwrap().status, 200);
    let ended = once(&bench, &task, |progress| progress["state"] != "running");
    let took = asked.elapsed();
    assert_eq!(ended["state"], "stopped", "{ended}");
    assert!(took < Duration::from_secs(1), "{stage}: {took:?}");
    let gates = bench.get(&at).good()["gates"].clone();
    let kept = |gate: &Value| !gate["kept"].is_null();
    assert!(!gates.as_array().unwrap().iter().any(kept), "{gates}");
    assert!(!folder.path().join(job).join("walk.json").exists());
}

#[test]
fn walks_are_stopped_in_the_middle() {
    stopped_in("boatyard", 10_000_000, "walks", 1);
}

#[test]
fn proofs_are_stopped_in_the_middle() {
    stopped_in("clinic", 1, "kinds of walk proved", 26);
}

#[test]
fn margins_are_stopped_in_the_middle() {
    stopped_in("boatyard", 1, "margins", 75);
}
