//! The laws of findings, tried on checks that are simple enough to follow by hand.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use crate::asking::{Asking, read};
use crate::check::testing::only;
use crate::check::{Check, Round};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::subject::About;
use crate::{Finding, Method, Standing, Verdict};
use formula::{Evidence, Source};
use quantity::{Area, Power, Quantity as _};
use site::{CodeBasis, Site};
use std::fmt::Write as _;

static RECALLED: Source = Source {
    work: "a work that nobody had at hand",
    clause: "table 9",
    evidence: Evidence::Memory,
    seen: "not seen",
};

/// The heat in an enclosure against its heater: a sum against a limit.
const HEAT: Check = Check {
    question: "enclosure-hot",
    codes: &[CodeBasis::Us],
    leaves_open: "",
    concerns: "each enclosure",
    ask: |site, round| each(site, round, false),
};

/// The same on a figure from memory.
const RECALLED_HEAT: Check = Check {
    ask: |site, round| each(site, round, true),
    ..HEAT
};

fn each<'s>(site: &'s Site, round: &mut Round<'s, '_>, recalled: bool) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            heat(asking, enclosure, recalled)
        });
    }
}

fn heat<'s>(asking: &mut Asking<'s>, enclosure: &'s site::Enclosure, recalled: bool) -> Answer {
    let mut sum = Power::from_base(0.0);
    for mounted in &enclosure.mounted {
        sum += read!(asking, mounted.heat)?;
    }
    let limit = read!(asking, enclosure.heater)?;
    // A value that is read only where the sum is large: the search has to notice it.
    if sum > limit {
        let more = asking.read_if_there(
            &enclosure.origin,
            "cooling_area",
            enclosure.cooling_area.as_ref(),
        );
        sum += Power::from_base(more.map_or(0.0, Area::base));
    }
    if recalled {
        asking.rest_on(&RECALLED);
    }
    asking.say(|print| format!("It gives off {}.", print.q(sum)));
    Ok(Outcome::at_most(
        Labeled::new("heat", sum),
        Labeled::new("limit", limit),
    ))
}

/// An enclosure with so many parts of 10 W ± 10 %, and a limit.
fn site_with(parts: usize, limit: &str) -> String {
    let mut text = String::from(
        "[site]\nname = \"Test yard\"\ncode_basis = \"us\"\n[[enclosure]]\nid = \"box\"\n",
    );
    writeln!(text, "heater = \"{limit}\"").unwrap();
    for _ in 0..parts {
        text.push_str("[[enclosure.mounted]]\nwhat = \"part\"\nheat = \"10 W ± 10 %\"\n");
    }
    text
}

fn base(figure: Option<crate::Figure>) -> f64 {
    figure.unwrap().value.unwrap()
}

#[test]
fn every_corner_is_tried_up_to_ten_and_the_worst_ends_are_combined_beyond() {
    for (parts, method) in [(10, Method::EveryCorner), (11, Method::EachToItsWorseEnd)] {
        let finding = only(&HEAT, &site_with(parts, "500 W"));
        let worst = finding.worst.unwrap();
        assert_eq!(worst.method, method);
        assert_eq!(worst.at.len(), parts);
        let eleven = 11.0 * f64::from(u32::try_from(parts).unwrap());
        assert!(
            (base(worst.demand) - eleven).abs() < 1e-9,
            "a sum is worst with every part at its high end"
        );
    }
}

#[test]
fn the_measurement_that_turns_the_verdict_alone_is_named() {
    let mut text = site_with(2, "22.5 W");
    text = text.replacen("10 W ± 10 %", "10 W ± 30 %", 1);
    let finding = only(&HEAT, &text);
    assert_eq!(
        finding.standing,
        Standing::TurnsWithinTolerance,
        "{}",
        finding.sentence
    );
    assert_eq!(finding.turned_by.len(), 1);
    assert!(
        finding.turned_by[0].text.contains("30 %"),
        "{:?}",
        finding.turned_by
    );
    assert!(finding.deciding.unwrap().turns);
    assert!(finding.sentence.contains("measure"), "{}", finding.sentence);
}

#[test]
fn measurements_that_turn_it_only_together_are_named_together() {
    let finding = only(&HEAT, &site_with(3, "31.5 W"));
    assert_eq!(
        finding.standing,
        Standing::TurnsWithinTolerance,
        "{}",
        finding.sentence
    );
    assert_eq!(
        finding.turned_by.len(),
        2,
        "two of the three, at + 1 W each, pass 31.5 W"
    );
    assert!(!finding.deciding.unwrap().turns);
}

#[test]
fn a_value_that_only_a_corner_reads_is_pushed_as_well() {
    let text = site_with(1, "10.5 W").replace("heater", "cooling_area = \"5 m² ± 2 m²\"\nheater");
    let finding = only(&HEAT, &text);
    assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    assert!(
        (base(finding.worst.unwrap().demand) - 18.0).abs() < 1e-9,
        "11 W and 7 m²"
    );
}

#[test]
fn exact_values_have_no_corners() {
    let finding = only(&HEAT, &site_with(2, "50 W").replace(" ± 10 %", ""));
    assert_eq!((finding.worst, finding.deciding), (None, None));
    assert_eq!(finding.standing, Standing::Holds);
}

#[test]
fn what_would_hold_from_memory_is_unknown_and_what_fails_warns() {
    let holds = only(&RECALLED_HEAT, &site_with(1, "50 W"));
    assert_eq!(holds.verdict, Verdict::UnknownUntil);
    assert_eq!(holds.standing, Standing::Unknown);
    assert!(
        holds
            .sentence
            .contains("looked up in a work that nobody had at hand table 9"),
        "{}",
        holds.sentence
    );
    let fails = only(&RECALLED_HEAT, &site_with(1, "5 W"));
    assert_eq!(fails.verdict, Verdict::Fails);
    assert!(
        fails.sentence.contains("from memory only"),
        "{}",
        fails.sentence
    );
}

/// A site with one device in its box and an entry of what somebody looked up.
fn site_that_looked_up(source: &str, heater: &str) -> String {
    format!(
        "{}\n[[looked_up]]\nsource = \"{source}\"\nedition = \"2019\"\nsays = \"as used here\"\nby = \"the installer\"\non = 2026-09-20\n",
        site_with(1, heater)
    )
}

#[test]
fn what_somebody_looked_up_counts_and_says_who_did() {
    let name = "a work that nobody had at hand table 9";
    let open = only(&RECALLED_HEAT, &site_with(1, "50 W"));
    assert_eq!(open.look_up, [name]);
    for written in [name, "A work that nobody had at hand, Table 9"] {
        let finding = only(&RECALLED_HEAT, &site_that_looked_up(written, "50 W"));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.look_up.is_empty());
        assert!(finding.sources[0].is_looked_up());
        assert_eq!(
            finding.sources[0].seen,
            "edition 2019, by the installer on 2026-09-20: as used here"
        );
    }
}

#[test]
fn another_table_of_the_work_was_not_looked_up() {
    let other = "a work that nobody had at hand table 8";
    let finding = only(&RECALLED_HEAT, &site_that_looked_up(other, "50 W"));
    assert_eq!(finding.verdict, Verdict::UnknownUntil);
    assert!(!finding.sources[0].is_looked_up());
}

#[test]
fn what_fails_fails_whoever_looked_it_up() {
    let name = "a work that nobody had at hand table 9";
    let finding = only(&RECALLED_HEAT, &site_that_looked_up(name, "5 W"));
    assert_eq!(finding.verdict, Verdict::Fails);
    assert!(!finding.sentence.contains("memory"), "{}", finding.sentence);
}

#[test]
fn assumed_values_are_listed() {
    let finding = only(&HEAT, &site_with(2, "50 W, assumed"));
    let paths: Vec<&str> = finding
        .assumed
        .iter()
        .map(|reading| reading.path.as_str())
        .collect();
    assert_eq!(paths, ["enclosure \"box\" · heater"]);
}

#[test]
fn a_finding_keeps_its_field_names() {
    let finding: Finding = only(&HEAT, &site_with(2, "50 W"));
    let value = serde_json::to_value(&finding).unwrap();
    let keys: Vec<&String> = value.as_object().unwrap().keys().collect();
    assert_eq!(
        keys,
        [
            "question",
            "ask",
            "subject",
            "severity",
            "standing",
            "verdict",
            "sentence",
            "because",
            "demand",
            "capacity",
            "ratio",
            "worst",
            "deciding",
            "turned_by",
            "working",
            "sources",
            "missing",
            "look_up",
            "assumed",
            "confirm",
            "leaves_open"
        ]
    );
    assert_eq!(value["verdict"], "holds");
    assert_eq!(value["standing"], "holds");
    assert_eq!(value["severity"], "damage");
    assert_eq!(value["demand"]["unit"], "W");
    assert_eq!(value["demand"]["value"], 20.0);
    assert_eq!(value["worst"]["method"], "every-corner");
}
