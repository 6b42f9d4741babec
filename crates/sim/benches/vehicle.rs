//! How many vehicles are decided in a second: every stopping place of one, the speed up to which it is safe, and drives.
//!
//! Run with `cargo bench --package sim --bench vehicle`. One item is one vehicle, or one drive.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

#[path = "../tests/vehicle_world/mod.rs"]
mod vehicle_world;

use divan::Bencher;
use divan::counter::ItemsCount;
use sim::vehicle::World;
use vehicle_world::{base, beam, drawn, ring, slide, with_trailer};

fn main() {
    divan::main();
}

fn worlds() -> Vec<World> {
    (0..1000).map(drawn).collect()
}

/// Every stopping place, both ways round, three places across the lane.
#[divan::bench]
fn stopping_places(bencher: Bencher) {
    let worlds = worlds();
    bencher.counter(ItemsCount::new(worlds.len())).bench(|| {
        worlds
            .iter()
            .filter(|world| world.unwatched().unwrap().is_some())
            .count()
    });
}

/// The speed up to which no drive is touched.
#[divan::bench]
fn fastest(bencher: Bencher) {
    let worlds = worlds();
    bencher.counter(ItemsCount::new(worlds.len())).bench(|| {
        worlds
            .iter()
            .filter(|world| world.fastest().unwrap().is_some())
            .count()
    });
}

/// Single drives past a slide gate with two loops and two beams.
#[divan::bench(sample_count = 10)]
fn drives(bencher: Bencher) {
    let seen = vec![
        ring(-3.0, -1.2, 1.1),
        ring(1.2, 3.0, 1.1),
        beam(-0.1, 0.5),
        beam(0.1, 0.5),
    ];
    let world = slide(with_trailer(), seen);
    bencher
        .counter(ItemsCount::new(100_000_u32))
        .bench(|| world.sweep(0, 100_000, base(5.0)).unwrap());
}
