//! The drive of a swing leaf: which ones a site has, how they are mounted, and what torque they bring to the hinge line.

use super::operator_curve::force_at;
use super::shaft_curve::torque_at;
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::Formula;
use formula::motion::{ArticulatedArmGeometry, ElbowSide, LinearActuatorGeometry};
use quantity::{Angle, AngularVelocity, Force, Length, Quantity as _, Torque, Velocity};
use site::{DriveKind, Gate, GateKind, Operator, Site};

/// The gate's leaves turn about upright lines.
pub(crate) fn swings(gate: &Gate) -> bool {
    matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing)
}

/// The operators of swing gates that are of a kind, or whose kind is not written down.
pub(super) fn of_kind(site: &Site, kind: DriveKind) -> impl Iterator<Item = (&Gate, &Operator)> {
    let swinging = site.gate.iter().filter(|gate| swings(gate));
    swinging.flat_map(move |gate| {
        let of_it = site.operators_of(gate);
        of_it
            .filter(move |operator| operator.drive.is_none_or(|drive| drive == kind))
            .map(move |operator| (gate, operator))
    })
}

/// Where the pins are: rear behind and across, front along and across.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pins {
    pub(super) rear_behind: Length,
    pub(super) rear_across: Length,
    pub(super) front_along: Length,
    pub(super) front_across: Length,
}

pub(super) fn pins<'s>(asking: &mut Asking<'s>, operator: &'s Operator) -> Result<Pins, Halt> {
    let rear_behind = read!(asking, operator.mounting?.rear_behind);
    let rear_across = read!(asking, operator.mounting?.rear_across);
    let front_along = read!(asking, operator.mounting?.front_along);
    let front_across = read!(asking, operator.mounting?.front_across);
    Ok(Pins {
        rear_behind: rear_behind?,
        rear_across: rear_across?,
        front_along: front_along?,
        front_across: front_across?,
    })
}

/// First and second bar of a folding arm.
pub(super) fn bars<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
) -> Result<(Length, Length), Halt> {
    let crank = read!(asking, operator.mounting?.crank);
    let link = read!(asking, operator.mounting?.link);
    Ok((crank?, link?))
}

/// How a drive takes hold of its leaf.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Hold {
    /// A ram between two pins.
    Ram(LinearActuatorGeometry),
    /// A folding arm.
    Arm(ArticulatedArmGeometry),
    /// A shaft on the hinge line.
    Shaft,
}

/// How the operator takes hold of a leaf of this width.
pub(crate) fn hold<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
    width: Length,
) -> Result<Hold, Halt> {
    let drive = asking.pick(&operator.origin, "drive", operator.drive)?;
    let (closed, nothing) = (Angle::from_base(0.0), Torque::from_base(0.0));
    match drive {
        DriveKind::Linear => {
            let pins = pins(asking, operator)?;
            Ok(Hold::Ram(LinearActuatorGeometry {
                rear_behind: pins.rear_behind,
                rear_across: pins.rear_across,
                front_along: pins.front_along,
                front_across: pins.front_across,
                angle: closed,
                width,
                rod_speed: Velocity::from_base(0.0),
                torque: nothing,
            }))
        }
        DriveKind::Articulated => {
            let (pins, bars) = (pins(asking, operator), bars(asking, operator));
            let (pins, bars) = (pins?, bars?);
            Ok(Hold::Arm(ArticulatedArmGeometry {
                rear_behind: pins.rear_behind,
                rear_across: pins.rear_across,
                front_along: pins.front_along,
                front_across: pins.front_across,
                crank: bars.0,
                link: bars.1,
                elbow: ElbowSide::AwayFromHinge,
                angle: closed,
                torque: nothing,
            }))
        }
        DriveKind::Underground => Ok(Hold::Shaft),
        _ => asking.refuse(
            "how this kind of drive takes hold of a swing leaf is not known here; a linear, an articulated or an underground drive is",
        ),
    }
}

/// Evaluates a calculation that does not stand in the working; where it refuses, the refusal is noted.
fn quietly<F: Formula>(asking: &mut Asking<'_>, formula: &F) -> Result<F::Gives, Halt> {
    match formula.evaluate() {
        Ok(gives) => Ok(gives),
        Err(_) => asking.work(formula),
    }
}

impl Hold {
    /// Torque about the hinge line at an angle, the leaf turning at a speed.
    pub(crate) fn torque<'s>(
        &self,
        asking: &mut Asking<'s>,
        operator: &'s Operator,
        (angle, speed): (Angle, AngularVelocity),
    ) -> Result<Torque, Halt> {
        match self {
            Self::Ram(ram) => {
                let arm = quietly(asking, &LinearActuatorGeometry { angle, ..*ram })?.lever_arm;
                let rod_speed = Velocity::from_base(arm.base() * speed.base());
                let push = force_at(asking, operator, rod_speed)?;
                Ok(turned(push, arm))
            }
            Self::Arm(arm) => {
                let ratio =
                    quietly(asking, &ArticulatedArmGeometry { angle, ..*arm })?.torque_ratio;
                let torque = torque_at(asking, operator, speed * ratio.base())?;
                Ok(torque * ratio.base())
            }
            Self::Shaft => torque_at(asking, operator, speed),
        }
    }

    /// Torque about the hinge line that the drive may give without end at an angle, where its data sheet says so.
    pub(crate) fn lasting_torque<'s>(
        &self,
        asking: &mut Asking<'s>,
        operator: &'s Operator,
        angle: Angle,
    ) -> Result<Option<Torque>, Halt> {
        let origin = &operator.origin;
        let torque = |asking: &mut Asking<'s>| {
            asking.read_if_there(origin, "rated_torque", operator.rated_torque.as_ref())
        };
        match self {
            Self::Ram(ram) => {
                let push =
                    asking.read_if_there(origin, "rated_force", operator.rated_force.as_ref());
                let arm = quietly(asking, &LinearActuatorGeometry { angle, ..*ram })?.lever_arm;
                Ok(push.map(|push| turned(push, arm)))
            }
            Self::Arm(arm) => {
                let ratio =
                    quietly(asking, &ArticulatedArmGeometry { angle, ..*arm })?.torque_ratio;
                Ok(torque(asking).map(|torque| torque * ratio.base()))
            }
            Self::Shaft => Ok(torque(asking)),
        }
    }

    /// Puts the geometry at an angle into the working, with what the leaf asks for there.
    pub(super) fn show(
        &self,
        asking: &mut Asking<'_>,
        (angle, torque): (Angle, Torque),
    ) -> Result<(), Halt> {
        match self {
            Self::Ram(ram) => asking
                .work(&LinearActuatorGeometry {
                    angle,
                    torque,
                    ..*ram
                })
                .map(|_| ()),
            Self::Arm(arm) => asking
                .work(&ArticulatedArmGeometry {
                    angle,
                    torque,
                    ..*arm
                })
                .map(|_| ()),
            Self::Shaft => Ok(()),
        }
    }
}

fn turned(push: Force, arm: Length) -> Torque {
    Torque::from_base(push.base() * arm.base())
}
