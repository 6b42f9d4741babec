//! How hard a touch is: how far the leaf goes on, what force that makes, how long it lasts.
//!
//! The body is taken as rigid and held fast, as a force meter is: what gives is the contact edge, or the leaf with the
//! body against it. The leaf keeps to its plan and its braking whatever it pushes.

use super::body::Cylinder;
use super::control::Limits;
use super::course::{Control, Course, back_at};
use super::profile::Profile;
use super::scenario::Class;
use super::world::{Pass, World};
use quantity::Quantity as _;

/// A spring that is soft for a way and hard after it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spring {
    pub soft: f64,
    pub way: f64,
    pub hard: f64,
}

impl Spring {
    pub(super) fn force(&self, pressed: f64) -> f64 {
        self.soft * pressed.min(self.way) + self.hard * (pressed - self.way).max(0.0)
    }

    /// How far it is pressed at a force.
    pub(super) fn pressed(&self, force: f64) -> f64 {
        let knee = self.soft * self.way;
        if force <= knee {
            force / self.soft
        } else {
            self.way + (force - knee) / self.hard
        }
    }
}

/// What feels a cylinder that the leaf touches.
#[derive(Debug, Clone)]
pub(super) struct Feel {
    pub spring: Spring,
    /// For each device that feels it, how far the leaf goes on before it does, and its delay.
    pub after: Vec<(f64, f64)>,
}

impl Feel {
    pub(super) fn new(world: &World, pass: &Pass, part: &Cylinder) -> Self {
        let bare = world.bare_stiffness.base();
        let mut spring = None;
        let mut after = Vec::new();
        let ahead = |edge: &&super::device::ContactEdge| {
            edge.guards == pass.direction && part.top > edge.bottom && part.bottom < edge.top
        };
        for edge in world.edges.iter().filter(ahead) {
            let pressed = edge.actuation_travel.base();
            after.push((pressed, edge.response.base()));
            spring.get_or_insert(Spring {
                soft: edge.stiffness.base(),
                way: pressed + edge.soft_travel.base(),
                hard: edge.hard_stiffness.base(),
            });
        }
        let spring = spring.unwrap_or(Spring {
            soft: bare,
            way: 0.0,
            hard: bare,
        });
        let drive = world.drive.iter();
        for drive in drive.filter(|drive| drive.guards.contains(&pass.direction)) {
            after.push((spring.pressed(drive.force.base()), drive.response.base()));
        }
        Self { spring, after }
    }

    /// When it commands a stop, touched at a place of the leaf.
    pub(super) fn commands(&self, profile: &Profile, control: &Control, place: f64) -> Option<f64> {
        let mut first: Option<f64> = None;
        for (way, delay) in &self.after {
            if let Some(felt) = profile.time_at(place + way) {
                let command = felt + delay + control.reaction;
                first = Some(first.map_or(command, |known| known.min(command)));
            }
        }
        first
    }
}

/// The limits in plain numbers.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    pub gap: f64,
    pub crushing: f64,
    pub open: f64,
    pub lasting: f64,
    pub lasting_after: f64,
    pub rest: f64,
    pub rest_after: f64,
    pub squeeze: f64,
}

impl Bounds {
    pub(super) fn new(limits: &Limits) -> Self {
        Self {
            gap: limits.crushing_gap.base(),
            crushing: limits.crushing_force.base(),
            open: limits.open_force.base(),
            lasting: limits.lasting_force.base(),
            lasting_after: limits.lasting_after.base(),
            rest: limits.rest_force.base(),
            rest_after: limits.rest_after.base(),
            squeeze: limits.squeeze.base(),
        }
    }

    /// Greatest force that is allowed in a gap.
    pub(super) fn limit(&self, gap: f64) -> f64 {
        if gap <= self.gap {
            self.crushing
        } else {
            self.open
        }
    }
}

/// What is known when the leaf touches.
#[derive(Debug, Clone, Copy)]
pub(super) struct Struck {
    pub time: f64,
    pub part: usize,
    /// Middle of the cylinder.
    pub x: f64,
    pub y: f64,
    /// Where leaf and body meet, seen from the road, under a leaf that rises: x and height.
    pub meets: Option<(f64, f64)>,
    pub gap: f64,
    pub room: f64,
    /// Command of what saw the body before the touch.
    pub command: Option<f64>,
}

/// What a touch does.
#[derive(Debug, Clone, Copy)]
pub(super) struct Harm {
    pub speed: f64,
    pub travel: f64,
    pub force: f64,
    pub limit: f64,
    pub lasts: f64,
    pub rests: f64,
    pub class: Class,
    /// Greatest share of a limit that is used up.
    pub severity: f64,
    /// When braking begins; never where nothing sees or feels it.
    pub command: Option<f64>,
}

/// Time until the leaf stands, where the gap is one that does not crush: whoever has that room gives way then.
fn freed(
    profile: &Profile,
    control: &Control,
    bounds: &Bounds,
    struck: &Struck,
    command: Option<f64>,
) -> f64 {
    if struck.gap <= bounds.gap {
        return f64::INFINITY;
    }
    let stands = match command {
        Some(command) if command < profile.end => {
            command + profile.speed_at(command) / control.stopping
        }
        _ => profile.end,
    };
    (stands - struck.time).max(0.0)
}

/// The most that a touch can be, whatever the plan of the leaf.
#[derive(Debug, Clone, Copy)]
pub(super) struct Most {
    /// How far a body is pressed.
    pub deepest: f64,
    /// Force that is left once the leaf stands against it.
    pub push: f64,
}

impl Most {
    /// Nothing is known of it.
    pub(super) const ANY: Self = Self {
        deepest: f64::INFINITY,
        push: f64::INFINITY,
    };

    /// Both count.
    pub(super) fn and(self, other: Self) -> Self {
        Self {
            deepest: self.deepest.min(other.deepest),
            push: self.push.min(other.push),
        }
    }
}

/// Works out a touch.
pub(super) fn harm(
    profile: &Profile,
    control: &Control,
    bounds: &Bounds,
    feel: &Feel,
    struck: &Struck,
) -> Harm {
    harm_up_to(profile, control, bounds, feel, struck, Most::ANY)
}

/// Works out a touch that can be so much at most.
pub(super) fn harm_up_to(
    profile: &Profile,
    control: &Control,
    bounds: &Bounds,
    feel: &Feel,
    struck: &Struck,
    most: Most,
) -> Harm {
    let seen = struck.command.filter(|command| *command <= struck.time);
    let (place, speed) = if let Some(command) = seen {
        Course::commanded(profile, control, command).at(struck.time)
    } else {
        (profile.place_at(struck.time), profile.speed_at(struck.time))
    };
    let felt = seen
        .is_none()
        .then(|| feel.commands(profile, control, place));
    let command = [struck.command, felt.flatten()]
        .into_iter()
        .flatten()
        .reduce(f64::min);
    let stands = command.map_or(profile.travel, |command| {
        profile.stands_at(command, control.stopping)
    });
    let travel = (stands - place).max(0.0).min(most.deepest);
    let freed = freed(profile, control, bounds, struck, command);
    let way = command
        .filter(|_| travel > feel.spring.pressed(bounds.rest))
        .and_then(|command| {
            let braking = profile.speed_at(command) / control.stopping;
            control.way_back(command.max(0.0) + braking, stands)
        });
    let until = |force: f64| {
        let pressed = feel.spring.pressed(force);
        if travel <= pressed || most.push <= force {
            return 0.0;
        }
        let back = way.as_ref().and_then(|way| back_at(way, place + pressed));
        back.map_or(f64::INFINITY, |time| time - struck.time)
            .min(freed)
    };
    let harm = Harm {
        speed,
        travel,
        force: feel.spring.force(travel),
        limit: bounds.limit(struck.gap),
        lasts: until(bounds.lasting),
        rests: until(bounds.rest),
        class: Class::Within,
        severity: 0.0,
        command,
    };
    harm.judged(bounds, struck.room)
}

impl Harm {
    /// With its class, and the greatest share of a limit that is used up.
    pub(super) fn judged(self, bounds: &Bounds, room: f64) -> Self {
        let squeezed = self.travel - room;
        let severity = (self.force / self.limit)
            .max((self.lasts / bounds.lasting_after).min(100.0))
            .max((self.rests / bounds.rest_after).min(100.0))
            .max(squeezed / bounds.squeeze);
        let long = self.lasts > bounds.lasting_after || self.rests > bounds.rest_after;
        let class = if squeezed > bounds.squeeze {
            Class::Trapped
        } else if self.force > self.limit || long {
            Class::Beyond
        } else {
            Class::Within
        };
        Self {
            class,
            severity,
            ..self
        }
    }
}
