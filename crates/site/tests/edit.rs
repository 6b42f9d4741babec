//! Changing one value leaves every other byte as it was.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use crate::common;
use site::set_value;
use std::fmt::Write as _;

/// The lines that differ between two texts.
fn changed_lines(before: &str, after: &str) -> Vec<String> {
    assert_eq!(before.lines().count(), after.lines().count());
    before
        .lines()
        .zip(after.lines())
        .filter(|(before, after)| before != after)
        .map(|(_, after)| after.to_owned())
        .collect()
}

#[test]
fn one_value_changes_and_its_comment_stays() {
    let text = common::full();
    let changed = set_value(
        &text,
        "gate.slide.leaf.panel.mass",
        "655 lb ± 2 %, measured",
    )
    .unwrap();
    assert_eq!(
        changed_lines(&text, &changed),
        ["mass = \"655 lb ± 2 %, measured\"   # weighed on two scales"]
    );
    assert_eq!(common::load_with_parts(&changed).problems.to_string(), "");
}

#[test]
fn values_of_every_type_change() {
    let text = common::full();
    for (path, value, line) in [
        ("site.name", "Heron Point", "name = \"Heron Point\""),
        ("site.name", "\"4\"", "name = \"4\""),
        ("site.installed", "2026-10-01", "installed = 2026-10-01"),
        ("device.reader-in.ports", "8", "ports = 8"),
        ("device.reader-in.monitored", "false", "monitored = false"),
        ("device.reader-in.kind", "keypad", "kind = \"keypad\""),
        (
            "device.reader-in.at.2",
            "44 in",
            "at = [\"-6 ft\", \"-12 ft\", \"44 in\"]",
        ),
        (
            "device.0.at",
            "[\"1 ft\", \"2 ft\", \"3 ft\"]",
            "at = [\"1 ft\", \"2 ft\", \"3 ft\"]",
        ),
        (
            "gate.slide.stop.0.how",
            "bolted angle",
            "how = \"bolted angle\"",
        ),
        (
            "gate.slide.wheels.bearing_friction",
            "0.03",
            "bearing_friction = \"0.03\"",
        ),
        (
            "operator.drive.curve.1.force",
            "115 lbf",
            "  { speed = \"1 ft/s\", force = \"115 lbf\" },",
        ),
        ("cable.w-01.size", "16 AWG", "size = \"16 AWG\""),
        ("climate.coldest", "-5 °F", "coldest = \"-5 °F\""),
    ] {
        let changed =
            set_value(&text, path, value).unwrap_or_else(|problem| panic!("{path}\n{problem}"));
        assert_eq!(changed_lines(&text, &changed), [line], "{path}");
        assert_eq!(
            common::load_with_parts(&changed).problems.to_string(),
            "",
            "{path}"
        );
    }
}

#[test]
fn a_missing_key_is_added_to_its_table() {
    let text = "[site]\r\nname = \"a\" # first\r\ncode_basis = \"us\"\r\n\r\n[[gate]]\r\nid = \"g\"\r\nkind = \"track-slide\"\r\n\r\n\
                [[gate.leaf]]\r\nid = \"l\"\r\n[gate.motion]\r\n[gate.guide]\r\ncount = 2";
    for (path, value, before) in [
        (
            "site.revision",
            "B",
            "code_basis = \"us\"\r\nrevision = \"B\"\r\n\r\n",
        ),
        (
            "gate.g.slope",
            "1 %",
            "kind = \"track-slide\"\r\nslope = \"1 %\"\r\n\r\n",
        ),
        (
            "gate.g.leaf.l.mass",
            "600 lb",
            "id = \"l\"\r\nmass = \"600 lb\"\r\n[gate.motion]",
        ),
        (
            "gate.g.motion.cruise_speed",
            "1 ft/s",
            "[gate.motion]\r\ncruise_speed = \"1 ft/s\"\r\n[gate.guide]",
        ),
        (
            "gate.g.guide.height",
            "6 ft",
            "count = 2\r\nheight = \"6 ft\"\r\n",
        ),
    ] {
        let changed =
            set_value(text, path, value).unwrap_or_else(|problem| panic!("{path}\n{problem}"));
        assert!(changed.contains(before), "{path}\n{changed}");
        assert_eq!(common::load(&changed).problems.to_string(), "", "{path}");
    }
}

#[test]
fn a_key_is_added_to_an_inline_table() {
    let text = "[site]\nname = \"a\"\ncode_basis = \"us\"\n[[enclosure]]\nid = \"box\"\nmounted = [{ what = \"relay\" }] # two\n";
    let changed = set_value(text, "enclosure.box.mounted.0.count", "2").unwrap();
    assert!(
        changed.contains("mounted = [{ what = \"relay\", count = 2 }] # two\n"),
        "{changed}"
    );
}

#[test]
fn what_does_not_read_changes_nothing() {
    let text = common::full();
    let mut shown = String::new();
    for (path, value) in [
        ("gate.slide.leaf.panel.mass", "640 lbf"),
        ("gate.slide.leaf.panel.mass", "640"),
        ("gate.slide.leaf.panel.mas", "640 lb"),
        ("gate.slid.leaf.panel.mass", "640 lb"),
        ("gate.slide.leaf", "640 lb"),
        ("gate.slide.stop.7.at", "640 lb"),
        ("gate", "1"),
        ("site", "1"),
        ("", ""),
        ("device.reader-in.ports", "-2"),
        ("device.reader-in.ports", "0"),
        ("gate.slide.leaf.panel.mass", "0 lb"),
        ("device.reader-in.monitored", "perhaps"),
        ("device.reader-in.at.2", "44"),
        ("device.reader-in.at.3", "44 in"),
        ("device.reader-in.kind", "reder"),
        ("site.name", " "),
        ("site.name.first", "a"),
    ] {
        let problem = set_value(&text, path, value).unwrap_err();
        write!(shown, "── {path} = {value}\n{problem}\n").unwrap();
    }
    insta::assert_snapshot!(shown);
}
