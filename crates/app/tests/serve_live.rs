//! What the pages of the workbench are told while somebody works: only what is different, what goes with what, what to choose from.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::served::{Served, jobs};
use serde_json::{Value, json};

#[test]
fn after_a_change_only_what_is_different_is_sent() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    let whole = |bench: &Served| {
        let told = bench.get("/jobs/clinic/answers");
        String::from_utf8(told.body).unwrap()
    };
    let list = whole(&bench);
    let first = bench.revision("clinic");
    let record = bench.get("/api/jobs/clinic/form").good();
    let device = record["records"]
        .as_array()
        .unwrap()
        .iter()
        .find(|one| one["kind"] == "cable")
        .unwrap()["path"]
        .as_str()
        .unwrap()
        .to_owned();
    bench
        .set(
            "clinic",
            &first,
            &format!("{device}.length"),
            "77 m, measured",
        )
        .good();
    let changes = bench
        .get(&format!("/jobs/clinic/changes?since={first}"))
        .good();
    let now = bench.revision("clinic");
    assert_eq!(changes["revision"], now.as_str());
    let rows = changes["rows"].as_object().unwrap();
    let all = list.matches("data-finding=").count();
    assert!(
        !rows.is_empty() && rows.len() * 4 < all,
        "{} of {all}",
        rows.len()
    );
    let new_list = whole(&bench);
    for (name, row) in rows {
        let row = row.as_str().unwrap();
        assert!(new_list.contains(row), "{name}");
        assert!(!list.contains(row), "{name} reads the same");
    }
    // Nothing is different from now to now, and of a state that nobody knows any more everything is.
    assert_eq!(
        bench
            .get(&format!("/jobs/clinic/changes?since={now}"))
            .good()["same"],
        true
    );
    assert_eq!(
        bench.get("/jobs/clinic/changes?since=0123").good()["whole"],
        true
    );
    bench.get("/jobs/nobody/changes?since=0123").refused(404);
    // A part of the page that is there already is not sent again.
    let plan = bench.get("/jobs/clinic/plan");
    let text = String::from_utf8(plan.body).unwrap();
    let digits = text
        .split("data-digits=\"")
        .nth(1)
        .unwrap()
        .split('"')
        .next()
        .unwrap();
    assert_eq!(
        bench
            .get(&format!("/jobs/clinic/plan?have={digits}"))
            .status,
        204
    );
    assert_eq!(bench.get("/jobs/clinic/plan?have=0").status, 200);
}

#[test]
fn what_goes_with_a_thing_is_told_and_goes_in_one_step() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let before = bench.text("boatyard");
    let problems = |bench: &Served| bench.get("/api/jobs/boatyard").good()["problems"].clone();
    let told = bench
        .get("/api/jobs/boatyard/removal?path=device.reader-entry")
        .good();
    let goes = told["goes"].as_array().unwrap();
    assert_eq!(goes[0], "device.reader-entry");
    assert!(goes.contains(&json!("cable.w-06")), "{goes:?}");
    let words = told["words"].to_string();
    assert!(
        words.contains("Way point wp-entry no longer names it under “serves”."),
        "{words}"
    );
    let was = problems(&bench);
    let edits = json!({ "expects": told["revision"], "edits": told["edits"] });
    let kept = bench.post("/api/jobs/boatyard/edits", &edits).good();
    assert_eq!(kept["undo"], 1);
    assert!(!bench.text("boatyard").contains("\"reader-entry\""));
    let wrong = |problems: &Value| {
        let all = problems.as_array().unwrap().iter();
        all.filter(|one| one["code"] == "unknown-id").count()
    };
    assert_eq!(wrong(&problems(&bench)), wrong(&was));
    bench.post("/api/jobs/boatyard/undo", &json!({})).good();
    assert_eq!(bench.text("boatyard"), before);
    bench
        .get("/api/jobs/boatyard/removal?path=device.nobody")
        .refused(404);
}

#[test]
fn what_others_name_is_not_taken_out_alone() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let before = bench.text("boatyard");
    let expects = bench.revision("boatyard");
    let told = |what: &str, edits: Value| {
        let asked = json!({ "expects": expects, "edits": edits });
        bench.post(&format!("/api/jobs/boatyard/{what}"), &asked)
    };
    for (path, named_by) in [
        (
            "gate.main",
            ["device.reader-entry.gate", "operator.drive.gate"],
        ),
        (
            "device.reader-entry",
            ["cable.w-06.to", "way_point.wp-entry.serves"],
        ),
    ] {
        let alone = json!([{ "do": "remove", "path": path }]);
        for what in ["edits", "trial"] {
            let refused = told(what, alone.clone()).refused(422);
            let said = refused["what"].as_str().unwrap();
            for one in named_by {
                assert!(said.contains(one), "{said}");
            }
        }
    }
    assert_eq!(bench.text("boatyard"), before);
    let removal = bench
        .get("/api/jobs/boatyard/removal?path=gate.main")
        .good();
    let asked = json!({ "expects": removal["revision"], "edits": removal["edits"] });
    bench.post("/api/jobs/boatyard/edits", &asked).good();
}

/// Whatever is taken out with what goes with it leaves no name behind.
#[test]
fn what_goes_with_a_thing_is_all_that_must_go() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let text = bench.text("boatyard");
    let tables = text.split("\n[[").skip(1);
    let paths = tables.filter_map(|table| {
        let (kind, rest) = table.split_once("]]")?;
        let id = rest.lines().find_map(|line| line.strip_prefix("id = \""))?;
        let id = id.strip_suffix('"')?;
        (!kind.contains('.')).then(|| format!("{kind}.{id}"))
    });
    let paths: Vec<String> = paths.collect();
    assert!(paths.len() > 60, "{paths:?}");
    for path in paths.iter().step_by(11) {
        let removal = bench.get(&format!("/api/jobs/boatyard/removal?path={path}"));
        let removal = removal.good();
        let asked = json!({ "expects": removal["revision"], "edits": removal["edits"] });
        bench.post("/api/jobs/boatyard/trial", &asked).good();
    }
}

#[test]
fn a_page_is_told_with_its_change_what_is_new_on_it() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let answers = bench.get("/api/jobs/boatyard/answers").good();
    let since = answers["revision"].as_str().unwrap().to_owned();
    let changed = |expects: &str, path: &str, value: &str, beside: &str| {
        let edits = json!([{ "do": "set", "path": path, "value": value }]);
        let asked = json!({ "expects": expects, "edits": edits });
        bench
            .post(&format!("/jobs/boatyard/edits?{beside}"), &asked)
            .good()
    };
    let place = "[\"30 in\", \"14 in\", \"42 in\"]";
    let moved = changed(
        &since,
        "device.button-yard.at",
        place,
        &format!("view=plan&open=0&since={since}"),
    );
    let revision = moved["revision"].as_str().unwrap();
    assert_eq!(bench.revision("boatyard"), revision);
    let drawn = bench.get("/jobs/boatyard/plan?view=plan&open=0");
    assert_eq!(moved["drawing"], String::from_utf8(drawn.body).unwrap());
    let changes = format!("/jobs/boatyard/changes?since={since}");
    if let Some(told) = moved.get("changes") {
        assert_eq!(*told, bench.get(&changes).good());
    }
    let digits = |drawing: &Value| {
        let text = drawing.as_str().unwrap();
        let after = text.split("data-digits=\"").nth(1).unwrap();
        after.split('"').next().unwrap().to_owned()
    };
    // What the page has already is not sent again.
    let have = format!(
        "view=plan&open=0&have={}&since={revision}",
        digits(&moved["drawing"])
    );
    let noted = changed(revision, "site.note", "looked at again", &have);
    assert_eq!(noted["drawing"], Value::Null);
    let back = bench
        .post("/jobs/boatyard/undo?view=plan", &json!({}))
        .good();
    assert_eq!(back["undo"], 1);
    let again = bench
        .post("/jobs/boatyard/redo?view=plan", &json!({}))
        .good();
    assert_eq!(again["revision"], noted["revision"]);
}

#[test]
fn parts_of_the_right_kind_are_offered_with_what_they_bring() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let told = bench
        .get("/api/jobs/boatyard/parts?path=device.reader-entry")
        .good();
    let parts = told["parts"].as_array().unwrap();
    assert!(!parts.is_empty());
    for part in parts {
        let brings = part["brings"].as_array().unwrap();
        let kind = brings.iter().find(|one| one["label"] == "kind").unwrap();
        assert_eq!(kind["text"], "reader", "{part}");
    }
    let cables = bench.get("/api/jobs/boatyard/parts?path=cable.w-06").good();
    let cables = cables["parts"].as_array().unwrap();
    let taken = cables.iter().find(|one| one["id"] == "power-2x12").unwrap();
    let size = taken["brings"]
        .as_array()
        .unwrap()
        .iter()
        .find(|one| one["label"] == "size")
        .unwrap();
    assert_eq!(size["text"], "12 AWG");
    let none = bench.get("/api/jobs/boatyard/parts?path=lane.entry").good();
    assert_eq!(none["parts"], json!([]));
}

#[test]
fn the_files_that_a_site_asks_for_are_named() {
    let folder = jobs(&[]);
    let bench = Served::start(folder.path());
    let text = "[site]\nname = \"x\"\ncode_basis = \"us\"\nparts = [\"parts.toml\"]\nprice_book = \"prices.toml\"\n[climate]\nweather_file = \"year.epw\"\n";
    let told = bench.post("/api/files", &json!({ "text": text })).good();
    let names: Vec<&str> = told
        .as_array()
        .unwrap()
        .iter()
        .map(|one| one["name"].as_str().unwrap())
        .collect();
    assert_eq!(names, ["parts.toml", "year.epw", "prices.toml"]);
    assert_eq!(told[1]["for"], "the weather of a year");
    assert_eq!(
        bench
            .post("/api/files", &json!({ "text": "{ nonsense" }))
            .good(),
        json!([])
    );
}
