//! A leaf on its way into a stop: what it weighs there, how fast it comes, and what still pushes it.

use crate::asking::{Asking, read};
use crate::check::drive::operator_of_leaf;
use crate::check::force::operator_curve::force_at;
use crate::check::force::rising::{Rising, RisingAt, rises, rising};
use crate::check::leaf::{center_along, mass};
use crate::check::motion::cruise_of;
use crate::outcome::Halt;
use formula::motion::{HandPushSpeed, ImpactOnStop, SlideGateForce, StopImpactForce};
use formula::{Evidence, Formula as _, Source};
use quantity::{Force, ForcePerLength, Length, Mass, Quantity as _, Ratio, Torque, Velocity};
use site::{BalanceKind, Gate, GateKind, Leaf, Operator, Site, Stop, TravelEnd};

/// A leaf as its free end, or its edge, feels it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Moving {
    /// Mass at the edge, counterweight included.
    mass: Mass,
    /// Turning parts of the drive, as a mass at the edge.
    rotating: Mass,
    /// Full speed of the edge.
    speed: Velocity,
    /// Greatest push of the drive at the edge.
    push: Force,
    /// What gravity adds toward the closed end, above zero, or toward the open one, below zero.
    gravity_closed: Force,
    /// The same at the open end.
    gravity_open: Force,
}

/// Turning parts of the drive as a share of the leaf's mass, where the site does not give them.
const ROTATING: f64 = 0.2;

static DRIVE_SHARE: Source = Source {
    work: "turning parts of the drive as a fifth of the leaf's mass",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of drive sizing",
};

/// A hard shove of one strong person: twice the force that HSE's guide gives men to start a load, over a long step.
const SHOVE: (f64, f64, f64) = (400.0, 1.0, 2.0);

static HARD_SHOVE: Source = Source {
    work: "a hard shove: 400 N over 1 m, up to 2 m/s",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "twice the 20 kgf that a safety authority's guide gives men to start a load, http://www.hse.gov.uk/msd/pushpull/assessment.htm; a long step; a fast walk",
};

impl Moving {
    /// Everything that comes with the edge: leaf, counterweight and drive.
    pub(crate) fn whole_mass(&self) -> Mass {
        self.mass + self.rotating
    }

    /// Full speed of the edge.
    pub(crate) fn speed(&self) -> Velocity {
        self.speed
    }

    /// Greatest push of the drive at the edge, with what is unbalanced.
    pub(crate) fn push(&self) -> Force {
        let (closed, open) = (self.gravity_closed.base(), self.gravity_open.base());
        self.push + Force::from_base(closed.abs().max(open.abs()))
    }

    fn gravity(&self, end: TravelEnd) -> Force {
        let toward = match end {
            TravelEnd::Closed => self.gravity_closed.base(),
            TravelEnd::Open => -self.gravity_open.base(),
        };
        Force::from_base(toward.max(0.0))
    }

    /// Into a stop at full speed, the limit failed and the drive still pushing.
    pub(super) fn at_full_speed(
        &self,
        asking: &mut Asking<'_>,
        end: TravelEnd,
        stiffness: ForcePerLength,
    ) -> Result<ImpactOnStop, Halt> {
        asking.work(&StopImpactForce {
            mass: self.whole_mass(),
            speed: self.speed,
            push: self.push + self.gravity(end),
            stiffness,
        })
    }

    /// Into a stop after a hard shove with the drive released.
    pub(super) fn after_a_shove(
        &self,
        asking: &mut Asking<'_>,
        end: TravelEnd,
        stiffness: ForcePerLength,
    ) -> Result<ImpactOnStop, Halt> {
        let (push, distance, top_speed) = SHOVE;
        asking.rest_on(&HARD_SHOVE);
        let pushed = asking.work(&HandPushSpeed {
            mass: self.mass,
            push: Force::from_base(push),
            distance: Length::from_base(distance),
            resistance: Force::from_base(0.0),
            top_speed: Velocity::from_base(top_speed),
        })?;
        asking.work(&StopImpactForce {
            mass: self.mass,
            speed: pushed.speed,
            push: self.gravity(end),
            stiffness,
        })
    }
}

/// The hardest that any leaf of the gate hits a stop, driven or shoved.
pub(crate) fn hardest_on<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    stop: &'s Stop,
) -> Result<Force, Halt> {
    let stiffness = read!(asking, stop.stiffness);
    let mut hardest = Force::from_base(0.0);
    for leaf in &gate.leaf {
        let moving = moving(asking, site, gate, leaf);
        let (moving, stiffness) = (moving?, stiffness?);
        let driven = moving.at_full_speed(asking, stop.end, stiffness)?;
        let shoved = moving.after_a_shove(asking, stop.end, stiffness)?;
        for hit in [driven.force, shoved.force] {
            if hit > hardest {
                hardest = hit;
            }
        }
    }
    stiffness.map(|_| hardest)
}

/// A leaf of a gate, driven by its operator.
pub(crate) fn moving<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Moving, Halt> {
    let operator = operator_of_leaf(asking, site, (gate, leaf))?;
    let speed = cruise_of(asking, gate);
    let push = push(asking, gate, leaf, operator);
    let body = match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => sliding(asking, gate, leaf),
        _ if rises(gate) => going_up(asking, site, gate, leaf),
        _ => swinging(asking, leaf),
    };
    let rotating = asking.read_if_there(
        &operator.origin,
        "rotating_mass",
        operator.rotating_mass.as_ref(),
    );
    let body = body?;
    if rotating.is_none() {
        asking.rest_on(&DRIVE_SHARE);
    }
    Ok(Moving {
        mass: body.mass,
        rotating: rotating.unwrap_or(body.mass * ROTATING),
        speed: speed?,
        push: push?,
        gravity_closed: body.gravity_closed,
        gravity_open: body.gravity_open,
    })
}

/// Mass at the edge, and what gravity adds there.
struct Body {
    mass: Mass,
    gravity_closed: Force,
    gravity_open: Force,
}

/// A leaf that slides runs down its slope: toward the closed end where it climbs as it opens.
fn sliding<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Body, Halt> {
    let mass = mass(asking, leaf);
    let slope = read!(asking, gate.slope);
    let (mass, slope) = (mass?, slope?);
    let nothing = Force::from_base(0.0);
    let weight = SlideGateForce {
        mass,
        load_factor: Ratio::from_base(1.0),
        slope,
        wheel_radius: Length::from_base(1.0),
        lever_arm: Length::from_base(0.0),
        axle_radius: Length::from_base(0.0),
        bearing_friction: Ratio::from_base(0.0),
        rim_factor: Ratio::from_base(0.0),
        seal_force: nothing,
        guide_load: nothing,
        guide_friction: Ratio::from_base(0.0),
        debris_force: nothing,
        acceleration: quantity::Acceleration::from_base(0.0),
        rotating_share: Ratio::from_base(0.0),
    };
    let Ok(down) = weight.evaluate() else {
        return asking.refuse("the slope is steeper than a leaf on wheels is reckoned for");
    };
    asking.note(|print| {
        format!(
            "Its weight along the slope of the travel is {}, above zero toward the closed end.",
            print.q(down.slope_force)
        )
    });
    Ok(Body {
        mass,
        gravity_closed: down.slope_force,
        gravity_open: down.slope_force,
    })
}

/// A leaf that swings, spread about its center of gravity as an even one.
fn swinging<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Body, Halt> {
    let mass = mass(asking, leaf);
    let center = center_along(asking, leaf);
    let width = read!(asking, leaf.length);
    let (mass, center, width) = (mass?, center?, width?);
    let from_hinge = ((width - center).base() / width.base()).powi(2);
    Ok(Body {
        mass: mass * (from_hinge + 1.0 / 12.0),
        gravity_closed: Force::from_base(0.0),
        gravity_open: Force::from_base(0.0),
    })
}

/// A leaf that rises: what is unbalanced pushes it into the stop below, or into the one above.
fn going_up<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Body, Halt> {
    let closed = rising(asking, site, gate, leaf, RisingAt::free(0.0))?;
    let open = rising(asking, site, gate, leaf, RisingAt::free(1.0))?;
    match closed {
        Rising::Turning(_, torques) => {
            let reach = reach(asking, leaf)?;
            let edge = |rising: &Rising| Force::from_base(rising.unbalanced() / reach.base());
            Ok(Body {
                mass: Mass::from_base(torques.inertia.base() / reach.base().powi(2)),
                gravity_closed: edge(&closed),
                gravity_open: edge(&open),
            })
        }
        Rising::Lifting(..) => {
            let other = gate.balance.as_ref().and_then(|balance| {
                let hangs = balance.kind == BalanceKind::Counterweight;
                let mass = balance.mass.as_ref().filter(|_| hangs);
                asking.read_if_there(&balance.origin, "mass", mass)
            });
            Ok(Body {
                mass: mass(asking, leaf)? + other.unwrap_or(Mass::from_base(0.0)),
                gravity_closed: Force::from_base(closed.unbalanced()),
                gravity_open: Force::from_base(open.unbalanced()),
            })
        }
    }
}

/// Distance from the line about which a leaf turns to its free end.
fn reach<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    let length = read!(asking, leaf.length)?;
    let tail = asking.read_if_there(&leaf.origin, "tail", leaf.tail.as_ref());
    Ok(length - tail.unwrap_or(Length::from_base(0.0)))
}

/// Greatest push of the drive, at the edge of the leaf.
fn push<'s>(
    asking: &mut Asking<'s>,
    gate: &Gate,
    leaf: &'s Leaf,
    operator: &'s Operator,
) -> Result<Force, Halt> {
    use GateKind::{CantileverSlide, TrackSlide, VerticalLift};
    let along = matches!(gate.kind, TrackSlide | CantileverSlide | VerticalLift);
    let start = asking.read_if_there(
        &operator.origin,
        "starting_force",
        operator.starting_force.as_ref(),
    );
    if along {
        return match start {
            Some(force) => Ok(force),
            None => force_at(asking, operator, Velocity::from_base(0.0)),
        };
    }
    let reach = reach(asking, leaf);
    let torque = torque(asking, operator, start);
    Ok(Force::from_base(torque?.base() / reach?.base()))
}

/// Greatest torque of the drive: at the start, else without end; of a drive that pushes like a jack its force at the
/// longest lever arm that its front pin leaves it.
fn torque<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
    start: Option<Force>,
) -> Result<Torque, Halt> {
    let at_start = asking.read_if_there(
        &operator.origin,
        "starting_torque",
        operator.starting_torque.as_ref(),
    );
    if let Some(torque) = at_start {
        return Ok(torque);
    }
    match (start, &operator.mounting) {
        (Some(force), Some(mounting)) => {
            let along = read!(asking, mounting.front_along)?;
            let across = asking.read_if_there(
                &mounting.origin,
                "front_across",
                mounting.front_across.as_ref(),
            );
            let across = across.unwrap_or(Length::from_base(0.0));
            let arm = along.base().hypot(across.base());
            Ok(Torque::from_base(force.base() * arm))
        }
        _ => read!(asking, operator.rated_torque),
    }
}
