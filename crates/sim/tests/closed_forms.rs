//! The simulation against closed forms: times, distances, forces, and what goes wrong.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use formula::Formula as _;
use formula::motion::{
    ReversalDistance, RmsForce, StopImpactForce, SwingGateTorque, SwingWay, TravelProfile,
};
use proptest::prelude::*;
use quantity::{
    Acceleration, Angle, Force, ForcePerLength, Length, Mass, MomentOfInertia, Quantity as _,
    Ratio, Time, Torque, Velocity,
};
use sim::{Drive, Load, Obstacle, Plan, Summary, Travel, Trouble};

fn drive(stall: f64, top: f64, holding: f64) -> Drive {
    let points = [
        (Velocity::from_base(0.0), Force::from_base(stall)),
        (Velocity::from_base(top), Force::from_base(0.0)),
    ];
    Drive::at_leaf(&points, Mass::from_base(60.0), Force::from_base(holding)).unwrap()
}

fn plan(travel: f64, cruise: f64, set_point: f64) -> Plan {
    Plan {
        travel: Length::from_base(travel),
        cruise_speed: Velocity::from_base(cruise),
        acceleration: Acceleration::from_base(0.25),
        deceleration: Acceleration::from_base(0.3),
        set_point: Length::from_base(set_point),
        creep_speed: Velocity::from_base(0.08),
    }
}

fn even(opposing: f64, uphill: f64) -> Load {
    Load::even(Force::from_base(opposing), Force::from_base(uphill))
}

fn run(drive: &Drive, load: &Load, plan: Plan) -> Result<Summary, Trouble> {
    Travel {
        mass: Mass::from_base(290.0),
        drive,
        load,
        plan,
        obstacle: None,
    }
    .run()
}

fn closed(plan: Plan) -> TravelProfile {
    TravelProfile {
        travel: plan.travel,
        cruise_speed: plan.cruise_speed,
        acceleration: plan.acceleration,
        deceleration: plan.deceleration,
        set_point: plan.set_point,
        creep_speed: plan.creep_speed,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// A strong drive follows its plan: every time and place of the closed form, to a microsecond and a micrometer.
    #[test]
    fn a_strong_drive_keeps_the_times_of_the_plan(
        travel in 1.0..8.0, cruise in 0.1..0.6, share in 0.1..0.8, uphill in -40.0..40.0
    ) {
        let plan = plan(travel, cruise, share * travel);
        let wanted = closed(plan).evaluate().unwrap();
        let gives = run(&drive(4000.0, 2.0, 4000.0), &even(80.0, uphill), plan).unwrap();
        if wanted.arrival_speed.base() > 0.0 {
            prop_assert!((gives.arrival_speed - wanted.arrival_speed).base().abs() < 1e-6);
            prop_assert!(gives.overshoot.base() > 0.0);
        } else {
            prop_assert!((gives.total_time - wanted.total_time).base().abs() < 1e-6, "{gives:?} {wanted:?}");
            prop_assert!((gives.position.base() - travel).abs() < 1e-6);
        }
        prop_assert!((gives.peak_speed - wanted.peak_speed).base().abs() < 1e-6);
    }

    /// Root of the mean square of the pull, part by part: a plan without creep has the three parts of the closed form.
    #[test]
    fn heat_agrees_part_by_part(cruise in 0.1..0.4, opposing in 20.0..150.0) {
        let mut plan = plan(6.0, cruise, 1.0);
        plan.creep_speed = plan.cruise_speed;
        let gives = run(&drive(4000.0, 2.0, 4000.0), &even(opposing, 0.0), plan).unwrap();
        let start_time = cruise / 0.25;
        let slow_time = cruise / 0.3;
        let closed = RmsForce {
            start_force: Force::from_base(350.0 * 0.25 + opposing),
            start_time: Time::from_base(start_time),
            run_force: Force::from_base(opposing),
            run_time: gives.total_time - Time::from_base(start_time + slow_time),
            slow_force: Force::from_base((opposing - 350.0 * 0.3).abs()),
            slow_time: Time::from_base(slow_time),
            rest_time: Time::from_base(0.0),
            rest_cooling: Ratio::from_base(1.0),
        };
        let closed = closed.evaluate().unwrap().rms_force;
        prop_assert!((gives.rms_force - closed).base().abs() < 1e-6 * closed.base());
        prop_assert!((gives.peak_force.base() - (350.0 * 0.25 + opposing)).abs() < 1e-6);
    }
}

#[test]
fn a_weak_drive_settles_where_its_curve_meets_the_load() {
    // 300 N · (1 − v / 0.5) = 150 N at 0.25 m/s.
    let trouble = run(
        &drive(300.0, 0.5, 300.0),
        &even(150.0, 0.0),
        plan(6.0, 0.4, 0.5),
    )
    .unwrap_err();
    let Trouble::NeverReachesItsSpeed { reached, wanted } = trouble else {
        panic!("{trouble}")
    };
    assert!((reached.base() - 0.25).abs() < 1e-3 && (wanted.base() - 0.4).abs() < 1e-12);
}

#[test]
fn a_load_above_the_stall_force_stalls() {
    let trouble = run(
        &drive(300.0, 0.5, 300.0),
        &even(310.0, 0.0),
        plan(6.0, 0.2, 0.5),
    )
    .unwrap_err();
    assert!(matches!(trouble, Trouble::Stalls { at } if at.base().abs() < 1e-12));
}

#[test]
fn a_slope_above_the_holding_force_runs_away() {
    let trouble = run(
        &drive(800.0, 0.5, 50.0),
        &even(40.0, -150.0),
        plan(6.0, 0.2, 0.5),
    )
    .unwrap_err();
    assert!(matches!(trouble, Trouble::RunsAway { .. }), "{trouble}");
    assert!(trouble.to_string().contains("runs away"));
}

fn obstacle(stiffness: f64) -> Obstacle {
    Obstacle {
        at: Length::from_base(2.0),
        stiffness: ForcePerLength::from_base(stiffness),
        reaction_time: Time::from_base(0.1),
        stopping_deceleration: Acceleration::from_base(1.2),
        pause: Time::from_base(0.3),
        reverse_speed: Velocity::from_base(0.15),
        reverse_distance: Length::from_base(0.1),
    }
}

#[test]
fn a_soft_obstacle_is_left_as_the_closed_form_says() {
    let travel = Travel {
        mass: Mass::from_base(290.0),
        drive: &drive(4000.0, 2.0, 4000.0),
        load: &even(80.0, 0.0),
        plan: plan(6.0, 0.3, 0.5),
        obstacle: Some(obstacle(0.0)),
    };
    let gives = travel.run().unwrap();
    let contact = gives.contact.unwrap();
    let closed = ReversalDistance {
        speed: Velocity::from_base(0.3),
        reaction_time: Time::from_base(0.1),
        deceleration: Acceleration::from_base(1.2),
        pause: Time::from_base(0.3),
        acceleration: Acceleration::from_base(0.25),
        reverse_speed: Velocity::from_base(0.15),
        reverse_distance: Length::from_base(0.1),
    };
    let closed = closed.evaluate().unwrap();
    assert!((contact.overtravel - closed.overtravel).base().abs() < 1e-6);
    assert!(
        (contact.start_back_time - closed.start_back_time)
            .base()
            .abs()
            < 1e-6
    );
}

/// A blow on a spring while the controller keeps its speed: the drive pushes harder until it has no more, which is where
/// spring and push balance; from there the leaf swings about that place with the speed it still has. A drive that pushes
/// with all its force from the first touch, as the energy balance of a stop assumes, hits harder.
#[test]
fn a_stiff_obstacle_is_hit_as_hard_as_the_energies_say() {
    let push = 200.0;
    let points = [(Velocity::from_base(0.0), Force::from_base(push))];
    let drive = Drive::at_leaf(&points, Mass::from_base(0.0), Force::from_base(0.0)).unwrap();
    let slow = Obstacle {
        reaction_time: Time::from_base(5.0),
        ..obstacle(60_000.0)
    };
    let travel = Travel {
        mass: Mass::from_base(350.0),
        drive: &drive,
        load: &even(0.0, 0.0),
        plan: plan(6.0, 0.3, 0.5),
        obstacle: Some(slow),
    };
    let mut highest = 0.0_f64;
    let _ = travel.follow(|sample| {
        if sample.time.base() < 8.0 {
            highest = highest.max(60_000.0 * (sample.position.base() - 2.0));
        }
    });
    let closed = StopImpactForce {
        mass: Mass::from_base(350.0),
        speed: Velocity::from_base(0.3),
        push: Force::from_base(push),
        stiffness: ForcePerLength::from_base(60_000.0),
    };
    let swing = push + 0.3 * (60_000.0_f64 * 350.0).sqrt();
    assert!((highest / swing - 1.0).abs() < 1e-4, "{highest} {swing}");
    assert!(highest < closed.evaluate().unwrap().force.base());
}

#[test]
fn a_swing_leaf_on_a_leaning_post_takes_the_work_that_its_height_says() {
    let swing = SwingGateTorque {
        mass: Mass::from_base(150.0),
        width: Length::from_base(3.0),
        center: Length::from_base(1.5),
        inertia: MomentOfInertia::from_base(450.0),
        rotating_share: Ratio::from_base(0.0),
        hinge_friction: Torque::from_base(0.0),
        lean_along: Ratio::from_base(0.02),
        lean_across: Ratio::from_base(0.0),
        rise: Length::from_base(0.0),
        travel_angle: Angle::from_base(std::f64::consts::FRAC_PI_2),
        angle: Angle::from_base(0.0),
        way: SwingWay::Opening,
        wind_force: Force::from_base(0.0),
        wind_arm: Length::from_base(1.5),
        seal_force: Force::from_base(0.0),
        acceleration: Acceleration::from_base(0.0),
    };
    let load = Load::turning(&swing).unwrap();
    let travel = Travel {
        mass: Mass::from_base(450.0 / 9.0),
        drive: &drive(4000.0, 2.0, 4000.0),
        load: &load,
        plan: plan(3.0 * std::f64::consts::FRAC_PI_2, 0.3, 0.4),
        obstacle: None,
    };
    let (mut work, mut before) = (0.0, 0.0);
    travel
        .follow(|sample| {
            work += sample.force.base() * (sample.position.base() - before);
            before = sample.position.base();
        })
        .unwrap();
    // h(90°) − h(0) = r · lean: 150 kg · 9.80665 · 1.5 m · 0.02.
    let lifted = 150.0 * 9.80665 * 1.5 * 0.02;
    assert!((work - lifted).abs() < 0.01 * lifted, "{work} {lifted}");
}

#[test]
fn the_same_travel_gives_the_same_samples() {
    let (drive, load) = (drive(700.0, 0.6, 300.0), even(120.0, 15.0));
    let samples = || {
        let mut all = Vec::new();
        let travel = Travel {
            mass: Mass::from_base(290.0),
            drive: &drive,
            load: &load,
            plan: plan(3.0, 0.25, 0.5),
            obstacle: Some(obstacle(9000.0)),
        };
        travel.follow(|sample| all.push(sample)).unwrap();
        all
    };
    assert_eq!(samples(), samples());
}
