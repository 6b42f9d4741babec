//! Papers from the workbench: made in steps that are told, the same as those of the command line, and stopped when asked.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common;
use crate::common::served::{Served, jobs};
use serde_json::{Value, json};
use std::io::{Read as _, Write as _};

/// Reads the events of a job until a line has `wanted`; gives everything that was heard.
fn heard_until(bench: &Served, wanted: &str, begin: impl FnOnce()) -> String {
    let mut stream = bench.connect().unwrap();
    write!(
        stream,
        "GET /api/events HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n",
        bench.port
    )
    .unwrap();
    let mut heard = String::new();
    let mut begin = Some(begin);
    let mut bytes = [0; 8192];
    while !heard.contains(wanted) {
        let read = stream.read(&mut bytes).unwrap();
        assert!(read > 0, "closed: {heard}");
        heard += &String::from_utf8_lossy(&bytes[..read]);
        if heard.contains(": listening")
            && let Some(begin) = begin.take()
        {
            begin();
        }
    }
    heard
}

#[test]
fn papers_are_made_in_steps_and_are_those_of_the_command_line() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    let date = json!({ "date": "2026-11-25" });
    let mut task = Value::Null;
    let heard = heard_until(&bench, "\"state\":\"done\"", || {
        let begun = bench.post("/api/jobs/clinic/papers", &date);
        assert_eq!(begun.status, 202);
        task = begun.json()["task"].clone();
        // A second one is not begun beside it.
        assert_eq!(
            bench.post("/api/jobs/clinic/papers", &date).json()["task"],
            task
        );
    });
    for says in [
        "asking every question",
        "making the drawings",
        "setting the documents",
    ] {
        assert!(heard.contains(says), "{says}: {heard}");
    }
    let progress = bench.get(&format!("/api/tasks/{task}")).good();
    assert_eq!(progress["state"], "done");
    assert_eq!(progress["done"], progress["of"]);
    let list = bench.get("/api/jobs/clinic/papers").good();
    assert_eq!(list["is_of_now"], true);
    let output = tempfile::tempdir().unwrap();
    let site = common::example("clinic");
    common::run(&[
        "pack",
        site.to_str().unwrap(),
        "-o",
        output.path().to_str().unwrap(),
        "--date",
        "2026-11-25",
    ]);
    let papers = list["papers"].as_array().unwrap();
    let made = std::fs::read_dir(output.path()).unwrap().count();
    assert_eq!(papers.len(), made);
    for paper in papers {
        let name = paper["name"].as_str().unwrap();
        let told = bench.get(&format!("/api/jobs/clinic/papers/{name}"));
        assert_eq!(told.status, 200, "{name}");
        assert_eq!(
            told.body.len() as u64,
            paper["bytes"].as_u64().unwrap(),
            "{name}"
        );
        if ["image/svg+xml", "application/json"].contains(&paper["kind"].as_str().unwrap()) {
            assert!(
                told.body == std::fs::read(output.path().join(name)).unwrap(),
                "{name}"
            );
        }
    }
    let revision = bench.revision("clinic");
    bench
        .set("clinic", &revision, "site.note", "changed since")
        .good();
    assert_eq!(
        bench.get("/api/jobs/clinic/papers").good()["is_of_now"],
        false
    );
}

#[test]
fn papers_that_are_stopped_leave_nothing_and_can_be_begun_again() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    let heard = heard_until(&bench, "\"state\":\"stopped\"", || {
        let begun = bench.post("/api/jobs/clinic/papers", &json!({}));
        let task = begun.json()["task"].clone();
        let told = bench
            .ask("DELETE", &format!("/api/tasks/{task}"), &[], b"")
            .unwrap();
        assert_eq!(told.status, 200);
    });
    assert!(!heard.contains("\"state\":\"done\""));
    assert_eq!(
        bench.get("/api/jobs/clinic/papers").good()["papers"],
        json!([])
    );
    bench
        .post("/api/jobs/clinic/papers", &json!({ "date": "tomorrow" }))
        .refused(422);
}
