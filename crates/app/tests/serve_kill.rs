//! The workbench is killed in the middle of saving, again and again: nothing that it confirmed is lost, and no file is half.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common;
use crate::common::served::{Served, jobs};
use serde_json::json;
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};

const HOLD: &str = "gate.main.hold_time";

/// Saves one number after the other while the program is killed at another moment each time.
fn killed_in_the_middle(times: u32) {
    let folder = jobs(&["boatyard"]);
    let site = folder.path().join("boatyard/site.toml");
    let mut confirmed = 30_u32;
    let mut kept_changes = 0_u64;
    for round in 0..times {
        let mut bench = Served::start(folder.path());
        let state = bench.get("/api/jobs/boatyard").good();
        let at_start = hold_time(&bench.text("boatyard"));
        // What was under way at the kill is either there or not; what was confirmed is there.
        assert!(
            at_start == confirmed || at_start == confirmed + 1,
            "round {round}: {confirmed} was confirmed, {at_start} is there"
        );
        let undo = state["undo"].as_u64().unwrap();
        assert_eq!(
            undo,
            kept_changes + u64::from(at_start - confirmed),
            "round {round}"
        );
        kept_changes = undo;
        confirmed = at_start;
        let last = AtomicU32::new(confirmed);
        let mut revision = state["revision"].as_str().unwrap().to_owned();
        let id = bench.id();
        // A killed save is hit at moments spread over the length of a save.
        let wait = Duration::from_micros(u64::from(round) * 137 % 23_000);
        std::thread::scope(|scope| {
            scope.spawn(|| {
                for number in confirmed + 1.. {
                    let told = bench.ask_set(&revision, HOLD, &format!("{number} s"));
                    let Some(told) = told else { break };
                    revision = told;
                    last.store(number, Ordering::SeqCst);
                }
            });
            let begun = Instant::now();
            while last.load(Ordering::SeqCst) < confirmed + 2 {
                assert!(begun.elapsed() < Duration::from_mins(1));
                std::thread::yield_now();
            }
            let begun = Instant::now();
            while begun.elapsed() < wait {
                std::thread::yield_now();
            }
            let killed = std::process::Command::new("kill")
                .args(["-9", &id.to_string()])
                .status();
            assert!(killed.unwrap().success());
        });
        let last = last.load(Ordering::SeqCst);
        kept_changes += u64::from(last - confirmed);
        confirmed = last;
        bench.kill();
        let text = std::fs::read_to_string(&site).unwrap();
        assert!(
            text.ends_with('\n') && text.len() > 100_000,
            "round {round}"
        );
    }
    // Every change that was confirmed, over all those ends, can be taken back.
    let bench = Served::start(folder.path());
    let mut left = bench.get("/api/jobs/boatyard").good()["undo"]
        .as_u64()
        .unwrap();
    while left > 0 {
        let told = bench.post("/api/jobs/boatyard/undo", &json!({})).good();
        left = told["undo"].as_u64().unwrap();
    }
    let original = std::fs::read_to_string(common::example("boatyard").join("site.toml")).unwrap();
    assert_eq!(bench.text("boatyard"), original);
}

fn hold_time(text: &str) -> u32 {
    let line = text
        .lines()
        .find(|line| line.starts_with("hold_time = \""))
        .unwrap();
    let number = line.split('"').nth(1).unwrap().strip_suffix(" s").unwrap();
    number.parse().unwrap()
}

trait AskSet {
    fn ask_set(&self, expects: &str, path: &str, value: &str) -> Option<String>;
}

impl AskSet for Served {
    /// The revision after a save; nothing where the program was gone before it confirmed.
    fn ask_set(&self, expects: &str, path: &str, value: &str) -> Option<String> {
        let body =
            json!({ "expects": expects, "edits": [{ "do": "set", "path": path, "value": value }] });
        let headers = [("Content-Type", "application/json")];
        let told = self
            .ask(
                "POST",
                "/api/jobs/boatyard/edits",
                &headers,
                body.to_string().as_bytes(),
            )
            .ok()?;
        let told: serde_json::Value = serde_json::from_slice(&told.body).ok()?;
        told["revision"].as_str().map(str::to_owned)
    }
}

#[cfg(unix)]
#[test]
fn killed_in_the_middle_of_saving_twenty_times() {
    killed_in_the_middle(20);
}

#[cfg(unix)]
#[test]
#[ignore = "takes minutes; run before a release"]
fn killed_in_the_middle_of_saving_two_hundred_times() {
    killed_in_the_middle(200);
}
