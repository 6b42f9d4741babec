//! The worst that a touch of a leaf on its plan can do when only bounds of it are known.
//!
//! Where the leaf stands in the end never falls with where it touches, as the stop is at least as hard as the slow-down of
//! the plan; so the farthest stand after the latest touch, less the earliest touch, is the most that it goes on.

use super::super::harm::{Bounds, Spring};
use super::judge::Motion;
use super::skin::Within;

/// More than rounding moves a place or a time, in meters and seconds: numbers below a thousand, some dozens of
/// operations, a mathematics library that is right to far more than nine digits.
pub(in super::super) const SLACK: f64 = 1e-9;

/// Bounds of a touch.
#[derive(Debug, Clone, Copy)]
pub(in super::super) struct Meets {
    /// First and last place of the leaf, as its end goes.
    pub place: (f64, f64),
    /// Least and greatest share of the way of the end.
    pub share: (f64, f64),
    /// Least gap.
    pub gap: f64,
    /// Least room.
    pub room: f64,
}

/// When the leaf is told to stop at the latest by what surely feels the touch; never where nothing does.
pub(in super::super) fn told(motion: Motion, meets: &Meets, within: &Within) -> Option<f64> {
    let felt = within.after.iter().filter_map(|(way, delay)| {
        let time = motion.profile.time_at(meets.place.1 + way + SLACK)?;
        Some(time + delay + motion.control.reaction + SLACK)
    });
    felt.reduce(f64::min)
}

/// Whether every limit is surely kept.
pub(in super::super) fn kept(
    motion: Motion,
    bounds: &Bounds,
    within: &Within,
    meets: &Meets,
) -> bool {
    let (profile, control) = (motion.profile, motion.control);
    let told = told(motion, meets, within);
    let stands = told.map_or(profile.travel, |told| {
        profile.stands_at(told, control.stopping)
    });
    let goes_on = (stands - meets.place.0).max(0.0) + SLACK;
    let travel = goes_on * meets.share.1;
    if travel - meets.room > bounds.squeeze - SLACK {
        return false;
    }
    let rests = told.map(|told| told + profile.speed_at(told) / control.stopping + SLACK);
    let touch = profile.time_at(meets.place.0).unwrap_or(profile.end) - SLACK;
    within.springs.iter().all(|spring| {
        let falls = |force: f64, after: f64| {
            let pressed = spring.pressed(force) - SLACK;
            if travel <= pressed {
                return true;
            }
            let way = goes_on - pressed / meets.share.1;
            let Some(rests) = rests else {
                return false;
            };
            back(motion, way, meets.place.0).is_some_and(|takes| rests - touch + takes <= after)
        };
        force(spring, travel) <= bounds.limit(meets.gap - SLACK)
            && falls(bounds.lasting, bounds.lasting_after)
            && falls(bounds.rest, bounds.rest_after)
    })
}

fn force(spring: &Spring, travel: f64) -> f64 {
    spring.force(travel) * (1.0 + SLACK)
}

/// How long it takes at most, from when the leaf stands, until it has run back so far; never where it does not.
fn back(motion: Motion, way: f64, from: f64) -> Option<f64> {
    let control = motion.control;
    let back = control.back?;
    let distance = back.distance.min(from) - SLACK;
    if way + SLACK >= distance {
        return None;
    }
    let (up, down) = (control.acceleration, control.stopping);
    let most = (2.0 * distance * up * down / (up + down)).sqrt();
    let speed = back.speed.min(most);
    let (speeding, slowing) = (speed * speed / (2.0 * up), speed * speed / (2.0 * down));
    let even = (distance - speeding - slowing).max(0.0);
    let way = way + SLACK;
    let takes = if way <= speeding {
        (2.0 * way / up).sqrt()
    } else if way <= speeding + even {
        speed / up + (way - speeding) / speed
    } else {
        let left = (distance - way).max(0.0);
        speed / up + even / speed + speed / down - (2.0 * left / down).sqrt()
    };
    Some(back.pause + takes + SLACK)
}
