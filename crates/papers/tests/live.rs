//! Gates on the screen: what is there can be pointed at, what is carried moves, and the drawing is whole.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{SITES, example};
use draw::Point;
use papers::live::{Item, Live, elevation, plan};
use proptest::prelude::*;
use quantity::{Quantity as _, Ratio};

const EVERY: [&str; 4] = ["boatyard", "quarry", "vineyard", "clinic"];

fn both(name: &str, open: f64) -> Vec<Live> {
    let site = example(name);
    let open = Ratio::from_base(open);
    let gates = site.gate.iter();
    gates
        .flat_map(|gate| [plan(&site, gate, open), elevation(&site, gate, open)])
        .collect()
}

fn meters(point: Point) -> [f64; 2] {
    [point.x.base(), point.y.base()]
}

/// The `data-item` names that a drawing has.
fn drawn(live: &Live) -> Vec<&str> {
    let pieces = live.svg.split("data-item=\"").skip(1);
    pieces.map(|rest| rest.split('"').next().unwrap()).collect()
}

#[test]
fn everything_that_is_listed_is_drawn_and_the_other_way_round() {
    for name in EVERY {
        for live in both(name, 0.0) {
            let drawn = drawn(&live);
            for item in &live.items {
                assert!(drawn.contains(&item.path.as_str()), "{name}: {}", item.path);
            }
            let listed = |path: &&str| live.items.iter().any(|item| item.path == **path);
            let apart = |path: &&str| path.starts_with("way.") || path.contains(".leaf.");
            let lost: Vec<_> = drawn
                .iter()
                .filter(|it| !listed(it) && !apart(it))
                .collect();
            assert!(lost.is_empty(), "{name}: {lost:?}");
        }
    }
}

#[test]
fn no_drawing_colors_anything_or_brings_a_script() {
    for name in EVERY {
        for live in both(name, 0.4) {
            let body = live.svg.replace("url(#hatch", "");
            for word in ["style=", "<script", "stroke=", "#"] {
                assert!(!body.contains(word), "{name}: {word}");
            }
            let mut words = body.split(|letter: char| !letter.is_alphanumeric());
            let no_number = words.find(|word| ["NaN", "inf"].contains(word));
            assert_eq!(no_number, None, "{name}");
            assert_eq!(
                live.svg.matches("<g").count(),
                live.svg.matches("</g>").count()
            );
        }
    }
}

#[test]
fn a_contact_edge_rides_on_its_leaf_and_a_post_stays() {
    let site = example("boatyard");
    let closed = plan(&site, &site.gate[0], Ratio::from_base(0.0));
    let of = |name: &str| -> Item {
        closed
            .items
            .iter()
            .find(|item| item.name == name)
            .unwrap()
            .clone()
    };
    assert_eq!(of("edge-leading").carried_by, Some(0));
    assert_eq!(of("beam-far-out").carried_by, None);
    let travel = site.gate[0].travel.as_ref().unwrap().nominal().base();
    let open = plan(&site, &site.gate[0], Ratio::from_base(1.0));
    let moved = format!("transform=\"translate({travel:.4} 0.0000)\"");
    assert!(!closed.svg.contains(&moved) && open.svg.contains(&moved));
}

#[test]
fn an_item_says_its_place_as_the_file_does() {
    let site = example("boatyard");
    let live = plan(&site, &site.gate[0], Ratio::from_base(0.0));
    let beam = live
        .items
        .iter()
        .find(|it| it.path == "device.beam-far-out" && it.key == "to");
    let beam = beam.unwrap();
    let feet = |feet: f64| feet * 0.3048;
    assert!((meters(beam.at)[0] + feet(1.5)).abs() < 1e-9);
    assert!((meters(beam.at)[1] + feet(6.5)).abs() < 1e-9);
    assert!(beam.movable);
    assert_eq!(beam.place[2], "2 ft 3 1/2 in");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Whatever the opening, the same things are there in the same places and the same layers.
    #[test]
    fn opening_moves_the_leaf_and_nothing_else(open in 0.0..1.0_f64, which in 0..SITES.len()) {
        let name = SITES[which];
        for (shut, ajar) in both(name, 0.0).into_iter().zip(both(name, open)) {
            prop_assert_eq!(shut.items, ajar.items);
            prop_assert_eq!(shut.layers, ajar.layers);
            prop_assert_eq!(shut.zones, ajar.zones);
        }
    }
}
