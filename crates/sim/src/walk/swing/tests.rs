//! The proof holds against the evaluator: no box that is called safe holds a bad touch, and a broken proof is noticed.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use super::lane::SwingWalk;
use crate::walk::SwingWorld;
use crate::walk::demo::base;
use crate::walk::demo::turning::{double, single};
use crate::walk::prove::search::Space;
use crate::walk::prove::testing::{Tree, assert_bounded, late_field, mutate};
use crate::walk::sequence::{Draw, Family};

/// Works scenarios of a family; how many ended badly, and how many of those are in boxes called safe.
fn checked(walk: &SwingWalk, family: &Family, count: u64, depth: u32) -> (u64, u64) {
    let lane = &walk.lanes[family.pass];
    let plain = lane.plain();
    let jobs = walk.jobs(family, &plain);
    let trees: Vec<_> = jobs
        .iter()
        .map(|job| (job, Tree::grow(job, &job.whole(), depth)))
        .collect();
    let (mut ended, mut wrong) = (0, 0);
    for number in 0..count {
        let case = lane.drawn(family, &Draw::new(number, 1), walk.lean);
        let found = lane.run(&case);
        let Some((struck, _)) = found.touch.filter(|_| found.class.is_bad()) else {
            continue;
        };
        ended += 1;
        // Which leaf touches is not told: one of them has to have it.
        let mut known = trees.iter().filter_map(|(job, tree)| {
            let point = job.point(&case, &struck)?;
            (job.part == struck.part).then(|| tree.is_safe(point))
        });
        wrong += u64::from(known.all(|safe| safe));
    }
    (ended, wrong)
}

/// Both ways of a leaf past an adult, one who crawls and a cyclist.
fn few(mut world: SwingWorld) -> SwingWorld {
    let people = crate::walk::people();
    world.bodies = [0, 4, 7].map(|at| people[at].clone()).to_vec();
    world.greatest_slant = base(1.0);
    world
}

fn all(world: &SwingWorld, count: u64, depth: u32) -> (u64, u64) {
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
    for world in [single(0.08), double()] {
        let (ended, wrong) = all(&few(world), 10_000, 7);
        assert_eq!(wrong, 0, "of {ended}");
        bad += ended;
    }
    assert!(bad > 5_000, "{bad}");
}

/// A gate whose fields see everybody, too late.
fn late() -> SwingWorld {
    let mut world = few(single(0.08));
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

/// With limits that nothing keeps, a box about a touch is at least as bad as the touch, for one of the leaves.
#[test]
fn no_touch_is_harder_than_a_box_about_it() {
    let mut touches = 0;
    for mut world in [few(single(0.08)), few(double())] {
        world.limits.open_force = base(0.01);
        world.limits.crushing_force = base(0.01);
        let walk = world.lower().unwrap();
        for family in walk.provable() {
            let lane = &walk.lanes[family.pass];
            let plain = lane.plain();
            let jobs = walk.jobs(&family, &plain);
            for number in 0..4_000 {
                let case = lane.drawn(&family, &Draw::new(number, 1), walk.lean);
                let found = lane.run(&case);
                let Some(touch) = found.touch.filter(|_| found.class.is_bad()) else {
                    continue;
                };
                assert_bounded(&jobs, &case, &touch);
                touches += 1;
            }
        }
    }
    assert!(touches > 10_000, "{touches}");
}
