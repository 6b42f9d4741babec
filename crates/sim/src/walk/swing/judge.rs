//! What a touch of a leaf that swings does, and how much room there is behind the body.

use super::super::course::Control;
use super::super::evaluate::{Found, IN_POST};
use super::super::harm::{Bounds, Feel, Harm, Most, Spring, Struck, harm_up_to};
use super::super::profile::Profile;
use super::super::scenario::Class;
use super::super::watch::Walker;
use super::evaluate::{First, harmless};
use super::lane::SwingLane;
use super::press::Press;
use super::room::{Disc, Side};
use super::skin::Skin;
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
        (place, speed): (f64, f64),
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
        let against = Against {
            feel: &feel,
            skin: &wing.skin,
            share,
            sinks: wing.swung.deepest(hit, place, wing.profile.travel),
            speed,
            left: wing.profile.travel - place,
        };
        pressed(wing.motion(), &self.bounds, &against, struck)
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
        let back = RunsBack {
            speed: course.at(hit.time).1.abs(),
            goes: (place - rests).max(0.0),
            sinks: wing.swung.deepest(hit, place, rests),
            share,
        };
        run_back(&self.bounds, &wing.skin, &back, struck)
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
                let apart = side.apart(&plain);
                if apart < -IN_POST {
                    return None;
                }
                // Seen the other way around they are as far apart.
                let turned = Side::new(flip(side.from), flip(side.to));
                angle = angle.min(turned.angle_within(&disc, apart, angle));
            }
            let mut left = angle * lever;
            if let Some((other, place)) = stands
                && other.touchable[walker.case.body].contains(&at)
            {
                let beside = beside((wing, other), place, (&disc, angle), spot, flip, lever);
                left = left.min(beside);
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
        meets: None,
        gap: f64::INFINITY,
        room: f64::INFINITY,
        command: None,
    }
}

/// Way of the touch until a circle is against the other leaf; below zero by how far it is in it already. An angle that is
/// no less than another need not be found.
fn beside(
    (wing, other): (&Wing, &Wing),
    place: f64,
    (disc, angle): (&Disc, f64),
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
    let to = |at: usize| {
        let side = Side::new(corners[at], corners[(at + 1) % 4]);
        side.angle_within(disc, side.apart(disc), angle)
    };
    (0..4).map(to).fold(f64::INFINITY, f64::min) * lever
}

/// How a leaf moves, and how long after the start of the pass it starts.
#[derive(Clone, Copy)]
pub(in super::super) struct Motion<'a> {
    pub profile: &'a Profile,
    pub control: &'a Control,
    pub delay: f64,
}

/// What a leaf presses with at a touch. Ways and speed are those of its free end.
pub(in super::super) struct Against<'a> {
    pub feel: &'a Feel,
    pub skin: &'a Skin,
    /// Share of the way of the free end.
    pub share: f64,
    /// How far the leaf gets beyond the touch, wherever it goes.
    pub sinks: f64,
    pub speed: f64,
    /// How far it goes on to its end.
    pub left: f64,
}

/// The most that a touch can be by what moves, with room behind the body, where the leaf goes on so far at most.
fn most(press: &Press, (spring, share): (&Spring, f64), speed: f64, left: f64, room: f64) -> Most {
    let most = press.most(spring, share, speed);
    if left * share <= room {
        most.and(press.free(spring, share, speed))
    } else {
        most
    }
}

/// A touch by a leaf on its way.
pub(in super::super) fn pressed(
    motion: Motion,
    bounds: &Bounds,
    against: &Against,
    struck: Struck,
) -> Found {
    let Against { feel, share, .. } = *against;
    let room = struck.room;
    let at_end = Struck {
        time: struck.time - motion.delay,
        command: struck.command.map(|command| command - motion.delay),
        room: room / share,
        ..struck
    };
    let of_end = Bounds {
        squeeze: bounds.squeeze / share,
        ..*bounds
    };
    let spring = Spring {
        soft: feel.spring.soft / share,
        way: feel.spring.way * share,
        hard: feel.spring.hard / share,
    };
    let press = &against.skin.press;
    let (far, wide) = (against.skin.far(share), struck.gap > bounds.gap);
    let of = (&spring, share);
    let most = most(press, of, against.speed, against.left, room);
    let most = Most {
        deepest: most.deepest.min(against.sinks) / share,
        ..most
    };
    let done = harm_up_to(motion.profile, motion.control, &of_end, feel, &at_end, most);
    let mut done = Harm {
        speed: done.speed * share,
        travel: done.travel * share,
        command: done.command.map(|command| command + motion.delay),
        ..done
    };
    if let Some(forces) = press.forces(far, wide, bounds) {
        done = forces.instead_of(done, &spring, bounds);
    }
    Found {
        class: done.class,
        touch: Some((struck, done)),
    }
}

/// A leaf that runs back, at a touch. Ways and speed are those of its free end.
pub(in super::super) struct RunsBack {
    pub speed: f64,
    pub goes: f64,
    pub sinks: f64,
    pub share: f64,
}

/// A touch by a leaf that runs back so far: nothing but the end of its way back stops it, and it stays there.
pub(in super::super) fn run_back(
    bounds: &Bounds,
    skin: &Skin,
    back: &RunsBack,
    struck: Struck,
) -> Found {
    let (spring, share) = (skin.bare(), back.share);
    let (far, wide) = (skin.far(share), struck.gap > bounds.gap);
    let of = (&spring, share);
    let most = most(&skin.press, of, back.speed, back.goes, struck.room);
    let travel = (back.goes * share).min(back.sinks).min(most.deepest);
    let stays = |force: f64| {
        if travel > spring.pressed(force) && most.push > force {
            f64::INFINITY
        } else {
            0.0
        }
    };
    let done = Harm {
        speed: back.speed * share,
        travel,
        force: spring.force(travel),
        limit: bounds.limit(struck.gap),
        lasts: stays(bounds.lasting),
        rests: stays(bounds.rest),
        class: Class::Within,
        severity: 0.0,
        command: None,
    };
    let mut done = done.judged(bounds, struck.room);
    if let Some(forces) = skin.press_back.forces(far, wide, bounds) {
        done = forces.instead_of(done, &spring, bounds);
    }
    Found {
        class: done.class,
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
