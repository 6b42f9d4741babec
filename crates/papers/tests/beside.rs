//! The drawings of the documents beside the pack: cutting, pulls, terminals.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{changed, example, tidy, words};
use papers::compose::{Issue, compose};
use papers::sheets::NamedDrawing;
use papers::view::Day;
use site::Site;

const GOOD: [&str; 4] = ["boatyard", "vineyard", "quarry", "clinic"];

/// The drawings of the documents beside the pack of a site.
fn beside(site: &Site) -> Vec<NamedDrawing> {
    let issue = Issue {
        day: Day::new(2026, 11, 25).unwrap(),
        maker: String::new(),
        fingerprint: String::new(),
        attachments: Vec::new(),
        walks: Vec::new(),
        since: None,
    };
    let pack = compose(site, &design::answers(site), issue).unwrap();
    let documents = pack.beside.into_iter();
    documents.flat_map(|document| document.drawings).collect()
}

/// The words of the plan of the terminals.
fn terminals(drawings: &[NamedDrawing]) -> String {
    let plan = drawings
        .iter()
        .filter(|sheet| sheet.name.starts_with("terminals"));
    plan.map(|sheet| words(&sheet.drawing)).collect()
}

#[test]
fn no_words_overlap_and_every_wire_lands_on_the_plan_of_the_terminals() {
    for name in GOOD {
        let site = example(name);
        let drawings = beside(&site);
        for sheet in &drawings {
            tidy(&format!("{name}, {}", sheet.name), &sheet.drawing);
        }
        let said = terminals(&drawings);
        let landed = design::wiring::landed(&site);
        let mut seen = 0;
        for core in landed.iter().filter(|core| !core.spare) {
            for (end, landing) in core.ends.iter().enumerate() {
                let (Some(wire), Some(_), Some(other)) =
                    (core.wire, landing.strip, core.ends[1 - end].printed())
                else {
                    continue;
                };
                seen += 1;
                let inside = core.cable.route.is_empty();
                let parts = [wire.to_string(), core.color.unwrap().to_owned()];
                let near = if inside {
                    format!("{} · {} · {}", parts[0], parts[1], core.cable.id)
                } else {
                    format!("{} · {} · {}", core.cable.id, parts[1], parts[0])
                };
                assert!(said.contains(&near), "{name}: {near}");
                assert!(said.contains(&other), "{name}: {other}");
            }
        }
        assert!(seen > 20, "{name}: {seen}");
    }
}

#[test]
fn a_wire_too_many_and_a_number_that_is_missing_are_told() {
    let site = changed("boatyard", |text| {
        text.replacen("from = \"x1:2\"", "from = \"x1:1\"", 1)
            .replacen("wire = 108\n", "", 1)
            .replacen("wire = 108, ", "", 1)
    });
    let said = terminals(&beside(&site));
    assert!(said.contains("× 2 wires, made for 1"), "{said}");
    assert!(said.contains("number ?"), "{said}");
}
