//! What is remembered of an earlier round changes no answer: sites are edited at random, and answered with a memory and without.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "a test may stop at the first surprise"
)]

use design::{Remembered, answers_on, answers_remembering};
use proptest::prelude::*;
use site::{Site, SourceFile};
use std::num::NonZeroUsize;
use std::path::Path;

/// The site file of an example, and the files beside it.
fn files(example: &str) -> (String, Vec<SourceFile>) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(example);
    let text = |name: &str| std::fs::read_to_string(folder.join(name)).unwrap();
    let beside = ["parts.toml", "price-book.toml"].map(|name| SourceFile {
        name: name.to_owned(),
        text: text(name),
    });
    (text("site.toml"), beside.to_vec())
}

fn load(text: &str, beside: &[SourceFile]) -> Option<Site> {
    let main = SourceFile {
        name: "site.toml".to_owned(),
        text: text.to_owned(),
    };
    site::load(main, beside.to_vec()).site
}

/// Places of the numbers with which values begin.
fn numbers(text: &str) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    for (at, _) in text.match_indices('"') {
        let rest = &text[at + 1..];
        let long = rest
            .find(|one: char| !(one.is_ascii_digit() || one == '.'))
            .unwrap_or(0);
        if long > 0 && rest[..long].parse::<f64>().is_ok() {
            found.push((at + 1, at + 1 + long));
        }
    }
    found
}

/// A change of a text.
#[derive(Debug, Clone, Copy)]
enum Edit {
    /// One of its numbers changed by a factor.
    Number(f64),
    /// A line put in that says nothing.
    Remark,
    /// A line taken out, whatever it says.
    Without,
    /// A thing taken out that has tables of its own.
    WithoutThing,
    /// Two things in each other's place.
    Swapped,
    /// A name or a word that is another.
    Word,
}

/// Where each table begins, and where the last one ends.
fn tables(text: &str) -> Vec<usize> {
    let begins = text.match_indices("\n[").map(|(at, _)| at + 1);
    begins.chain([text.len()]).collect()
}

/// The text with a change at one of the places where it can be made.
fn edited(text: &str, which: usize, edit: Edit) -> String {
    let ends: Vec<usize> = text.match_indices('\n').map(|(at, _)| at + 1).collect();
    let line = which % (ends.len() - 1);
    let tables = tables(text);
    let table = which % (tables.len() - 2);
    let [first, second, third] = [0, 1, 2].map(|more| tables[table + more]);
    let factor = match edit {
        Edit::Number(factor) => factor,
        Edit::Remark => {
            let (before, after) = text.split_at(ends[line]);
            return format!("{before}# looked at again\n{after}");
        }
        Edit::Without => return format!("{}{}", &text[..ends[line]], &text[ends[line + 1]..]),
        Edit::WithoutThing => return format!("{}{}", &text[..first], &text[second..]),
        Edit::Swapped => {
            let (one, other) = (&text[first..second], &text[second..third]);
            return format!("{}{other}{one}{}", &text[..first], &text[third..]);
        }
        Edit::Word => {
            let words: Vec<usize> = text.match_indices(" = \"").map(|(at, _)| at + 4).collect();
            let (before, after) = text.split_at(words[which % words.len()]);
            return format!("{before}x{after}");
        }
    };
    let all = numbers(text);
    let (from, to) = all[which % all.len()];
    let number: f64 = text[from..to].parse().unwrap();
    format!("{}{}{}", &text[..from], number * factor, &text[to..])
}

/// Changes that are tried, those most often that leave most as it was.
const EDITS: &[Edit] = &[
    Edit::Number(0.9),
    Edit::Number(1.02),
    Edit::Number(1.3),
    Edit::Remark,
    Edit::Remark,
    Edit::Without,
    Edit::WithoutThing,
    Edit::Swapped,
    Edit::Word,
];

proptest! {
    #![proptest_config(ProptestConfig { cases: 3, ..ProptestConfig::default() })]

    #[test]
    fn answers_are_those_of_a_fresh_round(
        example in prop::sample::select(vec!["boatyard", "clinic", "quarry", "vineyard"]),
        edits in prop::collection::vec((any::<usize>(), prop::sample::select(EDITS)), 8),
    ) {
        let threads = NonZeroUsize::new(2).unwrap();
        let (first, beside) = files(example);
        let mut text = first.clone();
        let mut remembered = Remembered::new();
        for (which, edit) in edits {
            let changed = edited(&text, which, edit);
            let Some(site) = load(&changed, &beside) else { continue };
            let kept = answers_remembering(&site, threads, &mut remembered);
            let fresh = answers_on(&site, threads);
            prop_assert!(kept == fresh, "{example}: {which}, {edit:?}");
            text = changed;
        }
        let site = load(&first, &beside).unwrap();
        prop_assert!(answers_remembering(&site, threads, &mut remembered) == answers_on(&site, threads));
    }
}

/// The second round of the same site works no simulation, and finds the same.
#[test]
fn a_round_again_finds_the_same() {
    let (text, beside) = files("clinic");
    let site = load(&text, &beside).unwrap();
    let mut remembered = Remembered::new();
    let one = answers_remembering(&site, NonZeroUsize::MIN, &mut remembered);
    let other = answers_remembering(&site, NonZeroUsize::MIN, &mut remembered);
    assert_eq!(one, other);
}

/// Values from all over a site are changed, each beside all the others as they were: whoever looked at it is asked again.
#[test]
fn a_changed_value_reaches_whoever_looked_at_it() {
    let (text, beside) = files("boatyard");
    let all = numbers(&text).len();
    let mut remembered = Remembered::new();
    let threads = NonZeroUsize::new(2).unwrap();
    for which in (0..all).step_by(all / 12) {
        let Some(site) = load(&edited(&text, which, Edit::Number(1.07)), &beside) else {
            continue;
        };
        let kept = answers_remembering(&site, threads, &mut remembered);
        assert!(kept == answers_on(&site, threads), "{which}");
    }
}

/// Lines that say nothing are put in all over a site: what was found is taken over, and names the lines of now.
#[test]
fn what_stands_lower_is_told_with_its_new_line_and_not_asked_again() {
    let (text, beside) = files("boatyard");
    let threads = NonZeroUsize::new(2).unwrap();
    let mut remembered = Remembered::new();
    let site = load(&text, &beside).unwrap();
    let before = answers_remembering(&site, threads, &mut remembered);
    let lines = text.lines().count();
    for which in [lines / 9, lines / 2, lines - 9] {
        let lower = load(&edited(&text, which, Edit::Remark), &beside).unwrap();
        assert!(site.changed(&lower).is_some(), "{which}");
        let kept = answers_remembering(&lower, threads, &mut remembered);
        assert!(kept == answers_on(&lower, threads), "{which}");
        assert!(kept != before, "{which}");
    }
}
