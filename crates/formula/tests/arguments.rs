//! Lines of the calculator, read and refused.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use formula::arguments::{ArgumentProblem, Asked, pair, read};
use formula::find;
use formula::solve::{Found, Place, solve};

fn asked(name: &str, line: &[&str]) -> Result<Asked, Vec<ArgumentProblem>> {
    let pairs: Vec<(String, String)> = line.iter().map(|text| pair(text).unwrap()).collect();
    read(find(name).unwrap(), &pairs)
}

const RUN: [&str; 3] = ["source=24 V", "current=0.5 A", "resistance=6.385 Ω/kft"];

#[test]
fn a_whole_line_is_computed() {
    let line = [RUN.as_slice(), &["length=100 ft"]].concat();
    let Asked::Forward(values) = asked("voltage-drop", &line).unwrap() else {
        panic!("not forward")
    };
    assert_eq!(values.len(), 4);
}

/// A tenth of 24 V is 2.4 V; at 0.5 A that is a loop of 4.8 Ω, and at 6.385 Ω in a thousand feet 375.88 ft of run.
#[test]
fn a_share_wanted_of_the_drop_is_a_share_of_the_source() {
    for (wanted, noted) in [
        ("drop=10 %", true),
        ("share=10 %", false),
        ("drop=2.4 V", false),
    ] {
        let line = [RUN.as_slice(), &["length=?", wanted]].concat();
        let Asked::Backward(question) = asked("voltage-drop", &line).unwrap() else {
            panic!("not backward")
        };
        assert_eq!(question.note.is_some(), noted, "{wanted}");
        let solved = solve(find("voltage-drop").unwrap(), &question).unwrap();
        let Found::One(Place::At(length)) = solved.found else {
            panic!("{wanted}: not one")
        };
        assert!((length / 0.3048 - 2.4 / 0.5 / 2.0 / 6.385e-3).abs() < 1e-6);
    }
}

#[test]
fn a_share_of_what_has_none_is_refused() {
    let line = [RUN.as_slice(), &["length=?", "far_end=10 %"]].concat();
    let problems = asked("voltage-drop", &line).unwrap_err();
    assert_eq!(problems.len(), 1);
    assert_eq!(problems[0].name, "far_end");
}

#[test]
fn all_faults_of_a_line_are_named_at_once() {
    let line = ["source=24 A", "curent=0.5 A", "length=?", "source=12 V"];
    let problems = asked("voltage-drop", &line).unwrap_err();
    let of = |name: &str| {
        problems
            .iter()
            .find(|problem| problem.name == name)
            .unwrap()
    };
    assert_eq!(of("curent").write.as_deref(), Some("current"));
    assert!(of("current").what.contains("Current in the circuit"));
    assert!(of("resistance").write.as_ref().unwrap().contains("Ω/kft"));
    assert!(of("length").what.contains("share"));
    assert!(
        problems
            .iter()
            .filter(|problem| problem.name == "source")
            .count()
            == 2
    );
}

#[test]
fn half_a_question_is_refused() {
    let forward = [RUN.as_slice(), &["length=1 ft", "drop=1 V"]].concat();
    assert_eq!(asked("voltage-drop", &forward).unwrap_err()[0].name, "drop");
    let two = [
        "source=24 V",
        "current=?",
        "resistance=6 Ω/kft",
        "length=?",
        "drop=1 V",
    ];
    assert_eq!(asked("voltage-drop", &two).unwrap_err()[0].name, "length");
    let both = [RUN.as_slice(), &["length=?", "drop=1 V", "share=1 %"]].concat();
    assert_eq!(asked("voltage-drop", &both).unwrap_err()[0].name, "share");
    assert!(pair("length 100 ft").is_err());
}
