//! Works scenarios of a walk test and prints them, for cross-checks: values as arguments `name=value`.
//!
//! `cargo run --release --package sim --example walk -- world=full count=1000` prints one scenario a line; before them, the
//! world as JSON where the leaf slides. The worlds are `trial` and `full` of a leaf that slides, `single` and `double` of
//! leaves that swing, `arm` and `lift` of a leaf that rises. `time=1` works them on `threads` threads instead, or on all
//! processors, and prints the seconds and the shares; `prove=1000` proves each family, looking at so many boxes in each part
//! of its space.

#![allow(
    clippy::print_stdout,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

#[path = "../../tests/walk_world/mod.rs"]
mod walk_world;
mod world;

use quantity::{Quantity, Time};
use sim::walk::{AnyWalk, AnyWorld, Behavior, Class, Outcome, Scenario, Verdict, Way};
use std::collections::BTreeMap;
use std::num::NonZeroUsize;
use std::time::Instant;

fn main() {
    let given: BTreeMap<String, String> = std::env::args()
        .skip(1)
        .filter_map(|argument| {
            let (name, value) = argument.split_once('=')?;
            Some((name.to_owned(), value.to_owned()))
        })
        .collect();
    let number = |name: &str, otherwise: u64| {
        given
            .get(name)
            .map_or(otherwise, |text| text.parse().unwrap())
    };
    let world = of_name(given.get("world").map_or("trial", String::as_str));
    let walk = world.lower().unwrap_or_else(|reach| panic!("{reach}"));
    let threads = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
    let threads = usize::try_from(number("threads", threads as u64)).unwrap();
    let threads = NonZeroUsize::new(threads).unwrap();
    if number("time", 0) > 0 {
        timed(&walk, number("count", 1_000_000), threads);
        return;
    }
    if number("prove", 0) > 0 {
        prove(&walk, number("prove", 0), threads);
        return;
    }
    if let AnyWorld::Sliding(world) = &world {
        println!("{}", world::world_as_json(world));
    }
    for at in 0..number("count", 1000) {
        // Leaps so that every family has its part of a small count.
        let scenario = walk.scenario(number("from", 0) + at * 1031);
        let outcome = walk.evaluate(&scenario).unwrap();
        println!("{}", row(&scenario, &outcome));
    }
}

fn of_name(name: &str) -> AnyWorld {
    match name {
        "trial" => AnyWorld::Sliding(walk_world::trial(0.08)),
        "full" => AnyWorld::Sliding(walk_world::full()),
        "single" => AnyWorld::Swinging(walk_world::turning::single(0.08)),
        "double" => AnyWorld::Swinging(walk_world::turning::double()),
        "arm" => AnyWorld::Rising(walk_world::turning::arm()),
        "lift" => AnyWorld::Rising(walk_world::turning::lift()),
        _ => panic!("{name} is none of the worlds"),
    }
}

fn timed(walk: &AnyWalk, count: u64, threads: NonZeroUsize) {
    let start = Instant::now();
    let sweep = walk.sweep(count, threads, &|_| ());
    println!("seconds {}", start.elapsed().as_secs_f64());
    println!("scenarios {}", sweep.scenarios);
    for (class, share) in Class::ALL.iter().zip(&sweep.shares) {
        println!("{} {} ± {}", class.words(), n(share.share), n(share.error));
    }
}

fn prove(walk: &AnyWalk, most: u64, threads: NonZeroUsize) {
    let start = Instant::now();
    let proofs = walk.prove_all(most, threads);
    println!("seconds {}", start.elapsed().as_secs_f64());
    for proof in proofs {
        let family = proof.family;
        let verdict = match proof.verdict {
            Verdict::Proved => "proved".to_owned(),
            Verdict::Refuted(_, outcome) => format!("refuted: {}", outcome.class.words()),
            Verdict::Undecided(share) => format!("undecided: {}", n(share)),
        };
        println!(
            "pass {} body {} {:?} {:?}: {verdict}, {} boxes",
            family.pass, family.body, family.way, family.habit, proof.boxes
        );
    }
}

pub(crate) fn n<Q: Quantity>(value: Q) -> String {
    let number = value.base();
    if number.is_finite() {
        format!("{number}")
    } else {
        "Infinity".to_owned()
    }
}

fn row(scenario: &Scenario, outcome: &Outcome) -> String {
    let (behavior, depth) = match scenario.behavior {
        Behavior::Cross => ("cross", 0.0),
        Behavior::Stop(depth) => ("stop", depth.base()),
        Behavior::Stand(depth) => ("stand", depth.base()),
    };
    let way = if scenario.way == Way::In { 1 } else { -1 };
    let mut line = format!(
        "{},{},{way},{behavior},{depth},{},{},{},{},{}",
        scenario.pass,
        scenario.body,
        n(scenario.crosses_at),
        n(scenario.slant),
        n(scenario.speed),
        n(scenario.arrives),
        outcome.class.words()
    );
    if let Some(touch) = outcome.touch {
        let forever = |time: Option<Time>| time.map_or_else(|| "Infinity".to_owned(), n);
        let rest = [
            n(touch.time),
            touch.part.to_string(),
            n(touch.travel),
            n(touch.force),
            n(touch.limit),
            n(touch.gap),
            n(touch.room),
            forever(touch.lasts),
            forever(touch.rests),
        ];
        line = format!("{line},{}", rest.join(","));
    }
    line
}
