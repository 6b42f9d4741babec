//! Moves a leaf and prints what comes out, for cross-checks: values in SI units as arguments `name=value`.
//!
//! `cargo run --release --package sim --example travel -- mass=290 travel=6 …` prints the summary as JSON;
//! `samples=1` prints time, position, speed and force as lines before it, one a tenth of a second; `repeat=100` works it
//! as often and prints the mean time of one.

#![allow(
    clippy::print_stdout,
    clippy::panic,
    reason = "a program for the terminal"
)]

use quantity::{Acceleration, Force, ForcePerLength, Length, Mass, Quantity, Time, Velocity};
use sim::{Drive, Load, Obstacle, Plan, Summary, Travel, Trouble};
use std::collections::BTreeMap;
use std::time::Instant;

/// The arguments by name.
struct Given(BTreeMap<String, String>);

impl Given {
    fn read() -> Self {
        let pairs = std::env::args().skip(1).map(|argument| {
            let (name, value) = argument
                .split_once('=')
                .unwrap_or_else(|| panic!("write name=value, not {argument}"));
            (name.to_owned(), value.to_owned())
        });
        Self(pairs.collect())
    }

    fn number(&self, name: &str) -> Option<f64> {
        let text = self.0.get(name)?;
        Some(
            text.parse()
                .unwrap_or_else(|_| panic!("{name} is a number, not {text}")),
        )
    }

    fn value<Q: Quantity>(&self, name: &str) -> Q {
        Q::from_base(
            self.number(name)
                .unwrap_or_else(|| panic!("{name} is missing")),
        )
    }

    /// Pairs written as `0:900,0.3:500`.
    fn pairs<A: Quantity, B: Quantity>(&self, name: &str) -> Vec<(A, B)> {
        let text = self
            .0
            .get(name)
            .unwrap_or_else(|| panic!("{name} is missing"));
        let number = |text: &str| -> f64 {
            text.parse()
                .unwrap_or_else(|_| panic!("{text} is not a number"))
        };
        text.split(',')
            .map(|pair| {
                let (a, b) = pair.split_once(':').unwrap_or_else(|| panic!("{pair}"));
                (A::from_base(number(a)), B::from_base(number(b)))
            })
            .collect()
    }
}

fn main() {
    let given = Given::read();
    let curve: Vec<(Velocity, Force)> = given.pairs("curve");
    let drive = Drive::at_leaf(&curve, given.value("rotating_mass"), given.value("holding"))
        .unwrap_or_else(|reach| panic!("{}", reach.why));
    let places: Vec<(Force, Force)> = given.pairs("load");
    let load =
        Load::along(given.value("travel"), &places).unwrap_or_else(|reach| panic!("{}", reach.why));
    let travel = Travel {
        mass: given.value::<Mass>("mass"),
        drive: &drive,
        load: &load,
        plan: plan(&given),
        obstacle: given.number("obstacle").map(|at| obstacle(&given, at)),
    };
    if given.number("samples").is_some() {
        print_samples(&travel);
    }
    if let Some(times) = given.number("repeat") {
        print_mean(&travel, times);
    }
    print_summary(travel.run());
}

fn plan(given: &Given) -> Plan {
    Plan {
        travel: given.value::<Length>("travel"),
        cruise_speed: given.value("cruise_speed"),
        acceleration: given.value::<Acceleration>("acceleration"),
        deceleration: given.value("deceleration"),
        set_point: given.value("set_point"),
        creep_speed: given.value("creep_speed"),
    }
}

fn obstacle(given: &Given, at: f64) -> Obstacle {
    Obstacle {
        at: Length::from_base(at),
        stiffness: given.value::<ForcePerLength>("stiffness"),
        reaction_time: given.value::<Time>("reaction_time"),
        stopping_deceleration: given.value("stopping_deceleration"),
        pause: given.value("pause"),
        reverse_speed: given.value("reverse_speed"),
        reverse_distance: given.value("reverse_distance"),
    }
}

fn print_samples(travel: &Travel<'_>) {
    let mut count = 0_u32;
    let _ = travel.follow(|sample| {
        count += 1;
        if count.is_multiple_of(100) {
            println!(
                "{},{},{},{}",
                sample.time.base(),
                sample.position.base(),
                sample.speed.base(),
                sample.force.base()
            );
        }
    });
}

fn print_mean(travel: &Travel<'_>, times: f64) {
    let start = Instant::now();
    let mut done = 0.0;
    while done < times {
        let _ = std::hint::black_box(travel).run();
        done += 1.0;
    }
    println!("mean {}", start.elapsed().as_secs_f64() / done.max(1.0));
}

fn print_summary(outcome: Result<Summary, Trouble>) {
    match outcome {
        Err(trouble) => println!("{{\"trouble\": \"{trouble}\"}}"),
        Ok(gives) => {
            let contact = gives.contact.map_or_else(String::new, |contact| {
                format!(
                    ", \"contact_force\": {}, \"overtravel\": {}, \"start_back_time\": {}",
                    contact.peak_force.base(),
                    contact.overtravel.base(),
                    contact.start_back_time.base()
                )
            });
            println!(
                "{{\"total_time\": {}, \"peak_speed\": {}, \"peak_force\": {}, \"rms_force\": {}, \"position\": {}, \
                 \"overshoot\": {}, \"arrival_speed\": {}{contact}}}",
                gives.total_time.base(),
                gives.peak_speed.base(),
                gives.peak_force.base(),
                gives.rms_force.base(),
                gives.position.base(),
                gives.overshoot.base(),
                gives.arrival_speed.base()
            );
        }
    }
}
