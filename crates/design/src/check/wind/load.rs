//! What a wind presses on a leaf, by the code of the site.

use super::velocity::{Air, air_at};
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::wind::{
    Asce7OpenSignForce, Asce7WallCaseC, Asce7WallForce, En1991FreeStandingWall, En1991LatticeForce,
    En1991WallPressure, MemberShape,
};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Velocity};
use site::{CodeBasis, Leaf, Site};

/// Which wind is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Wind {
    /// The wind in which the gate must stand.
    Design,
    /// The wind up to which it must still move; taken to blow square to the leaf.
    Operating,
    /// The wind that comes with the ice.
    WithIce,
    /// The wind of every windy day.
    Everyday,
}

/// What the wind presses on a leaf.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LeafWind {
    /// Speed of the wind.
    pub(crate) speed: Velocity,
    /// Velocity pressure at the top of the leaf, gusts and the code's directionality included.
    pub(crate) velocity_pressure: Pressure,
    /// Largest pressure on the leaf's gross area.
    pub(crate) pressure: Pressure,
    /// Force on the whole leaf.
    pub(crate) force: Force,
    /// How far the force may lie from the middle of the leaf, toward an end.
    pub(crate) off_middle: Length,
}

/// The leaf as the wind meets it.
#[derive(Debug, Clone, Copy)]
struct Face {
    width: Length,
    height: Length,
    top: Length,
    solidity: Ratio,
}

impl Face {
    fn area(&self) -> Area {
        self.width * self.height
    }
}

/// Least solid share that the figures for solid walls of ASCE 7 take.
const SOLID: f64 = 0.7;
/// Least solid share that the figures for walls of EN 1991-1-4 take.
const WALL: f64 = 0.8;
/// Width over height from which wind from an angle counts in ASCE 7.
const LONG: f64 = 2.0;
/// Gust-effect factor of a rigid face in ASCE 7.
const RIGID: f64 = 0.85;

/// What the wind presses on a leaf.
pub(crate) fn on_leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    wind: Wind,
) -> Result<LeafWind, Halt> {
    let solidity = read!(asking, leaf.solidity);
    on_face(asking, site, leaf, (wind, solidity))
}

/// What the wind presses on a leaf that has been boarded over.
pub(crate) fn on_clad_leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    wind: Wind,
) -> Result<LeafWind, Halt> {
    let solidity = read!(asking, leaf.solidity).map(|_| Ratio::from_base(1.0));
    on_face(asking, site, leaf, (wind, solidity))
}

/// What the wind presses on a leaf of another solid share than it was built with.
pub(crate) fn on_face<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    (wind, solidity): (Wind, Result<Ratio, Halt>),
) -> Result<LeafWind, Halt> {
    let face = face(asking, leaf, solidity);
    let air = air_at(asking, site, wind, face.map(|face| face.top));
    let (face, air) = (face?, air?);
    match site.site.code_basis {
        CodeBasis::Us => in_the_us(asking, face, air),
        CodeBasis::Eu => in_the_eu(asking, face, air),
    }
}

fn face<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    solidity: Result<Ratio, Halt>,
) -> Result<Face, Halt> {
    let width = read!(asking, leaf.length);
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    let height = height?;
    Ok(Face {
        width: width?,
        height,
        top: height + clearance?,
        solidity: solidity?,
    })
}

fn in_the_us(asking: &mut Asking<'_>, face: Face, air: Air) -> Result<LeafWind, Halt> {
    let (pressure, force) = if face.solidity.base() < SOLID {
        open_frame(asking, face, air.pressure)?
    } else {
        solid_face(asking, face, air.pressure)?
    };
    Ok(LeafWind {
        speed: air.speed,
        velocity_pressure: air.pressure,
        pressure,
        force,
        // Case B of figure 29.3-1: a fifth of the width toward the windward end.
        off_middle: face.width * 0.2,
    })
}

/// A leaf of pickets or mesh. Flat members are taken: round ones catch less.
fn open_frame(
    asking: &mut Asking<'_>,
    face: Face,
    velocity_pressure: Pressure,
) -> Result<(Pressure, Force), Halt> {
    let gives = asking.work(&Asce7OpenSignForce {
        velocity_pressure,
        gust_factor: Ratio::from_base(RIGID),
        solid_area: face.area() * face.solidity,
        solidity: face.solidity,
        member_shape: MemberShape::Flat,
        member_width: Length::from_base(0.05),
    })?;
    Ok((gives.gross_pressure, gives.force))
}

fn solid_face(
    asking: &mut Asking<'_>,
    face: Face,
    velocity_pressure: Pressure,
) -> Result<(Pressure, Force), Halt> {
    let gust_factor = Ratio::from_base(RIGID);
    let square = asking.work(&Asce7WallForce {
        velocity_pressure,
        gust_factor,
        width: face.width,
        face_height: face.height,
        top_height: face.top,
        area: face.area(),
        solidity: face.solidity,
    })?;
    if face.width.base() < LONG * face.height.base() {
        return Ok((square.pressure, square.force));
    }
    let oblique = asking.work(&Asce7WallCaseC {
        velocity_pressure,
        gust_factor,
        width: face.width,
        face_height: face.height,
        top_height: face.top,
        solidity: face.solidity,
    })?;
    Ok((
        larger(square.pressure, oblique.edge_pressure),
        larger(square.force, oblique.force),
    ))
}

fn larger<Q: quantity::Quantity>(one: Q, other: Q) -> Q {
    if one > other { one } else { other }
}

fn in_the_eu(asking: &mut Asking<'_>, face: Face, air: Air) -> Result<LeafWind, Halt> {
    let (pressure, force, off_middle) = if face.solidity.base() < WALL {
        // Even bars have no windward zone; a fifth of the width stays on the safe side.
        let (pressure, force) = lattice(asking, face, air.pressure)?;
        (pressure, force, face.width * 0.2)
    } else {
        let wall = asking.work(&En1991FreeStandingWall {
            peak_pressure: air.pressure,
            length: face.width,
            height: face.height,
            solidity: face.solidity,
        })?;
        (wall.pressure_a, wall.force, off_middle(face, &wall))
    };
    Ok(LeafWind {
        speed: air.speed,
        velocity_pressure: air.pressure,
        pressure,
        force,
        off_middle,
    })
}

/// A leaf of pickets or mesh in Europe, its ends not counted.
fn lattice(
    asking: &mut Asking<'_>,
    face: Face,
    peak_pressure: Pressure,
) -> Result<(Pressure, Force), Halt> {
    let gives = asking.work(&En1991LatticeForce {
        peak_pressure,
        solid_area: face.area() * face.solidity,
        gross_area: face.area(),
        end_effect: Ratio::from_base(1.0),
    })?;
    Ok((gives.gross_pressure, gives.force))
}

/// How far the force of the zones of EN 1991-1-4 lies from the middle, toward the windward end.
fn off_middle(face: Face, wall: &En1991WallPressure) -> Length {
    let zones = [
        (wall.pressure_a, 0.3),
        (wall.pressure_b, 2.0),
        (wall.pressure_c, 4.0),
        (wall.pressure_d, f64::INFINITY),
    ];
    let (height, width) = (face.height.base(), face.width.base());
    let (mut from, mut force, mut moment) = (0.0, 0.0, 0.0);
    for (pressure, end) in zones {
        let to = (end * height).min(width).max(from);
        let push = pressure.base() * (to - from);
        force += push;
        moment += push * (width / 2.0 - f64::midpoint(from, to));
        from = to;
    }
    Length::from_base(if force > 0.0 { moment / force } else { 0.0 })
}
