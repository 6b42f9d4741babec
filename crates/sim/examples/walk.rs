//! Works scenarios of a walk test and prints them, for cross-checks: values as arguments `name=value`.
//!
//! `cargo run --release --package sim --example walk -- world=full count=1000` prints the world as JSON on the first line,
//! then one scenario a line. `time=1` works them on all processors instead and prints the seconds and the shares; `prove=1000`
//! proves each family, looking at so many boxes in each part of its space.

#![allow(
    clippy::print_stdout,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

#[path = "../tests/walk_world/mod.rs"]
mod walk_world;

use quantity::Quantity;
use sim::walk::{
    Answer, Behavior, Body, Direction, Outcome, Pass, Scenario, Verdict, Walk, Way, World,
};
use std::collections::BTreeMap;
use std::fmt::Write as _;
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
    let world = match given.get("world").map(String::as_str) {
        Some("full") => walk_world::full(),
        _ => walk_world::trial(0.08),
    };
    let walk = world.lower().unwrap_or_else(|reach| panic!("{reach}"));
    let (from, count) = (number("from", 0), number("count", 1000));
    if number("time", 0) > 0 {
        let threads = std::thread::available_parallelism().unwrap();
        let start = Instant::now();
        let sweep = walk.sweep(count, threads, &|_| ());
        println!("seconds {}", start.elapsed().as_secs_f64());
        println!("scenarios {}", sweep.scenarios);
        for (class, share) in sim::walk::Class::ALL.iter().zip(&sweep.shares) {
            println!("{} {} ± {}", class.words(), n(share.share), n(share.error));
        }
        return;
    }
    if number("prove", 0) > 0 {
        prove(&walk, number("prove", 0));
        return;
    }
    println!("{}", world_as_json(&world));
    for at in 0..count {
        // Leaps so that every family has its part of a small count.
        let scenario = walk.scenario(from + at * 1031);
        let outcome = walk.evaluate(&scenario).unwrap();
        println!("{}", row(&scenario, &outcome));
    }
}

fn prove(walk: &Walk, most: u64) {
    let threads = std::thread::available_parallelism().unwrap();
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

fn n<Q: Quantity>(value: Q) -> String {
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
        let _ = write!(
            line,
            ",{},{},{},{},{},{},{},{},{}",
            n(touch.time),
            touch.part,
            n(touch.travel),
            n(touch.force),
            n(touch.limit),
            n(touch.gap),
            n(touch.room),
            touch.lasts.map_or_else(|| "Infinity".to_owned(), n),
            touch.rests.map_or_else(|| "Infinity".to_owned(), n)
        );
    }
    line
}

fn list<T>(of: &[T], print: impl Fn(&T) -> String) -> String {
    format!("[{}]", of.iter().map(print).collect::<Vec<_>>().join(","))
}

fn guards(of: &[Direction]) -> String {
    list(of, |direction| match direction {
        Direction::Opening => "\"opening\"".to_owned(),
        Direction::Closing => "\"closing\"".to_owned(),
    })
}

fn world_as_json(world: &World) -> String {
    let beams = list(&world.beams, |beam| {
        let spots = [beam.from, beam.to].map(|spot| format!("[{},{}]", n(spot.x), n(spot.y)));
        format!(
            "{{\"kind\":\"beam\",\"guards\":{},\"corners\":[{},{}],\"height\":{},\"diameter\":{},\"response\":{}}}",
            guards(&beam.guards),
            spots[0],
            spots[1],
            n(beam.height),
            n(beam.diameter),
            n(beam.response)
        )
    });
    let scanners = list(&world.scanners, |field| {
        format!(
            "{{\"kind\":\"field\",\"guards\":{},\"corners\":{},\"bottom\":{},\"top\":{},\"smallest\":{},\"response\":{}}}",
            guards(&field.guards),
            list(&field.corners, |spot| format!(
                "[{},{}]",
                n(spot.x),
                n(spot.y)
            )),
            n(field.bottom),
            n(field.top),
            n(field.smallest_object),
            n(field.response)
        )
    });
    let edges = list(&world.edges, |edge| {
        format!(
            "{{\"guards\":{},\"bottom\":{},\"top\":{},\"actuation\":{},\"response\":{},\"stiffness\":{},\"soft\":{},\"hard\":{}}}",
            guards(&[edge.guards]),
            n(edge.bottom),
            n(edge.top),
            n(edge.actuation_travel),
            n(edge.response),
            n(edge.stiffness),
            n(edge.soft_travel),
            n(edge.hard_stiffness)
        )
    });
    let drive = world.drive.as_ref().map_or_else(
        || "null".to_owned(),
        |drive| {
            format!(
                "{{\"guards\":{},\"force\":{},\"response\":{}}}",
                guards(&drive.guards),
                n(drive.force),
                n(drive.response)
            )
        },
    );
    format!(
        "{{\"leaf\":[{},{},{}],\"bare\":{},\"passes\":{},\"beams\":{beams},\"scanners\":{scanners},\"edges\":{edges},\
         \"drive\":{drive},\"controller\":{},\"limits\":{},\"bodies\":{}}}",
        n(world.leaf.thickness),
        n(world.leaf.bottom),
        n(world.leaf.top),
        n(world.bare_stiffness),
        list(&world.passes, pass),
        controller(world),
        limits(world),
        list(&world.bodies, body)
    )
}

fn pass(pass: &Pass) -> String {
    let plan = &pass.plan;
    format!(
        "{{\"direction\":{},\"edge\":{},\"opposing\":{},\"travel\":{},\"cruise\":{},\"acceleration\":{},\"deceleration\":{},\
         \"set_point\":{},\"creep\":{}}}",
        guards(&[pass.direction]),
        n(pass.edge),
        pass.opposing.map_or_else(|| "null".to_owned(), n),
        n(plan.travel),
        n(plan.cruise_speed),
        n(plan.acceleration),
        n(plan.deceleration),
        n(plan.set_point),
        n(plan.creep_speed)
    )
}

fn controller(world: &World) -> String {
    let back = match world.controller.answer {
        Answer::Stop => "null".to_owned(),
        Answer::Reverse {
            pause,
            speed,
            distance,
        } => format!("[{},{},{}]", n(pause), n(speed), n(distance)),
    };
    format!(
        "{{\"reaction\":{},\"stopping\":{},\"back\":{back}}}",
        n(world.controller.reaction),
        n(world.controller.stopping)
    )
}

fn limits(world: &World) -> String {
    let limits = &world.limits;
    format!(
        "{{\"gap\":{},\"crushing\":{},\"open\":{},\"lasting\":{},\"lasting_after\":{},\"rest\":{},\"rest_after\":{},\"squeeze\":{}}}",
        n(limits.crushing_gap),
        n(limits.crushing_force),
        n(limits.open_force),
        n(limits.lasting_force),
        n(limits.lasting_after),
        n(limits.rest_force),
        n(limits.rest_after),
        n(limits.squeeze)
    )
}

fn body(body: &Body) -> String {
    list(&body.parts, |part| {
        format!(
            "[{},{},{},{},{}]",
            n(part.ahead),
            n(part.aside),
            n(part.radius),
            n(part.bottom),
            n(part.top)
        )
    })
}
