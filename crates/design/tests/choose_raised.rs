//! The fewest protective devices at an arm that rises: nobody is hit with them, somebody is without any one of them, and
//! where none help, who stays open is told.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::walk::GateWalk;
use design::{ProtectionChoice, protection_choices};
use site::{SourceFile, load};
use std::num::NonZeroUsize;
use std::path::Path;

/// The force that an opening arm was measured to press with near its pivot, where nobody had put the meter.
const NEAR: &str = "force_test = [\n  { direction = \"opening\", along = \"0.3 m\", gap = \"1.5 m\", height = \"1.1 m\", \
peak = [\"328 N\", \"331 N\", \"330 N\"], settled = \"70 N\", end = \"0 N\", meter_tolerance = \"5 %\", on = 2026-05-12 },";

fn read(name: &str) -> SourceFile {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/clinic");
    SourceFile {
        name: name.to_owned(),
        text: std::fs::read_to_string(folder.join(name)).unwrap(),
    }
}

/// The clinic without its scanners.
fn site() -> String {
    let mut text = read("site.toml").text;
    for id in ["scanner-road", "scanner-park"] {
        let from = text.find(&format!("[[device]]\nid = \"{id}\"")).unwrap();
        let until = from + text[from..].find("\n\n").unwrap();
        text.replace_range(from..until, "");
    }
    text.replace("force_test = [", NEAR)
}

fn chosen(site: &str, parts: &str) -> ProtectionChoice {
    let main = SourceFile {
        name: "site.toml".to_owned(),
        text: site.to_owned(),
    };
    let parts = [SourceFile {
        name: "parts.toml".to_owned(),
        text: parts.to_owned(),
    }];
    let mut found = protection_choices(&main, &parts).unwrap();
    assert_eq!(found.len(), 1);
    found.remove(0)
}

/// Whether somebody is hit in many walks past the site with these tables added.
fn somebody_is_hit(tables: &[String]) -> bool {
    let text = format!("{}\n{}\n", site(), tables.join("\n"));
    let main = SourceFile {
        name: "site.toml".to_owned(),
        text,
    };
    let site = load(main, vec![read("parts.toml")]).site.unwrap();
    let walk = GateWalk::of(&site, &site.gate[0]).unwrap();
    walk.sweep(100_000, NonZeroUsize::MIN, &|_| {}).any_bad
}

#[test]
fn a_field_on_either_side_holds_and_neither_is_too_many() {
    let choice = chosen(&site(), &read("parts.toml").text);
    let set = choice.from_nothing.unwrap();
    assert_eq!(set.left, 0, "{set:#?}");
    assert!(set.left_for.is_empty());
    assert_eq!(set.devices.len(), 2, "{set:#?}");
    assert!(
        set.devices
            .iter()
            .all(|words| words.contains("level field"))
    );
    assert!(!somebody_is_hit(&set.write));
    for at in 0..set.write.len() {
        let mut rest = set.write.clone();
        rest.remove(at);
        assert!(somebody_is_hit(&rest), "{rest:?}");
    }
}

#[test]
fn without_entries_who_stays_open_is_told() {
    let parts = read("parts.toml").text;
    let cut = parts.find("id = \"scanner-floor-24v\"").unwrap();
    let (before, after) = parts.split_at(cut);
    let rest = after.split_once("[[device]]").unwrap().1;
    let parts = format!("{before}{rest}");
    let choice = chosen(&site(), &parts);
    assert_eq!(choice.candidates, 0);
    let set = choice.from_nothing.unwrap();
    assert!(set.devices.is_empty() && set.left > 0);
    assert!(set.left_worst.unwrap().contains("the leaf"));
    let adult = "adult, leaf closing".to_owned();
    assert!(set.left_for.contains(&adult), "{:?}", set.left_for);
}
