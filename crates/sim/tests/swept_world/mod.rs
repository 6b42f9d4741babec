//! Rigs and an entrance from a road, for measurements and cross-checks.

#![allow(dead_code, reason = "each of those who use this needs a part of it")]

use quantity::{Length, Quantity as _};
use sim::swept::{Body, Course, Edge, Obstacle, Place, Rig, Unit};
use sim::walk::Spot;

const FOOT: f64 = 0.3048;

fn m(length: f64) -> Length {
    Length::from_base(length)
}

pub(crate) fn spot(x: f64, y: f64) -> Spot {
    Spot { x: m(x), y: m(y) }
}

/// A unit in feet: wheelbase, ahead, behind, width, hitch behind the axle.
pub(crate) fn unit([wheelbase, ahead, behind, width, hitch]: [f64; 5]) -> Unit {
    let ft = |length: f64| m(length * FOOT);
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

/// AASHTO's single-unit truck SU-30.
pub(crate) fn truck() -> Rig {
    Rig {
        units: vec![unit([20.0, 4.0, 6.0, 8.0, 0.0])],
        least_radius: m(38.0 * FOOT),
    }
}

/// AASHTO's tractor with semi-trailer WB-62.
pub(crate) fn semi() -> Rig {
    Rig {
        units: vec![
            unit([19.5, 4.0, 2.0, 8.5, 0.0]),
            unit([41.0, 3.0, 4.5, 8.5, 0.0]),
        ],
        least_radius: m(41.0 * FOOT),
    }
}

/// A gate of 7 m behind an apron, with posts, bollards and a fence to each side.
pub(crate) fn entrance() -> Place {
    let mut obstacles = Vec::new();
    for step in 0..9 {
        let y = f64::from(step) * 1.5 - 2.0;
        for x in [-0.3, 7.3] {
            obstacles.push(Obstacle {
                ends: [spot(x, y); 2],
                radius: m(0.08),
                top: m(1.2),
            });
        }
    }
    for step in 0..11 {
        let far = f64::from(step) * 2.0;
        obstacles.push(Obstacle {
            ends: [spot(-0.5 - far, 0.0), spot(-2.5 - far, 0.0)],
            radius: m(0.05),
            top: m(2.0),
        });
        obstacles.push(Obstacle {
            ends: [spot(7.5 + far, 0.0), spot(9.5 + far, 0.0)],
            radius: m(0.05),
            top: m(2.0),
        });
    }
    let edge = |line: Vec<Spot>, lane_is_left| Edge { line, lane_is_left };
    Place {
        obstacles,
        edges: vec![
            edge(
                vec![spot(-9.0, -12.0), spot(0.3, -4.0), spot(0.3, 30.0)],
                false,
            ),
            edge(
                vec![spot(14.0, -12.0), spot(6.7, -4.0), spot(6.7, 30.0)],
                true,
            ),
        ],
    }
}

/// From the left on the road, then in.
pub(crate) fn course() -> Course {
    Course {
        corners: vec![spot(-40.0, -16.0), spot(3.5, -16.0), spot(3.5, 40.0)],
        play: vec![[m(1.5), m(2.0)], [m(0.9), m(0.9)]],
    }
}

/// A drive that is drawn at random: a rig, one turn, and things near the inside of it.
pub(crate) struct Drawn {
    pub(crate) rig: Rig,
    pub(crate) corners: Vec<Spot>,
    pub(crate) radii: Vec<Length>,
    pub(crate) place: Place,
}

/// Numbers between 0 and 1 (a linear congruence; the same everywhere).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let share = f64::from(u32::try_from(self.0 >> 33).unwrap_or(0)) / f64::from(u32::MAX >> 1);
        low + (high - low) * share
    }
}

/// A car with a trailer on a ball, and a truck with a trailer on a turntable.
fn towing(turntable: bool) -> Rig {
    let tow = unit([12.0, 3.0, 4.0, 7.0, 4.0]);
    if !turntable {
        return Rig {
            units: vec![tow, unit([13.0, -4.0, 5.0, 8.0, 0.0])],
            least_radius: m(22.0 * FOOT),
        };
    }
    let mut dolly = unit([9.0, 0.0, 0.0, 8.0, 0.0]);
    dolly.body = None;
    Rig {
        units: vec![
            unit([18.0, 4.0, 6.0, 8.5, 6.0]),
            dolly,
            unit([17.0, 2.0, 5.0, 8.5, 0.0]),
        ],
        least_radius: m(38.0 * FOOT),
    }
}

pub(crate) fn drawn(seed: u64) -> Drawn {
    let mut dice = Dice(seed.wrapping_mul(977).wrapping_add(11));
    for _ in 0..4 {
        dice.roll(0.0, 1.0);
    }
    let rig = match seed % 4 {
        0 => truck(),
        1 => semi(),
        2 => towing(false),
        _ => towing(true),
    };
    let radius = rig.least_radius.base() * dice.roll(1.0, 1.6);
    let turn = dice.roll(0.5, 2.3);
    let side = if seed % 8 < 4 { 1.0 } else { -1.0 };
    let long = radius * (turn / 2.0).tan() + 22.0;
    let end = spot(side * long * turn.sin(), long * turn.cos());
    let corners = vec![spot(0.0, -long), spot(0.0, 0.0), end];
    // Inside of the turn: along the line that halves it, at distances around the arc.
    let (inner, middle) = (
        radius / (turn / 2.0).cos() - radius,
        (std::f64::consts::PI - turn) / 2.0,
    );
    let mut obstacles = Vec::new();
    for _ in 0..6 {
        let away = inner + dice.roll(-4.0, 7.0);
        let along = dice.roll(-4.0, 4.0);
        let (sine, cosine) = middle.sin_cos();
        let x = side * (away * sine + along * cosine);
        let y = -away * cosine + along * sine;
        let far = dice.roll(0.0, 2.0);
        obstacles.push(Obstacle {
            ends: [spot(x, y), spot(x + side * far, y - far)],
            radius: m(dice.roll(0.0, 0.15)),
            top: m(2.0),
        });
    }
    let aside = dice.roll(1.8, 4.5);
    let edge = Edge {
        line: vec![
            spot(side * aside, -long),
            spot(side * aside, -radius * (turn / 2.0).tan()),
        ],
        lane_is_left: side > 0.0,
    };
    Drawn {
        rig,
        corners,
        radii: vec![m(radius)],
        place: Place {
            obstacles,
            edges: vec![edge],
        },
    }
}
