//! Swept paths against published radii, closed forms and laws.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use super::*;
use crate::walk::Spot;
use proptest::prelude::*;
use quantity::{Length, Quantity as _};
use std::ops::ControlFlow;

const FOOT: f64 = 0.3048;

fn m(length: f64) -> Length {
    Length::from_base(length)
}

fn ft(length: f64) -> Length {
    m(length * FOOT)
}

fn at(x: f64, y: f64) -> Spot {
    Spot { x: m(x), y: m(y) }
}

fn unit(wheelbase: f64, (ahead, behind): (f64, f64), width: f64, hitch: f64) -> Unit {
    Unit {
        wheelbase: ft(wheelbase),
        body: Some(Body {
            ahead: ft(ahead),
            behind: ft(behind),
            width: ft(width),
            underside: m(0.2),
        }),
        over_tires: ft(width),
        hitch: ft(hitch),
        widest: None,
    }
}

fn truck() -> Rig {
    Rig {
        units: vec![unit(20.0, (4.0, 6.0), 8.0, 0.0)],
        least_radius: ft(38.0),
    }
}

fn semi() -> Rig {
    Rig {
        units: vec![
            unit(19.5, (4.0, 2.0), 8.5, 0.0),
            unit(41.0, (3.0, 4.5), 8.5, 0.0),
        ],
        least_radius: ft(41.0),
    }
}

/// Along y to a corner at the origin, around it by an angle to the right, and on.
fn turned(radius: f64, degrees: f64) -> Path {
    // A turn of half a circle is two of a quarter.
    let far = 60.0;
    if degrees > 100.0 {
        let r = radius * FOOT;
        let corners = [at(0.0, -far), at(0.0, r), at(2.0 * r, r), at(2.0 * r, -far)];
        return Path::rounded(&corners, &[ft(radius), ft(radius)]).unwrap();
    }
    let turn = degrees.to_radians();
    let end = at(far * turn.sin(), far * turn.cos());
    Path::rounded(&[at(0.0, -far), at(0.0, 0.0), end], &[ft(radius)]).unwrap()
}

fn off_tracking(rig: &Rig, path: &Path) -> f64 {
    let outline = rig.outline(path, m(5.0)).unwrap();
    outline.off_tracking.base() / FOOT
}

/// Computed with scipy, DOP853 at 1e-11; checked there by a fixed-step method: `reference/test_swept.py` does it again.
#[test]
fn the_last_axle_cuts_the_corner_as_a_tractrix_does() {
    let quarter = off_tracking(&truck(), &turned(38.0, 90.0));
    assert!((quarter - 5.051).abs() < 0.004, "{quarter}");
    let half = off_tracking(&truck(), &turned(38.0, 180.0));
    assert!((half - 5.632).abs() < 0.004, "{half}");
}

/// AASHTO's least inside radii of half a turn at the circle of the front axle.
#[test]
fn the_inner_flank_keeps_the_published_radius() {
    let inner = |rig: &Rig, radius: f64, edge: f64| {
        let place = Place {
            obstacles: vec![Obstacle {
                ends: [at(radius * FOOT, 0.0); 2],
                radius: m(0.0),
                top: m(1.0),
            }],
            edges: Vec::new(),
        };
        let room = rig.sweep(&turned(radius, 180.0), &place, m(0.01)).unwrap();
        let least = room.nearest[0].room.base() / FOOT;
        assert!((least - edge).abs() < 0.1, "{least} for {edge}");
    };
    inner(&truck(), 38.0, 28.4);
    let car = Rig {
        units: vec![unit(11.0, (3.0, 5.0), 7.0, 0.0)],
        least_radius: ft(21.0),
    };
    inner(&car, 21.0, 14.4);
    inner(&semi(), 41.0, 7.4);
    let mut longer = semi();
    longer.units[1].wheelbase = ft(45.5);
    inner(&longer, 41.0, 1.9);
}

#[test]
fn a_trailer_straightens_by_its_closed_form() {
    // tan(θ/2) falls by e with each wheelbase: from 90° to 40.395° in one.
    let mut rig = truck();
    rig.units[0].wheelbase = m(3.0);
    rig.units[0].body = None;
    let path = Path::rounded(&[at(0.0, 0.0), at(0.0, 3.0)], &[]).unwrap();
    let mut last = 0.0;
    let start = (1.0, 0.0);
    // Rolled from square by hand: the integrator starts in line, so that the pull is turned instead.
    let _ = super::roll::roll_from(&rig, &path, (0.01, start), |moment| {
        last = dot(moment.poses[0].heading, moment.steered).acos();
        ControlFlow::Continue(())
    });
    assert!((last.to_degrees() - 40.395_062_579).abs() < 1e-6, "{last}");
}

/// Where each unit stands at the end of each centimeter, rolled in steps so long.
fn rolled(rig: &Rig, path: &Path, step: f64, every: usize) -> Vec<Flat> {
    let mut axles = Vec::new();
    let mut count = 0_usize;
    let start = (step, path.start().1);
    let _ = super::roll::roll_from(rig, path, start, |moment| {
        if count.is_multiple_of(every) {
            axles.extend(moment.poses.iter().map(|pose| pose.axle));
        }
        count += 1;
        ControlFlow::Continue(())
    });
    axles
}

#[test]
fn strides_of_eight_steps_leave_no_error_that_could_be_measured() {
    // Both pieces are whole centimeters long, so that every tenth of the short steps ends where a long one does.
    let path = Path {
        pieces: vec![super::path::Piece {
            start: (0.0, 0.0),
            direction: (1.0, 0.0),
            curvature: 1.0 / 12.5,
            length: 30.0,
        }],
    };
    let (coarse, fine) = (
        rolled(&semi(), &path, 0.01, 1),
        rolled(&semi(), &path, 0.001, 10),
    );
    assert_eq!(coarse.len(), fine.len());
    assert!(coarse.len() > 6_000);
    for (one, other) in coarse.iter().zip(&fine) {
        let apart = (one.0 - other.0).hypot(one.1 - other.1);
        assert!(apart < 1e-8, "{one:?} {other:?}");
    }
}

#[test]
fn a_step_of_a_centimeter_is_short_enough() {
    let path = turned(41.0, 180.0);
    let post = |x: f64, y: f64| Obstacle {
        ends: [at(x, y); 2],
        radius: m(0.1),
        top: m(2.0),
    };
    let edge = vec![at(-4.0, -30.0), at(-4.0, 30.0)];
    let place = Place {
        obstacles: vec![post(12.5, 0.0), post(-4.0, 5.0), post(30.0, 2.0)],
        edges: vec![Edge {
            line: edge,
            lane_is_left: false,
        }],
    };
    let one = semi().sweep(&path, &place, m(0.01)).unwrap();
    let other = semi().sweep(&path, &place, m(0.002)).unwrap();
    for (one, other) in one.nearest.iter().zip(&other.nearest) {
        assert!(one.room.base() > 0.0);
        assert!(
            (one.room - other.room).base().abs() < 2e-5,
            "{one:?} {other:?}"
        );
    }
}

/// Two posts so far apart, across the way that leaves a right turn.
fn gate(wide: f64) -> Place {
    let post = |y: f64| Obstacle {
        ends: [at(25.0, y); 2],
        radius: m(0.1),
        top: m(2.0),
    };
    Place {
        obstacles: vec![post(wide / 2.0), post(-wide / 2.0)],
        edges: vec![Edge {
            line: vec![at(4.0, -wide / 2.0), at(40.0, -wide / 2.0)],
            lane_is_left: true,
        }],
    }
}

#[test]
fn a_wide_turn_is_found_where_the_middle_of_the_road_cuts_the_corner() {
    let course = |play: f64| Course {
        corners: vec![at(0.0, -40.0), at(0.0, 0.0), at(60.0, 0.0)],
        play: vec![[m(play), m(0.0)], [m(0.6), m(0.6)]],
    };
    let found = |play| {
        let found = truck()
            .best(&course(play), &gate(4.6), (m(0.3), m(0.01)))
            .unwrap()
            .unwrap();
        let least = found.room.nearest.iter().map(|one| one.room.base());
        (least.fold(f64::INFINITY, f64::min), found.tried)
    };
    let (narrow, tried) = found(0.0);
    assert!(tried > 10 && narrow < 0.3, "{narrow}");
    let (wide, _) = found(4.0);
    assert!(wide > narrow + 0.1, "{wide} {narrow}");
}

#[test]
fn a_turn_tighter_than_the_steering_is_told() {
    let room = truck()
        .sweep(&turned(30.0, 90.0), &gate(6.0), m(0.05))
        .unwrap();
    assert!(room.beyond.is_some());
    let room = truck()
        .sweep(&turned(38.0, 90.0), &gate(6.0), m(0.05))
        .unwrap();
    assert_eq!(room.beyond, None);
}

#[test]
fn a_body_over_a_post_is_below_zero_by_what_it_reaches_over() {
    let place = Place {
        obstacles: vec![Obstacle {
            ends: [at(1.0, 10.0); 2],
            radius: m(0.0),
            top: m(1.0),
        }],
        edges: Vec::new(),
    };
    let path = Path::rounded(&[at(0.0, 0.0), at(0.0, 30.0)], &[]).unwrap();
    let room = truck().sweep(&path, &place, m(0.01)).unwrap();
    assert!((room.nearest[0].room.base() - (1.0 - 4.0 * FOOT)).abs() < 1e-9);
    let low = Place {
        obstacles: vec![Obstacle {
            top: m(0.1),
            ends: [at(0.2, 10.0); 2],
            ..place.obstacles[0]
        }],
        edges: Vec::new(),
    };
    let room = truck().sweep(&path, &low, m(0.01)).unwrap();
    assert!((room.nearest[0].room.base() - (4.0 * FOOT - 0.2)).abs() < 1e-4);
}

#[test]
fn wheels_beyond_an_edge_are_below_zero() {
    let place = Place {
        obstacles: Vec::new(),
        edges: vec![Edge {
            line: vec![at(1.0, 5.0), at(1.0, 20.0)],
            lane_is_left: true,
        }],
    };
    let path = Path::rounded(&[at(0.0, 0.0), at(0.0, 30.0)], &[]).unwrap();
    let room = truck().sweep(&path, &place, m(0.01)).unwrap();
    assert!(
        (room.nearest[0].room.base() - (1.0 - 4.0 * FOOT)).abs() < 1e-6,
        "{room:?}"
    );
}

#[test]
fn a_belly_on_a_crest_by_hand() {
    // Up 10 %, down 10 %: the chord of a wheelbase of 6 m is 6 · 0.2 / 4 m below the crest.
    let ground = Ground::new(&[(m(0.0), m(0.0)), (m(20.0), m(2.0)), (m(40.0), m(0.0))]).unwrap();
    let mut rig = truck();
    rig.units[0].wheelbase = m(6.0);
    let under = Under {
        between: m(0.4),
        ahead: None,
        behind: None,
    };
    let over = rig.over(&ground, &[under], (m(0.0), m(1.0))).unwrap();
    assert!((over.room.base() - 0.1).abs() < 1e-3, "{over:?}");
    assert_eq!(over.part, Lowest::Between);
    assert!((over.at.base() - 20.0).abs() < 1e-9);
    // In a dip the nose, 1.2 m before the axle, comes down by its length times the change of the slope.
    let dip = Ground::new(&[(m(0.0), m(0.0)), (m(20.0), m(0.0)), (m(40.0), m(4.0))]).unwrap();
    let nose = Under {
        ahead: Some(m(0.3)),
        ..under
    };
    let over = rig.over(&dip, &[nose], (m(0.0), m(40.0))).unwrap();
    assert_eq!(over.part, Lowest::Ahead);
    assert!(
        (over.room.base() - (0.3 - 4.0 * FOOT * 0.2)).abs() < 0.012,
        "{over:?}"
    );
    assert!(over.lifted.base() > 0.25);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn left_and_right_are_alike(radius in 12.0..30.0, angle in 20.0..140.0f64, wide in 3.0..8.0) {
        let turn = angle.to_radians();
        let drive = |side: f64| {
            let end = at(side * 50.0 * turn.sin(), 50.0 * turn.cos());
            let path = Path::rounded(&[at(0.0, -90.0), at(0.0, 0.0), end], &[m(radius)]).unwrap();
            let place = Place {
                obstacles: vec![Obstacle { ends: [at(side * wide, 1.0), at(side * wide, 3.0)], radius: m(0.1), top: m(2.0) }],
                edges: Vec::new(),
            };
            semi().sweep(&path, &place, m(0.05)).unwrap().nearest[0].room.base()
        };
        if radius * (turn / 2.0).tan() < 50.0 {
            prop_assert!((drive(1.0) - drive(-1.0)).abs() < 1e-6);
        }
    }

    #[test]
    fn a_longer_wheelbase_cuts_deeper(more in 0.1..3.0, radius in 15.0..40.0) {
        let mut longer = truck();
        longer.units[0].wheelbase += m(more);
        let path = turned(radius / FOOT, 90.0);
        prop_assert!(off_tracking(&longer, &path) > off_tracking(&truck(), &path));
    }
}
