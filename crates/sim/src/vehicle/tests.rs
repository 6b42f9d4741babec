//! Cases by hand, and laws that hold for every vehicle and gate.
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "../../tests/vehicle_world/mod.rs"]
mod vehicle_world;

use super::{Act, Drive, Ending, Facing, Field, PartName, World};
use crate::walk::Direction;
use proptest::prelude::*;
use quantity::Quantity;
use vehicle_world::{arm, base, beam, car, drawn, ring, slide, swing, with_trailer};

/// Total length of the stopping places at which nothing holds the leaf.
fn open_length(world: &World) -> f64 {
    let (left, right) = world.middles();
    let mut length = 0.0;
    for facing in Facing::BOTH {
        for motion in world.leaf.motions() {
            let unseen = world.unseen((left, right), facing, *motion);
            length += unseen.iter().map(|(from, to)| to - from).sum::<f64>();
        }
    }
    length
}

fn fastest(world: &World) -> f64 {
    world.fastest().unwrap().map_or(-1.0, Quantity::base)
}

#[test]
fn with_nothing_to_see_it_the_whole_vehicle_is_open() {
    let found = slide(car(), vec![]).unwatched().unwrap().unwrap();
    // By hand: 5 m of car, 50 mm of leaf, 1 mm of slack at either end.
    assert!((found.length().base() - 5.052).abs() < 1e-9);
    // The leaf comes from 6.2 m to the flank at 3.0 + 0.95 m: 2.25 m, at 0.26 m/s after 0.52 s more for half the start.
    assert!((found.way.base() - 2.25).abs() < 1e-9);
    assert!((found.after.base() - (0.52 + 2.25 / 0.26)).abs() < 1e-9);
}

#[test]
fn a_drawbar_hides_the_gap_from_a_beam() {
    let found = slide(with_trailer(), vec![beam(-0.1, 0.55)])
        .unwatched()
        .unwrap()
        .unwrap();
    // By hand, front looking in: the car covers the beam (70 mm about -0.1 m) until its front is at 4.665 m, the trailer
    // from 6.235 m on: 1.57 m between, and the slack.
    assert_eq!(found.part, PartName::Drawbar);
    assert!((found.length().base() - 1.572).abs() < 1e-9, "{found:?}");
    // At 0.40 m the beam meets nothing above the drawbar's width either: it is 0.1 m high and must be covered by 70 mm.
    assert!(
        slide(with_trailer(), vec![beam(-0.1, 0.40)])
            .unwatched()
            .unwrap()
            .is_some_and(|found| found.part != PartName::Drawbar || found.length().base() < 0.3)
    );
}

#[test]
fn two_loops_hold_it_everywhere_and_up_to_a_speed_by_hand() {
    let world = slide(
        with_trailer(),
        vec![ring(-3.0, -1.0, 1.1), ring(1.0, 3.0, 1.1)],
    );
    assert_eq!(world.unwatched().unwrap(), None);
    assert!(world.is_watched().unwrap());
    // By hand: the drive in is seen from -1.8 m on, 1.2 m over the loop, and stands in the way from -0.026 m on; the loop
    // takes 0.1 s, the leaf stands 0.08 + 0.26 / 2.0 s after that. The slack is 1 mm.
    let coming = (1.8 - 0.001 - 0.026) / (0.1 + 0.08 + 0.13);
    // From field to field: the car leaves the outer loop at 2.6 m and is seen by the inner one from 2.2 m on, both moved
    // by the slack; within the response of 0.1 s it must not pass from before the one to beyond the other.
    let between = (0.4 - 0.002) / 0.1;
    assert!(between < coming);
    assert!(
        (fastest(&world) - between).abs() < 2e-3,
        "{} against {between}",
        fastest(&world)
    );
    let one = slide(car(), vec![ring(-3.0, 3.0, 1.1)]);
    assert!(
        (fastest(&one) - coming).abs() < 2e-3,
        "{} against {coming}",
        fastest(&one)
    );
}

#[test]
fn loops_too_far_out_lose_it_and_a_high_chassis_is_lost_by_a_narrow_loop() {
    let far = slide(car(), vec![ring(-8.0, -6.0, 1.1), ring(6.0, 8.0, 1.1)]);
    assert!(
        far.unwatched()
            .unwrap()
            .is_some_and(|found| found.part == PartName::Body)
    );
    let high = slide(
        with_trailer(),
        vec![ring(-3.0, -1.2, 0.3), ring(1.2, 3.0, 0.3)],
    );
    let found = high.unwatched().unwrap().unwrap();
    assert_eq!(found.part, PartName::Trailer);
}

#[test]
fn a_wide_loop_misses_a_motorcycle() {
    let mut narrow = car();
    narrow.narrow = true;
    let world = slide(narrow, vec![ring(-3.0, 3.0, 1.1)]);
    assert!(world.unwatched().unwrap().is_some());
    assert!(
        slide(car(), vec![ring(-3.0, 3.0, 1.1)])
            .unwatched()
            .unwrap()
            .is_none()
    );
}

#[test]
fn a_loop_that_only_holds_open_does_not_stop_a_closing_leaf() {
    let mut held = ring(-3.0, 3.0, 1.1);
    held.acts = vec![Act::HoldsOpen];
    let world = slide(car(), vec![held.clone()]);
    assert!(world.is_watched().unwrap());
    assert_eq!(world.fastest().unwrap(), None);
    held.stays_on = false;
    assert!(!slide(car(), vec![held]).is_watched().unwrap());
}

#[test]
fn a_swing_leaf_meets_a_car_in_its_arc_and_when_it_opens() {
    let world = swing(car(), vec![]);
    let (left, right) = (2.5, 3.5);
    let closing = world.in_the_way((left, right), Facing::In, Direction::Closing);
    // By hand: the flank is at 1.55 m, at which a leaf of 3.0001 m reaches 2.5687 m in; half its thickness and the slack.
    let reach = (3.0_f64.hypot(0.025).powi(2) - 1.55 * 1.55).sqrt() + 0.025;
    let (from, to) = closing.longest().unwrap();
    assert!((from + 0.026).abs() < 1e-9);
    assert!((to - (reach + 5.0 + 0.001)).abs() < 1e-9);
    let opening = world.in_the_way((left, right), Facing::Out, Direction::Opening);
    let (from, to) = opening.longest().unwrap();
    assert!((from - 0.025).abs() < 1e-9 && (to - reach - 0.001).abs() < 1e-9);
}

#[test]
fn an_arm_comes_down_between_car_and_trailer() {
    let world = arm(with_trailer(), vec![beam(-0.1, 0.55)]);
    let found = world.unwatched().unwrap().unwrap();
    assert!((found.length().base() - 1.572).abs() < 1e-9);
    let Field::Beam { .. } = world.detectors[0].field else {
        unreachable!()
    };
    let at = Drive {
        facing: found.facing,
        middle: found.middle,
        speed: base(1.0),
        stop: found.front(),
        stops_at: base(0.0),
        stands: base(100.0),
        backs: false,
        wanted_at: base(30.0),
    };
    let ending = world.drive(&at).unwrap();
    let Ending::Touched { part, at, .. } = ending else {
        unreachable!("{ending:?}")
    };
    assert_eq!(part, PartName::Drawbar);
    assert!(at.base() > 30.0 && at.base() < 30.0 + 0.625 + 6.0);
}

proptest! {
    #[test]
    fn one_more_beam_is_never_worse(seed in 0_u64..100_000, y in -3.0..3.0, height in 0.2..1.0) {
        let world = drawn(seed);
        let mut more = world.clone();
        more.detectors.push(beam(y, height));
        prop_assert!(open_length(&more) <= open_length(&world) + 1e-9);
        prop_assert!(fastest(&more) >= fastest(&world) - 2e-3);
    }

    #[test]
    fn a_longer_loop_is_never_worse(seed in 0_u64..100_000, from in -4.0..2.0, long in 1.2..2.0, more in 0.0..2.0) {
        let mut world = drawn(seed);
        let mut longer = world.clone();
        world.detectors.push(ring(from, from + long, 1.1));
        longer.detectors.push(ring(from, from + long + more, 1.1));
        prop_assert!(open_length(&longer) <= open_length(&world) + 1e-9);
        prop_assert!(fastest(&longer) >= fastest(&world) - 2e-3);
    }

    #[test]
    fn a_vehicle_that_stands_where_nothing_watches_is_touched(seed in 0_u64..100_000) {
        let world = drawn(seed);
        if let (Some(found), 1) = (world.unwatched().unwrap(), world.leaf.motions().len()) {
            prop_assume!(found.length().base() > 0.01);
            let drive = Drive {
                facing: found.facing,
                middle: found.middle,
                speed: base(1.0),
                stop: found.front(),
                stops_at: base(0.0),
                stands: base(300.0),
                backs: false,
                wanted_at: base(30.0),
            };
            let ending = world.drive(&drive).unwrap();
            prop_assert!(matches!(ending, Ending::Touched { .. }), "{ending:?}");
        }
    }

    #[test]
    fn no_drive_up_to_the_proved_speed_is_touched(seed in 0_u64..20_000) {
        let mut world = drawn(seed);
        world.detectors.extend([ring(-3.0, -1.0, 1.3), ring(1.0, 3.0, 1.3), beam(-0.2, 0.6), beam(0.2, 0.6)]);
        let proved = fastest(&world);
        if proved > 0.01 && world.leaf.motions().len() == 1 {
            let tally = world.sweep(seed, 2_000, base(proved.min(15.0))).unwrap();
            prop_assert_eq!(tally.touched, 0, "{:?}", tally.first_touched.map(|number| world.drive_of(number, base(proved.min(15.0)))));
        }
    }
}

/// Places in meters at which a gap of the way in along the middle of the lane begins and ends, and what is bridged.
fn gap_in(world: &World, speed: f64) -> Option<(f64, f64, f64)> {
    let all = world.passings(Quantity::from_base(speed)).unwrap();
    let passing = all.iter().find(|passing| passing.facing == Facing::In)?;
    let gap = passing.gap?;
    Some((gap.from.base(), gap.to.base(), gap.bridged.base()))
}

#[test]
fn between_two_loops_it_is_seen_all_the_way_and_by_how_much() {
    let world = slide(car(), vec![ring(-3.0, -1.0, 1.1), ring(1.0, 3.0, 1.1)]);
    assert_eq!(gap_in(&world, 1.0), None);
    assert!(world.is_seen_through(Quantity::from_base(1.0)).unwrap());
    let all = world.passings(Quantity::from_base(1.0)).unwrap();
    // By hand, as above: the outer loop loses it at 2.8 m (5 m of car, 1.2 m over the loop), the inner one finds it at 2.2 m.
    assert!(
        (all[0].handover.unwrap().overlap.base() - 0.6).abs() < 1e-6,
        "{all:?}"
    );
    // Faster than 1.774 m in 0.1 s and 0.08 s it is at the leaf before the report is.
    let (from, to, bridged) = gap_in(&world, 20.0).unwrap();
    assert!(
        (from - (-0.026 - 20.0 * 0.18)).abs() < 1e-6 && (to - -1.799).abs() < 1e-6,
        "{from} {to}"
    );
    assert!(bridged.abs() < 1e-12);
}

#[test]
fn a_gap_under_the_leaf_is_not_bridged_by_a_drop_out() {
    let mut one = ring(-3.0, -1.0, 1.1);
    one.drop_out = Quantity::from_base(10.0);
    let (from, to, bridged) = gap_in(&slide(car(), vec![one]), 1.0).unwrap();
    assert!(to > from && (to - 5.026).abs() < 1e-9 && bridged.abs() < 1e-12);
}
