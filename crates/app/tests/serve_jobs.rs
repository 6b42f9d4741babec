//! Jobs in the workbench: begun by a survey, copied, brought from elsewhere.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common;
use crate::common::served::{Served, jobs};
use serde_json::{Value, json};

fn survey(kind: &str, basis: &str, infill: &str, power: &str) -> Value {
    let (opening, height) = if basis == "us" {
        ("16 ft", "6 ft")
    } else {
        ("4.2 m", "1.6 m")
    };
    json!({ "survey": {
        "title": "North yard \"old\" gate", "basis": basis, "kind": kind, "opening": opening, "height": height,
        "infill": infill, "cycles": 60, "power": power,
    }})
}

#[test]
fn eight_answers_give_a_site_without_problems_in_which_every_guess_is_marked() {
    let folder = jobs(&[]);
    let bench = Served::start(folder.path());
    assert_eq!(bench.get("/api/survey").good().as_array().unwrap().len(), 8);
    let mut number = 0;
    for kind in [
        "track-slide",
        "cantilever-slide",
        "single-swing",
        "double-swing",
    ] {
        for (basis, infill, power) in [
            ("us", "open bars", "mains"),
            ("eu", "closed", "sun"),
            ("us", "slats with gaps", "sun"),
        ] {
            number += 1;
            let name = format!("new-{number}");
            let new = json!({ "name": name, "from": survey(kind, basis, infill, power) });
            let told = bench.post("/api/jobs", &new);
            assert_eq!(told.status, 201, "{}", String::from_utf8_lossy(&told.body));
            assert_eq!(
                told.json()["problems"],
                json!([]),
                "{kind} {basis} {infill} {power}"
            );
            assert_eq!(told.json()["title"], "North yard \"old\" gate");
            let answers = bench.get(&format!("/api/jobs/{name}/answers")).good();
            assert_eq!(answers["refused"], Value::Null);
            let findings = answers["findings"].as_array().unwrap();
            let settled = findings.iter().filter(|one| {
                ["holds", "fails", "turns-within-tolerance"]
                    .contains(&one["verdict"].as_str().unwrap())
            });
            assert!(
                settled.count() >= 15,
                "{kind} {basis}: {} findings",
                findings.len()
            );
            for line in bench.text(&name).lines() {
                let Some((key, value)) = line.split_once(" = ") else {
                    continue;
                };
                let has_unit =
                    value.contains('"') && value.chars().any(|sign| sign.is_ascii_digit());
                let is_given = [
                    "clear_opening",
                    "height",
                    "name",
                    "id",
                    "carried_by",
                    "leaf",
                    "from",
                    "to",
                    "supply",
                ]
                .contains(&key);
                assert!(is_given || !has_unit || line.contains("assumed"), "{line}");
            }
        }
    }
}

#[test]
fn answers_that_make_no_site_are_refused_and_leave_nothing() {
    let folder = jobs(&[]);
    let bench = Served::start(folder.path());
    let mut wrong = Vec::new();
    for (key, value) in [
        ("title", json!("")),
        ("title", json!("a\nb")),
        ("basis", json!("mars")),
        ("kind", json!("barrier-arm")),
        ("opening", json!("wide")),
        ("opening", json!("400 ft")),
        ("height", json!("1 mm")),
        ("infill", json!("soup")),
        ("cycles", json!(0)),
        ("power", json!("steam")),
    ] {
        let mut answers = survey("track-slide", "us", "closed", "mains");
        answers["survey"][key] = value;
        wrong.push((key, answers));
    }
    for (key, answers) in wrong {
        let told = bench
            .post("/api/jobs", &json!({ "name": "new", "from": answers }))
            .refused(422);
        assert_eq!(told["where"], key, "{told}");
    }
    for name in ["", "..", "a/b", ".x", "-x"] {
        let new = json!({ "name": name, "from": { "text": "[site]\nname = \"x\"\ncode_basis = \"us\"\n" } });
        bench.post("/api/jobs", &new).refused(422);
    }
    assert_eq!(bench.get("/api/jobs").good(), json!([]));
}

#[test]
fn a_job_is_copied_with_its_parts_exported_and_brought_in_again() {
    let folder = jobs(&["quarry"]);
    let bench = Served::start(folder.path());
    let made = bench.post(
        "/api/jobs",
        &json!({ "name": "quarry 2", "from": { "job": "quarry" } }),
    );
    assert_eq!(made.status, 201);
    assert_eq!(
        made.json()["problems"],
        bench.get("/api/jobs/quarry").good()["problems"]
    );
    assert_eq!(bench.text("quarry 2"), bench.text("quarry"));
    bench
        .post(
            "/api/jobs",
            &json!({ "name": "quarry 2", "from": { "job": "quarry" } }),
        )
        .refused(409);
    bench
        .post(
            "/api/jobs",
            &json!({ "name": "other", "from": { "job": "none" } }),
        )
        .refused(404);
    let text = String::from_utf8(bench.get("/api/jobs/quarry%202/site.toml").body).unwrap();
    assert_eq!(text, bench.text("quarry"));
    let parts = std::fs::read_to_string(folder.path().join("quarry/parts.toml")).unwrap();
    let brought = |files: Value| {
        bench.post(
            "/api/jobs",
            &json!({ "name": "brought", "from": { "text": text }, "files": files }),
        )
    };
    for name in [
        "../parts.toml",
        "/parts.toml",
        "site.toml",
        ".parts.toml",
        "a/parts.toml",
    ] {
        brought(json!({ name: parts })).refused(422);
    }
    let made = brought(json!({ "parts.toml": parts }));
    assert_eq!(made.status, 201);
    assert!(
        !made.json()["problems"]
            .to_string()
            .contains("no parts file")
    );
    assert_eq!(bench.text("brought"), bench.text("quarry"));
    let listed = bench.get("/api/jobs").good();
    let mut names: Vec<&str> = listed
        .as_array()
        .unwrap()
        .iter()
        .map(|job| job["name"].as_str().unwrap())
        .collect();
    names.sort_unstable();
    assert_eq!(names, ["brought", "quarry", "quarry 2"]);
}

#[test]
fn a_first_run_without_a_command_brings_sites_to_try() {
    let home = tempfile::tempdir().unwrap();
    let bench = Served::first_run(home.path());
    let listed = bench.get("/api/jobs").good();
    let mut names: Vec<&str> = listed
        .as_array()
        .unwrap()
        .iter()
        .map(|job| job["name"].as_str().unwrap())
        .collect();
    names.sort_unstable();
    assert_eq!(names, ["boatyard", "clinic", "quarry", "vineyard"]);
    assert!(
        listed
            .as_array()
            .unwrap()
            .iter()
            .all(|job| job["problems"] == 0)
    );
    assert_eq!(
        bench.text("boatyard"),
        std::fs::read_to_string(common::example("boatyard").join("site.toml")).unwrap()
    );
}
