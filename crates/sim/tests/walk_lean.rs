//! People who lean in: the rest of them stays out of the path, and what sees the hand, or the body behind it, decides.

#![allow(
    clippy::unwrap_used,
    clippy::unreachable,
    unreachable_pub,
    reason = "a test may stop at the first surprise; the worlds are shared"
)]

use crate::walk_world::{base, beam, spot, trial};
use quantity::Quantity;
use sim::walk::{
    Beam, Behavior, Body, Class, Family, Habit, Scenario, Verdict, Walk, Way, World, leaning,
};
use std::num::NonZeroUsize;

/// The gate of the first trial with one who leans in, two beams beside the line and no edge.
fn world() -> World {
    let mut world = trial(0.08);
    world.bodies = vec![leaning().remove(0)];
    world.edges.clear();
    world
}

fn family() -> Family {
    Family {
        pass: 0,
        body: 0,
        way: Way::In,
        habit: Habit::Lean,
    }
}

/// A hand so far past the gate line, so far along the opening.
fn hand(depth: f64, x: f64) -> Scenario {
    Scenario {
        pass: 0,
        body: 0,
        way: Way::In,
        behavior: Behavior::Stand(base(depth)),
        crosses_at: base(x),
        slant: base(0.0),
        speed: base(1.0),
        arrives: base(0.0),
    }
}

fn proved(walk: &Walk) -> Verdict {
    walk.prove(&family(), 60_000, NonZeroUsize::MIN)
        .unwrap()
        .verdict
}

#[test]
fn whoever_leans_in_does_nothing_else() {
    let walk = world().lower().unwrap();
    let habits: Vec<_> = walk.families().iter().map(|one| one.habit).collect();
    assert_eq!(habits, [Habit::Lean, Habit::Lean]);
}

#[test]
fn beams_beside_the_line_do_not_see_the_legs_of_one_who_leans_in() {
    // Legs of 146.5 mm stand 737 mm behind the hand, the beam is 120 mm before the line.
    let walk = world().lower().unwrap();
    let outcome = walk.evaluate(&hand(0.1, 1.0)).unwrap();
    let touch = outcome.touch.unwrap();
    assert_eq!(outcome.class, Class::Trapped, "{outcome:?}");
    // By hand: the edge is at 4 m − s, the hand reaches to 1.048 m; 0.66 s to 108.9 mm, then 0.33 m/s.
    let by_hand = 0.66 + (4.0 - 1.048 - 0.1089) / 0.33;
    assert!((touch.time.base() - by_hand).abs() < 1e-6, "{touch:?}");
    assert!(matches!(proved(&walk), Verdict::Refuted(_, outcome) if outcome.class.is_bad()));
}

#[test]
fn an_edge_on_the_leaf_is_enough() {
    let mut world = world();
    world.edges = trial(0.08).edges;
    world.edges[0].soft_travel = base(0.09);
    world.limits.squeeze = base(0.1);
    assert_eq!(proved(&world.lower().unwrap()), Verdict::Proved);
}

#[test]
fn a_beam_where_the_legs_or_the_hand_are_keeps_the_leaf_from_starting() {
    let mut world = world();
    // However far the hand is in, legs 293 mm thick stand between 0.98 m and 30 mm before the line.
    let long = |off: f64| Beam {
        from: spot(-1.0, -off),
        to: spot(5.0, -off),
        ..beam(-off, 0.5)
    };
    world.beams = [0.16, 0.44, 0.72, 1.0].map(long).into();
    let mut steep = world.clone();
    world.greatest_slant = base(0.0);
    assert_eq!(proved(&world.lower().unwrap()), Verdict::Proved);
    // Off square the legs stand nearer to the line, where the same beams are as close.
    steep.greatest_slant = base(1.0);
    assert_eq!(proved(&steep.lower().unwrap()), Verdict::Proved);
    world.beams.remove(1);
    assert!(matches!(
        proved(&world.lower().unwrap()),
        Verdict::Refuted(..)
    ));
    // Two beams within the thickness of the leaf, at the height of the hand.
    world.beams = [-0.04, 0.04].map(|y| beam(y, 1.25)).into();
    assert_eq!(proved(&world.lower().unwrap()), Verdict::Proved);
}

#[test]
fn the_rest_of_a_body_is_never_in_the_path() {
    let walk = world().lower().unwrap();
    let rest = leaning().remove(0);
    for seed in 0..20_000 {
        let scenario = walk.scenario(seed);
        let Behavior::Stand(depth) = scenario.behavior else {
            unreachable!()
        };
        let slant = scenario.slant.base();
        let way = if scenario.way == Way::In { 1.0 } else { -1.0 };
        let stretch = (1.0 + slant * slant).sqrt();
        for part in &rest.parts[rest.arm..] {
            let off = part.ahead.base() - way * part.aside.base() * slant;
            let deep = depth.base() + off / stretch;
            assert!(deep + part.radius.base() + 0.03 < 1e-9, "{seed}");
        }
    }
}

#[test]
fn an_arm_that_walks_is_refused() {
    let mut world = world();
    let whole = Body {
        arm: world.bodies[0].parts.len(),
        ..world.bodies[0].clone()
    };
    world.bodies = vec![whole];
    assert_eq!(world.lower().unwrap_err().input, "arm");
}
