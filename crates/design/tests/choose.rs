//! What can be chosen for a site: each candidate stands in the whole site, and what holds for least comes first.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::{Choice, Choosable, choose};
use quantity::{Length, Quantity as _};
use site::SourceFile;

fn file(name: &str, text: &str) -> SourceFile {
    SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    }
}

const SITE: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    parts = ["parts.toml"]
    [climate]
    corrosivity = "C3"
    [[gate]]
    id = "main"
    kind = "single-swing"
    [[gate.post]]
    id = "hinges"
    role = "hinge"
    part = "thin-zinc"
    [[gate.post]]
    id = "old"
    role = "catch"
    [gate.post.pillar]
    core = "unknown"
"#;

const POSTS: &str = r#"
    [[post]]
    id = "thin-zinc"
    price = "90.00 USD"
    finish = { coating = "hot-dip zinc", zinc = "20 µm", wanted_life = "25 years", edges_coated = true }
    [[post]]
    id = "dear"
    price = "260.00 USD"
    finish = { coating = "hot-dip zinc", zinc = "100 µm", wanted_life = "25 years", edges_coated = true }
    [[post]]
    id = "thick-zinc"
    price = "140.00 USD"
    finish = { coating = "hot-dip zinc", zinc = "85 µm", wanted_life = "25 years", edges_coated = true }
    [[post]]
    id = "painted"
    price = "60.00 USD"
    finish = { coating = "paint", wanted_life = "25 years" }
"#;

fn posts() -> Vec<Choice> {
    let parts = [file("parts.toml", POSTS)];
    choose(&file("site.toml", SITE), &parts, Choosable::Post).unwrap()
}

#[test]
fn the_cheapest_post_that_holds_comes_first_and_each_that_fails_says_why() {
    let choice = posts().remove(0);
    assert_eq!(choice.thing, "gate \"main\" · post \"hinges\"");
    assert_eq!(choice.now.as_deref(), Some("thin-zinc"));
    let order: Vec<&str> = choice
        .candidates
        .iter()
        .map(|one| one.part.as_str())
        .collect();
    assert_eq!(order, ["thick-zinc", "dear", "painted", "thin-zinc"]);
    assert_eq!(choice.candidates[0].price.as_deref(), Some("140.00 USD"));
    assert_eq!(choice.candidates[3].failing[0].question, "keep-corrosion");
}

#[test]
fn an_old_pillar_is_no_post_to_buy() {
    assert_eq!(posts().len(), 1);
}

/// A rack drive that pulls along the gate line, on a pad whose size is open.
const PADS: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    [climate]
    soil_class = "sand"
    frost_depth = "30 in"
    [[gate]]
    id = "main"
    kind = "track-slide"
    [[operator]]
    id = "drive"
    gate = "main"
    drive = "rack"
    at = ["22 ft", "14 in", "18 in"]
    foundation = "pad"
    starting_force = "300 lbf"
    [[foundation]]
    id = "pad"
    at = ["22 ft", "14 in", "2 in"]
    [[foundation.anchor]]
    holds = "operator"
    plate_length = "16 in"
    plate_width = "14 in"
"#;

/// Sides and depth of a pad in inches.
fn inches(pad: &design::PadSize) -> Vec<f64> {
    let length = |text: &String| quantity::read::<Length>(text).unwrap().base() / 0.0254;
    pad.size.iter().map(length).collect()
}

fn pads(text: &str) -> Vec<design::PadChoice> {
    design::pad_choices(&file("site.toml", text), &[]).unwrap()
}

/// The largest share that tipping or sliding uses of a pad, by hand: 150 lb/ft³, a factor of 1.5, friction of sand 0.25.
fn used(length: f64, width: f64, depth: f64) -> f64 {
    let weight = 150.0 * length * width * depth / 1728.0;
    let tipping = 1.5 * 300.0 * (16.0 + depth) / (weight * length / 2.0);
    tipping.max(1.5 * 300.0 / (0.25 * weight))
}

#[test]
fn the_smallest_pad_holds_and_no_smaller_one_does() {
    let choice = pads(PADS).remove(0);
    let best = inches(&choice.best[0]);
    assert!(used(best[0], best[1], best[2]) <= 1.0, "{best:?}");
    // Every smaller pad of whole steps on which the plate fits, below frost, tips or slides.
    let volume = best.iter().product::<f64>();
    for length in (16..=96).step_by(2).map(f64::from) {
        for width in (14..=96).step_by(2).map(f64::from) {
            for depth in (32..=72).step_by(2).map(f64::from) {
                let smaller = length * width * depth < volume - 1.0;
                assert!(
                    !smaller || used(length, width, depth) > 1.0,
                    "{length} {width} {depth}"
                );
            }
        }
    }
    assert!(choice.tried > 100, "{}", choice.tried);
    assert_eq!(
        choice
            .ruled_out
            .iter()
            .map(|one| one.candidates)
            .sum::<usize>(),
        choice.tried - 1
    );
    assert!(choice.best[0].asked.failing.is_empty());
}

#[test]
fn bags_carry_a_tenth_of_waste() {
    let choice = pads(PADS).remove(0);
    let best = &choice.best[0];
    let cubic_feet = inches(best).iter().product::<f64>() / 1728.0;
    let bags = (cubic_feet * 1.1 / 0.6 - 1e-6).ceil();
    assert!((f64::from(best.bags) - bags).abs() < 1e-9, "{bags}");
    assert_eq!(best.bag, "80 lb");
}

#[test]
fn the_smallest_square_pad_stands_beside_a_longer_one() {
    let choice = pads(PADS).remove(0);
    let square = inches(choice.best.last().unwrap());
    assert!((square[0] - square[1]).abs() < 1e-9, "{square:?}");
}

#[test]
fn a_pad_that_is_there_and_the_footing_of_a_post_are_not_chosen() {
    let there = PADS.replace("at = [\"22 ft\", \"14 in\", \"2 in\"]", "existing = true");
    assert!(pads(&there).is_empty());
    let post = "[[gate.post]]\nid = \"post\"\nrole = \"guide\"\nfoundation = \"pad\"\n[[operator]]";
    assert!(pads(&PADS.replace("[[operator]]", post)).is_empty());
}

#[test]
fn a_pad_names_what_it_lacks() {
    let choice = pads(&PADS.replace("frost_depth = \"30 in\"", "")).remove(0);
    assert!(choice.best.is_empty());
    assert!(
        choice
            .write
            .iter()
            .any(|line| line.starts_with("frost_depth")),
        "{:?}",
        choice.write
    );
}
