//! The site that uses every key: it reads without problems, and each value is what was written.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test stops where it fails, and compares what must be exact"
)]

mod common;

use quantity::Known;

#[test]
fn reads_without_problems() {
    let loaded = common::load_with_parts(&common::full());
    assert_eq!(loaded.problems.to_string(), "");
    assert!(loaded.site.is_some());
}

#[test]
fn a_part_fills_in_what_the_site_leaves_out() {
    let text = common::full()
        .replace("current = \"180 mA\"\n", "")
        .replace("voltage = \"12 V\"\nleast", "least");
    let site = common::load_with_parts(&text).site.unwrap();
    let reader = site
        .device
        .iter()
        .find(|device| device.id == "reader-in")
        .unwrap();
    assert_eq!(reader.voltage.unwrap().known(), Known::DataSheet);
    assert_eq!(reader.current.unwrap().known(), Known::Measured);
    assert!(reader.origin.from_part("current"));
    assert_eq!(&*reader.origin.field("current").unwrap().file, "parts.toml");
    assert!(!reader.origin.from_part("peak_current"));
    assert_eq!(reader.peak_current.unwrap().known(), Known::Stated);
}
