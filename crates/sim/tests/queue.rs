//! Days of a queue against closed forms, against the laws that any queue keeps, and against themselves.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

#[path = "../examples/queue/world.rs"]
mod world;

use formula::Formula as _;
use formula::signal::{OneLaneQueue, QueueLength};
use quantity::{Frequency, Quantity as _, Ratio, Time};
use sim::queue::{Estimate, Report, Run, World};
use std::num::NonZeroUsize;

fn run(world: &World, days: u64, threads: usize) -> Report {
    let run = Run {
        days,
        seed: 11,
        threads: NonZeroUsize::new(threads).unwrap(),
    };
    world.lower().unwrap().run(&run, &|_| ())
}

/// Twice the half of the interval at 95 %: one honest run in ten thousand falls outside.
fn meets<Q: quantity::Quantity>(found: &Estimate<Q>, expected: f64) -> bool {
    (found.value.base() - expected).abs() <= 2.0 * found.error.base()
}

/// From the fourth hour on the queue has forgotten that it began empty.
#[test]
fn waits_and_queues_are_those_of_the_closed_form() {
    for spread in [0.0, 8.0, 20.0] {
        let report = run(&world::bare(120.0, 20.0, spread), 3200, 2);
        let lane = OneLaneQueue {
            arrivals: Frequency::from_base(120.0 / 3600.0),
            service: Time::from_base(20.0),
            spread: Time::from_base(spread),
        };
        let exact = lane.evaluate().unwrap();
        for hour in &report.hours[3..] {
            assert!(
                meets(&hour.wait, exact.wait.base()),
                "{spread}: {:?}",
                hour.wait
            );
            assert!(
                meets(&hour.standing, exact.standing.base()),
                "{spread}: {:?}",
                hour.standing
            );
            assert!(meets(&hour.arrivals, 120.0), "{:?}", hour.arrivals);
        }
        let narrow = &report.hours[5].wait;
        assert!(
            narrow.error.base() < 0.03 * narrow.value.base(),
            "{narrow:?}"
        );
    }
}

#[test]
fn the_number_that_stands_is_geometric_where_nothing_has_memory() {
    let report = run(&world::bare(108.0, 25.0, 25.0), 4800, 2);
    let hour = &report.hours[6];
    for (number, share) in hour.numbers.iter().enumerate().take(12) {
        let exact = 0.25 * 0.75_f64.powi(i32::try_from(number).unwrap());
        // Days of one hour: the shares scatter by about two in a hundred of themselves.
        assert!(
            (share.base() - exact).abs() < 0.04 * exact + 0.0005,
            "{number}: {share:?} {exact}"
        );
    }
    let sum: f64 = hour.numbers.iter().map(|share| share.base()).sum();
    assert!((sum - 1.0).abs() < 1e-9);
    let rare = QueueLength {
        utilization: Ratio::from_base(0.75),
        servers: 1,
        exceeded: Ratio::from_base(0.05),
    };
    let standing = rare.evaluate().unwrap().standing as usize;
    let beyond: f64 = hour.numbers[standing + 1..]
        .iter()
        .map(|share| share.base())
        .sum();
    assert!(beyond < 0.055, "{beyond}");
}

#[test]
fn what_stands_is_what_comes_times_how_long_it_stays() {
    for (room, one_each) in [(true, false), (false, false), (true, true)] {
        let mut steady = world::gate(room, one_each);
        steady.arrivals = vec![45; 12];
        let whole = run(&steady, 1600, 2).whole;
        // Little's law for the wait before the reader and the time at it, which is more than what the card takes.
        let before = whole.wait.value.base() * whole.arrivals.value.base() / 3600.0;
        assert!(whole.standing.value.base() > before);
        assert!(whole.through.value > whole.wait.value);
    }
}

#[test]
fn any_number_of_threads_says_the_same_and_another_seed_another() {
    let gate = world::gate(true, false);
    assert_eq!(run(&gate, 64, 1), run(&gate, 64, 3));
    let other = Run {
        days: 64,
        seed: 12,
        threads: NonZeroUsize::MIN,
    };
    let other = gate.lower().unwrap().run(&other, &|_| ());
    assert_ne!(run(&gate, 64, 1).whole.wait, other.whole.wait);
}

#[test]
fn a_slower_gate_a_longer_hold_and_one_each_do_what_they_must() {
    let gate = world::gate(true, false);
    let usual = run(&gate, 1600, 2).whole;
    let mut slow = gate.clone();
    slow.leaf.opening = Time::from_base(25.0);
    slow.leaf.closing = Time::from_base(25.0);
    assert!(run(&slow, 1600, 2).whole.through.value > usual.through.value);
    let mut long = gate.clone();
    long.leaf.hold = Time::from_base(60.0);
    let long = run(&long, 1600, 2).whole;
    assert!(long.openings.value < usual.openings.value);
    assert!(long.tailgated.value > usual.tailgated.value);
    let one_each = run(&world::gate(true, true), 1600, 2).whole;
    assert!(
        one_each.shared.value.base().abs() < 1e-12 && one_each.tailgated.value.base().abs() < 1e-12
    );
    let opened = one_each.openings.value.base() / one_each.arrivals.value.base();
    assert!((opened - 1.0).abs() < 1e-9, "{opened}");
    assert!(one_each.in_road.value > usual.in_road.value);
}

#[test]
fn one_vehicle_takes_the_time_of_its_line_and_alone_it_is_the_queues() {
    let mut lonely = world::gate(false, false);
    lonely.arrivals = vec![1];
    lonely.drivers.truncate(1);
    lonely.drivers[0].share = Ratio::from_base(1.0);
    lonely.drivers[0].spread = Time::from_base(0.0);
    lonely.group = Ratio::from_base(1.0);
    let line = lonely.timeline(0).unwrap();
    // By hand: 4 s at the reader, 8 s of opening, 1.5 s to set off, 3.6 m at 2.8 m/s.
    assert!((line.passes.base() - (4.0 + 8.0 + 1.5 + 3.6 / 2.8)).abs() < 1e-9);
    // Then 4.8 m and 2 m at 2.8 m/s, half a second, 12 s, and 9 s to close.
    assert!((line.shut.base() - line.passes.base() - (6.8 / 2.8 + 0.5 + 12.0 + 9.0)).abs() < 1e-9);
    assert!(lonely.timeline(1).is_err());
    let mut seldom = lonely.clone();
    seldom.arrivals = vec![0, 1, 0];
    let report = run(&seldom, 3200, 2);
    let hour = &report.hours[1];
    // Once an hour hardly anybody meets another: all but one in a hundred take the time of the line.
    assert!(
        (hour.through.value.base() - line.passes.base()).abs() < 0.5,
        "{:?}",
        hour.through
    );
}

#[test]
fn what_makes_no_sense_is_refused_by_name() {
    let refused = |change: &dyn Fn(&mut World)| {
        let mut world = world::gate(true, false);
        change(&mut world);
        world.lower().unwrap_err().input
    };
    assert_eq!(refused(&|world| world.arrivals.clear()), "arrivals");
    assert_eq!(
        refused(&|world| world.group = Ratio::from_base(0.5)),
        "group"
    );
    assert_eq!(refused(&|world| world.drivers.clear()), "drivers");
    assert_eq!(
        refused(&|world| world.drivers[0].share = Ratio::from_base(0.2)),
        "share"
    );
    assert_eq!(
        refused(&|world| world.drivers[0].spread = Time::from_base(99.0)),
        "spread"
    );
    assert_eq!(
        refused(&|world| world.lane.stacking = quantity::Length::from_base(0.0)),
        "stacking"
    );
    assert_eq!(
        refused(&|world| world.leaf.hold = Time::from_base(f64::NAN)),
        "hold"
    );
}

#[test]
fn an_overrun_lane_is_counted_and_nothing_is_no_number() {
    let mut world = world::gate(false, true);
    world.arrivals = vec![600; 3];
    let report = run(&world, 16, 2);
    assert!(report.worst().in_road.value.base() > 0.9);
    assert!(report.worst().length.is_none());
    assert!(report.whole.wait.value.base().is_finite());
}
