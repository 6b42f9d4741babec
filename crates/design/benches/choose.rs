//! How long it takes to choose anchors among all patterns and depths, the whole site asked for the best of them.
//!
//! Run with `cargo bench -p design --bench choose`.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

use design::{AnchorChoice, anchor_choices};
use divan::{Bencher, counter::ItemsCount};
use site::SourceFile;

fn main() {
    divan::main();
}

fn chosen() -> Vec<AnchorChoice> {
    let file = |name: &str, text: &str| SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    };
    let site = file("site.toml", include_str!("../tests/standing/site.toml"));
    let parts = file("parts.toml", include_str!("../tests/standing/parts.toml"));
    anchor_choices(&site, &[parts]).unwrap()
}

/// Counted are the ways that are tried.
#[divan::bench]
fn anchors_of_a_plate(bencher: Bencher) {
    let tried: usize = chosen().iter().map(|choice| choice.tried).sum();
    bencher.counter(ItemsCount::new(tried)).bench(chosen);
}
