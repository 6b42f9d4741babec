//! Anchors for a set: every entry in every pattern and depth, the cheapest that holds first, and what rules the others out.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::{AnchorChoice, anchor_choices};
use site::SourceFile;

fn file(name: &str, text: String) -> SourceFile {
    SourceFile {
        name: name.to_owned(),
        text,
    }
}

/// The only set of the test site, with texts replaced.
fn chosen(replaced: &[(&str, &str)]) -> AnchorChoice {
    let mut text = include_str!("standing/site.toml").to_owned();
    for (from, to) in replaced {
        assert!(text.contains(from), "{from}");
        text = text.replace(from, to);
    }
    let parts = include_str!("standing/parts.toml").to_owned();
    let parts = [file("parts.toml", parts)];
    let mut found = anchor_choices(&file("site.toml", text), &parts).unwrap();
    assert_eq!(found.len(), 1);
    found.remove(0)
}

fn hundredths(choice: &AnchorChoice) -> Vec<u64> {
    let prices = choice.best.iter().map(|way| way.asked.price.as_deref());
    prices
        .map(|price| site::Price::read(price.unwrap()).unwrap().hundredths())
        .collect()
}

#[test]
fn the_cheapest_way_that_holds_comes_first() {
    let choice = chosen(&[]);
    assert_eq!(choice.set, "foundation \"pad\" · anchor 1");
    assert!(choice.tried >= 5000, "{}", choice.tried);
    assert_eq!(choice.best.len(), 5, "{:#?}", choice.ruled_out);
    assert!(choice.best.iter().all(|way| way.asked.failing.is_empty()));
    assert!(hundredths(&choice).is_sorted(), "{:?}", hundredths(&choice));
    let ruled_out: usize = choice.ruled_out.iter().map(|one| one.candidates).sum();
    assert_eq!(choice.tried, choice.holding + ruled_out);
    assert!(choice.write.is_empty(), "{:?}", choice.write);
}

#[test]
fn what_is_cast_in_is_no_choice_for_concrete_that_is_there() {
    let cast = "cast in before the concrete, which is there already";
    let choice = chosen(&[]);
    assert!(choice.ruled_out.iter().any(|one| one.what == cast));
    assert!(choice.best.iter().all(|way| way.asked.part != "bolt-3-4"));
    let fresh = chosen(&[("existing = true", "existing = false")]);
    assert!(fresh.ruled_out.iter().all(|one| one.what != cast));
    assert!(fresh.holding > choice.holding);
}

#[test]
fn a_plate_in_hand_keeps_its_pattern() {
    let choice = chosen(&[(
        "plate_strength",
        "plate_spacing = \"8 in\"\nplate_row_spacing = \"8 in\"\nplate_strength",
    )]);
    assert!(choice.pattern_stays);
    assert!(choice.tried < 100, "{}", choice.tried);
    for way in &choice.best {
        assert_eq!(way.pattern, "4 as they stand");
    }
}

#[test]
fn a_pad_that_is_too_small_leaves_none_and_says_why() {
    let choice = chosen(&[("\"36 in\"", "\"9 in\""), ("\"30 in\"", "\"9 in\"")]);
    assert_eq!(choice.holding, 0);
    assert!(choice.best.is_empty());
    assert!(choice.ruled_out[0].candidates > 0);
}

#[test]
fn what_is_missing_is_named() {
    let choice = chosen(&[("strength = \"4000 psi\"\n", "")]);
    assert_eq!(choice.tried, 0);
    assert!(
        choice.write.iter().any(|line| line.starts_with("strength")),
        "{:?}",
        choice.write
    );
}
