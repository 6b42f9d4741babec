//! Pictures and walks from the workbench: what is drawn is what the papers and the command line say, and what cannot be
//! drawn says what to write.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common;
use crate::common::served::{Served, jobs};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// The pictures of a job, as the list tells them.
fn pictures(bench: &Served, job: &str) -> Vec<Value> {
    let list = bench.get(&format!("/api/jobs/{job}/pictures")).good();
    let groups = list["groups"].as_array().unwrap();
    assert_eq!(groups.len(), 6);
    groups
        .iter()
        .flat_map(|group| group["pictures"].as_array().unwrap().clone())
        .map(|picture| {
            let name = picture["name"].as_str().unwrap();
            bench
                .get(&format!("/api/jobs/{job}/pictures/{name}"))
                .good()
        })
        .collect()
}

#[test]
fn every_picture_has_axes_with_units_and_stands_on_them() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let page = bench.get("/jobs/boatyard/pictures");
    let page = String::from_utf8(page.body).unwrap();
    let all = pictures(&bench, "boatyard");
    assert!(all.len() > 10, "{}", all.len());
    for picture in &all {
        let name = picture["name"].as_str().unwrap();
        assert!(page.contains(&format!("data-picture=\"{name}\"")), "{name}");
        for axis in picture["axes"].as_object().unwrap().values() {
            let (from, to) = (axis["from"].as_f64().unwrap(), axis["to"].as_f64().unwrap());
            assert!(from < to, "{name}: {axis}");
        }
        if picture["kind"] == "levels" {
            assert!(!picture["rows"].as_array().unwrap().is_empty(), "{name}");
            continue;
        }
        let (across, up) = (&picture["axes"]["across"], &picture["axes"]["up"]);
        assert!(picture["svg"].as_str().unwrap().starts_with("<svg"));
        for series in picture["series"].as_array().unwrap() {
            let points = series["points"].as_array().unwrap();
            assert!(points.len() > 1, "{name}: {}", series["name"]);
            for point in points {
                for (value, axis) in [(&point[0], across), (&point[1], up)] {
                    let value = value.as_f64().unwrap();
                    let (from, to) = (axis["from"].as_f64().unwrap(), axis["to"].as_f64().unwrap());
                    let near = 1e-6 * (to - from);
                    assert!(
                        (from - near..=to + near).contains(&value),
                        "{name}: {point}"
                    );
                }
            }
        }
    }
    assert_eq!(
        all.iter()
            .find(|picture| picture["name"] == "gate-force-main")
            .unwrap()["axes"]["up"]["unit"],
        "lbf"
    );
    bench
        .get("/api/jobs/boatyard/pictures/nothing")
        .refused(404);
}

#[test]
fn the_lowest_voltage_of_a_picture_is_that_of_the_answer_at_the_bad_end_of_tolerances() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    let all = pictures(&bench, "clinic");
    let mut compared = 0;
    for picture in all.iter().filter(|picture| picture["kind"] == "levels") {
        for row in picture["rows"].as_array().unwrap() {
            let device = row["name"].as_str().unwrap();
            let told = bench.get(&format!(
                "/api/jobs/clinic/answers/power-voltage-at-device/{device}"
            ));
            if told.status != 200 {
                continue;
            }
            let told = told.json();
            let sentence = told["sentence"].as_str().unwrap();
            let Some((before, _)) = sentence.split_once(" V at its lowest") else {
                continue;
            };
            let as_written: f64 = before.rsplit(' ').next().unwrap().parse().unwrap();
            let drawn = row["values"].as_array().unwrap().iter();
            let drawn = drawn
                .filter_map(Value::as_f64)
                .fold(f64::INFINITY, f64::min);
            assert!(
                drawn < as_written + 0.051 && drawn > 0.9 * as_written,
                "{device}: {drawn}, {sentence}"
            );
            compared += 1;
        }
    }
    assert!(compared > 5, "{compared}");
}

#[test]
fn what_cannot_be_drawn_says_what_to_write() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let list = bench.get("/api/jobs/boatyard/pictures").good();
    let group = |list: &Value, name: &str| {
        let groups = list["groups"].as_array().unwrap();
        groups
            .iter()
            .find(|group| group["name"] == name)
            .unwrap()
            .clone()
    };
    // Nothing lives on panels there: a line says so, and no empty frame stands for it.
    let battery = group(&list, "battery");
    assert_eq!(battery["pictures"], json!([]));
    assert_eq!(battery["untold"][0]["write"][0], "[[solar_panel]]");
    let revision = bench.revision("boatyard");
    let edits = json!({
        "expects": revision,
        "edits": [{ "do": "remove", "path": "gate.main.motion.cruise_speed" }],
    });
    bench.post("/api/jobs/boatyard/edits", &edits).good();
    let list = bench.get("/api/jobs/boatyard/pictures").good();
    let moving = group(&list, "motion");
    assert_eq!(moving["pictures"], json!([]), "{moving}");
    let lines = moving["untold"][0]["write"].to_string();
    assert!(lines.contains("cruise_speed"), "{lines}");
}

/// Waits until a task is at its end.
fn ended(bench: &Served, task: &Value) -> Value {
    let begun = Instant::now();
    loop {
        let told = bench.get(&format!("/api/tasks/{task}")).good();
        if told["state"] != "running" {
            return told;
        }
        assert!(begun.elapsed() < Duration::from_mins(1), "{told}");
        std::thread::yield_now();
    }
}

#[test]
fn a_walk_is_a_task_and_what_it_found_is_kept_until_something_changes() {
    let folder = jobs(&["quarry"]);
    let bench = Served::start(folder.path());
    let before = bench.get("/api/jobs/quarry/walks").good();
    assert_eq!(before["gates"][0]["kept"], Value::Null);
    bench
        .post("/api/jobs/quarry/walks", &json!({ "walks": 0 }))
        .refused(422);
    bench
        .post("/api/jobs/quarry/walks", &json!({ "gate": "none" }))
        .refused(404);
    let task = bench
        .post("/api/jobs/quarry/walks", &json!({ "walks": 1000 }))
        .json()["task"]
        .clone();
    let told = bench
        .ask("DELETE", &format!("/api/tasks/{task}"), &[], b"")
        .unwrap();
    assert_eq!(told.status, 200);
    assert_eq!(ended(&bench, &task)["state"], "stopped");
    assert_eq!(
        bench.get("/api/jobs/quarry/walks").good()["gates"][0]["kept"],
        Value::Null
    );
}

#[test]
fn a_walk_kept_beside_the_site_is_shown_with_its_day_and_that_something_changed_since() {
    let folder = jobs(&["clinic"]);
    let site = folder.path().join("clinic");
    let family = |words: &str, standing: &str| json!({ "family": words, "standing": standing, "open": 0.0, "boxes": 1, "refuted_by": null });
    let record = json!([{
        "gate": "arm",
        "rests_on": "an earlier arm",
        "sweep": {
            "walks": 1000,
            "shares": [{ "ends": "not touched", "share": 0.75, "error": 0.01 }],
            "worst": [],
            "any_bad": false,
        },
        "families": [
            family("child of about 3, goes in, leaf closing", "proved"),
            family("child of about 3, goes out, leaf closing", "undecided"),
        ],
        "margins": [],
    }]);
    std::fs::write(site.join("walk.json"), record.to_string()).unwrap();
    let bench = Served::start(folder.path());
    let kept = bench.get("/api/jobs/clinic/walks").good()["gates"][0]["kept"].clone();
    assert_eq!(kept["beside_the_site"], true);
    assert_eq!(kept["is_of_now"], false);
    assert_eq!(kept["finding"], Value::Null);
    assert_eq!(kept["record"], record[0]);
    let page = String::from_utf8(bench.get("/jobs/clinic/walk").body).unwrap();
    for said in [
        kept["at"].as_str().unwrap(),
        "Out of date",
        "No force test.",
        "How 1,000 walks end",
        "75.0000 %",
        "Of 2 kinds of walk 1 are proved safe",
        "child of about 3",
    ] {
        assert!(page.contains(said), "{said}");
    }
    // What is open one way is open, however the other way stands.
    assert!(page.contains("stands open") && !page.contains("stands badly"));
}

#[test]
fn a_walk_is_played_from_the_trace_of_the_command_line() {
    let folder = jobs(&["boatyard-faulty"]);
    let bench = Served::start(folder.path());
    let walks = bench.get("/api/jobs/boatyard-faulty/walks").good();
    let gate = walks["gates"][0]["gate"].as_str().unwrap().to_owned();
    let worst = &walks["gates"][0]["first_look"][0];
    let number = worst["seed"].as_u64().unwrap();
    let at = format!("/api/jobs/boatyard-faulty/walks/{gate}");
    let played = bench.get(&format!("{at}/{number}")).good();
    let printed = common::run(&[
        "walk",
        common::example("boatyard-faulty").to_str().unwrap(),
        "--gate",
        &gate,
        "--seed",
        &number.to_string(),
        "--trace",
    ]);
    let printed: Value = serde_json::from_str(&printed.printed).unwrap();
    assert_eq!(played["trace"], printed);
    let states = played["stage"]["states"].as_array().unwrap();
    let times: Vec<i64> = states
        .iter()
        .map(|state| state["from_ms"].as_i64().unwrap())
        .collect();
    assert!(times.is_sorted() && !times.is_empty(), "{states:?}");
    if let Some(touch) = played["stage"]["touch"].as_object() {
        let events = played["trace"]["events"].as_array().unwrap();
        let told = events.iter().any(|event| event["seconds"] == touch["time"]);
        assert!(told, "{events:?}");
    }
    let maps = bench.get(&at).good()["maps"].as_array().unwrap().clone();
    assert!(!maps.is_empty());
    bench.get(&format!("{at}/first")).refused(422);
    bench
        .get(&format!("/api/jobs/boatyard-faulty/walks/none/{number}"))
        .refused(404);
}
