//! Proofs about leaves that turn or rise: refuted without their devices, the same on any number of threads.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::walk_world::turning::{arm, single, watched_arm};
use crate::walk_world::{base, round, spot};
use quantity::Quantity as _;
use sim::walk::*;
use std::num::NonZeroUsize;

const MOST: u64 = 100;

fn proofs(walk: &AnyWalk) -> Vec<Proof> {
    walk.prove_all(MOST, NonZeroUsize::new(2).unwrap())
}

fn field(x: (f64, f64), y: (f64, f64)) -> Scanner {
    Scanner {
        guards: vec![Direction::Opening, Direction::Closing],
        corners: vec![
            spot(x.0, y.0),
            spot(x.1, y.0),
            spot(x.1, y.1),
            spot(x.0, y.1),
        ],
        bottom: base(0.15),
        top: base(0.15),
        smallest_object: base(0.05),
        response: base(0.12),
    }
}

fn people_of_two() -> Vec<Body> {
    vec![
        round("adult", 0.2, 1.75, (0.3, 1.6)),
        round("child", 0.125, 0.9, (0.3, 2.0)),
    ]
}

/// An arm with a field on each side of it.
fn guarded_arm() -> AnyWorld {
    let mut world = arm();
    world.beams.clear();
    world.scanners = vec![
        field((-1.5, 4.5), (-3.0, 0.0)),
        field((-1.5, 4.5), (0.0, 3.0)),
    ];
    world.bodies = people_of_two();
    AnyWorld::Rising(world)
}

/// One leaf that swings, with fields over all that it sweeps and a way before it.
fn guarded_leaf() -> AnyWorld {
    let mut world = single(0.08);
    world.beams.clear();
    world.scanners = vec![
        field((-1.5, 5.0), (-1.5, 1.0)),
        field((-1.5, 5.0), (1.0, 5.0)),
    ];
    world.controller.answer = Answer::Stop;
    world.bodies = people_of_two();
    world.greatest_slant = base(1.0);
    AnyWorld::Swinging(world)
}

type Change = (&'static str, fn(&mut AnyWorld));

const CHANGES: [Change; 2] = [
    ("gone", |world| world.scanners().clear()),
    ("raised", |world| {
        for field in world.scanners() {
            (field.bottom, field.top) = (base(1.9), base(1.9));
        }
    }),
];

#[test]
fn a_gate_whose_devices_see_nobody_ends_badly() {
    for world in [guarded_arm(), guarded_leaf()] {
        for (what, change) in CHANGES {
            let mut world = world.clone();
            change(&mut world);
            let changed = world.lower().unwrap();
            let mut cases = 0;
            for proof in proofs(&changed) {
                if let Verdict::Refuted(scenario, outcome) = proof.verdict {
                    assert_eq!(changed.evaluate(&scenario).unwrap(), outcome);
                    assert!(outcome.class.is_bad(), "{what}: {outcome:?}");
                    cases += 1;
                }
            }
            assert!(cases > 0, "{what}");
        }
    }
}

#[test]
fn any_number_of_threads_gives_the_same_bits() {
    let mut world = guarded_leaf();
    world.scanners().remove(0);
    for world in [world, guarded_arm()] {
        let walk = world.lower().unwrap();
        let one = walk.prove_all(130, NonZeroUsize::MIN);
        let threads = NonZeroUsize::new(3).unwrap();
        assert_eq!(walk.prove_all(130, threads), one);
        for family in walk.provable().into_iter().step_by(4) {
            let first = walk.prove(&family, 130, NonZeroUsize::MIN).unwrap();
            assert_eq!(walk.prove(&family, 130, threads).unwrap(), first);
        }
    }
}

/// A scenario ends badly, and the exact evaluator says so.
fn assert_is_refuted(walk: &AnyWalk, proof: &Proof) {
    let refuted = match proof.verdict {
        Verdict::Refuted(scenario, outcome) => Some((scenario, outcome)),
        _ => None,
    };
    let (scenario, outcome) = refuted.unwrap();
    assert!(outcome.class.is_bad());
    assert_eq!(walk.evaluate(&scenario).unwrap().class, outcome.class);
}

/// A cyclist close to the pivot of an arm that rises.
#[test]
fn what_ends_badly_once_in_many_thousand_walks_is_found() {
    const BLOCK: u64 = 1024;
    let walk = AnyWorld::Rising(watched_arm()).lower().unwrap();
    let families = walk.families();
    let wanted = |family: &&Family| {
        (family.pass, family.body, family.habit) == (1, 7, Habit::Cross) && family.way == Way::In
    };
    let family = families.iter().find(wanted).unwrap();
    let at = families.iter().position(|one| one == family).unwrap() as u64;
    let firsts = (0..32).map(|round| (round * families.len() as u64 + at) * BLOCK);
    for seed in firsts.flat_map(|first| first..first + BLOCK) {
        let outcome = walk.evaluate(&walk.scenario(seed)).unwrap();
        assert!(!outcome.class.is_bad(), "number {seed} ends badly");
    }
    let proof = walk.prove(family, 1, NonZeroUsize::MIN).unwrap();
    assert_is_refuted(&walk, &proof);
}

/// The proof about one kind of walk past the watched arm, inward.
fn past_the_arm(pass: usize, body: usize, habit: Habit) -> (AnyWalk, Proof) {
    let walk = AnyWorld::Rising(watched_arm()).lower().unwrap();
    let family = Family {
        pass,
        body,
        way: Way::In,
        habit,
    };
    let proof = walk.prove(&family, MOST, NonZeroUsize::MIN).unwrap();
    (walk, proof)
}

/// However little is looked at, the rest is open: nothing is proved by not looking.
#[test]
fn less_effort_leaves_more_open() {
    let walk = AnyWorld::Rising(watched_arm()).lower().unwrap();
    let family = Family {
        pass: 0,
        body: 0,
        way: Way::In,
        habit: Habit::Cross,
    };
    let open = |most: u64| match walk
        .prove(&family, most, NonZeroUsize::MIN)
        .unwrap()
        .verdict
    {
        Verdict::Undecided(share) => share.base(),
        _ => 0.0,
    };
    let shares = [0, 1, 20, MOST].map(open);
    assert!(shares[2] > 0.0, "{shares:?}");
    assert!(shares.is_sorted_by(|less, more| less >= more), "{shares:?}");
}

#[test]
fn parts_that_are_decided_soon_leave_their_boxes_to_the_others() {
    for (pass, body, habit) in [
        (1, 3, Habit::Cross),
        (1, 6, Habit::Stop),
        (0, 7, Habit::Stand),
    ] {
        let (_, proof) = past_the_arm(pass, body, habit);
        assert_eq!(proof.verdict, Verdict::Proved, "{proof:?}");
    }
}

/// Whoever the arm runs back from, walks past a corner of a field or stands in it from the start.
#[test]
fn walks_that_an_arm_runs_back_from_are_decided() {
    let walk = AnyWorld::Rising(watched_arm()).lower().unwrap();
    let proof = |pass, body, habit| {
        let way = Way::In;
        let family = Family {
            pass,
            body,
            way,
            habit,
        };
        walk.prove(&family, 800, NonZeroUsize::new(2).unwrap())
            .unwrap()
    };
    for (pass, body) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
        let verdict = proof(pass, body, Habit::Cross).verdict;
        assert_eq!(verdict, Verdict::Proved, "{pass} {body}");
    }
    for (pass, body) in [(0, 0), (0, 3), (1, 0), (1, 7)] {
        let verdict = proof(pass, body, Habit::Stand).verdict;
        assert_eq!(verdict, Verdict::Proved, "{pass} {body}");
    }
    // One who stops right before an arm that brakes.
    assert_is_refuted(&walk, &proof(0, 1, Habit::Stop));
}

/// One who runs past the end of the field: nothing of the sequence and no middle of a box finds the touch.
#[test]
fn points_strewn_over_what_stays_open_find_who_is_hit() {
    let (walk, proof) = past_the_arm(1, 2, Habit::Cross);
    assert!(proof.boxes > 0);
    assert_is_refuted(&walk, &proof);
}

#[test]
fn one_who_stops_beyond_the_arm_is_hit_as_one_who_crosses() {
    let (walk, proof) = past_the_arm(1, 7, Habit::Stop);
    assert_eq!(proof.boxes, 0);
    assert_is_refuted(&walk, &proof);
}
