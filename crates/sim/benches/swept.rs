//! How long it takes to drive one vehicle around a turn past a gate, a centimeter at a time, and to look for its best line.
//!
//! Run with `cargo bench --package sim --bench swept`. One item is one vehicle.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

#[path = "../tests/swept_world/mod.rs"]
mod swept_world;

use divan::Bencher;
use quantity::{Length, Quantity as _};
use sim::swept::Path;
use swept_world::{course, entrance, semi, spot, truck};

fn main() {
    divan::main();
}

fn path() -> Path {
    let corners = [spot(-30.0, -16.0), spot(3.5, -16.0), spot(3.5, 30.0)];
    Path::rounded(&corners, &[Length::from_base(12.6)]).unwrap()
}

/// A truck, 70 m of way at 1 cm, beside 40 things and two edges.
#[divan::bench]
fn one_truck(bencher: Bencher) {
    let (rig, path, place) = (truck(), path(), entrance());
    bencher.bench(|| rig.sweep(&path, &place, Length::from_base(0.01)).unwrap());
}

/// A tractor with its semi-trailer on the same way.
#[divan::bench]
fn one_tractor_trailer(bencher: Bencher) {
    let (rig, path, place) = (semi(), path(), entrance());
    bencher.bench(|| rig.sweep(&path, &place, Length::from_base(0.01)).unwrap());
}

/// The search for the line that leaves the most room, where the middle of the way leaves too little.
#[divan::bench]
fn best_line(bencher: Bencher) {
    let (rig, place) = (semi(), entrance());
    let (margin, step) = (Length::from_base(0.3), Length::from_base(0.01));
    bencher.bench(|| rig.best(&course(), &place, (margin, step)).unwrap());
}

/// The same after one bollard was moved that no line comes near to, where the search before is known.
#[divan::bench]
fn best_line_again(bencher: Bencher) {
    let (rig, mut place) = (semi(), entrance());
    let how = (Length::from_base(0.3), Length::from_base(0.01));
    let known = rig.search(&course(), &place, how, None).unwrap();
    place.obstacles[0].ends = [spot(-4.0, 20.0); 2];
    bencher.bench(|| rig.search(&course(), &place, how, Some(&known)).unwrap());
}
