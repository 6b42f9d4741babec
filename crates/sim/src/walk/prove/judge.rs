//! The worst that a touch can do when only bounds of it are known.

use super::leaf::{Leaf, braking};
use super::span::{Span, up};
use crate::walk::course::Control;
use crate::walk::harm::{Bounds, Most, Spring};
use crate::walk::lane::Lane;
use crate::walk::profile::Profile;
use crate::walk::swing::Forces;

/// Bounds of a touch.
#[derive(Clone, Copy)]
pub(in super::super) struct Bounded {
    pub time: Span,
    /// Place of the leaf.
    pub place: Span,
    /// Speed of the leaf.
    pub speed: Span,
    /// How long ago the leaf was told to stop; none where nothing told it.
    pub ago: Option<Span>,
    /// Middle of the cylinder along the gate line.
    pub x: Span,
}

/// The worst: the greatest share of a limit, and whether every limit is kept.
pub(in super::super) struct Worst {
    pub severity: f64,
    pub kept: bool,
}

/// What a touch meets, as far as it is known.
pub(in super::super) struct Meets<'a> {
    pub profile: &'a Profile,
    pub control: &'a Control,
    pub bounds: Bounds,
    pub spring: Spring,
    /// For each device that surely feels it, how far the leaf goes on at most before it does, and its delay.
    pub after: &'a [(f64, f64)],
    /// Least gap and least room.
    pub gap: f64,
    pub room: f64,
    /// The most that it can be, whatever the leaf's plan.
    pub most: Most,
    /// As it was measured.
    pub forces: Option<Forces>,
}

impl Meets<'_> {
    fn leaf(&self) -> Leaf<'_> {
        Leaf {
            profile: self.profile,
            stopping: self.control.stopping,
        }
    }
}

pub(super) fn worst(lane: &Lane, body: usize, part: usize, touch: &Bounded) -> Worst {
    let part = &lane.people[body].parts[part];
    let gap = Span::of(lane.profile.travel) - touch.place + lane.room;
    let room = touch.x - part.radius + lane.room;
    let meets = Meets {
        profile: &lane.profile,
        control: &lane.control,
        bounds: lane.bounds,
        spring: part.feel.spring,
        after: &part.feel.after,
        gap: gap.lo,
        room: room.lo,
        most: Most::ANY,
        forces: None,
    };
    worst_of(&meets, touch)
}

/// How far from its limit a place is cut, in meters: far more than rounding does.
const CUT: f64 = 1e-9;

/// The worst of a touch. Where a device may or may not feel it before the leaf is at its end, places from which it surely
/// does are looked at apart: from the others the leaf goes on no farther than that device asks for.
pub(in super::super) fn worst_of(meets: &Meets, touch: &Bounded) -> Worst {
    let within = |cut: &f64| touch.place.lo < *cut && *cut < touch.place.hi;
    let mut cuts = meets
        .after
        .iter()
        .map(|(way, _)| meets.profile.travel - way - CUT);
    let Some(cut) = cuts.find(within) else {
        return worst_at(meets, touch);
    };
    let [one, other] = [
        Span::new(touch.place.lo, cut),
        Span::new(cut, touch.place.hi),
    ]
    .map(|place| worst_of(meets, &Bounded { place, ..*touch }));
    Worst {
        severity: one.severity.max(other.severity),
        kept: one.kept && other.kept,
    }
}

fn worst_at(meets: &Meets, touch: &Bounded) -> Worst {
    let (spring, bounds) = (&meets.spring, &meets.bounds);
    let (goes, stands) = goes_on(meets, touch);
    let mut travel = goes.min(meets.most.deepest);
    if let Some(forces) = &meets.forces {
        travel = travel.min(up(spring.pressed(forces.peak)));
    }
    let force = meets.forces.map_or_else(
        || up(spring.force(travel)) * (1.0 + 1e-14),
        |forces| forces.peak,
    );
    let squeezed = up(travel - meets.room);
    let freed = if meets.gap > bounds.gap {
        stands.min(up(meets.profile.end - touch.time.lo))
    } else {
        f64::INFINITY
    };
    let (lasts, rests) = match meets.forces {
        None => (
            falls(meets, bounds.lasting, goes, stands, touch).min(freed),
            falls(meets, bounds.rest, goes, stands, touch).min(freed),
        ),
        Some(forces) => (
            fallen(forces.settled, bounds.lasting),
            fallen(forces.end, bounds.rest),
        ),
    };
    let limit = bounds.limit(meets.gap);
    Worst {
        severity: (force / limit)
            .max((lasts / bounds.lasting_after).min(100.0))
            .max((rests / bounds.rest_after).min(100.0))
            .max(squeezed / bounds.squeeze),
        kept: kept(bounds, force, limit, lasts, rests, squeezed),
    }
}

fn kept(bounds: &Bounds, force: f64, limit: f64, lasts: f64, rests: f64, squeezed: f64) -> bool {
    force <= limit
        && lasts <= bounds.lasting_after
        && rests <= bounds.rest_after
        && squeezed <= bounds.squeeze
}

/// How far the leaf goes on at most, and how long after the touch it stands at the latest; never where nothing stops it
/// but its end.
fn goes_on(meets: &Meets, touch: &Bounded) -> (f64, f64) {
    let leaf = meets.leaf();
    let mut travel = (Span::of(meets.profile.travel) - touch.place).hi;
    let mut stands = f64::INFINITY;
    let latest = |delay: f64, speed: Span| up(delay + up(speed.hi.max(0.0) / leaf.stopping));
    if let Some(ago) = touch.ago {
        if ago.lo >= 0.0 {
            travel = travel.min(braking(touch.speed, leaf.stopping).hi);
            stands = latest(0.0, touch.speed);
        } else {
            let delay = -ago.lo;
            travel = travel.min(leaf.run_on(touch.time, delay));
            stands = latest(delay, leaf.speed(touch.time + Span::new(0.0, delay)));
        }
    }
    if touch.ago.is_none_or(|ago| ago.lo < 0.0) {
        for (way, delay) in meets.after {
            let pressed = touch.place + *way;
            if pressed.hi > meets.profile.travel {
                continue;
            }
            let felt = leaf.time_at(pressed);
            let delay = up(delay + meets.control.reaction);
            travel = travel.min(up(way + leaf.run_on(felt, delay)));
            let wait = up((felt - touch.time)
                .hi
                .min(takes(&leaf, *way, touch.time, felt))
                + delay);
            stands = stands.min(latest(wait, leaf.speed(felt + delay)));
        }
    }
    (travel.max(0.0), stands)
}

/// The longest that a way takes a leaf on its plan, by its least speed from a time to another.
fn takes(leaf: &Leaf, way: f64, from: Span, to: Span) -> f64 {
    let least = leaf.speed(from.hull(to)).lo;
    if least > 0.0 {
        Span::of(way).over(Span::of(least)).hi
    } else {
        f64::INFINITY
    }
}

/// When a force is down that is left after the time in question.
fn fallen(left: f64, force: f64) -> f64 {
    if left <= force { 0.0 } else { f64::INFINITY }
}

/// When the force is down at the latest.
fn falls(meets: &Meets, force: f64, travel: f64, stands: f64, touch: &Bounded) -> f64 {
    let control = meets.control;
    let pressed = meets.spring.pressed(force) * (1.0 - 1e-14);
    if travel.min(meets.most.deepest) <= pressed || meets.most.push <= force {
        return 0.0;
    }
    let Some(back) = control.back else {
        return f64::INFINITY;
    };
    let (up_rate, down_rate) = (control.acceleration, control.stopping);
    // It runs back at least as far as it went on; the more it went on, the later the force is down.
    let distance = back.distance.min(touch.place.lo + travel);
    let way = up(travel - pressed);
    if !stands.is_finite() || way >= distance {
        return f64::INFINITY;
    }
    let most = (2.0 * distance * up_rate * down_rate / (up_rate + down_rate)).sqrt();
    let speed = back.speed.min(most);
    let (speeding, slowing) = (
        speed * speed / (2.0 * up_rate),
        speed * speed / (2.0 * down_rate),
    );
    let even = (distance - speeding - slowing).max(0.0);
    let takes = if way <= speeding {
        (2.0 * way / up_rate).sqrt()
    } else if way <= speeding + even {
        speed / up_rate + (way - speeding) / speed
    } else {
        let left = (distance - way).max(0.0);
        speed / up_rate + even / speed + speed / down_rate - (2.0 * left / down_rate).sqrt()
    };
    // A dozen roundings of values near one.
    up(stands + back.pause + takes) * (1.0 + 1e-13)
}
