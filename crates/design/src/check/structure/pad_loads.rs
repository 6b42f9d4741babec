//! What pushes on the things that stand on a pad: the drive, the wind on boxes and on an arm that stands up, bumps.
//!
//! Loads of daily use. Each comes by itself: nobody bumps a pedestal in the design wind while the gate moves.

use super::at_foot::{AtFoot, Sideways, at_foot};
use super::loads::{Factors, Level};
use crate::asking::{Asking, Wants, read};
use crate::check::drive::leaf_of;
use crate::check::force::operator_curve::force_at;
use crate::check::wind::bar::{Bar, on_bar};
use crate::check::wind::load::{Wind, on_leaf};
use crate::check::wind::upright_arm::on_upright_arm;
use crate::check::wind::velocity::air_at;
use crate::outcome::Halt;
use quantity::{Force, Length, Quantity as _, Torque, Velocity};
use site::{DriveKind, Enclosure, Foundation, Gate, GateKind, Operator, Post, PostRole, Site};

/// To which sides a load may act.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Sides {
    /// Along the gate line, both ways.
    Along,
    /// Across it, both ways.
    Across,
    /// Every way.
    Any,
}

/// A load on what stands on a pad.
#[derive(Debug, Clone)]
pub(crate) struct PadLoad {
    /// What it is: `pull of drive`.
    pub(super) what: String,
    pub(super) force: Force,
    /// Height of the force above the top of the pad.
    pub(super) height: Length,
    /// Moment that comes with it.
    pub(super) moment: Torque,
    pub(super) sides: Sides,
}

/// All loads on a pad, those that have to be found out noted.
pub(super) fn loads<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    pad: &'s Foundation,
) -> Result<Vec<PadLoad>, Halt> {
    let mut found = Ok(Vec::new());
    let mut add = |more: Result<Vec<PadLoad>, Halt>| {
        let all = std::mem::replace(&mut found, Err(Halt));
        found = all.and_then(|mut all| {
            all.extend(more?);
            Ok(all)
        });
    };
    for operator in operators(site, pad) {
        add(driven(asking, site, (pad, operator)));
    }
    for enclosure in boxes(site, pad) {
        add(blown(asking, site, (pad, enclosure)));
    }
    for (gate, mast) in masts(site, pad) {
        add(swayed(asking, site, (gate, mast)));
    }
    for push in &pad.push {
        let force = read!(asking, push.force);
        let height = read!(asking, push.height);
        let load = force.and_then(|force| {
            Ok(vec![PadLoad {
                what: push.what.to_string(),
                force,
                height: height?,
                moment: Torque::from_base(0.0),
                sides: Sides::Any,
            }])
        });
        add(load);
    }
    let bumped = site.device.iter().any(|device| carries(pad, &device.id));
    let idle = found.as_ref().is_ok_and(Vec::is_empty);
    if pad.push.is_empty() && (bumped || idle) {
        return asking.lack(
            &pad.origin,
            "push",
            Wants::Written(
                "[{ what = \"car backs into the pedestal\", force = \"250 lbf\", height = \"24 in\" }]",
            ),
        );
    }
    found
}

/// A set of anchors in the pad carries the thing of that name.
pub(super) fn carries(pad: &Foundation, name: &site::Id) -> bool {
    pad.anchor
        .iter()
        .any(|anchor| anchor.carries.as_ref() == Some(name))
}

/// The operators that stand on the pad.
pub(super) fn operators<'s>(
    site: &'s Site,
    pad: &'s Foundation,
) -> impl Iterator<Item = &'s Operator> {
    site.operator.iter().filter(|operator| {
        operator.foundation.as_ref() == Some(&pad.id) || carries(pad, &operator.id)
    })
}

fn boxes<'s>(site: &'s Site, pad: &'s Foundation) -> impl Iterator<Item = &'s Enclosure> {
    site.enclosure.iter().filter(|one| carries(pad, &one.id))
}

/// The masts and poles for devices that stand on the pad.
pub(super) fn masts<'s>(
    site: &'s Site,
    pad: &'s Foundation,
) -> impl Iterator<Item = (&'s Gate, &'s Post)> {
    let posts = |gate: &'s Gate| gate.post.iter().map(move |post| (gate, post));
    let stands = |(_, post): &(&Gate, &Post)| {
        post.role == PostRole::Device
            && (post.foundation.as_ref() == Some(&pad.id) || carries(pad, &post.id))
    };
    site.gate.iter().flat_map(posts).filter(stands)
}

/// What reaches the foot of a mast, each case along and across.
fn swayed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, mast): (&'s Gate, &'s Post),
) -> Result<Vec<PadLoad>, Halt> {
    let cases = at_foot(asking, site, gate, mast, Level::Service)?;
    let load = |case: &AtFoot, side: Sideways, sides: Sides| PadLoad {
        what: format!("{}, with {}", mast.id, case.case),
        force: side.force,
        height: Length::from_base(0.0),
        moment: side.moment,
        sides,
    };
    Ok(cases
        .iter()
        .flat_map(|case| {
            [
                load(case, case.along, Sides::Along),
                load(case, case.across, Sides::Across),
            ]
        })
        .collect())
}

/// Height of a thing above the top of the pad.
fn above<'s>(
    asking: &mut Asking<'s>,
    pad: &'s Foundation,
    at: Result<[Length; 3], Halt>,
) -> Result<Length, Halt> {
    let top = asking.position(&pad.origin, "at", pad.at.as_ref());
    let ([_, _, up], [_, _, top]) = (at?, top?);
    Ok(Length::from_base((up - top).base().max(0.0)))
}

fn driven<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (pad, operator): (&'s Foundation, &'s Operator),
) -> Result<Vec<PadLoad>, Halt> {
    let at = asking.position(&operator.origin, "at", operator.at.as_ref());
    let height = above(asking, pad, at);
    let drive = asking.pick(&operator.origin, "drive", operator.drive);
    let Some(gate) = site.gate.iter().find(|gate| gate.id == operator.gate) else {
        return Err(Halt);
    };
    let drive = drive?;
    let none = Torque::from_base(0.0);
    let load = |what: &str, force: Force, height: Length, sides: Sides| PadLoad {
        what: format!("{what} of {}", operator.id),
        force,
        height,
        moment: none,
        sides,
    };
    match drive {
        DriveKind::Rack | DriveKind::Chain => {
            let pull = greatest_force(asking, operator);
            let (pull, height) = (pull?, height?);
            Ok(vec![load("the pull", pull, height, Sides::Along)])
        }
        DriveKind::Linear => {
            let push = greatest_force(asking, operator);
            let (push, height) = (push?, height?);
            Ok(vec![load("the thrust", push, height, Sides::Any)])
        }
        DriveKind::Articulated => {
            let torque = greatest_torque(asking, operator);
            let crank = read!(asking, operator.mounting?.crank);
            let (torque, crank, height) = (torque?, crank?, height?);
            let thrust = Force::from_base(torque.base() / crank.base());
            Ok(vec![load("the thrust", thrust, height, Sides::Any)])
        }
        DriveKind::Pivot => pivoted(asking, site, (gate, operator), height),
        DriveKind::Underground | DriveKind::Hoist => Ok(Vec::new()),
    }
}

/// The drive of an arm: its torque along the gate line, and the wind on the arm that stands up.
fn pivoted<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, operator): (&'s Gate, &'s Operator),
    height: Result<Length, Halt>,
) -> Result<Vec<PadLoad>, Halt> {
    let torque = greatest_torque(asking, operator);
    let leaf = leaf_of(asking, gate, operator)?;
    let length = read!(asking, leaf.length);
    let wind = on_leaf(asking, site, leaf, Wind::Design);
    let narrow = if gate.kind == GateKind::BarrierArm {
        on_upright_arm(asking, site, leaf, Wind::Design)
    } else {
        Ok(Force::from_base(0.0))
    };
    let (torque, length, wind, narrow, height) = (torque?, length?, wind?, narrow?, height?);
    let factors = Factors::of(asking, site.site.code_basis, Level::Service);
    let middle = height + length / 2.0;
    let none = Torque::from_base(0.0);
    let blown = |force: Force, sides: Sides| PadLoad {
        what: format!("the design wind on {} standing up", leaf.id),
        force: force * factors.wind,
        height: middle,
        moment: none,
        sides,
    };
    Ok(vec![
        PadLoad {
            what: format!("the torque of {}", operator.id),
            force: Force::from_base(0.0),
            height,
            moment: torque,
            sides: Sides::Along,
        },
        blown(wind.force, Sides::Across),
        blown(narrow, Sides::Along),
    ])
}

/// Force of a drive at its hardest: at the start, else at stall.
fn greatest_force<'s>(asking: &mut Asking<'s>, operator: &'s Operator) -> Result<Force, Halt> {
    let start = asking.read_if_there(
        &operator.origin,
        "starting_force",
        operator.starting_force.as_ref(),
    );
    match start {
        Some(force) => Ok(force),
        None => force_at(asking, operator, Velocity::from_base(0.0)),
    }
}

/// Torque of a drive at its hardest: at the start, else the one given without end.
fn greatest_torque<'s>(asking: &mut Asking<'s>, operator: &'s Operator) -> Result<Torque, Halt> {
    let start = asking.read_if_there(
        &operator.origin,
        "starting_torque",
        operator.starting_torque.as_ref(),
    );
    match start {
        Some(torque) => Ok(torque),
        None => read!(asking, operator.rated_torque),
    }
}

/// The design wind on a box, on its widest face.
fn blown<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (pad, enclosure): (&'s Foundation, &'s Enclosure),
) -> Result<Vec<PadLoad>, Halt> {
    let at = asking.position(&enclosure.origin, "at", enclosure.at.as_ref());
    let middle = at.map(|[_, _, up]| up);
    let height = above(asking, pad, at);
    let width = read!(asking, enclosure.width);
    let tall = read!(asking, enclosure.height);
    let deep = read!(asking, enclosure.depth);
    let top = middle.and_then(|middle| tall.map(|tall| middle + tall / 2.0));
    let air = air_at(asking, site, Wind::Design, top);
    let (height, width, tall, deep, air) = (height?, width?, tall?, deep?, air?);
    let (wide, narrow) = if width > deep {
        (width, deep)
    } else {
        (deep, width)
    };
    let force = on_bar(
        asking,
        site,
        air.pressure,
        Bar {
            width: wide,
            depth: narrow,
            length: tall,
        },
    )?;
    let factors = Factors::of(asking, site.site.code_basis, Level::Service);
    Ok(vec![PadLoad {
        what: format!("the design wind on {}", enclosure.id),
        force: force * factors.wind,
        height,
        moment: Torque::from_base(0.0),
        sides: Sides::Any,
    }])
}

/// A load that acts one way.
pub(super) struct Way<'l> {
    pub(super) load: &'l PadLoad,
    /// Size of the pad along the force.
    pub(super) length: Length,
    /// Size across it.
    pub(super) width: Length,
    /// Height of the force above the bottom.
    pub(super) height: Length,
}

impl Way<'_> {
    fn overturning(&self) -> f64 {
        self.load.force.base() * self.height.base() + self.load.moment.base()
    }

    /// Moment for each unit of the length that resists it.
    pub(super) fn leverage(&self) -> f64 {
        self.overturning() / self.length.base().max(1e-9)
    }
}

/// The ways in which a load may act on a pad of this length, width and depth.
pub(super) fn ways(load: &PadLoad, [pad_length, pad_width, depth]: [Length; 3]) -> Vec<Way<'_>> {
    let way = |length: Length, width: Length| Way {
        load,
        length,
        width,
        height: load.height + depth,
    };
    let along = way(pad_length, pad_width);
    let across = way(pad_width, pad_length);
    match load.sides {
        Sides::Along => vec![along],
        Sides::Across => vec![across],
        Sides::Any => vec![along, across],
    }
}
