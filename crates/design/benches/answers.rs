//! How long a site's verdicts take (at the values as written, no working), and how long its findings take in full.
//!
//! Run with `cargo bench -p design`. Prints the median and the best of many runs over the boatyard.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a benchmark talks to whoever runs it"
)]

use site::{Site, SourceFile};
use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

/// Runs of each measurement.
const RUNS: usize = 200;

fn main() {
    let site = boatyard();
    let count = design::verdicts(&site).len();
    report("verdicts, nominal, no working", count, || {
        black_box(design::verdicts(black_box(&site)).len());
    });
    report("findings, worst corners and working", count, || {
        black_box(design::findings(black_box(&site)).len());
    });
}

fn report(what: &str, count: usize, mut run: impl FnMut()) {
    let mut times: Vec<Duration> = (0..RUNS)
        .map(|_| {
            let begin = Instant::now();
            run();
            begin.elapsed()
        })
        .collect();
    times.sort();
    println!(
        "{what}: {count} answers, median {:.3} ms, best {:.3} ms",
        milliseconds(times[RUNS / 2]),
        milliseconds(times[0])
    );
}

fn milliseconds(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}

fn boatyard() -> Site {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/boatyard");
    let read = |name: &str| SourceFile {
        name: name.to_owned(),
        text: std::fs::read_to_string(folder.join(name)).expect("the example is there"),
    };
    let loaded = site::load(read("site.toml"), vec![read("parts.toml")]);
    loaded
        .site
        .expect("the example has a name and a code basis")
}
