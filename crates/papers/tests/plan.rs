//! The plans of the example sites: nothing overlaps, nothing is left out, and the same site gives the same bytes.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use papers::plan::{Imprint, Plan, plans};
use site::{Site, SourceFile, load};
use std::fs;
use std::path::Path;

const SITES: [&str; 4] = ["boatyard", "boatyard-faulty", "vineyard", "vineyard-faulty"];

fn example(name: &str) -> Site {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name);
    let file = |file: &str| SourceFile {
        name: file.to_owned(),
        text: fs::read_to_string(folder.join(file)).unwrap(),
    };
    load(file("site.toml"), vec![file("parts.toml")])
        .site
        .unwrap()
}

fn drawn(site: &Site) -> Vec<Plan> {
    let imprint = Imprint {
        date: "25 November 2026".to_owned(),
        caution: String::new(),
    };
    plans(site, &imprint).unwrap()
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        for plan in drawn(&example(name)) {
            assert_eq!(plan.drawing.overlapping_text(), [], "{name}, {}", plan.name);
            assert!(
                plan.drawing.without_room().is_empty(),
                "{name}, {}: {:?}",
                plan.name,
                plan.drawing.without_room()
            );
        }
    }
}

#[test]
fn every_site_has_a_gate_plan_to_scale_and_the_same_bytes_twice() {
    for name in SITES {
        let site = example(name);
        let (once, again) = (drawn(&site), drawn(&site));
        assert_eq!(once[0].name, "gate-plan");
        for (one, other) in once.iter().zip(&again) {
            assert!(one.drawing.scale().is_some());
            assert_eq!(one.drawing.svg(), other.drawing.svg());
        }
    }
}

#[test]
fn what_has_no_place_is_listed() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"barrier-arm\"\n[[device]]\nid = \"eye\"\nkind = \"camera\"\n";
    let file = SourceFile {
        name: "site.toml".to_owned(),
        text: text.to_owned(),
    };
    let site = load(file, Vec::new()).site.unwrap();
    let plan = &drawn(&site)[0];
    let words: Vec<String> = plan
        .drawing
        .text_boxes()
        .iter()
        .map(|text| text.words.clone())
        .collect();
    assert!(words.iter().any(|words| words.contains("eye")), "{words:?}");
}
