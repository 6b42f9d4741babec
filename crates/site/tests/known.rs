//! What is known from the reading before never shows: a site reads as if it were read for the first time.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::common::{full, source, text, typical_year};
use site::{KnownParts, SourceFile, WeatherYear, load, load_knowing};
use std::sync::Arc;

/// The full site with what stands beside it, each file changed as `change` says.
fn files(change: impl Fn(&str, String) -> Option<String>) -> Vec<SourceFile> {
    let all = [
        ("site.toml", full()),
        ("parts.toml", text("sites/parts.toml")),
        ("typical.epw", typical_year()),
        ("price-book.toml", text("sites/price-book.toml")),
    ];
    let changed = all
        .into_iter()
        .filter_map(|(name, text)| change(name, text).map(|text| source(name, &text)));
    changed.collect()
}

fn split(mut files: Vec<SourceFile>) -> (SourceFile, Vec<SourceFile>) {
    let main = files.remove(0);
    (main, files)
}

#[test]
fn a_file_that_changes_is_read_again_and_none_is_forgotten() {
    type Change = fn(&str, String) -> Option<String>;
    let as_it_is: Change = |_, text| Some(text);
    let changes: [Change; 7] = [
        |name, text| {
            let warmer = text.replacen(",8.0,5.0,", ",9.0,5.0,", 1);
            Some(if name == "typical.epw" { warmer } else { text })
        },
        |name, text| (name != "typical.epw").then_some(text),
        |name, text| {
            let cut = text.get(..text.len() / 2).map(str::to_owned);
            if name == "typical.epw" {
                cut
            } else {
                Some(text)
            }
        },
        |name, text| (name != "parts.toml").then_some(text),
        |name, text| {
            let other = text.replacen("overhead", "overhed", 1);
            Some(if name == "price-book.toml" {
                other
            } else {
                text
            })
        },
        |name, text| {
            let other = text.replacen("typical.epw", "other.epw", 1);
            Some(if name == "site.toml" { other } else { text })
        },
        |name, text| {
            let wrong = format!("{text}\n[[operator]]\nid = 3\n");
            Some(if name == "parts.toml" { wrong } else { text })
        },
    ];
    let mut known = KnownParts::default();
    let mut told = Vec::new();
    for change in changes
        .into_iter()
        .flat_map(|change| [as_it_is, change, change])
    {
        let (main, beside) = split(files(change));
        let fresh = load(main.clone(), beside.clone());
        let again = load_knowing(main, beside, &mut known);
        assert_eq!(again.problems.to_string(), fresh.problems.to_string());
        assert!(format!("{:?}", again.site) == format!("{:?}", fresh.site));
        told.push(fresh.problems.to_string());
    }
    told.sort();
    told.dedup();
    assert!(told.len() > 4, "the changes bring out problems: {told:#?}");
}

#[test]
fn a_year_of_weather_is_read_once() {
    let mut known = KnownParts::default();
    let mut year = || -> Arc<WeatherYear> {
        let (main, beside) = split(files(|_, text| Some(text)));
        let site = load_knowing(main, beside, &mut known).site.unwrap();
        site.climate.unwrap().weather_file.unwrap().year.unwrap()
    };
    assert!(Arc::ptr_eq(&year(), &year()));
}
