//! Laws of the walk under leaves that rise, and touches worked by hand.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::walk_world::turning::{arm, lift};
use crate::walk_world::{base, round};
use quantity::Quantity as _;
use sim::walk::*;
use std::num::NonZeroUsize;

fn threads(count: usize) -> NonZeroUsize {
    NonZeroUsize::new(count).unwrap()
}

fn standing(pass: usize, x: f64) -> Scenario {
    Scenario {
        pass,
        body: 0,
        way: Way::In,
        behavior: Behavior::Stand(base(0.0)),
        crosses_at: base(x),
        slant: base(0.0),
        speed: base(1.0),
        arrives: base(0.0),
    }
}

/// Nothing but the leaf at one speed nearly all along, and a round body.
fn even(mut world: RisingWorld) -> RisingWorld {
    world.beams.clear();
    world.edges.clear();
    world.controller.stopping = base(1e10);
    world.bodies = vec![round("adult", 0.2, 1.75, (0.3, 1.6))];
    for pass in &mut world.passes {
        pass.plan.acceleration = base(1e10);
        pass.plan.deceleration = base(1e10);
        pass.plan.creep_speed = pass.plan.cruise_speed;
    }
    world
}

#[test]
fn the_underside_comes_down_on_a_head() {
    let walk = even(lift()).lower().unwrap();
    // From 2.63 m to 1.75 m at 0.33 m/s.
    let touch = walk.evaluate(&standing(0, 2.0)).unwrap().touch.unwrap();
    assert!((touch.time.base() - 0.88 / 0.33).abs() < 1e-6, "{touch:?}");
    assert!((touch.gap.base() - 1.75).abs() < 1e-12 && (touch.room.base() - 1.25).abs() < 1e-12);
    // Nothing feels it: it goes on to 0.03 m.
    assert!((touch.travel.base() - 1.72).abs() < 1e-6, "{touch:?}");
    assert_eq!(
        walk.evaluate(&standing(0, 2.0)).unwrap().class,
        Class::Trapped
    );
    // Beside the leaf nothing comes down; before it opens a body is in it.
    assert_eq!(
        walk.evaluate(&standing(0, 4.21)).unwrap().class,
        Class::Untouched
    );
    assert_eq!(
        walk.evaluate(&standing(1, 2.0)).unwrap().class,
        Class::MetTheSide
    );
}

#[test]
fn an_arm_comes_down_on_the_near_rim_of_a_head() {
    let walk = even(arm()).lower().unwrap();
    // Pivot at (−0.3, 1.0); the rim nearest to it at (1.8, 1.75): 2.1 m along and 0.75 m up. The underside is 0.05 m
    // below the line through the pivot: it is on the rim at atan(0.75/2.1) + asin(0.05/2.22991).
    let touch = walk.evaluate(&standing(0, 2.0)).unwrap().touch.unwrap();
    let far = 2.1_f64.hypot(0.75);
    let angle = (0.75_f64 / 2.1).atan() + (0.05 / far).asin();
    let time = (std::f64::consts::FRAC_PI_2 - angle) * 4.0 / 1.6;
    assert!((touch.time.base() - time).abs() < 1e-6, "{touch:?} {time}");
    assert!(
        (touch.speed.base() - 1.6 * far / 4.0).abs() < 1e-6,
        "{touch:?}"
    );
    assert!((touch.gap.base() - 1.75).abs() < 1e-6, "{touch:?}");
    // A child of 0.9 m walks below the closed arm.
    let mut world = even(arm());
    world.bodies = vec![round("child", 0.125, 0.9, (0.3, 1.6))];
    let walk = world.lower().unwrap();
    assert_eq!(
        walk.evaluate(&standing(0, 2.0)).unwrap().class,
        Class::Untouched
    );
}

#[test]
fn the_tail_of_an_arm_goes_down_when_it_opens() {
    let walk = even(arm()).lower().unwrap();
    // The tail ends 0.4 m behind the pivot, and goes from 0.95 m down to 0.6 m.
    let mut world = even(arm());
    world.bodies = vec![round("crawling", 0.2, 0.7, (0.3, 1.6))];
    let crawls = world.lower().unwrap();
    let touch = crawls.evaluate(&standing(1, -0.4)).unwrap().touch.unwrap();
    assert!(touch.gap.base() < 0.7 + 1e-6, "{touch:?}");
    assert_eq!(
        walk.evaluate(&standing(1, 2.0)).unwrap().class,
        Class::MetTheSide
    );
}

#[test]
fn any_number_of_threads_gives_the_same_bits() {
    for world in [arm(), lift()] {
        let walk = world.lower().unwrap();
        let one = walk.sweep(100_000, threads(1), &|_| ());
        for count in 2..=5 {
            assert_eq!(walk.sweep(100_000, threads(count), &|_| ()), one);
        }
        assert!(one.shares[Class::Within as usize].share.base() > 0.0);
        assert!(one.shares[Class::MetTheSide as usize].share.base() > 0.0);
    }
}

/// The arm from the other side, and the plan turned around with it.
#[test]
fn an_arm_on_the_other_side_does_the_same() {
    let one = arm();
    let mut other = arm();
    let RisingLeaf::Turning(leaf) = &mut other.leaf else {
        return;
    };
    leaf.toward = Toward::Smaller;
    leaf.pivot = -leaf.pivot;
    for beam in &mut other.beams {
        (beam.from.x, beam.to.x) = (-beam.from.x, -beam.to.x);
    }
    for body in &mut other.bodies {
        body.parts
            .iter_mut()
            .for_each(|part| part.aside = -part.aside);
    }
    let (one, other) = (one.lower().unwrap(), other.lower().unwrap());
    let (mut odd, mut touched) = (0, 0);
    for seed in 0..40_000 {
        let scenario = one.scenario(seed * 7919);
        let turned = Scenario {
            crosses_at: -scenario.crosses_at,
            slant: -scenario.slant,
            ..scenario
        };
        let (a, b) = (
            one.evaluate(&scenario).unwrap(),
            other.evaluate(&turned).unwrap(),
        );
        touched += usize::from(a.touch.is_some());
        odd += usize::from(a.class != b.class);
    }
    assert!(odd <= 2 && touched > 1000, "{odd} {touched}");
}

#[test]
fn a_slower_controller_never_presses_less() {
    for mut world in [arm(), lift()] {
        world.beams.clear();
        let quick = world.lower().unwrap();
        world.controller.reaction = base(0.3);
        let slow = world.lower().unwrap();
        for seed in 0..20_000 {
            let scenario = quick.scenario(seed * 1031);
            let (quick, slow) = (
                quick.evaluate(&scenario).unwrap(),
                slow.evaluate(&scenario).unwrap(),
            );
            assert!(slow.class >= quick.class, "{scenario:?} {quick:?} {slow:?}");
            if let (Some(quick), Some(slow)) = (quick.touch, slow.touch) {
                assert!(slow.force >= quick.force && slow.travel >= quick.travel);
            }
        }
    }
}

#[test]
fn worlds_that_make_no_sense_are_refused() {
    let refused = |change: &dyn Fn(&mut RisingWorld)| {
        let mut world = arm();
        change(&mut world);
        world.lower().unwrap_err().input
    };
    assert_eq!(refused(&|world| world.bodies.clear()), "bodies");
    assert_eq!(
        refused(&|world| world.passes[0].plan.travel = base(9.0)),
        "travel"
    );
    assert_eq!(refused(&|world| world.edges[0].leaf = 1), "leaf");
    assert_eq!(
        refused(&|world| world.controller.stopping = base(0.1)),
        "stopping"
    );
}
