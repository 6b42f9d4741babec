//! What the workbench tells of a job is what the command line tells, and the interface is as it is described.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common;
use crate::common::served::{Served, jobs};
use serde_json::{Value, json};

#[test]
fn the_list_counts_as_the_command_line_does() {
    let folder = jobs(&["boatyard-faulty"]);
    let bench = Served::start(folder.path());
    bench.get("/api/jobs/boatyard-faulty/answers").good();
    let listed = bench.get("/api/jobs").good();
    let checked = common::check(&common::example("boatyard-faulty"), &["--json"]);
    let checked: Value = serde_json::from_str(&checked.printed).unwrap();
    let count = |standings: &[&str]| {
        let findings = checked["findings"].as_array().unwrap().iter();
        findings
            .filter(|one| standings.contains(&one["standing"].as_str().unwrap()))
            .count()
    };
    assert_eq!(listed[0]["ready"], true);
    assert_eq!(listed[0]["holds"], count(&["holds"]));
    assert_eq!(
        listed[0]["fails"],
        count(&["fails", "turns-within-tolerance"])
    );
    assert_eq!(listed[0]["unknown"], count(&["unknown", "outside"]));
    assert_eq!(listed[0]["worst"], checked["findings"][0]["sentence"]);
}

#[test]
fn every_answer_is_that_of_the_command_line_and_every_question_that_applies_is_there() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let answers = bench.get("/api/jobs/boatyard/answers").good();
    let checked = common::check(&common::example("boatyard"), &["--json"]);
    let checked: Value = serde_json::from_str(&checked.printed).unwrap();
    let findings = answers["findings"].as_array().unwrap();
    let same = checked["findings"].as_array().unwrap();
    assert_eq!(findings.len(), same.len());
    for (ours, theirs) in findings.iter().zip(same) {
        assert_eq!(ours["sentence"], theirs["sentence"]);
        assert_eq!(ours["verdict"], theirs["standing"]);
    }
    let questions: usize = answers["groups"]
        .as_array()
        .unwrap()
        .iter()
        .map(|group| group["questions"].as_array().unwrap().len())
        .sum();
    assert_eq!(questions, checked["coverage"].as_array().unwrap().len());
    let counted: u64 = answers["groups"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|group| group["counts"].as_object().unwrap().values())
        .map(|count| count.as_u64().unwrap())
        .sum();
    assert_eq!(counted, findings.len() as u64);
    let name = findings[0]["name"].as_str().unwrap();
    let one = bench
        .get(&format!("/api/jobs/boatyard/answers/{name}"))
        .good();
    assert_eq!(one["finding"]["working"], same[0]["working"]);
    // What a finding speaks of is a record of the site.
    let records = bench.get("/api/jobs/boatyard/form").good();
    let paths: Vec<&str> = records["records"]
        .as_array()
        .unwrap()
        .iter()
        .map(|one| one["path"].as_str().unwrap())
        .collect();
    for finding in findings {
        let subject = finding["items"][0].as_str().unwrap();
        let is_whole = subject == "site" || subject.is_empty();
        assert!(is_whole || paths.contains(&subject), "{subject}");
    }
}

#[test]
fn a_form_shows_each_key_as_written_and_as_understood() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let form = bench
        .get("/api/jobs/boatyard/form?path=device.reader-entry")
        .good();
    assert_eq!(form["label"], "device \"reader-entry\"");
    let field = |label: &str| {
        let fields = form["fields"].as_array().unwrap();
        fields
            .iter()
            .find(|field| field["label"] == label)
            .unwrap()
            .clone()
    };
    let kind = field("kind");
    assert_eq!(
        (&kind["kind"], &kind["written"]),
        (&json!("word"), &json!("reader"))
    );
    assert!(kind["words"].as_array().unwrap().len() > 10);
    assert_eq!(kind["required"], true);
    let gate = field("gate");
    assert_eq!(
        (&gate["kind"], &gate["names"]),
        (&json!("name"), &json!(["gate"]))
    );
    let at = field("at");
    assert_eq!(
        (&at["kind"], &at["path"]),
        (&json!("position"), &json!("device.reader-entry.at"))
    );
    let voltage = field("least voltage");
    assert_eq!(
        (&voltage["kind"], &voltage["from_part"]),
        (&json!("quantity"), &json!(true))
    );
    assert_eq!(voltage["understood"], "10.8 V, data sheet");
    assert!(
        voltage["meaning"]
            .as_str()
            .unwrap()
            .starts_with("Least voltage")
    );
    let whole = bench.get("/api/jobs/boatyard/form?path=").good();
    assert!(
        whole["fields"]
            .as_array()
            .unwrap()
            .iter()
            .any(|field| field["path"] == "gate")
    );
}

#[test]
fn a_gate_is_drawn_at_any_opening_with_its_things_at_their_places() {
    let folder = jobs(&["boatyard"]);
    let bench = Served::start(folder.path());
    let plan = bench
        .get("/api/jobs/boatyard/plan?gate=main&open=0.35&view=plan")
        .good();
    assert!(plan["svg"].as_str().unwrap().starts_with("<svg"));
    let items = plan["items"].as_array().unwrap();
    let reader = items
        .iter()
        .find(|item| item["path"] == "device.reader-entry")
        .unwrap();
    let form = bench
        .get("/api/jobs/boatyard/form?path=device.reader-entry")
        .good();
    let fields = form["fields"].as_array().unwrap();
    let at = fields.iter().find(|field| field["label"] == "at").unwrap();
    for part in reader["place"].as_array().unwrap() {
        let written = at["written"].as_str().unwrap();
        assert!(
            written.contains(part.as_str().unwrap()),
            "{part}: {written}"
        );
    }
    let closed = bench.get("/api/jobs/boatyard/plan").good();
    assert_ne!(closed["svg"], plan["svg"]);
    let elevation = bench.get("/api/jobs/boatyard/plan?view=elevation").good();
    assert_ne!(closed["svg"], elevation["svg"]);
    bench.get("/api/jobs/boatyard/plan?gate=none").refused(404);
    bench.get("/api/jobs/boatyard/plan?open=2").refused(422);
    bench.get("/api/jobs/boatyard/plan?open=NaN").refused(422);
    bench.get("/api/jobs/boatyard/plan?view=moon").refused(400);
}

#[test]
fn calculations_work_forward_and_backward_by_address_and_by_body() {
    let folder = jobs(&[]);
    let bench = Served::start(folder.path());
    assert!(
        bench
            .get("/api/calculations")
            .good()
            .as_array()
            .unwrap()
            .len()
            > 100
    );
    let path = "/api/calculations/voltage-drop";
    let forward = bench
        .get(&format!(
            "{path}?source=12+V&current=0.5+A&resistance=6.385+%CE%A9%2Fkft&length=100+ft"
        ))
        .good();
    let same = json!({ "source": "12 V", "current": "0.5 A", "resistance": "6.385 Ω/kft", "length": "100 ft" });
    assert_eq!(bench.post(path, &same).good(), forward);
    // Both ways: 2 · 0.5 A · 6.385 Ω/kft · 0.1 kft = 0.6385 V.
    let drop = forward["answer"]["gives"]
        .as_object()
        .unwrap()
        .values()
        .find_map(|one| {
            let volts = one["si"].as_f64()?;
            ((volts - 0.6385).abs() < 1e-9).then_some(volts)
        });
    assert!(drop.is_some(), "{forward}");
    let back = bench.get(&format!("{path}?source=12+V&current=0.5+A&resistance=6.385+%CE%A9%2Fkft&length=%3F&drop=0.6385+V")).good();
    let meters = back["answer"]["found"][0]["si"].as_f64().unwrap();
    assert!((meters - 30.48).abs() < 1e-6, "{back}");
    bench.get(&format!("{path}?source=12+lb")).refused(422);
    bench.get("/api/calculations/none").refused(404);
}

#[test]
fn everything_that_is_described_is_there() {
    let folder = jobs(&["clinic"]);
    let bench = Served::start(folder.path());
    let described = bench.get("/api/openapi.json").good();
    assert_eq!(described["openapi"], "3.1.0");
    let schemas = described["components"]["schemas"].as_object().unwrap();
    let paths = described["paths"].as_object().unwrap();
    assert!(paths.len() > 15);
    for (path, methods) in paths {
        // A job that is not there is refused by what stands at the address; an address that is not there, by its own words.
        let asked = path
            .replace("{job}", "none")
            .replace("{id}", "1")
            .replace("{name}", "none")
            .replace("{file}", "none")
            .replace("{gate}", "none")
            .replace("{number}", "1")
            .replace("{finding}", "a/b");
        if path.ends_with("/api/events") {
            continue;
        }
        for (method, operation) in methods.as_object().unwrap() {
            let json = [("Content-Type", "application/json")];
            let told = bench
                .ask(&method.to_uppercase(), &asked, &json, b"{}")
                .unwrap();
            let said = String::from_utf8_lossy(&told.body);
            assert!(
                told.status != 405 && !said.contains("There is nothing at"),
                "{method} {asked}: {said}"
            );
            for named in operation.to_string().split("#/components/schemas/").skip(1) {
                let name = named.split('"').next().unwrap();
                assert!(schemas.contains_key(name), "{name}");
            }
        }
    }
}

/// What was kept of walks and cannot be read is said by the workbench as by `check`, and counts for nothing.
#[test]
fn walks_that_were_kept_and_cannot_be_read_are_told_as_the_command_line_tells_them() {
    let folder = jobs(&["boatyard"]);
    let kept = folder.path().join("boatyard/walk.json");
    let bench = Served::start(folder.path());
    let state = || bench.get("/api/jobs/boatyard").good();
    let (before, listed) = (state(), bench.get("/api/jobs").good());
    assert_eq!(before["unread"], Value::Null);
    let answers = bench.get("/api/jobs/boatyard/answers").good();
    std::fs::write(&kept, "[{\"gate\": \"main\", ").unwrap();
    let site = folder.path().join("boatyard/site.toml");
    let checked = common::check(&site, &[]);
    let sentence = state()["unread"].as_str().unwrap().to_owned();
    assert!(
        checked.complaints.contains(&sentence["walk.json ".len()..]),
        "{sentence}"
    );
    let expected =
        "walk.json is not what gatewright walk --keep writes. Take it away, and run that again.";
    assert_eq!(sentence, expected);
    assert_eq!(state()["problems"], before["problems"]);
    let problems = |listed: &Value| listed[0]["problems"].as_u64().unwrap();
    assert_eq!(
        problems(&bench.get("/api/jobs").good()),
        problems(&listed) + 1
    );
    let walks = bench.get("/api/jobs/boatyard/walks").good();
    assert_eq!(walks["unread"], expected);
    let still = bench.get("/api/jobs/boatyard/answers").good();
    assert_eq!(still["findings"], answers["findings"]);
    for page in [
        "/jobs/boatyard",
        "/jobs/boatyard/answers",
        "/jobs/boatyard/edit",
        "/jobs/boatyard/walk",
        "/jobs/boatyard/papers",
    ] {
        let page = bench.get(page);
        assert_eq!(page.status, 200);
        let words = "walk.json is not what gatewright walk --keep writes.";
        assert!(String::from_utf8_lossy(&page.body).contains(words));
    }
    // A folder in its place cannot be read at all.
    std::fs::remove_file(&kept).unwrap();
    std::fs::create_dir(&kept).unwrap();
    // That it cannot be read is a state of its own, which pages are told of.
    assert_ne!(state()["revision"], before["revision"]);
    let sentence = state()["unread"].as_str().unwrap().to_owned();
    assert!(
        sentence.starts_with("walk.json cannot be read ("),
        "{sentence}"
    );
    std::fs::remove_dir(&kept).unwrap();
    assert_eq!(state(), before);
}
