//! A gate of a site lowered to the world of the walk test: every value at the bad end of its tolerance.

use super::assumption::Assumption;
use super::controller::{controller, drive};
use super::devices::{Devices, Sensing, devices};
use super::limits::{limits, squeezed, taken_for_granted};
use super::motion::ways;
use super::people::{bodies, leaners};
use super::reach::catches;
use super::start::start;
use super::strip::{Places, on_sliding};
use super::{rising, swing};
use crate::asking::{Asking, End};
use crate::outcome::Halt;
use formula::protection::{BodyStiffness, StruckPart};
use quantity::{ForcePerLength, Length, Quantity as _, Ratio};
use sim::walk::{AnyWorld, Body, Controller, ForceSensing, Leaf as Prism, Limits, World};
use site::{Gate, Leaf, Site};

/// Greatest slant of a path: 45°.
const SLANT: f64 = 1.0;
/// How a leaf is written.
const LEAF: &str = "[{ id = \"leaf\", length = \"22 ft\" }]";

/// A gate as a world that can be walked through.
#[derive(Debug)]
pub(crate) struct Lowered {
    pub(crate) world: AnyWorld,
    /// What senses people.
    pub(crate) sensing: Vec<Sensing>,
    /// What the site does not give.
    pub(crate) defaults: Vec<Assumption>,
}

/// How far the touches of a leaf are judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Judged {
    /// The leaf slides, and meets a body with its edge alone.
    Fully,
    /// A leaf that turns or rises, with what moves with it: no touch is harder than that, many are softer.
    ByWeight,
    /// The same, taken as rigid: what moves with it is not on the site.
    AsRigid,
}

impl Lowered {
    /// How far the touches are judged.
    pub(crate) fn judged(&self) -> Judged {
        let known = match &self.world {
            AnyWorld::Sliding(_) => return Judged::Fully,
            AnyWorld::Swinging(world) => world.hefts.len() == world.leaves.len(),
            AnyWorld::Rising(world) => world.heft.is_some(),
        };
        if known {
            Judged::ByWeight
        } else {
            Judged::AsRigid
        }
    }
}

/// What every kind of gate has.
pub(super) struct Common {
    pub(super) devices: Devices,
    pub(super) controller: Controller,
    pub(super) limits: Limits,
    pub(super) bodies: Vec<Body>,
    pub(super) bare: ForcePerLength,
    pub(super) drive: Option<ForceSensing>,
    pub(super) slant: Ratio,
}

/// Lowers a gate.
pub(crate) fn lower<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Lowered, Halt> {
    use site::GateKind::{
        BarrierArm, CantileverSlide, DoubleSwing, SingleSwing, TrackSlide, VerticalLift,
        VerticalPivot,
    };
    let mut defaults = Vec::new();
    let (world, sensing) = match gate.kind {
        TrackSlide | CantileverSlide => sliding(asking, site, gate, &mut defaults),
        SingleSwing | DoubleSwing => swing::lower(asking, site, gate, &mut defaults),
        BarrierArm | VerticalPivot | VerticalLift => {
            rising::lower(asking, site, gate, &mut defaults)
        }
    }?;
    Ok(Lowered {
        world,
        sensing,
        defaults,
    })
}

fn sliding<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    defaults: &mut Vec<Assumption>,
) -> Result<(AnyWorld, Vec<Sensing>), Halt> {
    let leaf = first_leaf(asking, gate)?;
    let prism = prism(asking, leaf);
    let ways = ways(asking, gate, leaf);
    let places: &Places<'_> = &|device, ends| on_sliding(leaf, device, ends);
    let common = common(asking, site, gate, places, defaults);
    let (ways, common) = (ways?, common?);
    let before: Vec<_> = ["closing", "opening"]
        .into_iter()
        .zip(ways.before)
        .collect();
    let limits = settled(asking, &common, ways.overlap, &before, defaults);
    let mut bodies = common.bodies;
    bodies.extend(leaners(asking, defaults));
    let catches = catches(asking, site, gate, leaf, &ways.passes, defaults);
    let world = World {
        leaf: prism?,
        passes: ways.passes,
        beams: common.devices.beams,
        scanners: common.devices.scanners,
        edges: common
            .devices
            .edges
            .into_iter()
            .map(|one| one.edge)
            .collect(),
        drive: common.drive,
        bare_stiffness: common.bare,
        controller: common.controller,
        limits,
        bodies,
        catches,
        greatest_slant: common.slant,
    };
    Ok((AnyWorld::Sliding(world), common.devices.sensing))
}

/// The first leaf.
pub(super) fn first_leaf<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<&'s Leaf, Halt> {
    asking.need(&gate.origin, "leaf", gate.leaf.first(), LEAF)
}

/// Reads what every kind of gate has.
pub(super) fn common<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    places: &Places<'_>,
    defaults: &mut Vec<Assumption>,
) -> Result<Common, Halt> {
    let controller = controller(asking, site, gate, defaults);
    let devices = devices(asking, site, gate, places);
    let bodies = bodies(asking, site, gate, defaults);
    let limits = limits(asking, site, gate, defaults);
    let devices = devices?;
    start(asking, site, gate, defaults);
    let skull = StruckPart::Skull;
    Ok(Common {
        devices,
        controller: controller?,
        limits: limits?,
        bodies: bodies?,
        bare: asking.work(&BodyStiffness { part: skull })?.stiffness,
        drive: drive(asking, site, gate),
        slant: Ratio::from_base(SLANT),
    })
}

/// The limits with how far a body may be squeezed; notes what is taken for granted.
pub(super) fn settled(
    asking: &Asking<'_>,
    common: &Common,
    overlap: Length,
    before: &[(&str, String)],
    defaults: &mut Vec<Assumption>,
) -> Limits {
    let edges: Vec<_> = common.devices.edges.iter().map(|one| &one.edge).collect();
    let limits = squeezed(asking, common.limits, overlap, &edges, defaults);
    taken_for_granted(asking, before, common.bare, defaults);
    limits
}

/// The section of a leaf.
pub(super) fn prism<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Prism, Halt> {
    let of = |key| (&leaf.origin, key);
    let thickness = asking.read_at(of("thickness"), leaf.thickness.as_ref(), End::High);
    let bottom = asking.read_at(
        of("ground_clearance"),
        leaf.ground_clearance.as_ref(),
        End::Low,
    );
    let height = asking.read_at(of("height"), leaf.height.as_ref(), End::High);
    let (bottom, height) = (bottom?, height?);
    Ok(Prism {
        thickness: thickness?,
        bottom,
        top: bottom + height,
    })
}
