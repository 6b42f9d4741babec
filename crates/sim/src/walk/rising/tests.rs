//! The proof holds against the evaluator: no box that is called safe holds a bad touch, and a broken proof is noticed.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use super::bound::Bound;
use super::lane::RisingWalk;
use crate::walk::RisingWorld;
use crate::walk::demo::turning::{arm, lift};
use crate::walk::prove::place::Job;
use crate::walk::prove::search::Space;
use crate::walk::prove::space::Kind;
use crate::walk::prove::testing::{Tree, late_field, mutate};
use crate::walk::sequence::{Draw, Family};

/// Works scenarios of a family; how many ended badly, and how many of those are in boxes called safe.
fn checked(walk: &RisingWalk, family: &Family, count: u64, depth: u32) -> (u64, u64) {
    let lane = &walk.lanes[family.pass];
    let plain = lane.plain();
    let mut trees = Vec::new();
    for &kind in Kind::of(family.habit) {
        for part in 0..lane.people[family.body].parts.len() {
            let job = Job {
                shape: Bound(lane),
                lane: &plain,
                delay: 0.0,
                slant: walk.slant,
                family,
                kind,
                part,
            };
            let tree = Tree::grow(&job, &job.whole(), depth);
            trees.push((job, tree));
        }
    }
    let (mut ended, mut wrong) = (0, 0);
    for number in 0..count {
        let case = lane.drawn(family, &Draw::new(number, 1), walk.slant);
        let found = lane.run(&case);
        let Some((struck, _)) = found.touch.filter(|_| found.class.is_bad()) else {
            continue;
        };
        ended += 1;
        let mut known = trees.iter().filter_map(|(job, tree)| {
            let point = job.point(&case, struck.time, (struck.x, struck.y))?;
            (job.part == struck.part).then(|| tree.is_safe(point))
        });
        wrong += u64::from(known.all(|safe| safe));
    }
    (ended, wrong)
}

/// An adult, one who crawls, a cyclist.
fn few(mut world: RisingWorld) -> RisingWorld {
    let bodies = [0, 4, 7].map(|at| world.bodies[at].clone());
    world.bodies = bodies.to_vec();
    world
}

fn all(world: &RisingWorld, count: u64, depth: u32) -> (u64, u64) {
    let walk = world.lower().unwrap();
    let (mut bad, mut wrong) = (0, 0);
    for family in walk.provable() {
        let found = checked(&walk, &family, count, depth);
        (bad, wrong) = (bad + found.0, wrong + found.1);
    }
    (bad, wrong)
}

#[test]
fn no_walk_ends_badly_in_a_box_that_is_called_safe() {
    let mut bad = 0;
    for world in [arm(), lift()] {
        let mut world = few(world);
        for count in [60_000, 30_000] {
            let (ended, wrong) = all(&world, count, 9);
            assert_eq!(wrong, 0, "of {ended}");
            bad += ended;
            world.beams.remove(0);
            world.edges.clear();
        }
    }
    assert!(bad > 5_000, "{bad}");
}

/// A gate whose fields see everybody, too late.
fn late() -> RisingWorld {
    let mut world = few(arm());
    world.beams.clear();
    world.edges.clear();
    world.scanners = vec![late_field()];
    world
}

#[test]
fn a_proof_that_forgets_a_world_or_rounds_the_wrong_way_is_noticed() {
    for kind in [1, 2, 3] {
        mutate(kind);
        let mut world = late();
        if kind != 2 {
            world.scanners.clear();
        }
        let (ended, wrong) = all(&world, 10_000, 12);
        assert!(wrong > 0, "{kind}: of {ended}");
    }
    mutate(0);
}
