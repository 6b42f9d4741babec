//! Laws of the walk past a sliding leaf, and its touches against a plain stepped search.

#![allow(
    clippy::unwrap_used,
    clippy::cast_precision_loss,
    reason = "a test may stop at the first surprise"
)]

use crate::walk_world::{base, closing, full, round, trial};
use proptest::prelude::*;
use quantity::{Length, Quantity as _};
use sim::walk::*;
use std::num::NonZeroUsize;

fn threads(count: usize) -> NonZeroUsize {
    NonZeroUsize::new(count).unwrap()
}

/// Nothing but leaf and body.
fn bare() -> World {
    let mut world = trial(0.08);
    world.beams.clear();
    world
}

/// A way with one speed nearly all along.
fn even() -> World {
    let mut world = bare();
    let mut pass = closing();
    pass.plan.acceleration = base(1e10);
    pass.plan.deceleration = base(1e10);
    pass.plan.creep_speed = pass.plan.cruise_speed;
    world.controller.stopping = base(1e10);
    world.passes = vec![pass];
    world
}

/// How far a point is from the leaf of the trial gate whose end is at a place.
fn apart(x: f64, y: f64, end: f64) -> f64 {
    (end - x).max(0.0).hypot((y.abs() - 0.03).max(0.0))
}

/// Place of the end of the trial gate's leaf: soft start, running, slow-down, creep.
fn end_at(time: f64) -> f64 {
    let mut left = time.max(0.0);
    let mut place = 4.0;
    let cruise = (3.25 - 0.33 * 0.33) / 0.33;
    let creep = (0.75 - (0.33 * 0.33 - 0.01) / 0.6 - 0.01 / 0.6) / 0.1;
    for (lasts, speed, rate) in [
        (0.66, 0.0, 0.5),
        (cruise, 0.33, 0.0),
        (0.23 / 0.3, 0.33, -0.3),
        (creep, 0.1, 0.0),
        (1.0 / 3.0, 0.1, -0.3),
    ] {
        let part = left.min(lasts);
        place -= speed * part + 0.5 * rate * part * part;
        left -= part;
    }
    place
}

/// First time at which a function is at zero or below, searched in steps of a tenth of a millisecond and then halved.
fn first_zero(from: f64, until: f64, f: impl Fn(f64) -> f64) -> Option<f64> {
    let steps = ((until - from) / 1e-4).ceil();
    let mut at = 0.0;
    while at < steps {
        let (mut low, mut high) = (from + at * 1e-4, from + (at + 1.0) * 1e-4);
        if f(high) <= 0.0 {
            for _ in 0..60 {
                let middle = 0.5 * (low + high);
                if f(middle) <= 0.0 {
                    high = middle;
                } else {
                    low = middle;
                }
            }
            return Some(high);
        }
        at += 1.0;
    }
    None
}

fn crossing(x: f64, slant: f64, speed: f64, arrives: f64) -> Scenario {
    Scenario {
        pass: 0,
        body: 0,
        way: Way::In,
        behavior: Behavior::Cross,
        crosses_at: base(x),
        slant: base(slant),
        speed: base(speed),
        arrives: base(arrives),
    }
}

/// Works scenarios until so many touched; the largest difference of the time of the touch, near grazes left out.
fn compare(world: &World, wanted: u32, end: impl Fn(f64) -> f64) -> f64 {
    let walk = world.lower().unwrap();
    let (mut seen, mut seed, mut most) = (0, 0, 0.0_f64);
    while seen < wanted {
        let scenario = walk.scenario(seed);
        seed += 1;
        let outcome = walk.evaluate(&scenario).unwrap();
        let (Behavior::Cross, Some(touch)) = (scenario.behavior, outcome.touch) else {
            continue;
        };
        let pace = scenario.speed.base() / scenario.slant.base().hypot(1.0);
        let way = if scenario.way == Way::In { 1.0 } else { -1.0 };
        let clear = |time: f64| {
            let depth = pace * (time - scenario.arrives.base());
            let x = scenario.crosses_at.base() + depth * scenario.slant.base();
            apart(x, way * depth, end(time)) - 0.2
        };
        let from = scenario.arrives.base() - 0.23 / pace;
        let theirs = first_zero(from, from + 0.46 / pace, clear);
        let time = touch.time.base();
        assert!(clear(time).abs() < 1e-9, "{scenario:?} {}", clear(time));
        let rate = (clear(time) - clear(time - 1e-5)) / 1e-5;
        if rate < -0.02 {
            let theirs = theirs.unwrap_or(f64::NAN);
            most = most.max((theirs - time).abs());
            assert!((theirs - time).abs() < 1e-6, "{scenario:?} {theirs} {time}");
        }
        seen += 1;
    }
    most
}

#[test]
fn a_thousand_straight_touches_are_where_a_stepped_search_finds_them() {
    let even = even();
    compare(&even, 1000, |time| 4.0 - 0.33 * time.max(0.0));
    compare(&bare(), 1000, end_at);
}

#[test]
fn untouched_means_that_no_step_touches() {
    let walk = bare().lower().unwrap();
    let mut untouched = 0;
    for seed in (0..40_000).step_by(17) {
        let scenario = walk.scenario(seed);
        let outcome = walk.evaluate(&scenario).unwrap();
        if outcome.class != Class::Untouched || scenario.behavior != Behavior::Cross {
            continue;
        }
        untouched += 1;
        let pace = scenario.speed.base() / scenario.slant.base().hypot(1.0);
        for step in -2300..2300 {
            let depth = f64::from(step) * 1e-4;
            let x = scenario.crosses_at.base() + depth * scenario.slant.base();
            let end = end_at(scenario.arrives.base() + depth / pace);
            if apart(x, depth, end) <= 0.2 {
                // A path whose first touch would be in the post is none.
                assert!(x - 0.2 < 0.0, "{scenario:?}");
                break;
            }
        }
    }
    assert!(untouched > 300, "{untouched}");
}

#[test]
fn the_leaf_stops_short_of_one_who_cuts_the_beam() {
    // The first beam is cut 0.12 m and 0.2 m before the line: 2 s before one at 0.16 m/s is on it.
    let walk = trial(0.08).lower().unwrap();
    let outcome = walk.evaluate(&crossing(2.0, 0.0, 0.16, 6.0)).unwrap();
    assert_eq!(outcome.class, Class::Untouched);
    let bare = bare().lower().unwrap();
    let touch = bare.evaluate(&crossing(2.0, 0.0, 0.16, 6.0)).unwrap();
    assert!(touch.class >= Class::Within, "{touch:?}");
}

#[test]
fn a_touch_on_the_flat_end_by_hand() {
    // Standing at 2 m with a radius of 0.2 m: the end is at 2.2 m after 1.8 m, 0.66 s and (1.8 − 0.1089)/0.33 s.
    let walk = bare().lower().unwrap();
    let mut scenario = crossing(2.0, 0.0, 1.0, 0.0);
    scenario.behavior = Behavior::Stand(Length::from_base(0.0));
    let touch = walk.evaluate(&scenario).unwrap().touch.unwrap();
    let time = 0.66 + (1.8 - 0.1089) / 0.33;
    assert!((touch.time.base() - time).abs() < 1e-9, "{touch:?}");
    // The edge reports after 10 mm, 20 ms and 80 ms later the leaf brakes: 10 mm + 33 mm + 0.33²/3 = 79.3 mm.
    let travel = 0.010 + 0.33 * 0.1 + 0.33 * 0.33 / 3.0;
    assert!((touch.travel.base() - travel).abs() < 1e-9, "{touch:?}");
    // 60 mm at 8 N/mm, the rest at 75 N/mm.
    let force = 480.0 + 75_000.0 * (travel - 0.060);
    assert!((touch.force.base() - force).abs() < 1e-3, "{touch:?}");
    assert!((touch.room.base() - 1.8).abs() < 1e-9);
    assert!((touch.gap.base() - 2.2).abs() < 1e-9);
}

#[test]
fn one_who_walks_into_the_side_is_not_struck() {
    let walk = bare().lower().unwrap();
    let met = walk.evaluate(&crossing(3.0, 0.0, 1.0, 11.0)).unwrap();
    assert_eq!(met.class, Class::MetTheSide);
}

#[test]
fn any_number_of_threads_gives_the_same_bits() {
    let walk = full().lower().unwrap();
    let one = walk.sweep(400_000, threads(1), &|_| ());
    for count in 2..=5 {
        assert_eq!(walk.sweep(400_000, threads(count), &|_| ()), one);
    }
    assert_eq!(one.scenarios, 400_000);
}

#[test]
fn the_worst_of_a_family_comes_again_from_its_number() {
    let walk = full().lower().unwrap();
    let sweep = walk.sweep(300_000, threads(2), &|_| ());
    let mut again = 0;
    for family in &sweep.families {
        if let Some(worst) = family.worst {
            let scenario = walk.scenario(worst.seed);
            assert_eq!(scenario.body, family.family.body);
            let outcome = walk.evaluate(&scenario).unwrap();
            let touch = outcome.touch.unwrap();
            assert!(
                outcome.class == worst.class || touch.force.base() > 0.0,
                "{outcome:?} {worst:?}"
            );
            again += 1;
        }
    }
    assert!(again > 40, "{again}");
}

#[test]
fn shares_with_their_error_hold_the_shares_of_a_larger_sweep() {
    let walk = trial(0.2).lower().unwrap();
    let small = walk.sweep(262_144, threads(2), &|_| ());
    let large = walk.sweep(8_388_608, threads(2), &|_| ());
    for (small, large) in small.shares.iter().zip(&large.shares) {
        let off = (small.share - large.share).base().abs();
        assert!(
            off <= 2.0 * (small.error + large.error).base(),
            "{small:?} {large:?}"
        );
    }
}

#[test]
fn a_world_with_nobody_in_it_is_refused() {
    let mut world = full();
    world.bodies.clear();
    assert_eq!(world.lower().unwrap_err().input, "bodies");
    let mut world = full();
    world.scanners[0].corners.swap(1, 2);
    assert_eq!(world.lower().unwrap_err().input, "corners");
    let mut world = full();
    world.passes[0].edge = base(3.0);
    assert_eq!(world.lower().unwrap_err().input, "opposing");
    let mut world = full();
    world.controller.stopping = base(0.1);
    assert_eq!(world.lower().unwrap_err().input, "stopping");
    let mut world = full();
    world.bodies[0] = round("nobody", f64::NAN, 1.0, (0.3, 1.0));
    assert_eq!(world.lower().unwrap_err().input, "parts");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    /// Standing in the way and pressed without any other device, a slower controller never presses less.
    #[test]
    fn a_slower_controller_never_presses_less(
        seed in 0_u64..1_000_000, reaction in 0.0..0.4_f64, more in 0.0..0.4_f64,
    ) {
        let mut world = bare();
        world.bodies.push(round("child", 0.125, 1.1, (0.3, 2.0)));
        world.controller.reaction = base(reaction);
        let quick = world.lower().unwrap();
        world.controller.reaction = base(reaction + more);
        let slow = world.lower().unwrap();
        let scenario = quick.scenario(seed);
        let quick = quick.evaluate(&scenario).unwrap();
        let slow = slow.evaluate(&scenario).unwrap();
        prop_assert!(slow.class >= quick.class, "{quick:?} {slow:?}");
        if let (Some(quick), Some(slow)) = (quick.touch, slow.touch) {
            prop_assert!(slow.force >= quick.force);
        }
    }

    /// Numbers of any size give an answer or a refusal, and no touch has a number that is none.
    #[test]
    fn any_scenario_is_answered(
        x in -20.0..20.0_f64, slant in -9.0..9.0_f64, speed in 1e-3..30.0_f64, at in -1e3..1e3_f64, depth in -3.0..3.0_f64,
        body in 0_usize..9, pass in 0_usize..2, kind in 0..3,
    ) {
        let walk = full().lower().unwrap();
        let behavior = match kind {
            0 => Behavior::Cross,
            1 => Behavior::Stop(base(depth)),
            _ => Behavior::Stand(base(depth)),
        };
        let scenario = Scenario { pass, body, behavior, ..crossing(x, slant, speed, at) };
        if let Some(touch) = walk.evaluate(&scenario).unwrap().touch {
            prop_assert!(touch.force.base().is_finite() && touch.travel.base() >= 0.0);
            prop_assert!(touch.time.base().is_finite() && touch.at.x.base().is_finite());
        }
    }
}
