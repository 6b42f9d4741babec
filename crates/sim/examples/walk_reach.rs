//! Works arms that reach through a sliding leaf and prints them, for cross-checks: `count=1000` as argument.
//!
//! One line for each: what the leaf, its controller, the thing and the strip on it are, where the arm is held, what comes of
//! it. The strips, controllers and speeds come from a fixed sequence.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

#[path = "../tests/walk_world/mod.rs"]
mod walk_world;

use quantity::Quantity;
use sim::walk::{Catch, Direction, ForceSensing, Reach};
use walk_world::{base, controller, edge, trial};

const NAMES: &str = "cruise creep reaction stopping actuation response stiffness soft hard squeeze drive place class time speed \
                     travel force lasts rests";

fn main() {
    let given = std::env::args().find_map(|text| text.strip_prefix("count=").map(str::to_owned));
    let count: u32 = given.map_or(1000, |text| text.parse().unwrap());
    println!("{}", NAMES.split_whitespace().collect::<Vec<_>>().join(","));
    for at in 0..count {
        println!("{}", row(at));
    }
}

/// A number between two, from a fixed sequence: whole parts of multiples of irrational steps are dropped.
fn between(at: u32, which: u32, low: f64, high: f64) -> f64 {
    let step = f64::from(2 + which).sqrt() * 0.754_877_666;
    let share = (f64::from(at + 1) * step).fract();
    low + share * (high - low)
}

fn row(at: u32) -> String {
    let of = |which: u32, low: f64, high: f64| between(at, which, low, high);
    let mut world = trial(0.08);
    world.controller = controller(of(1, 0.02, 0.2));
    world.controller.stopping = base(of(2, 0.8, 3.0));
    let plan = &mut world.passes[0].plan;
    plan.cruise_speed = base(of(3, 0.12, 0.45));
    plan.creep_speed = base(of(4, 0.05, 0.11));
    let (cruise, creep) = (plan.cruise_speed.base(), plan.creep_speed.base());
    let mut strip = edge(Direction::Closing);
    strip.stiffness = base(of(5, 1_000.0, 9_000.0));
    strip.actuation_travel = base(of(6, 0.004, 0.02));
    strip.soft_travel = base(of(7, 0.02, 0.12));
    strip.response = base(of(8, 0.0, 0.05));
    let squeeze = of(9, 0.01, 0.1);
    let force = of(10, 100.0, 600.0);
    let felt = at.is_multiple_of(3);
    if felt {
        world.drive = Some(ForceSensing {
            guards: vec![Direction::Closing],
            force: base(force),
            response: base(0.05),
        });
    }
    let bare = at.is_multiple_of(4);
    world.catches = vec![Catch {
        name: "post".to_owned(),
        direction: Direction::Closing,
        from: base(0.05),
        to: base(3.95),
        edge: (!bare).then(|| strip.clone()),
        squeeze: base(squeeze),
    }];
    let place = of(11, 0.06, 3.94);
    let walk = world.lower().unwrap();
    let outcome = walk
        .reach(&Reach { pass: 0, catch: 0 }, base(place))
        .unwrap();
    let touch = outcome.touch.unwrap();
    let stiff = world.bare_stiffness.base();
    let (actuation, stiffness, soft, hard) = if bare {
        (f64::INFINITY, stiff, 0.0, stiff)
    } else {
        let way = strip.actuation_travel.base() + strip.soft_travel.base();
        let pressed = strip.actuation_travel.base();
        (
            pressed,
            strip.stiffness.base(),
            way,
            strip.hard_stiffness.base(),
        )
    };
    let time = |time: Option<quantity::Time>| time.map_or(f64::INFINITY, Quantity::base);
    let numbers = [
        cruise,
        creep,
        world.controller.reaction.base(),
        world.controller.stopping.base(),
        actuation,
        strip.response.base(),
        stiffness,
        soft,
        hard,
        squeeze,
        if felt { force } else { f64::INFINITY },
        place,
    ];
    let came = [
        touch.time.base(),
        touch.speed.base(),
        touch.travel.base(),
        touch.force.base(),
        time(touch.lasts),
        time(touch.rests),
    ];
    let text = |all: &[f64]| all.iter().map(f64::to_string).collect::<Vec<_>>().join(",");
    format!(
        "{},{},{}",
        text(&numbers),
        outcome.class.words(),
        text(&came)
    )
}
