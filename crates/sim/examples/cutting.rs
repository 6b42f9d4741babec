//! Cuts the problems of its standard input, one a line, and prints what each costs, for cross-checks.
//!
//! A line: saw cut; bars as length, price and count (none: any number), parted by blanks; pieces as length and count. All
//! lengths in millimeters: `3; 6000 5000, 4000 3600 2; 1200 5, 800 3`.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

use quantity::{Length, Quantity as _};
use sim::cutting::{Bar, Cutting, Effort, Least, Piece, cut};
use std::io::BufRead as _;
use std::time::Instant;

fn main() {
    for line in std::io::stdin().lock().lines() {
        let given = read(&line.unwrap());
        let start = Instant::now();
        let found = cut(&given, Effort::THOROUGH);
        let seconds = start.elapsed().as_secs_f64();
        match found {
            Ok(plan) => println!(
                "{} {} {} {seconds:.6} {:?}",
                number(plan.cost),
                number(plan.bound),
                plan.bars(),
                plan.proof
            ),
            Err(error) => println!("none {error:?} {seconds:.6}"),
        }
    }
}

fn number(least: Least) -> f64 {
    match least {
        Least::Price(hundredths) => f64::from(u32::try_from(hundredths).unwrap()),
        Least::Drawn(length) => length.base() * 1000.0,
    }
}

fn read(line: &str) -> Cutting {
    let mut parts = line.split(';');
    let mut part = || parts.next().unwrap().trim();
    let mm = |text: &str| Length::from_base(text.parse::<f64>().unwrap() / 1000.0);
    let kerf = mm(part());
    let entries = |text: &'_ str| -> Vec<Vec<String>> {
        let words = |entry: &str| entry.split_whitespace().map(str::to_owned).collect();
        text.split(',').map(words).collect()
    };
    let bars = entries(part()).into_iter().map(|bar| Bar {
        length: mm(&bar[0]),
        trim: Length::from_base(0.0),
        price: bar[1].parse().unwrap(),
        count: bar.get(2).map(|count| count.parse().unwrap()),
    });
    let bars = bars.collect();
    let pieces = entries(part()).into_iter().map(|piece| Piece {
        length: mm(&piece[0]),
        count: piece[1].parse().unwrap(),
    });
    Cutting {
        bars,
        pieces: pieces.collect(),
        kerf,
    }
}
