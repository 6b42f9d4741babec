//! Solves networks that it reads from standard input, a line each thing, and prints the voltage of every place.
//!
//! `held NODE VOLTS`, `node NODE`, `branch FROM TO OHMS`, `power NODE WATTS`, `current NODE AMPERES`, `resistance NODE OHMS`;
//! nodes are numbered from zero in the order of their lines; `end` solves. With `repeat=N` each is solved so often, and the
//! seconds for all of them stand on the first line.
#![allow(
    clippy::print_stdout,
    reason = "an example program talks through standard output"
)]

use quantity::{Current, Power, Quantity as _, Resistance, Voltage};
use sim::network::{Case, Draw, Grid, Network, Node, Unsolved};
use std::error::Error;
use std::io::read_to_string;
use std::time::Instant;

#[derive(Default)]
struct Reading {
    network: Network,
    nodes: Vec<Node>,
    case: Case,
}

impl Reading {
    fn line(&mut self, line: &str) -> Result<(), Box<dyn Error>> {
        let words: Vec<&str> = line.split_whitespace().collect();
        let node = |at: usize| -> Result<Node, Box<dyn Error>> {
            let number: usize = words.get(at).ok_or("a node is missing")?.parse()?;
            Ok(*self.nodes.get(number).ok_or("no such node")?)
        };
        let value = |at: usize| -> Result<f64, Box<dyn Error>> {
            Ok(words.get(at).ok_or("a value is missing")?.parse()?)
        };
        match words.first().copied() {
            Some("held") => {
                let node = self.network.held();
                self.case.hold(node, Voltage::from_base(value(2)?))?;
                self.nodes.push(node);
            }
            Some("node") => self.nodes.push(self.network.node()),
            Some("branch") => {
                self.network
                    .join(node(1)?, node(2)?, Resistance::from_base(value(3)?))?;
            }
            Some("power") => self
                .case
                .draw(node(1)?, Draw::Power(Power::from_base(value(2)?)))?,
            Some("current") => self
                .case
                .draw(node(1)?, Draw::Current(Current::from_base(value(2)?)))?,
            Some("resistance") => {
                self.case
                    .draw(node(1)?, Draw::Resistance(Resistance::from_base(value(2)?)))?;
            }
            _ => return Err(format!("not understood: {line}").into()),
        }
        Ok(())
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let repeat: u32 = std::env::args()
        .find_map(|word| word.strip_prefix("repeat=")?.parse().ok())
        .unwrap_or(1);
    let mut read: Vec<(Grid, Vec<Node>, Case)> = Vec::new();
    let mut reading = Reading::default();
    for line in read_to_string(std::io::stdin())?.lines() {
        if line == "end" {
            let done = std::mem::take(&mut reading);
            read.push((done.network.prepared(), done.nodes, done.case));
        } else {
            reading.line(line)?;
        }
    }
    let start = Instant::now();
    let mut solved = Vec::new();
    for _ in 0..repeat {
        solved = read
            .iter()
            .map(|(grid, _, case)| grid.solve(case))
            .collect();
    }
    println!("{}", start.elapsed().as_secs_f64());
    for (solved, (_, nodes, _)) in solved.iter().zip(&read) {
        match solved {
            Ok(solved) => {
                let volts = nodes
                    .iter()
                    .map(|node| solved.voltage(*node).base().to_string());
                println!("{}", volts.collect::<Vec<_>>().join(" "));
            }
            Err(Unsolved::Collapse { at, carried }) => {
                println!("collapse {} {}", at.index(), carried.base());
            }
            Err(other) => println!("{other}"),
        }
    }
    Ok(())
}
