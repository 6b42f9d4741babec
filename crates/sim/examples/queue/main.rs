//! Works days of a queue and prints what came of them, for the cross-checks and the measurements in `reference`.
//!
//! `queue world=gate days=1000 threads=2`: the first line is JSON. `world=bare` is one server with nothing behind it:
//! `rate=` vehicles an hour, `service=` and `spread=` seconds.

#![allow(clippy::print_stdout, reason = "an example says what it found")]

mod world;

use quantity::Quantity as _;
use sim::queue::{Estimate, HourReport, Run};
use std::collections::BTreeMap;
use std::num::NonZeroUsize;
use std::time::Instant;

fn main() -> Result<(), String> {
    let given: BTreeMap<String, String> = std::env::args()
        .skip(1)
        .filter_map(|word| {
            let (name, value) = word.split_once('=')?;
            Some((name.to_owned(), value.to_owned()))
        })
        .collect();
    let number = |name: &str, missing: f64| {
        given
            .get(name)
            .and_then(|value| value.parse::<f64>().ok())
            .unwrap_or(missing)
    };
    let world = match given.get("world").map(String::as_str) {
        Some("bare") => world::bare(
            number("rate", 120.0),
            number("service", 20.0),
            number("spread", 20.0),
        ),
        _ => world::gate(number("room", 1.0) > 0.0, number("one_each", 0.0) > 0.0),
    };
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "small whole numbers"
    )]
    let (days, threads, seed) = (
        number("days", 1600.0) as u64,
        number("threads", 2.0) as usize,
        number("seed", 1.0) as u64,
    );
    let queue = world.lower().map_err(|refused| refused.why)?;
    let run = Run {
        days,
        seed,
        threads: NonZeroUsize::new(threads).unwrap_or(NonZeroUsize::MIN),
    };
    let began = Instant::now();
    let report = queue.run(&run, &|_| ());
    let seconds = began.elapsed().as_secs_f64();
    let hours: Vec<String> = report.hours.iter().map(hour).collect();
    println!(
        "{{\"seconds\":{seconds},\"days\":{},\"vehicles\":{},\"hours\":[{}],\"whole\":{}}}",
        report.days,
        report.vehicles,
        hours.join(","),
        hour(&report.whole)
    );
    Ok(())
}

fn hour(hour: &HourReport) -> String {
    let numbers: Vec<String> = hour
        .numbers
        .iter()
        .map(|share| share.base().to_string())
        .collect();
    format!(
        "{{\"arrivals\":{},\"standing\":{},\"in_road\":{},\"wait\":{},\"long_wait\":{},\"through\":{},\"openings\":{},\"reversals\":{},\"shared\":{},\"tailgated\":{},\"numbers\":[{}]}}",
        pair(&hour.arrivals),
        pair(&hour.standing),
        pair(&hour.in_road),
        pair(&hour.wait),
        pair(&hour.long_wait),
        pair(&hour.through),
        pair(&hour.openings),
        pair(&hour.reversals),
        pair(&hour.shared),
        pair(&hour.tailgated),
        numbers.join(",")
    )
}

fn pair<Q: quantity::Quantity>(estimate: &Estimate<Q>) -> String {
    format!("[{},{}]", estimate.value.base(), estimate.error.base())
}
