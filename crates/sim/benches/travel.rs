//! How long it takes to move a leaf for ten seconds, a thousandth of a second at a time.
//!
//! Run with `cargo bench --package sim`.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

use divan::Bencher;
use quantity::{Acceleration, Force, Length, Mass, Quantity as _, Velocity};
use sim::{Drive, Load, Plan, Travel};

fn main() {
    divan::main();
}

/// Ten seconds of a slide leaf on a curve with four points and a load that changes along its way.
#[divan::bench]
fn ten_seconds(bencher: Bencher) {
    let points = [(0.0, 900.0), (0.1, 800.0), (0.3, 500.0), (0.45, 0.0)];
    let points = points.map(|(v, f)| (Velocity::from_base(v), Force::from_base(f)));
    let drive = Drive::at_leaf(&points, Mass::from_base(60.0), Force::from_base(300.0)).unwrap();
    let places = [
        (90.0, 5.0),
        (80.0, 8.0),
        (85.0, 2.0),
        (100.0, 0.0),
        (140.0, -5.0),
    ];
    let places = places.map(|(o, u)| (Force::from_base(o), Force::from_base(u)));
    let way = Length::from_base(2.43);
    let load = Load::along(way, &places).unwrap();
    let travel = Travel {
        mass: Mass::from_base(290.0),
        drive: &drive,
        load: &load,
        plan: Plan {
            travel: way,
            cruise_speed: Velocity::from_base(0.3),
            acceleration: Acceleration::from_base(0.25),
            deceleration: Acceleration::from_base(0.3),
            set_point: Length::from_base(0.25),
            creep_speed: Velocity::from_base(0.1),
        },
        obstacle: None,
    };
    let seconds = travel.run().unwrap().total_time.base();
    assert!((9.0..11.0).contains(&seconds), "{seconds}");
    bencher.bench(|| divan::black_box(&travel).run().unwrap());
}
