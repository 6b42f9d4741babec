//! The pull along a slide, on a track or on trolleys, from what the site says of its leaf, wheels, guides and weather.

use crate::asking::{Asking, pick, read};
use crate::check::leaf::{self, mass};
use crate::check::wind::load::{Wind, on_leaf};
use crate::outcome::Halt;
use formula::motion::{RollingLeverArm, RollingPair, SlideGateForce};
use formula::{Evidence, Source};
use quantity::{Acceleration, Force, Length, Quantity as _, Ratio, Word as _};
use site::{Gate, GateKind, Leaf, Site};

/// What works on the leaf beside its weight and its wheels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Conditions {
    /// Wind on the guides; none on a calm day.
    pub(crate) wind: Option<Wind>,
    /// Seals and debris are counted.
    pub(crate) hindered: bool,
    /// The leaf and the drive are being sped up.
    pub(crate) speeding_up: bool,
}

impl Conditions {
    /// A start in the operating wind, against seals and debris.
    pub(crate) const IN_THE_WIND: Self = Self {
        wind: Some(Wind::Operating),
        hindered: true,
        speeding_up: true,
    };

    /// Standing free on a calm day: wheels and bearings only.
    pub(crate) const FREE: Self = Self {
        wind: None,
        hindered: false,
        speeding_up: false,
    };
}

/// Turning parts of the drive as a share of the leaf's mass.
const ROTATING: f64 = 0.2;
/// Share of the wheel load lost at rims and flanges: that of plain bearings, the larger one printed.
const RIM: f64 = 0.005;

static RIM_FACTOR: Source = Source {
    work: "drive-sizing reference of a gear maker",
    clause: "rim and flange factor, plain bearings 0.005",
    evidence: Evidence::Seen,
    seen: "the maker's page; name and address withheld, they carry a company's name",
};

/// The pull on level ground, everything read but the slope.
pub(crate) fn on_the_level<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    conditions: Conditions,
) -> Result<SlideGateForce, Halt> {
    let mass = mass(asking, leaf);
    let load_factor = load_factor(asking, gate, leaf);
    let diameter = read!(asking, gate.wheels?.diameter);
    let axle = read!(asking, gate.wheels?.axle_diameter);
    let bearing_friction = read!(asking, gate.wheels?.bearing_friction);
    let lever_arm = lever_arm(asking, gate);
    let (seal_force, debris_force) = hindrance(asking, gate, conditions);
    let acceleration = if conditions.speeding_up {
        read!(asking, gate.motion?.acceleration)
    } else {
        Ok(Acceleration::from_base(0.0))
    };
    let guides = guides(asking, site, (gate, leaf), conditions);
    asking.rest_on(&RIM_FACTOR);
    Ok(SlideGateForce {
        mass: mass?,
        load_factor: load_factor?,
        slope: Ratio::from_base(0.0),
        wheel_radius: diameter? / 2.0,
        lever_arm: lever_arm?,
        axle_radius: axle? / 2.0,
        bearing_friction: bearing_friction?,
        rim_factor: Ratio::from_base(RIM),
        seal_force: seal_force?,
        guide_load: guides.0?,
        guide_friction: guides.1?,
        debris_force: debris_force?,
        acceleration: acceleration?,
        rotating_share: Ratio::from_base(ROTATING),
    })
}

/// Seals and debris, where they are counted.
fn hindrance<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    conditions: Conditions,
) -> (Result<Force, Halt>, Result<Force, Halt>) {
    if conditions.hindered {
        (
            read!(asking, gate.seal_force),
            read!(asking, gate.debris_force),
        )
    } else {
        (Ok(Force::from_base(0.0)), Ok(Force::from_base(0.0)))
    }
}

/// Load and friction of the guides, where there is wind.
fn guides<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    conditions: Conditions,
) -> (Result<Force, Halt>, Result<Ratio, Halt>) {
    match conditions.wind {
        Some(wind) => {
            let friction = read!(asking, gate.guide?.friction);
            (guide_load(asking, site, gate, leaf, wind), friction)
        }
        None => (Ok(Force::from_base(0.0)), Ok(Ratio::from_base(0.0))),
    }
}

/// The wheels of a track slide carry its weight; the trolleys of a cantilever carry more.
fn load_factor<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Ratio, Halt> {
    match gate.kind {
        GateKind::CantileverSlide => leaf::load_factor(asking, gate, leaf),
        _ => Ok(Ratio::from_base(1.0)),
    }
}

fn lever_arm<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    let pair = pick!(asking, gate.wheels?.rolling)?;
    let Some(pair) = RollingPair::from_word(pair.word()) else {
        return asking.refuse("no rolling friction is printed for these wheels on this track");
    };
    Ok(asking.work(&RollingLeverArm { pair })?.high)
}

/// Force square to the leaf that the guides carry in a wind.
fn guide_load<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    wind: Wind,
) -> Result<Force, Halt> {
    let guide_height = read!(asking, gate.guide?.height);
    let wind = on_leaf(asking, site, leaf, wind);
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    let (guide_height, wind) = (guide_height?, wind?);
    let middle = clearance? + height? / 2.0;
    if guide_height.base() <= 0.0 {
        return asking.refuse("the guide's height above the surface must be more than zero");
    }
    Ok(wind.force * (middle.base() / guide_height.base()).max(1.0))
}
