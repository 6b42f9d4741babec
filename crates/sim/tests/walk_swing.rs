//! Laws of the walk past leaves that swing, and touches worked by hand.

#![allow(
    clippy::unwrap_used,
    clippy::cast_precision_loss,
    reason = "a test may stop at the first surprise"
)]

use crate::walk_world;
use crate::walk_world::base;
use crate::walk_world::turning::{double, single};
use quantity::Quantity as _;
use sim::walk::*;
use std::f64::consts::FRAC_PI_2;
use std::num::NonZeroUsize;

fn threads(count: usize) -> NonZeroUsize {
    NonZeroUsize::new(count).unwrap()
}

/// Nothing but a leaf that turns at one speed nearly all along, and a body.
fn even() -> SwingWorld {
    let mut world = single(0.08);
    world.beams.clear();
    world.edges.clear();
    world.controller.stopping = base(1e10);
    for pass in &mut world.passes {
        let plan = &mut pass.turns[0].plan;
        plan.acceleration = base(1e10);
        plan.deceleration = base(1e10);
        plan.creep_speed = plan.cruise_speed;
    }
    world
}

fn standing(pass: usize, x: f64, y: f64) -> Scenario {
    Scenario {
        pass,
        body: 0,
        way: Way::In,
        behavior: Behavior::Stand(base(y)),
        crosses_at: base(x),
        slant: base(0.0),
        speed: base(1.0),
        arrives: base(0.0),
    }
}

/// When the even leaf, hinged at (3, 0), has turned by an angle.
fn time(angle: f64) -> f64 {
    angle * 3.0 / 0.45
}

#[test]
fn one_who_stands_is_touched_where_the_face_comes_to_them() {
    let walk = even().lower().unwrap();
    // 2 m from the hinge line at 40° to the closed leaf: the face touches asin(0.23/2) before that.
    let (far, bearing) = (2.0_f64, 40_f64.to_radians());
    let (x, y) = (3.0 - far * bearing.cos(), far * bearing.sin());
    let off = (0.23 / far).asin();
    let touch = walk.evaluate(&standing(1, x, y)).unwrap().touch.unwrap();
    assert!(
        (touch.time.base() - time(bearing - off)).abs() < 1e-6,
        "{touch:?}"
    );
    let touch = walk.evaluate(&standing(0, x, y)).unwrap().touch.unwrap();
    let closing = time(FRAC_PI_2 - bearing - off);
    assert!((touch.time.base() - closing).abs() < 1e-6, "{touch:?}");
    // The touched place is (2² − 0.23²)½ along the leaf and half its thickness across.
    let distance = (far * far - 0.23 * 0.23 + 0.03 * 0.03_f64).sqrt();
    assert!(
        (touch.speed.base() - 0.45 * distance / 3.0).abs() < 1e-6,
        "{touch:?}"
    );
    // Nothing feels it: the leaf goes on to its end.
    let left = FRAC_PI_2 - (FRAC_PI_2 - bearing - off);
    assert!(
        (touch.travel.base() - left * distance).abs() < 1e-6,
        "{touch:?}"
    );
}

/// A touch is no harder than by what moves: energy and push into the spring, ½·m·v² + P·x = ½·k·x²; or by the blow on a free
/// body of 200 kg, v·√(k·m), where nothing is behind it.
#[test]
fn a_touch_is_no_harder_than_what_moves() {
    let force = |push: f64, wall: bool| {
        let mut world = even();
        world.hefts = vec![Heft {
            mass: base(50.0),
            push: base(push),
        }];
        if wall {
            world.faces = vec![Face {
                from: walk_world::spot(2.0, 3.3),
                to: walk_world::spot(4.0, 3.3),
            }];
        }
        let walk = world.lower().unwrap();
        let (far, bearing) = (2.0_f64, 40_f64.to_radians());
        let (x, y) = (3.0 - far * bearing.cos(), far * bearing.sin());
        let touch = walk.evaluate(&standing(1, x, y)).unwrap().touch.unwrap();
        touch.force.base()
    };
    let share = (2.0_f64.powi(2) - 0.23 * 0.23 + 0.03 * 0.03).sqrt() / 3.0;
    let (stiff, speed) = (75_000.0_f64, 0.45);
    let by_energy = |push: f64| {
        let push = push / share;
        push + push.hypot(speed * (stiff * 50.0).sqrt())
    };
    let free = share * speed * (stiff * 200.0).sqrt();
    assert!((force(100.0, false) - by_energy(100.0)).abs() < 1e-6);
    assert!((force(300.0, false) - free).abs() < 1e-6);
    assert!(by_energy(300.0) > free);
}

/// What was measured counts, at the place and farther out.
#[test]
fn a_touch_is_as_hard_as_it_was_measured() {
    let mut world = even();
    let row = Measured {
        leaf: 0,
        guards: Direction::Opening,
        from: base(1.5),
        gap: base(0.5),
        peak: base(333.0),
        settled: base(90.0),
        end: base(10.0),
    };
    world.measured = vec![row];
    let walk = world.lower().unwrap();
    let at = |far: f64| {
        let bearing = 40_f64.to_radians();
        standing(1, 3.0 - far * bearing.cos(), far * bearing.sin())
    };
    let outcome = walk.evaluate(&at(2.0)).unwrap();
    assert_eq!(outcome.class, Class::Within, "{outcome:?}");
    assert!((outcome.touch.unwrap().force.base() - 333.0).abs() < 1e-9);
    let nearer = walk.evaluate(&at(1.2)).unwrap();
    assert!(nearer.touch.unwrap().force.base() > 1000.0, "{nearer:?}");
    // In a gap that crushes only what was measured in one counts.
    world.measured[0].gap = base(3.0);
    let walk = world.lower().unwrap();
    assert_eq!(walk.evaluate(&at(2.0)).unwrap().class, Class::Within);
    world.measured[0].settled = base(160.0);
    let walk = world.lower().unwrap();
    assert_eq!(walk.evaluate(&at(2.0)).unwrap().class, Class::Beyond);
}

#[test]
fn one_beyond_the_tip_is_touched_by_its_corner() {
    let walk = even().lower().unwrap();
    // 3.1 m from the hinge line: the corner is (3² + 0.03²)½ = 3.00015 m from it, and 0.2 m from the middle of the body.
    let (far, bearing) = (3.1_f64, 1.0_f64);
    let corner = 3.0_f64.hypot(0.03);
    let cos = (far * far + corner * corner - 0.04) / (2.0 * far * corner);
    let angle = bearing - cos.acos() - 0.03_f64.atan2(3.0);
    let (x, y) = (3.0 - far * bearing.cos(), far * bearing.sin());
    let touch = walk.evaluate(&standing(1, x, y)).unwrap().touch.unwrap();
    assert!((touch.time.base() - time(angle)).abs() < 1e-6, "{touch:?}");
    // A hair beyond reach nothing is touched.
    let (x, y) = (3.0 - 3.2002 * bearing.cos(), 3.2002 * bearing.sin());
    let outcome = walk.evaluate(&standing(1, x, y)).unwrap();
    assert_eq!(outcome.class, Class::Untouched);
}

#[test]
fn one_between_the_open_leaf_and_a_wall_is_trapped() {
    let mut world = even();
    // The wall is 0.5 m behind the face of the open leaf, and the body is 0.4 m wide.
    world.faces = vec![Face {
        from: walk_world::spot(3.53, 0.5),
        to: walk_world::spot(3.53, 4.0),
    }];
    let walk = world.lower().unwrap();
    let outcome = walk.evaluate(&standing(1, 3.2, 2.0)).unwrap();
    let touch = outcome.touch.unwrap();
    // It touches at an arc of a few decimeters before the end; 0.1 m of room along x is left after it.
    assert!(
        touch.room.base() > 0.12 && touch.room.base() < 0.14,
        "{touch:?}"
    );
    world.faces[0].from.x = base(3.36);
    world.faces[0].to.x = base(3.36);
    let walk = world.lower().unwrap();
    let outcome = walk.evaluate(&standing(1, 3.15, 2.0)).unwrap();
    assert_eq!(outcome.class, Class::Trapped, "{outcome:?}");
    // In the wall nobody stands.
    let outcome = walk.evaluate(&standing(1, 3.3, 2.0)).unwrap();
    assert_eq!(outcome.class, Class::Untouched);
}

#[test]
fn one_between_the_tips_is_trapped_by_both() {
    let mut world = double();
    world.beams.clear();
    world.scanners.clear();
    world.edges.clear();
    world.drive = None;
    world.bodies = vec![walk_world::round("child", 0.125, 1.1, (0.3, 1.6))];
    let walk = world.lower().unwrap();
    let outcome = walk.evaluate(&standing(0, 2.0, 0.1)).unwrap();
    assert_eq!(outcome.class, Class::Trapped, "{outcome:?}");
    assert!(outcome.touch.unwrap().room.base() < 0.0, "{outcome:?}");
}

#[test]
fn any_number_of_threads_gives_the_same_bits() {
    let walk = double().lower().unwrap();
    let one = walk.sweep(200_000, threads(1), &|_| ());
    for count in 2..=5 {
        assert_eq!(walk.sweep(200_000, threads(count), &|_| ()), one);
    }
    for class in Class::ALL {
        assert!(one.shares[class as usize].share.base() > 0.0, "{class:?}");
    }
}

#[test]
fn the_worst_of_a_family_comes_again_from_its_number() {
    let walk = double().lower().unwrap();
    let mut again = 0;
    for family in walk.glance(2048).families {
        let Some(worst) = family.worst else { continue };
        let outcome = walk.evaluate(&walk.scenario(worst.seed)).unwrap();
        assert_eq!(outcome.class, worst.class);
        again += 1;
    }
    assert!(again > 40, "{again}");
}

#[test]
fn worlds_that_make_no_sense_are_refused() {
    let refused = |change: &dyn Fn(&mut SwingWorld)| {
        let mut world = double();
        change(&mut world);
        world.lower().unwrap_err().input
    };
    assert_eq!(refused(&|world| world.bodies.clear()), "bodies");
    assert_eq!(refused(&|world| world.leaves.clear()), "leaves");
    assert_eq!(refused(&|world| world.passes[1].turns.clear()), "turns");
    assert_eq!(
        refused(&|world| world.leaves[0].heel = base(f64::NAN)),
        "heel"
    );
    assert_eq!(
        refused(&|world| world.leaves[0].pivot.x = base(f64::NAN)),
        "pivot"
    );
    assert_eq!(refused(&|world| world.edges[0].leaf = 2), "leaf");
    assert_eq!(
        refused(&|world| world.controller.stopping = base(0.1)),
        "stopping"
    );
    assert_eq!(
        refused(&|world| world.passes[1].turns[0].plan.travel = base(3.0)),
        "travel"
    );
    let wall = Face {
        from: walk_world::spot(0.5, 0.5),
        to: walk_world::spot(0.7, 0.7),
    };
    assert_eq!(refused(&|world| world.faces.push(wall)), "faces");
}

/// Without devices that see, a slower controller never presses less.
#[test]
fn a_slower_controller_never_presses_less() {
    let mut world = double();
    world.beams.clear();
    world.scanners.clear();
    let quick = world.lower().unwrap();
    world.controller.reaction = base(0.3);
    let slow = world.lower().unwrap();
    let mut touched = 0;
    for seed in 0..30_000 {
        let scenario = quick.scenario(seed * 1031);
        let (quick, slow) = (
            quick.evaluate(&scenario).unwrap(),
            slow.evaluate(&scenario).unwrap(),
        );
        assert!(slow.class >= quick.class, "{scenario:?} {quick:?} {slow:?}");
        if let (Some(quick), Some(slow)) = (quick.touch, slow.touch) {
            touched += 1;
            assert!(slow.force >= quick.force && slow.travel >= quick.travel);
        }
    }
    assert!(touched > 3000, "{touched}");
}

#[test]
fn any_scenario_is_answered() {
    let walk = double().lower().unwrap();
    for seed in 0..20_000_u64 {
        let mut scenario = walk.scenario(seed * 1031);
        let far = if seed % 2 == 0 { 1.0 } else { -30.0 };
        scenario.crosses_at *= far;
        scenario.speed = base(1e-3 + (seed % 97) as f64);
        if let Some(touch) = walk.evaluate(&scenario).unwrap().touch {
            assert!(touch.force.base().is_finite() && touch.travel.base() >= 0.0);
            assert!(touch.time.base().is_finite() && touch.at.x.base().is_finite());
        }
    }
}

/// A leaf that nobody has to fear: slow, soft, quick to stop.
fn gentle() -> SwingWorld {
    let mut world = single(0.02);
    world.bare_stiffness = base(2_000.0);
    for edge in &mut world.edges {
        edge.from = base(0.0);
        edge.edge.stiffness = base(2_000.0);
        edge.edge.hard_stiffness = base(2_000.0);
        edge.edge.soft_travel = base(0.2);
    }
    world.limits.lasting_after = base(3.0);
    world.limits.rest_after = base(20.0);
    for pass in &mut world.passes {
        pass.turns[0].plan.cruise_speed = base(0.2);
    }
    if let Answer::Reverse { distance, .. } = &mut world.controller.answer {
        *distance = base(1.0);
    }
    world
}

#[test]
fn no_scenario_contradicts_a_proof() {
    for world in [gentle(), single(0.08), double()] {
        let walk = world.lower().unwrap();
        let swept = walk.glance(4096);
        for (proof, shares) in walk.prove_all(40, threads(2)).iter().filter_map(|proof| {
            let shares = swept
                .families
                .iter()
                .find(|shares| shares.family == proof.family);
            Some((proof, shares?))
        }) {
            let bad: f64 = shares.shares[3..]
                .iter()
                .map(|share| share.share.base())
                .sum();
            if proof.verdict == Verdict::Proved {
                assert!(bad <= 0.0, "{proof:?}");
            }
            if let Verdict::Refuted(scenario, outcome) = proof.verdict {
                assert_eq!(walk.evaluate(&scenario).unwrap(), outcome);
                assert!(outcome.class.is_bad());
            }
        }
    }
}
