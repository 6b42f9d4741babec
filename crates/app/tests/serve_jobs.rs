//! Jobs in the workbench: listed, begun by a survey, copied, brought from elsewhere; and the interface is as it is described.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

mod common;

use common::served::{Served, jobs};
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
