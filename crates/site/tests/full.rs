//! The site that uses every key: it reads without problems, and each value is what was written.
#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test stops where it fails, and compares what must be exact"
)]

use crate::common;
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

#[test]
fn a_price_book_is_read_with_its_places() {
    let site = common::load_with_parts(&common::full()).site.unwrap();
    let book = site.site.price_book.unwrap().book.unwrap();
    assert_eq!(book.item[0].price.unwrap().to_string(), "14.00 USD");
    assert_eq!(&*book.item[0].origin.file, "price-book.toml");
    assert_eq!(
        book.rates.as_ref().unwrap().tax.unwrap().to_string(),
        "6.25 %"
    );
}

#[test]
fn a_price_book_is_read_strictly() {
    let load = |book: Option<&str>| {
        let site = "[site]\nname = \"a\"\ncode_basis = \"us\"\nprice_book = \"book.toml\"\n";
        let files = book.map(|text| common::source("book.toml", text));
        let loaded = site::load(
            common::source("site.toml", site),
            files.into_iter().collect(),
        );
        loaded.problems.to_string()
    };
    assert!(load(None).contains("there is no price book `book.toml`"));
    let wrong = load(Some(
        "[[item]]\nid = \"a\"\nwhat = \"bolt\"\nprise = \"1.00 USD\"\n",
    ));
    assert!(
        wrong.contains("prise") && wrong.contains("book.toml"),
        "{wrong}"
    );
    let twice = load(Some(
        "[[item]]\nid = \"a\"\nwhat = \"b\"\n[[tool]]\nid = \"a\"\nwhat = \"c\"\n",
    ));
    assert!(twice.contains("two entries of the price book"), "{twice}");
    let none = load(Some("[[item]]\nid = \"a\"\nwhat = \"b\"\npack = 0\n"));
    assert!(none.contains("zero"), "{none}");
}
