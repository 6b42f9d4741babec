//! How long the torque over a travel takes, and the search for the place of a linear drive.
//!
//! Run with `cargo bench -p formula --bench travel`.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

use divan::{Bencher, black_box};
use formula::Formula as _;
use formula::motion::{
    ArticulatedArmMounting, ElbowSide, LinearActuatorGeometry, LinearPlace, SwingGateTorque,
    SwingWay, swing_curve,
};
use quantity::{
    Acceleration, Angle, Force, Length, Mass, MomentOfInertia, Quantity as _, Ratio, Torque,
    Velocity,
};

fn main() {
    divan::main();
}

/// Angles of a travel that is drawn finely.
const POINTS: u32 = 1000;

fn leaf() -> SwingGateTorque {
    SwingGateTorque {
        mass: Mass::from_base(180.0),
        width: Length::from_base(2.9),
        center: Length::from_base(1.4),
        inertia: MomentOfInertia::from_base(504.6),
        rotating_share: Ratio::from_base(0.2),
        hinge_friction: Torque::from_base(12.0),
        lean_along: Ratio::from_base(0.008),
        lean_across: Ratio::from_base(-0.012),
        rise: Length::from_base(0.0),
        travel_angle: Angle::from_base(1.6),
        angle: Angle::from_base(0.0),
        way: SwingWay::Opening,
        wind_force: Force::from_base(220.0),
        wind_arm: Length::from_base(1.45),
        seal_force: Force::from_base(0.0),
        acceleration: Acceleration::from_base(0.25),
    }
}

/// The torque that the leaf asks for at a thousand angles.
#[divan::bench]
fn torque_over_the_travel(bencher: Bencher) {
    let leaf = leaf();
    bencher.bench(|| swing_curve(black_box(&leaf), POINTS));
}

/// The push of a linear drive for that torque at a thousand angles.
#[divan::bench]
fn push_over_the_travel(bencher: Bencher) {
    let steps = swing_curve(&leaf(), POINTS).unwrap();
    let drive = LinearActuatorGeometry {
        rear_behind: Length::from_base(0.18),
        rear_across: Length::from_base(0.19),
        front_along: Length::from_base(0.95),
        front_across: Length::from_base(0.06),
        angle: Angle::from_base(0.0),
        width: Length::from_base(2.9),
        rod_speed: Velocity::from_base(0.016),
        torque: Torque::from_base(0.0),
    };
    bencher.bench(|| {
        let push = |step: &formula::motion::SwingStep| {
            let torque = step.torques.total;
            let angle = step.angle;
            let at = LinearActuatorGeometry {
                angle,
                torque,
                ..drive
            };
            at.evaluate().unwrap().rod_force.base()
        };
        black_box(&steps).iter().map(push).fold(0.0, f64::max)
    });
}

/// A folding arm over its whole travel.
#[divan::bench]
fn folding_arm(bencher: Bencher) {
    let arm = ArticulatedArmMounting {
        rear_behind: Length::from_base(0.15),
        rear_across: Length::from_base(0.35),
        front_along: Length::from_base(0.75),
        front_across: Length::from_base(0.1),
        crank: Length::from_base(0.45),
        link: Length::from_base(0.6),
        elbow: ElbowSide::AwayFromHinge,
        travel_angle: Angle::from_base(1.57),
    };
    bencher.bench(|| black_box(&arm).evaluate());
}

/// The search for the best place of a linear drive.
#[divan::bench]
fn place_of_a_linear_drive(bencher: Bencher) {
    let meters = Length::from_base;
    let place = LinearPlace {
        travel_angle: Angle::from_base(1.57),
        shortest: meters(0.75),
        longest: meters(1.15),
        spare_stroke: meters(0.01),
        post_depth: meters(0.05),
        hinge_inset: meters(0.03),
        clearance: meters(0.05),
        front_across: meters(0.05),
        most_behind: meters(0.35),
        most_across: meters(0.40),
        most_along: meters(1.5),
    };
    bencher.bench(|| black_box(&place).best());
}
