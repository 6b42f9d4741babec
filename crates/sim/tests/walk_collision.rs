//! When a person on a straight line first touches the sliding leaf, against the continuous query of a collision library.
//!
//! The leaf is a box and the person a disc, both at constant velocity: three casts of `parry2d`, before the leaf starts,
//! from its start to its end, and after. The query takes no tolerance; on a disc's round side it leaves up to some 10⁻⁷ s.
//! So its time is only where the looking begins: the library's distance between the two shapes, which is in closed form, is
//! followed from there to zero by Newton's steps.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use crate::walk_world::{base, closing, round, trial};
use parry2d_f64::math::{Pose, Vector};
use parry2d_f64::query::{self, ShapeCastOptions};
use parry2d_f64::shape::{Ball, Cuboid};
use quantity::Quantity as _;
use sim::walk::*;

/// Touches that are compared.
const TOUCHES: u32 = 1000;
/// Way of the leaf, to x = 0.
const TRAVEL: f64 = 4.0;
/// The leaf is taken to be this long.
const LONG: f64 = 40.0;
/// A touch at which the two come together more slowly than this is a graze, in m/s: its time is not known so well.
const GRAZE: f64 = 1e-3;

/// A gate drawn from a number: its leaf's half thickness and speed, the radius of who comes.
struct Gate {
    half: f64,
    speed: f64,
    radius: f64,
}

/// A number from zero to one for each pair of numbers.
fn drawn(number: u32, at: u32) -> f64 {
    let roots = [2.0_f64, 3.0, 5.0];
    (f64::from(number + 1) * roots[at as usize].sqrt()).fract()
}

impl Gate {
    fn new(number: u32) -> Self {
        Self {
            half: 0.01 + 0.09 * drawn(number, 0),
            speed: 0.05 + 0.45 * drawn(number, 1),
            radius: 0.05 + 0.35 * drawn(number, 2),
        }
    }

    /// Nothing but leaf and body, and one speed all along.
    fn world(&self) -> World {
        let mut world = trial(0.08);
        world.beams.clear();
        world.leaf.thickness = base(2.0 * self.half);
        let mut pass = closing();
        pass.plan.acceleration = base(1e10);
        pass.plan.deceleration = base(1e10);
        pass.plan.cruise_speed = base(self.speed);
        pass.plan.creep_speed = base(self.speed);
        pass.opposing = None;
        world.controller.stopping = base(1e10);
        world.passes = vec![pass];
        world.bodies = vec![round("disc", self.radius, 1.7, (0.2, 2.5))];
        world
    }
}

/// One who crosses, as the library sees it.
struct Cast<'a> {
    gate: &'a Gate,
    scenario: Scenario,
}

/// A touch that the library finds.
struct Found {
    time: f64,
    /// How fast the two come together there.
    rate: f64,
}

impl Cast<'_> {
    /// Velocity of the disc.
    fn velocity(&self) -> Vector {
        let slant = self.scenario.slant.base();
        let pace = self.scenario.speed.base() / slant.hypot(1.0);
        let way = if self.scenario.way == Way::In {
            1.0
        } else {
            -1.0
        };
        Vector::new(pace * slant, pace * way)
    }

    fn disc_at(&self, time: f64) -> Vector {
        let gone = time - self.scenario.arrives.base();
        Vector::new(self.scenario.crosses_at.base(), 0.0) + self.velocity() * gone
    }

    fn leaf_at(&self, time: f64) -> Vector {
        let gone = (self.gate.speed * time).clamp(0.0, TRAVEL);
        Vector::new(TRAVEL - gone + 0.5 * LONG, 0.0)
    }

    fn apart(&self, time: f64) -> f64 {
        let (disc, leaf) = (self.disc_at(time), self.leaf_at(time));
        let shapes = self.shapes();
        query::distance(
            &Pose::from_translation(disc),
            &shapes.0,
            &Pose::from_translation(leaf),
            &shapes.1,
        )
        .unwrap()
        .distance
    }

    fn shapes(&self) -> (Ball, Cuboid) {
        let half = Vector::new(0.5 * LONG, self.gate.half);
        (Ball::new(self.gate.radius), Cuboid::new(half))
    }

    /// First touch in a time in which the leaf has one speed.
    fn first(&self, from: f64, until: f64, leaf_speed: f64) -> Option<Found> {
        let (disc, leaf) = self.shapes();
        let leaf_velocity = Vector::new(-leaf_speed, 0.0);
        let hit = query::cast_shapes(
            &Pose::from_translation(self.disc_at(from)),
            self.velocity(),
            &disc,
            &Pose::from_translation(self.leaf_at(from)),
            leaf_velocity,
            &leaf,
            ShapeCastOptions::with_max_time_of_impact(until - from),
        )
        .unwrap()?;
        let rate = hit.normal1.dot(self.velocity() - leaf_velocity);
        let mut time = from + hit.time_of_impact;
        // The distance is none inside: from a little before it is followed from the side on which it is one.
        time -= 1e-6;
        for _ in 0..6 {
            time += self.apart(time) / rate.max(GRAZE);
        }
        Some(Found { time, rate })
    }
}

#[test]
fn a_thousand_touches_are_where_a_collision_library_finds_them() {
    let (mut touches, mut sides, mut clear, mut grazes, mut number) = (0, 0, 0, 0, 0);
    while touches < TOUCHES {
        let gate = Gate::new(number);
        let walk = gate.world().lower().unwrap();
        for seed in 0..400 {
            let scenario = walk.scenario(u64::from(number) * 1_000 + seed);
            if scenario.behavior != Behavior::Cross {
                continue;
            }
            let outcome = walk.evaluate(&scenario).unwrap();
            let cast = Cast {
                gate: &gate,
                scenario,
            };
            let end = TRAVEL / gate.speed;
            let before = cast.first(-30.0, 0.0, 0.0);
            let moving = cast.first(0.0, end, gate.speed);
            match (outcome.touch, before, moving) {
                (Some(touch), None, Some(found)) if found.rate > GRAZE => {
                    let off = (touch.time.base() - found.time).abs();
                    assert!(off < 1e-6, "{scenario:?} {} {off}", found.time);
                    touches += 1;
                }
                (Some(touch), None, _) => {
                    assert!(cast.apart(touch.time.base()) < 1e-9, "{scenario:?}");
                    grazes += 1;
                }
                (Some(_), Some(_), _) => panic!("{scenario:?} {outcome:?}"),
                (None, before, moving) => {
                    let after = || cast.first(end, end + 30.0, 0.0);
                    let met = before.or(moving).or_else(after);
                    let expected = met.as_ref().map_or(Class::Untouched, |_| Class::MetTheSide);
                    assert_eq!(outcome.class, expected, "{scenario:?}");
                    // The two meet without being struck beside the leaf, or while it stands.
                    let struck = |met: &Found| {
                        let ahead = TRAVEL - gate.speed * met.time - cast.disc_at(met.time).x;
                        met.time > 1e-9 && met.time < end - 1e-9 && ahead > 1e-9
                    };
                    assert!(!met.as_ref().is_some_and(struck), "{scenario:?}");
                    sides += u32::from(met.is_some());
                    clear += u32::from(met.is_none());
                }
            }
        }
        number += 1;
    }
    assert!(sides > 100 && clear > 100, "{sides} {clear}");
    assert!(grazes < touches / 50, "{grazes}");
}
