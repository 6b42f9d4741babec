//! The torque that turns a swing leaf, from what the site says of its leaf, hinges and weather.

use crate::asking::{Asking, read};
use crate::check::leaf::{center_from_hinge, mass};
use crate::check::wind::load::{Wind, on_leaf};
use crate::outcome::Halt;
use formula::motion::{HingeFrictionTorque, SwingGateTorque, SwingTorques, SwingWay};
use formula::{Evidence, Source};
use quantity::{
    Acceleration, Angle, Force, Length, Mass, MomentOfInertia, Quantity as _, Ratio, Torque,
};
use site::{Direction, Gate, Leaf, Site};

/// Where in its travel a leaf is asked about, and what works on it there.
#[derive(Debug, Clone, Copy)]
pub(crate) struct At {
    /// Angle from the closed position.
    pub(crate) angle: Angle,
    /// Wind square to the leaf, against the motion; none on a calm day.
    pub(crate) wind: Option<Wind>,
    /// Which way it turns.
    pub(crate) direction: Direction,
    /// The leaf and the drive are being sped up.
    pub(crate) speeding_up: bool,
    /// Seals or a catch are met.
    pub(crate) hindered: bool,
}

/// Turning parts of the drive as a share of the leaf's moment of inertia.
const ROTATING: f64 = 0.2;

static DRIVE_SHARE: Source = Source {
    work: "turning parts of the drive as a fifth of the leaf's inertia; an even leaf's spread about its center of gravity",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of drive sizing",
};

/// Torque about the hinge line of a swing leaf at one angle, term by term.
#[allow(dead_code, reason = "checks that ask of one angle use it")]
pub(crate) fn turning<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    at: At,
) -> Result<SwingTorques, Halt> {
    let torque = torque_at(asking, site, gate, leaf, at)?;
    asking.work(&torque)
}

/// The calculation of the torque at one angle, everything read; other angles and the other direction follow from it
/// by changing `angle` and `way`.
pub(crate) fn torque_at<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    at: At,
) -> Result<SwingGateTorque, Halt> {
    let lean = lean(asking, leaf);
    let travel_angle = read!(asking, gate.travel_angle);
    let seal_force = seals(asking, gate, at);
    let acceleration = if at.speeding_up {
        read!(asking, gate.motion?.acceleration)
    } else {
        Ok(Acceleration::from_base(0.0))
    };
    let body = body(asking, leaf);
    let wind = wind(asking, site, leaf, at);
    let hinge_friction = hinges(asking, leaf, &body, &wind);
    let (body, lean, wind) = (body?, lean?, wind?);
    asking.rest_on(&DRIVE_SHARE);
    Ok(SwingGateTorque {
        mass: body.mass,
        width: body.width,
        center: body.center,
        inertia: body.inertia(),
        rotating_share: Ratio::from_base(ROTATING),
        hinge_friction: hinge_friction?,
        lean_along: lean.0,
        lean_across: lean.1,
        rise: rise(asking, leaf),
        travel_angle: travel_angle?,
        angle: at.angle,
        way: way(at.direction),
        wind_force: wind.0,
        wind_arm: body.width / 2.0 + wind.1,
        seal_force: seal_force?,
        acceleration: acceleration?,
    })
}

/// The way of turning in a direction of motion.
pub(crate) fn way(direction: Direction) -> SwingWay {
    match direction {
        Direction::Opening => SwingWay::Opening,
        Direction::Closing => SwingWay::Closing,
    }
}

/// A leaf's weight and how it lies about the hinge line.
#[derive(Debug, Clone, Copy)]
struct Body {
    mass: Mass,
    width: Length,
    center: Length,
}

impl Body {
    /// Moment of inertia about the hinge line, spread about the center of gravity as in an even leaf.
    fn inertia(&self) -> MomentOfInertia {
        let spread = self.width.base().powi(2) / 12.0 + self.center.base().powi(2);
        MomentOfInertia::from_base(self.mass.base() * spread)
    }
}

fn body<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Body, Halt> {
    let mass = mass(asking, leaf);
    let width = read!(asking, leaf.length);
    let center = center_from_hinge(asking, leaf);
    Ok(Body {
        mass: mass?,
        width: width?,
        center: center?,
    })
}

fn lean<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<(Ratio, Ratio), Halt> {
    let along = read!(asking, leaf.hinges?.lean_along);
    let across = read!(asking, leaf.hinges?.lean_across);
    Ok((along?, across?))
}

/// How far rising hinges lift the leaf; nothing where none are written down.
fn rise<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Length {
    leaf.hinges
        .as_ref()
        .and_then(|hinges| asking.read_if_there(&hinges.origin, "rise", hinges.rise.as_ref()))
        .unwrap_or(Length::from_base(0.0))
}

fn seals<'s>(asking: &mut Asking<'s>, gate: &'s Gate, at: At) -> Result<Force, Halt> {
    if at.hindered {
        read!(asking, gate.seal_force)
    } else {
        Ok(Force::from_base(0.0))
    }
}

/// Force of the wind square to the leaf, and how far it lies from the middle toward the free end: it may come from
/// anywhere, so it is the same at every angle.
fn wind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    at: At,
) -> Result<(Force, Length), Halt> {
    let Some(wind) = at.wind else {
        return Ok((Force::from_base(0.0), Length::from_base(0.0)));
    };
    let wind = on_leaf(asking, site, leaf, wind)?;
    Ok((wind.force, wind.off_middle))
}

fn hinges<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    body: &Result<Body, Halt>,
    wind: &Result<(Force, Length), Halt>,
) -> Result<Torque, Halt> {
    let spacing = read!(asking, leaf.hinges?.spacing);
    let pin_diameter = read!(asking, leaf.hinges?.pin_diameter);
    let friction = read!(asking, leaf.hinges?.friction);
    let (body, wind) = ((*body)?, (*wind)?);
    let gives = asking.work(&HingeFrictionTorque {
        mass: body.mass,
        center: body.center,
        spacing: spacing?,
        pin_diameter: pin_diameter?,
        friction: friction?,
        side_load: wind.0,
    })?;
    Ok(gives.torque)
}
