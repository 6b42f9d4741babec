//! The handbook's pages are whole, and what they tell the reader to type works.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use formula::arguments::{Asked, pair, read};
use formula::handbook::{index, page};
use formula::solve::{Found, Place, solve};
use formula::{find, registry};

#[test]
fn every_page_has_every_part() {
    for calculation in registry() {
        let sheet = calculation.sheet;
        let page = page(calculation);
        for part in [
            "# ",
            "## Formula",
            "## What it takes",
            "## Where it holds",
            "## Outside cases",
            "## Example",
        ] {
            assert!(page.contains(part), "{} lacks {part}", sheet.name);
        }
        for symbol in sheet.inputs.iter().chain(sheet.outputs) {
            assert!(
                page.contains(&format!("`{}`", symbol.name)),
                "{}",
                sheet.name
            );
            assert_eq!(symbol.meaning, symbol.meaning.trim());
        }
        assert!(
            !page.contains("differs |"),
            "{} differs from an outside case",
            sheet.name
        );
        assert!(page.ends_with('\n') && !page.contains("\n\n\n"));
        let link = format!("[{0}]({1}/{0}.md)", sheet.name, sheet.discipline);
        assert!(index().contains(&link));
    }
}

/// Takes the example line of a page apart as a shell would.
fn words(line: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quote = None;
    for letter in line.chars() {
        match (letter, quote) {
            ('"' | '\'', None) => quote = Some(letter),
            (_, Some(open)) if letter == open => quote = None,
            (' ', None) => words.push(String::new()),
            _ => words.last_mut().unwrap().push(letter),
        }
    }
    words
}

#[test]
fn the_examples_of_every_page_work() {
    for calculation in registry() {
        let page = page(calculation);
        let lines: Vec<&str> = page
            .lines()
            .filter(|line| line.starts_with("gatewright calc "))
            .collect();
        assert!(!lines.is_empty());
        for line in lines {
            let words = words(line);
            let found = find(&words[2]).unwrap();
            let pairs: Vec<(String, String)> =
                words[3..].iter().map(|text| pair(text).unwrap()).collect();
            match read(found, &pairs).expect(line) {
                Asked::Forward(inputs) => assert!(found.evaluate(&inputs).is_ok(), "{line}"),
                Asked::Backward(question) => {
                    let solved = solve(found, &question).expect(line);
                    assert!(matches!(solved.found, Found::One(Place::At(_))), "{line}");
                }
            }
        }
    }
}
