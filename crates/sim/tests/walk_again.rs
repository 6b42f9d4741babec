//! A leaf that starts again on its way, after a touch and the way back: its second touch of whoever is there is no worse
//! than that of a leaf that has come all the way.

#![allow(
    clippy::unwrap_used,
    unreachable_pub,
    reason = "a test may stop at the first surprise; the worlds are shared"
)]

use crate::walk_world::{base, trial};
use proptest::prelude::*;
use quantity::Quantity;
use sim::walk::{Behavior, Scenario, Touch, Way, World};

/// The touch of one who stands on the gate line, by a leaf that starts so far on its way.
fn touch(started: f64, x: f64, edge: bool) -> Option<Touch> {
    let mut world: World = trial(0.08);
    world.beams.clear();
    if !edge {
        world.edges.clear();
        world.drive = Some(sim::walk::ForceSensing {
            guards: vec![sim::walk::Direction::Closing],
            force: base(300.0),
            response: base(0.1),
        });
    }
    let pass = &mut world.passes[0];
    pass.edge = base(4.0 - started);
    pass.plan.travel = base(4.0 - started);
    let scenario = Scenario {
        pass: 0,
        body: 0,
        way: Way::In,
        behavior: Behavior::Stand(base(0.0)),
        crosses_at: base(x),
        slant: base(0.0),
        speed: base(1.0),
        arrives: base(0.0),
    };
    world.lower().unwrap().evaluate(&scenario).unwrap().touch
}

proptest! {
    #[test]
    fn a_second_touch_is_no_worse_than_a_first(
        started in 0.0..3.2, share in 0.0..1.0, edge in any::<bool>(),
    ) {
        // One whom the leaf, where it starts again, does not touch yet.
        let x = 0.2 + share * (3.55 - started);
        let first = touch(0.0, x, edge).unwrap();
        if let Some(second) = touch(started, x, edge) {
            let same = |one: f64, other: f64| (one - other).abs() < 1e-9;
            prop_assert!(same(second.gap.base(), first.gap.base()), "{first:?} {second:?}");
            prop_assert!(same(second.room.base(), first.room.base()));
            prop_assert!(second.speed.base() <= first.speed.base() + 1e-9, "{first:?} {second:?}");
            prop_assert!(second.travel.base() <= first.travel.base() + 1e-9, "{first:?} {second:?}");
            prop_assert!(second.force.base() <= first.force.base() + 1e-6);
        }
    }
}
