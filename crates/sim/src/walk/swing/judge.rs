//! What a touch of a leaf that swings does, and how much room there is behind the body.

use super::super::course::Control;
use super::super::evaluate::{Found, IN_POST};
use super::super::harm::{Bounds, Feel, Harm, Spring, Struck, harm};
use super::super::profile::Profile;
use super::super::scenario::Class;
use super::super::watch::Walker;
use super::evaluate::{First, harmless};
use super::lane::SwingLane;
use super::room::{Disc, Side};
use super::wing::Wing;
use crate::walk::course::Course;

/// Room in which the touched cylinder is, and that of the whole body, along the arc of the touch; below zero where it is
/// already squeezed by so much.
struct Room {
    own: f64,
    all: f64,
}

impl SwingLane {
    /// A touch by a leaf on its way.
    pub(super) fn forward(
        &self,
        walker: &Walker,
        first: &First,
        place: f64,
        command: Option<f64>,
    ) -> Found {
        let (wing, hit) = (&self.wings[first.wing], &first.hit);
        let share = wing.skin.share(hit.along.hypot(hit.across));
        let body = walker.case.body;
        let feel = wing
            .skin
            .feel(body, first.part, hit.along, share, hit.out >= 0.0);
        let seen = command.filter(|command| *command <= first.time);
        let felt = feel
            .commands(&wing.profile, &wing.control, place)
            .filter(|_| seen.is_none())
            .map(|felt| felt + wing.delay);
        let told = [command, felt].into_iter().flatten().reduce(f64::min);
        let Some(room) = self.room(walker, first, 1.0, told) else {
            return harmless(Class::Untouched);
        };
        let gap = room.own.max(0.0) + 2.0 * walker.person.parts[first.part].radius;
        let struck = Struck {
            gap,
            room: room.all,
            command,
            ..struck(walker, first)
        };
        pressed(wing.motion(), &self.bounds, &feel, share, struck)
    }

    /// A touch by a leaf that runs back: nothing but the end of its way back stops it.
    pub(super) fn backward(
        &self,
        walker: &Walker,
        first: &First,
        course: &Course,
        place: f64,
    ) -> Found {
        let (wing, hit) = (&self.wings[first.wing], &first.hit);
        let share = wing.skin.share(hit.along.hypot(hit.across));
        let stretches = course.stretches();
        let rests = stretches[stretches.len() - 1].place;
        let Some(room) = self.room(walker, first, -1.0, Some(0.0)) else {
            return harmless(Class::Untouched);
        };
        let gap = room.own.max(0.0) + 2.0 * walker.person.parts[first.part].radius;
        let struck = Struck {
            gap,
            room: room.all,
            ..struck(walker, first)
        };
        let speed = course.at(hit.time).1.abs() * share;
        let travel = (place - rests).max(0.0) * share;
        run_back(&self.bounds, wing.skin.bare(), speed, travel, struck)
    }

    /// Room along the arc, forward or back; nothing where a part of the body is in something that stays, so that nobody
    /// can be there. The other leaf counts where it stands in the end.
    fn room(&self, walker: &Walker, first: &First, way: f64, told: Option<f64>) -> Option<Room> {
        let wing = &self.wings[first.wing];
        let lever = first.hit.along.hypot(first.hit.across);
        let flip = |(x, y): (f64, f64)| (x, way * y);
        let other = self
            .wings
            .iter()
            .enumerate()
            .find(|(at, _)| *at != first.wing);
        let stands = other.map(|(_, other)| (other, other.stands(told)));
        let mut room = Room {
            own: f64::INFINITY,
            all: f64::INFINITY,
        };
        for (at, part) in walker.person.parts.iter().enumerate() {
            let spot = walker.place(at, first.time);
            let at_wing = wing.frame.sees(spot);
            let plain = Disc {
                at: at_wing,
                radius: part.radius,
            };
            let disc = Disc {
                at: flip(at_wing),
                radius: part.radius,
            };
            let mut angle = f64::INFINITY;
            for side in &wing.sides {
                if side.apart(&plain) < -IN_POST {
                    return None;
                }
                let turned = Side::new(flip(side.from), flip(side.to));
                angle = angle.min(turned.angle_to(&disc));
            }
            let mut left = angle * lever;
            if let Some((other, place)) = stands
                && other.touchable[walker.case.body].contains(&at)
            {
                left = left.min(beside((wing, other), place, &disc, spot, flip, lever));
            }
            room.all = room.all.min(left);
            if at == first.part {
                room.own = left;
            }
        }
        Some(room)
    }
}

fn struck(walker: &Walker, first: &First) -> Struck {
    let (x, y) = walker.place(first.part, first.time);
    Struck {
        time: first.time,
        part: first.part,
        x,
        y: walker.side() * y,
        gap: f64::INFINITY,
        room: f64::INFINITY,
        command: None,
    }
}

/// Way of the touch until a circle is against the other leaf; below zero by how far it is in it already.
fn beside(
    (wing, other): (&Wing, &Wing),
    place: f64,
    disc: &Disc,
    spot: (f64, f64),
    flip: impl Fn((f64, f64)) -> (f64, f64),
    lever: f64,
) -> f64 {
    let apart = other.apart(place, spot) - disc.radius;
    if apart < 0.0 {
        return apart;
    }
    let corners = other
        .corners(place)
        .map(|corner| flip(wing.frame.sees(corner)));
    (0..4)
        .map(|at| Side::new(corners[at], corners[(at + 1) % 4]).angle_to(disc))
        .fold(f64::INFINITY, f64::min)
        * lever
}

/// How a leaf moves, and how long after the start of the pass it starts.
#[derive(Clone, Copy)]
pub(in super::super) struct Motion<'a> {
    pub profile: &'a Profile,
    pub control: &'a Control,
    pub delay: f64,
}

/// A touch by a leaf on its way, where it goes by a share of what the end does to which its motion belongs; what feels it
/// is seen from that end.
pub(in super::super) fn pressed(
    motion: Motion,
    bounds: &Bounds,
    feel: &Feel,
    share: f64,
    struck: Struck,
) -> Found {
    let at_end = Struck {
        time: struck.time - motion.delay,
        command: struck.command.map(|command| command - motion.delay),
        room: struck.room / share,
        ..struck
    };
    let bounds = Bounds {
        squeeze: bounds.squeeze / share,
        ..*bounds
    };
    let done = harm(motion.profile, motion.control, &bounds, feel, &at_end);
    let done = Harm {
        speed: done.speed * share,
        travel: done.travel * share,
        command: done.command.map(|command| command + motion.delay),
        ..done
    };
    Found {
        class: done.class,
        touch: Some((struck, done)),
    }
}

/// A touch by a leaf that runs back so far: nothing but the end of its way back stops it, and it stays there.
pub(in super::super) fn run_back(
    bounds: &Bounds,
    spring: Spring,
    speed: f64,
    travel: f64,
    struck: Struck,
) -> Found {
    let (force, limit) = (spring.force(travel), bounds.limit(struck.gap));
    let stays = |force: f64| {
        if travel > spring.pressed(force) {
            f64::INFINITY
        } else {
            0.0
        }
    };
    let (lasts, rests) = (stays(bounds.lasting), stays(bounds.rest));
    let squeezed = travel - struck.room;
    let class = if squeezed > bounds.squeeze {
        Class::Trapped
    } else if force > limit || lasts > 0.0 || rests > 0.0 {
        Class::Beyond
    } else {
        Class::Within
    };
    let severity = (force / limit)
        .max(lasts.min(100.0))
        .max(rests.min(100.0))
        .max(squeezed / bounds.squeeze);
    let done = Harm {
        speed,
        travel,
        force,
        limit,
        lasts,
        rests,
        class,
        severity,
        command: None,
    };
    Found {
        class,
        touch: Some((struck, done)),
    }
}

impl Wing {
    pub(super) fn motion(&self) -> Motion<'_> {
        Motion {
            profile: &self.profile,
            control: &self.control,
            delay: self.delay,
        }
    }

    /// Where it stands in the end, told to stop at a time of the pass, or not at all.
    pub(super) fn stands(&self, told: Option<f64>) -> f64 {
        match told.map(|told| told - self.delay) {
            None => self.profile.travel,
            Some(told) if told <= 0.0 => 0.0,
            Some(told) if told >= self.profile.end => self.profile.travel,
            Some(told) => self.profile.stands_at(told, self.control.stopping),
        }
    }

    /// How far a place of the plan is from the leaf at a place of its way; below zero within it.
    pub(super) fn apart(&self, place: f64, spot: (f64, f64)) -> f64 {
        let (x, y) = self.frame.sees(spot);
        let (sin, cos) = (self.swung.start + place * self.swung.turn).sin_cos();
        let (u, v) = (x * cos + y * sin, y * cos - x * sin);
        let slab = self.swung.slab;
        let (off, aside) = (
            (slab.from - u).max(u - slab.to),
            (slab.low - v).max(v - slab.high),
        );
        if off <= 0.0 && aside <= 0.0 {
            off.max(aside)
        } else {
            off.max(0.0).hypot(aside.max(0.0))
        }
    }
}
