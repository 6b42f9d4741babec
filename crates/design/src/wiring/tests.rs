//! Tests of which core lands where.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use super::{clamps, fed, landed, marks};
use crate::check::testing::site;

const SITE: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    [[device]]
    id = "reader"
    kind = "reader"
    [[device]]
    id = "controller"
    kind = "access controller"
    enclosure = "box"
    [[enclosure]]
    id = "box"
    [[fuse]]
    id = "f1"
    [[cable]]
    id = "w-01"
    from = "controller"
    to = "reader"
    fuse = "f1"
    [[cable]]
    id = "w-02"
    from = "controller"
    to = "reader"
    [[terminals]]
    id = "x1"
    on = ["box"]
    marks = ["1 to 4", "earth"]
    [[terminals]]
    id = "reader-block"
    on = ["reader"]
    count = 3
    [[wiring]]
    cable = "w-01"
    core = [
      { wire = 1, color = "red", from = "x1:1", to = "1" },
      { wire = 2, color = "black", from = "x1:2", to = "2" },
      { color = "white", spare = true },
    ]
    [[wiring]]
    cable = "w-02"
    pattern = "T568B"
"#;

#[test]
fn marks_are_counted_or_as_written() {
    let site = site(SITE);
    assert_eq!(marks(&site.terminals[0]), ["1", "2", "3", "4", "earth"]);
    assert_eq!(marks(&site.terminals[1]), ["1", "2", "3"]);
}

#[test]
fn each_core_lands_where_its_text_says() {
    let site = site(SITE);
    let landed = landed(&site);
    assert_eq!(landed.len(), 3 + 8);
    assert_eq!(landed[0].ends[0].printed().unwrap(), "x1:1");
    assert_eq!(*landed[0].ends[0].on, *"box");
    assert_eq!(landed[0].ends[1].printed().unwrap(), "reader:1");
    assert!(landed[2].spare);
    assert_eq!(landed[3].color, Some("white-orange"));
    assert_eq!(landed[3].ends[0].printed().unwrap(), "controller:1");
}

#[test]
fn two_cores_on_one_terminal_lie_under_one_clamp() {
    let doubled = SITE.replace("x1:2", "x1:1");
    let site = site(&doubled);
    let landed = landed(&site);
    let clamps = clamps(&landed);
    let first = clamps
        .iter()
        .find(|clamp| clamp.printed() == "x1:1")
        .unwrap();
    assert_eq!(first.ends.len(), 2);
}

#[test]
fn a_fuse_feeds_the_ends_of_its_cables() {
    let site = site(SITE);
    assert_eq!(fed(&site)[0].feeds.len(), 1);
}
