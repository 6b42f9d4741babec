//! Curves of the example sites: they keep the laws of motion, and a site without facts has none.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::curves::{Graph, Meaning, TravelCurve, travel_curves};
use quantity::Quantity as _;
use site::{Site, SourceFile, load};
use std::fs;
use std::path::Path;

fn example(name: &str) -> Site {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name);
    let file = |file: &str| SourceFile {
        name: file.to_owned(),
        text: fs::read_to_string(folder.join(file)).unwrap(),
    };
    load(
        file("site.toml"),
        vec![file("parts.toml"), file("price-book.toml")],
    )
    .site
    .unwrap()
}

fn curves(name: &str) -> Vec<TravelCurve> {
    travel_curves(&example(name))
}

/// The area under the speed is the way from stop to stop, whatever the parts of the travel.
#[test]
fn the_area_under_the_speed_is_the_travel() {
    for (name, way) in [("boatyard", None), ("vineyard", Some(2.135))] {
        let site = example(name);
        let gate = &site.gate[0];
        let travel = match way {
            Some(radius) => gate.travel_angle.unwrap().nominal().base() * radius,
            None => gate.travel.unwrap().nominal().base(),
        };
        let curves = travel_curves(&site);
        let speed = curves.iter().find_map(|curve| match &curve.graph {
            Graph::Speed(lines) => Some(&lines.lines[0].points),
            _ => None,
        });
        let area: f64 = speed
            .unwrap()
            .windows(2)
            .map(|two| {
                let time = (two[1].0 - two[0].0).base();
                time * f64::midpoint(two[0].1.base(), two[1].1.base())
            })
            .sum();
        assert!((area - travel).abs() < 1e-6, "{name}: {area} for {travel}");
    }
}

#[test]
fn wind_seals_and_debris_never_make_a_slide_easier() {
    for curve in curves("boatyard") {
        if let Graph::Force(lines) = curve.graph {
            let of = |wanted| {
                let mut lines = lines.lines.iter();
                &lines.find(|line| line.meaning == wanted).unwrap().points
            };
            let (hard, easy) = (of(Meaning::Demand), of(Meaning::EasierDemand));
            assert!(hard.iter().zip(easy).all(|(hard, easy)| hard.1 >= easy.1));
            assert_eq!(of(Meaning::Capacity).len(), hard.len());
        }
    }
}

#[test]
fn every_kind_of_example_has_its_curves() {
    let kinds = |name: &str| {
        let letter = |curve: &TravelCurve| match curve.graph {
            Graph::Speed(_) => 's',
            Graph::Force(_) => 'f',
            Graph::Torque(_) => 't',
        };
        curves(name).iter().map(letter).collect::<String>()
    };
    assert_eq!(kinds("boatyard"), "sf");
    assert_eq!(kinds("quarry"), "sf");
    assert_eq!(kinds("vineyard"), "stt");
    assert_eq!(kinds("clinic"), "st");
}

#[test]
fn a_site_without_facts_has_no_curves() {
    let text = "[site]\nname = \"Bare\"\ncode_basis = \"us\"\n[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n";
    let file = SourceFile {
        name: "site.toml".to_owned(),
        text: text.to_owned(),
    };
    assert_eq!(travel_curves(&load(file, Vec::new()).site.unwrap()), []);
}
