//! An arm through the leaf: where it is held, how hard, and that no place of the leaf contradicts a proof.

#![allow(
    clippy::unwrap_used,
    unreachable_pub,
    reason = "a test may stop at the first surprise; the worlds are shared"
)]

use crate::walk_world::{base, edge, full, trial};
use proptest::prelude::*;
use quantity::Quantity;
use sim::walk::{Catch, Class, Direction, ForceSensing, Outcome, Reach, ReachVerdict, World};

/// A post that openings of the closing leaf pass from 0.5 m to 3.5 m of its way.
fn post(strip: bool) -> Catch {
    Catch {
        name: "post".to_owned(),
        direction: Direction::Closing,
        from: base(0.5),
        to: base(3.5),
        edge: strip.then(|| edge(Direction::Closing)),
        squeeze: base(if strip { 0.06 } else { 0.01 }),
    }
}

fn world(catch: Catch) -> World {
    let mut world = trial(0.08);
    world.catches = vec![catch];
    world
}

const ARM: Reach = Reach { pass: 0, catch: 0 };

#[test]
fn nobody_reaches_through_where_nothing_holds_an_arm() {
    assert!(trial(0.08).lower().unwrap().reaches().is_empty());
    let mut opening = post(false);
    opening.direction = Direction::Opening;
    assert!(world(opening).lower().unwrap().reaches().is_empty());
    let mut both = full();
    both.catches = vec![
        post(false),
        Catch {
            direction: Direction::Opening,
            ..post(false)
        },
    ];
    let reaches = both.lower().unwrap().reaches();
    assert_eq!(reaches, [ARM, Reach { pass: 1, catch: 1 }]);
}

#[test]
fn an_arm_against_a_bare_post_is_trapped() {
    let walk = world(post(false)).lower().unwrap();
    let outcome = walk.reach(&ARM, base(1.0)).unwrap();
    let touch = outcome.touch.unwrap();
    assert_eq!(outcome.class, Class::Trapped);
    // Nothing feels it, so that the leaf goes on to its end.
    assert!((touch.travel.base() - 3.0).abs() < 1e-9, "{touch:?}");
    let proof = walk.prove_reach(&ARM, 10_000).unwrap();
    assert!(matches!(proof.verdict, ReachVerdict::Refuted(_, outcome) if outcome.class.is_bad()));
}

#[test]
fn how_far_a_strip_is_pressed_by_hand() {
    let walk = world(post(true)).lower().unwrap();
    let touch = walk.reach(&ARM, base(1.0)).unwrap().touch.unwrap();
    // 10 mm until it reports, 0.33 m/s for 20 ms and 80 ms, (0.33 m/s)² over twice 1.5 m/s² of braking.
    let by_hand = 0.010 + 0.33 * 0.1 + 0.33 * 0.33 / 3.0;
    assert!((touch.travel.base() - by_hand).abs() < 1e-9, "{touch:?}");
    // Soft for 60 mm at 8 N/mm, then 75 N/mm; an arm has no gap, so that the lower limit holds.
    let force = 480.0 + 75_000.0 * (by_hand - 0.06);
    assert!((touch.force.base() - force).abs() < 1e-6);
    assert!((touch.limit.base() - 400.0).abs() < 1e-9);
    let (travel, worst) = walk.worst_reach(&ARM, 100).unwrap();
    assert!((0.5..=3.5).contains(&travel.base()));
    assert!(worst.class.is_bad());
}

#[test]
fn a_deep_soft_strip_is_enough_and_so_is_a_drive_that_feels_little() {
    let mut deep = post(true);
    if let Some(edge) = &mut deep.edge {
        edge.soft_travel = base(0.09);
        edge.stiffness = base(1_800.0);
    }
    deep.squeeze = base(0.1);
    let walk = world(deep).lower().unwrap();
    let proof = walk.prove_reach(&ARM, 10_000).unwrap();
    assert_eq!(proof.verdict, ReachVerdict::Proved);
    assert!(proof.boxes < 1_000, "{}", proof.boxes);
    let mut felt = world(post(false));
    felt.bare_stiffness = base(8_000.0);
    felt.drive = Some(ForceSensing {
        guards: vec![Direction::Closing],
        force: base(60.0),
        response: base(0.001),
    });
    felt.controller.reaction = base(0.001);
    felt.controller.stopping = base(3.0);
    felt.catches[0].squeeze = base(0.05);
    let walk = felt.lower().unwrap();
    let proof = walk.prove_reach(&ARM, 10_000).unwrap();
    assert_eq!(proof.verdict, ReachVerdict::Proved);
}

#[test]
fn what_makes_no_sense_is_refused() {
    let mut backwards = post(false);
    backwards.to = base(0.1);
    assert_eq!(world(backwards).lower().unwrap_err().input, "to");
    let walk = world(post(false)).lower().unwrap();
    assert_eq!(walk.reach(&ARM, base(0.2)).unwrap_err().input, "travel");
    let nobody = Reach { pass: 0, catch: 7 };
    assert_eq!(walk.prove_reach(&nobody, 10).unwrap_err().input, "reach");
}

/// Whether a touch is within half a percent of one of its limits.
fn near_a_limit(outcome: &Outcome, squeeze: f64) -> bool {
    let near = |share: f64| (share - 1.0).abs() < 0.005;
    outcome.touch.is_some_and(|touch| {
        let lasts = touch.lasts.map_or(f64::INFINITY, Quantity::base);
        let rests = touch.rests.map_or(f64::INFINITY, Quantity::base);
        near((touch.force / touch.limit).base())
            || near(lasts / 0.75)
            || near(rests / 5.0)
            || near(touch.travel.base() / squeeze)
    })
}

proptest! {
    #[test]
    fn no_place_of_the_leaf_contradicts_a_proof(
        stiffness in 1_000.0..8_000.0, soft in 0.02..0.12, reaction in 0.02..0.2, from in 0.0..3.9, length in 0.05..4.0,
    ) {
        let mut catch = post(true);
        if let Some(edge) = &mut catch.edge {
            edge.stiffness = base(stiffness);
            edge.soft_travel = base(soft);
        }
        catch.squeeze = base(0.01 + soft);
        catch.from = base(from);
        catch.to = base(from + length);
        let mut world = world(catch);
        world.controller.reaction = base(reaction);
        let walk = world.lower().unwrap();
        let (_, worst) = walk.worst_reach(&ARM, 2_000).unwrap();
        match walk.prove_reach(&ARM, 20_000).unwrap().verdict {
            ReachVerdict::Proved => prop_assert!(!worst.class.is_bad(), "{worst:?}"),
            ReachVerdict::Refuted(_, outcome) => prop_assert!(outcome.class.is_bad()),
            // Half a percent from a limit and nearer, a proof may ask for more pieces.
            ReachVerdict::Undecided(_) => prop_assert!(near_a_limit(&worst, 0.01 + soft), "{worst:?}"),
        }
    }
}
