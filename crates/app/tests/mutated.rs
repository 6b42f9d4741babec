//! Two thousand damaged copies of the example sites: none makes the program stop, and each gives a placed problem or findings.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "../../site/tests/common/mutate.rs"]
mod mutate;

use mutate::mutate;
use papers::compose::{Issue, compose};
use papers::view::Day;
use site::{Loaded, SourceFile, load};
use std::fs;
use std::path::Path;

const COPIES: u64 = 500;

fn source(folder: &str, name: &str) -> SourceFile {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(folder)
        .join(name);
    SourceFile {
        name: name.to_owned(),
        text: fs::read_to_string(path).unwrap(),
    }
}

fn issue() -> Issue {
    Issue {
        day: Day::new(2026, 11, 25).unwrap(),
        maker: String::new(),
        fingerprint: String::new(),
        attachments: Vec::new(),
        walks: Vec::new(),
        since: None,
    }
}

fn holds_for_every_copy_of(folder: &str) {
    let main = source(folder, "site.toml");
    let beside = ["parts.toml", "price-book.toml"].map(|name| source(folder, name));
    for seed in 0..COPIES {
        let text = mutate(&main.text, seed);
        let length = text.len();
        let damaged = SourceFile {
            name: main.name.clone(),
            text,
        };
        let Loaded { site, problems } = load(damaged, beside.to_vec());
        for problem in problems.iter().filter(|problem| problem.file == main.name) {
            assert!(
                problem.span.end <= length,
                "{folder}, copy {seed}: {problem}"
            );
        }
        let Some(site) = site else {
            assert!(
                !problems.is_empty(),
                "{folder}, copy {seed}: neither site nor problem"
            );
            continue;
        };
        let verdicts = design::verdicts(&site);
        assert!(
            !verdicts.is_empty(),
            "{folder}, copy {seed}: a site without answers"
        );
        for verdict in verdicts {
            assert!(
                !verdict.strain.is_nan(),
                "{folder}, copy {seed}: {}",
                verdict.question
            );
        }
        if seed % 20 == 0 {
            let answers = design::answers(&site);
            assert!(!answers.coverage.is_empty());
            // A plan may be refused, for a thing that stands too far away, but never by a stop of the program.
            let _ = compose(&site, &answers, issue());
        }
    }
}

#[test]
fn damaged_boatyards_are_answered_or_refused() {
    holds_for_every_copy_of("boatyard");
}

#[test]
fn damaged_vineyards_are_answered_or_refused() {
    holds_for_every_copy_of("vineyard");
}

#[test]
fn damaged_quarries_are_answered_or_refused() {
    holds_for_every_copy_of("quarry");
}

#[test]
fn damaged_clinics_are_answered_or_refused() {
    holds_for_every_copy_of("clinic");
}
