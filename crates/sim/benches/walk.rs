//! How many scenarios of a walk test are worked in a second, and how long a proof takes.
//!
//! Run with `cargo bench --package sim --bench walk`. One item is one scenario. What else the machine does is printed first:
//! rates that are taken beside other work are too low.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a benchmark for the terminal stops at the first surprise"
)]

#[path = "../tests/walk_world/mod.rs"]
mod walk_world;

use divan::Bencher;
use divan::counter::ItemsCount;
use sim::walk::{Family, Habit, Walk, Way};

const SCENARIOS: u64 = 2_000_000;

fn main() {
    let load = std::fs::read_to_string("/proc/loadavg");
    println!("load {}", load.as_deref().unwrap_or("unknown").trim());
    divan::main();
}

fn sweep(bencher: Bencher, walk: &Walk) {
    let threads = std::thread::available_parallelism().unwrap();
    bencher
        .counter(ItemsCount::new(SCENARIOS))
        .bench(|| walk.sweep(SCENARIOS, threads, &|_| ()));
}

/// One round body, two beams, one edge.
#[divan::bench(sample_count = 10)]
fn trial(bencher: Bencher) {
    sweep(bencher, &walk_world::trial(0.08).lower().unwrap());
}

/// Nine bodies of up to twelve cylinders, six devices that see, two edges, both ways of the leaf.
#[divan::bench(sample_count = 10)]
fn full(bencher: Bencher) {
    sweep(bencher, &walk_world::full().lower().unwrap());
}

fn swing(bencher: Bencher, walk: &sim::walk::SwingWalk) {
    let threads = std::thread::available_parallelism().unwrap();
    bencher
        .counter(ItemsCount::new(SCENARIOS))
        .bench(|| walk.sweep(SCENARIOS, threads, &|_| ()));
}

/// One leaf that swings, one round body, one beam, two edges.
#[divan::bench(sample_count = 10)]
fn swing_single(bencher: Bencher) {
    swing(bencher, &walk_world::turning::single(0.08).lower().unwrap());
}

/// Two leaves that swing, nine bodies, four devices that see, four edges, force sensing, a wall.
#[divan::bench(sample_count = 10)]
fn swing_double(bencher: Bencher) {
    swing(bencher, &walk_world::turning::double().lower().unwrap());
}

/// The proof that a round body that crosses is not touched too hard.
#[divan::bench]
fn proof(bencher: Bencher) {
    let mut world = walk_world::trial(0.08);
    world.limits.lasting_after = walk_world::base(50.0);
    world.limits.rest_after = walk_world::base(60.0);
    let walk = world.lower().unwrap();
    let threads = std::thread::available_parallelism().unwrap();
    let family = Family {
        pass: 0,
        body: 0,
        way: Way::In,
        habit: Habit::Cross,
    };
    bencher.bench(|| walk.prove(&family, 1000, threads).unwrap());
}
