//! Changes in the workbench: kept before they are confirmed, taken back without limit, and never over somebody else's.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::served::{Served, jobs};
use serde_json::json;

const LEAST: &str = "device.reader-entry.least_voltage";

#[test]
fn a_change_is_in_the_file_when_it_is_confirmed_and_can_be_taken_back_after_a_restart() {
    let folder = jobs(&["boatyard"]);
    let mut bench = Served::start(folder.path());
    let first = bench.text("boatyard");
    let revision = bench.revision("boatyard");
    let told = bench
        .set("boatyard", &revision, LEAST, "11.1 V, measured")
        .good();
    assert_eq!((&told["undo"], &told["redo"]), (&json!(1), &json!(0)));
    assert_eq!(told["understood"][0]["text"], "11.1 V, measured");
    assert_eq!(told["understood"][0]["known"], "measured");
    let second = bench.text("boatyard");
    // The reader has the value from its part; its own one is a line more, and nothing else has changed.
    let lines = second
        .lines()
        .filter(|line| *line != "least_voltage = \"11.1 V, measured\"");
    assert!(lines.eq(first.lines()));
    assert_eq!(second.lines().count(), first.lines().count() + 1);
    let revision = told["revision"].as_str().unwrap().to_owned();
    bench
        .set("boatyard", &revision, "gate.main.leaf.leaf.mass", "700 lb")
        .good();
    bench.kill();

    let bench = Served::start(folder.path());
    let undo = |expected: &str, undo: usize, redo: usize| {
        let told = bench.post("/api/jobs/boatyard/undo", &json!({})).good();
        assert_eq!(bench.text("boatyard"), expected);
        assert_eq!((&told["undo"], &told["redo"]), (&json!(undo), &json!(redo)));
    };
    undo(&second, 1, 1);
    undo(&first, 0, 2);
    bench
        .post("/api/jobs/boatyard/undo", &json!({}))
        .refused(409);
    let told = bench.post("/api/jobs/boatyard/redo", &json!({})).good();
    assert_eq!(bench.text("boatyard"), second);
    assert_eq!((&told["undo"], &told["redo"]), (&json!(1), &json!(1)));
}

#[test]
fn what_does_not_read_is_refused_and_the_file_is_untouched() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let first = bench.text("boatyard");
    let revision = bench.revision("boatyard");
    let wrong = [
        (LEAST, "eleven volts"),
        (LEAST, "11 lb"),
        (LEAST, "0 V"),
        ("device.reader-enter.least_voltage", "11 V"),
        ("device.reader-entry.least_volt", "11 V"),
        ("device.reader-entry.kind", "readr"),
        ("", ""),
    ];
    for (path, value) in wrong {
        let told = bench.set("boatyard", &revision, path, value).refused(422);
        assert_eq!(told["where"], path, "{told}");
    }
    // One that cannot be made leaves the others unmade.
    let both = json!({ "expects": revision, "edits": [
        { "do": "set", "path": LEAST, "value": "11.2 V" }, { "do": "set", "path": LEAST, "value": "?" },
    ]});
    bench.post("/api/jobs/boatyard/edits", &both).refused(422);
    assert_eq!(bench.text("boatyard"), first);
    assert_eq!(bench.revision("boatyard"), revision);
}

#[test]
fn what_an_editor_has_written_appears_is_not_written_over_and_can_be_taken_back() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let first = bench.text("boatyard");
    let revision = bench.revision("boatyard");
    let edited = first.replace("revision = \"C\"", "revision = \"D\"");
    std::fs::write(folder.path().join("boatyard/site.toml"), &edited).unwrap();
    let told = bench
        .set("boatyard", &revision, LEAST, "11.1 V")
        .refused(409);
    assert_eq!(told["now"]["text"], edited.as_str());
    assert_eq!(bench.text("boatyard"), edited);
    let revision = told["now"]["revision"].as_str().unwrap();
    bench.set("boatyard", revision, LEAST, "11.1 V").good();
    assert!(bench.text("boatyard").contains("revision = \"D\""));
    bench.post("/api/jobs/boatyard/undo", &json!({})).good();
    bench.post("/api/jobs/boatyard/undo", &json!({})).good();
    assert_eq!(bench.text("boatyard"), first);
}

#[test]
fn what_an_editor_writes_while_the_workbench_is_closed_can_be_taken_back_too() {
    let folder = jobs(&["clinic"]);
    let mut bench = Served::start(folder.path());
    let first = bench.text("clinic");
    bench.revision("clinic");
    bench.kill();
    std::fs::write(
        folder.path().join("clinic/site.toml"),
        format!("{first}\n# seen\n"),
    )
    .unwrap();
    let bench = Served::start(folder.path());
    let state = bench.get("/api/jobs/clinic").good();
    assert_eq!(state["undo"], 1);
    bench.post("/api/jobs/clinic/undo", &json!({})).good();
    assert_eq!(bench.text("clinic"), first);
}

#[test]
fn records_are_added_and_taken_out_and_the_rest_of_the_file_stays_as_it_was() {
    let folder = jobs(&["vineyard"]);
    let bench = Served::start(folder.path());
    let first = bench.text("vineyard");
    let edit = |act: &str, path: &str, value: &str| {
        let expects = bench.revision("vineyard");
        let edits = json!([{ "do": act, "path": path, "value": value }]);
        bench.post(
            "/api/jobs/vineyard/edits",
            &json!({ "expects": expects, "edits": edits }),
        )
    };
    let lines = "id = \"lamp-new\"\nkind = \"warning light\"\nat = [\"1 m\", \"0 m\", \"2 m\"]";
    edit("add", "device", lines).good();
    let second = bench.text("vineyard");
    assert!(second.contains("id = \"lamp-new\""));
    for line in first.lines() {
        assert!(second.contains(line), "lost: {line}");
    }
    edit("add", "device", lines).refused(422);
    edit("add", "device", "id = \"x\"\nkind = \"beacon\"").refused(422);
    edit("add", "device.lamp-new.network", "segment = \"nowhere\"").refused(422);
    edit("remove", "device.lamp-old", "").refused(422);
    assert_eq!(bench.text("vineyard"), second);
    edit("remove", "device.lamp-new", "").good();
    assert_eq!(bench.text("vineyard"), first);
}

#[test]
fn a_trial_shows_what_would_turn_and_keeps_nothing() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let first = bench.text("boatyard");
    let revision = bench.revision("boatyard");
    let tried = json!({ "expects": revision, "edits": [
        { "do": "set", "path": LEAST, "value": "40 V" },
    ]});
    let told = bench.post("/api/jobs/boatyard/trial", &tried).good();
    let turned = told["turned"].as_array().unwrap();
    let voltage = turned
        .iter()
        .find(|one| one["name"] == "power-voltage-at-device/reader-entry");
    let voltage = voltage.unwrap();
    assert_eq!(
        (&voltage["was"], &voltage["verdict"]),
        (&json!("holds"), &json!("fails"))
    );
    assert_eq!(bench.text("boatyard"), first);
    assert_eq!(bench.get("/api/jobs/boatyard").good()["undo"], 0);
    // Kept, the same turn is marked.
    bench.set("boatyard", &revision, LEAST, "40 V").good();
    let answers = bench.get("/api/jobs/boatyard/answers").good();
    let marked: Vec<_> = answers["findings"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|finding| !finding["turned"].is_null())
        .map(|finding| finding["name"].clone())
        .collect();
    let tried: Vec<_> = turned.iter().map(|one| one["name"].clone()).collect();
    assert_eq!(marked, tried);
}

#[test]
fn a_value_is_understood_without_being_written() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let read = |path: &str, value: &str| {
        bench.post(
            "/api/jobs/boatyard/read",
            &json!({ "path": path, "value": value }),
        )
    };
    let told = read("gate.main.leaf.leaf.mass", "300 kg ± 5 %, measured").good();
    assert_eq!(told["text"], "661 lb ± 5 %, measured");
    assert_eq!(told["known"], "measured");
    let told = read("device.reader-entry.at.2", "42 in").good();
    assert_eq!(told["written"], "\"42 in\"");
    let told = read("gate.main.leaf.leaf.mass", "300").refused(422);
    assert!(
        told["what"].as_str().unwrap().contains("has no unit"),
        "{told}"
    );
}
