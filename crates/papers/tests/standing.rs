//! Structure and day sheet of a composed pack: every input with how it is known, every lift with its weight.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use papers::compose::{Issue, Pack, compose};
use papers::view::{Day, InputGroup};
use site::{SourceFile, load};
use std::fs;
use std::path::Path;

fn composed() -> Pack {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/sites/standing.toml");
    let file = SourceFile {
        name: "standing.toml".to_owned(),
        text: fs::read_to_string(path).unwrap(),
    };
    let site = load(file, Vec::new()).site.unwrap();
    let issue = Issue {
        day: Day::new(2026, 11, 25).unwrap(),
        maker: "test".to_owned(),
        fingerprint: String::new(),
        attachments: Vec::new(),
        walks: Vec::new(),
        since: None,
    };
    compose(&site, &design::answers(&site), issue).unwrap()
}

fn group<'a>(pack: &'a Pack, title: &str) -> &'a InputGroup {
    let groups = &pack.view.structure.as_ref().unwrap().groups;
    let titles: Vec<&str> = groups.iter().map(|group| group.title.as_str()).collect();
    let found = groups.iter().find(|group| group.title == title);
    found.unwrap_or_else(|| panic!("{title} in {titles:?}"))
}

#[test]
fn every_stated_key_is_an_input_with_how_it_is_known() {
    let pack = composed();
    let pad = group(&pack, "Foundation pad-drive");
    let of = |what: &str| pad.inputs.iter().find(|input| input.what == what).unwrap();
    assert_eq!(
        (of("strength").value.as_str(), of("strength").known.as_str()),
        ("3500 psi", "assumed")
    );
    assert!(of("stub up 1").value.contains("c-power"));
    let anchors = group(&pack, "Anchors drive-anchors on pad-drive");
    let deep = anchors.inputs.iter().find(|it| it.what == "embedment");
    assert_eq!(deep.unwrap().known, "measured");
    assert!(anchors.inputs.iter().any(|it| it.what == "plate length"));
    group(&pack, "Post guide-a, guide-b");
    group(&pack, "Bollard bollard-drive");
}

#[test]
fn foundations_that_are_alike_share_their_inputs_and_keep_their_places() {
    let pack = composed();
    let shared = group(&pack, "Foundation footing-a, footing-b");
    for name in ["at of footing-a", "at of footing-b"] {
        assert!(
            shared.inputs.iter().any(|input| input.what == name),
            "{name}"
        );
    }
}

#[test]
fn an_engineer_decides_and_the_findings_say_so() {
    let pack = composed();
    let part = pack.view.structure.as_ref().unwrap();
    assert!(part.statement.contains("A licensed engineer decides"));
    assert!(!part.results.is_empty());
    for result in &part.results {
        let finding = &pack.view.findings[result.findings[0]];
        assert!(
            finding.confirm.contains("A licensed engineer decides"),
            "{}",
            finding.id
        );
    }
}

#[test]
fn every_lift_has_its_weight_and_says_how() {
    let pack = composed();
    let sheet = pack.view.day_sheet.as_ref().unwrap();
    let [drive, empty] = &sheet.lifts[..] else {
        panic!("two lifts");
    };
    assert_eq!(drive.index, "3.0");
    assert!(drive.how.starts_with("with lifting table"), "{}", drive.how);
    assert_eq!(
        (empty.limit.as_str(), empty.how.as_str()),
        ("32.9 lb", "alone")
    );
}

#[test]
fn every_step_of_hanging_has_its_holds() {
    let pack = composed();
    let hanging = &pack.view.day_sheet.as_ref().unwrap().hangings[0];
    assert!(hanging.title.contains("520 lb"), "{}", hanging.title);
    assert!(hanging.wind.contains("15 mph"));
    assert_eq!(hanging.steps.len(), 2);
    assert!(hanging.steps.iter().all(|step| step.holds.len() == 2));
    assert!(hanging.steps[0].holds[1].contains("200 lbf sideways at 4 ft"));
}

#[test]
fn the_templates_are_a_document_of_their_own() {
    let pack = composed();
    let view = pack.templates.as_ref().unwrap();
    assert!(view.pages.len() > 4);
    let pdf = papers::pack::templates(view).unwrap();
    assert!(pdf.starts_with(b"%PDF"));
    let whole = papers::pack::pack(&pack.view).unwrap();
    assert!(whole.starts_with(b"%PDF"));
}
