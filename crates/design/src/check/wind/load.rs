//! What a wind presses on a leaf, by the code of the site.

use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::wind::{
    Asce7OpenSignForce, Asce7WallCaseC, Asce7WallForce, Asce716VelocityPressure,
    Asce722VelocityPressure, En1991FreeStandingWall, En1991LatticeForce,
    En1991PeakVelocityPressure, En1991WallPressure, Exposure, MemberShape, Terrain,
};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Velocity, Word as _};
use site::{CodeBasis, Leaf, Site, WindCode};

/// Which wind is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Wind {
    /// The wind in which the gate must stand.
    Design,
    /// The wind up to which it must still move; taken to blow square to the leaf.
    Operating,
    /// The wind that comes with the ice.
    WithIce,
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
/// Gust-effect factor of a rigid face and directionality factor of walls and signs in ASCE 7: both are printed as 0.85.
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
    let speed = match wind {
        Wind::Design => read!(asking, site.climate?.basic_wind_speed),
        Wind::Operating => read!(asking, site.climate?.operating_wind_speed),
        Wind::WithIce => read!(asking, site.climate?.ice_wind_speed),
    };
    let topography = read!(asking, site.climate?.topographic_factor);
    let face = face(asking, leaf, solidity);
    match site.site.code_basis {
        CodeBasis::Us => in_the_us(asking, site, wind, (speed, topography, face)),
        CodeBasis::Eu => in_the_eu(asking, site, (speed, topography, face)),
    }
}

/// Facts read so far, each there or not.
type Facts = (
    Result<Velocity, Halt>,
    Result<Ratio, Halt>,
    Result<Face, Halt>,
);

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

fn in_the_us<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    wind: Wind,
    (speed, topography, face): Facts,
) -> Result<LeafWind, Halt> {
    let about = &site.site;
    let code = pick!(asking, about.wind_code);
    let exposure = pick!(asking, site.climate?.exposure);
    let (speed, topography, face, code, exposure) = (speed?, topography?, face?, code?, exposure?);
    let Some(exposure) = Exposure::from_word(exposure.word()) else {
        return asking.refuse("this exposure has no figures");
    };
    let velocity = Pressures {
        speed,
        exposure,
        topography,
        directionality: match wind {
            Wind::Design | Wind::WithIce => RIGID,
            Wind::Operating => 1.0,
        },
        elevation: elevation(asking, site),
    };
    let velocity_pressure = velocity.at(asking, code, face.top)?;
    let (pressure, force) = if face.solidity.base() < SOLID {
        open_frame(asking, face, velocity_pressure)?
    } else {
        solid_face(asking, face, velocity_pressure)?
    };
    Ok(LeafWind {
        speed,
        velocity_pressure,
        pressure,
        force,
        // Case B of figure 29.3-1: a fifth of the width toward the windward end.
        off_middle: face.width * 0.2,
    })
}

/// Height of the ground above the sea; zero, the safe side, where it is not written down.
fn elevation<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Length {
    site.place
        .as_ref()
        .and_then(|place| {
            asking.read_if_there(&place.origin, "elevation", place.elevation.as_ref())
        })
        .unwrap_or(Length::from_base(0.0))
}

/// What velocity pressure hangs on in ASCE 7.
struct Pressures {
    speed: Velocity,
    exposure: Exposure,
    topography: Ratio,
    directionality: f64,
    elevation: Length,
}

impl Pressures {
    /// Velocity pressure, directionality included.
    fn at(
        &self,
        asking: &mut Asking<'_>,
        code: WindCode,
        height: Length,
    ) -> Result<Pressure, Halt> {
        let directionality_factor = Ratio::from_base(self.directionality);
        match code {
            WindCode::Asce716 => asking
                .work(&Asce716VelocityPressure {
                    basic_speed: self.speed,
                    exposure: self.exposure,
                    height,
                    topographic_factor: self.topography,
                    directionality_factor,
                    ground_elevation: self.elevation,
                })
                .map(|gives| gives.pressure),
            WindCode::Asce722 => asking
                .work(&Asce722VelocityPressure {
                    basic_speed: self.speed,
                    exposure: self.exposure,
                    height,
                    topographic_factor: self.topography,
                    directionality_factor,
                    ground_elevation: self.elevation,
                })
                .map(|gives| gives.directed_pressure),
            WindCode::En1991 => {
                asking.refuse("the wind code is European and the code basis is that of the United States; name the edition of ASCE 7 adopted here")
            }
        }
    }
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

fn in_the_eu<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (speed, topography, face): Facts,
) -> Result<LeafWind, Halt> {
    let terrain = pick!(asking, site.climate?.terrain_category);
    let (speed, topography, face, terrain) = (speed?, topography?, face?, terrain?);
    let Some(terrain) = Terrain::from_word(terrain.word()) else {
        return asking.refuse("this terrain category has no figures");
    };
    let one = Ratio::from_base(1.0);
    let peak = asking.work(&En1991PeakVelocityPressure {
        fundamental_speed: speed,
        direction_factor: one,
        season_factor: one,
        probability_factor: one,
        terrain,
        orography_factor: topography,
        height: face.top,
    })?;
    let (pressure, force, off_middle) = if face.solidity.base() < WALL {
        // Even bars have no windward zone; a fifth of the width stays on the safe side.
        let (pressure, force) = lattice(asking, face, peak.pressure)?;
        (pressure, force, face.width * 0.2)
    } else {
        let wall = asking.work(&En1991FreeStandingWall {
            peak_pressure: peak.pressure,
            length: face.width,
            height: face.height,
            solidity: face.solidity,
        })?;
        (wall.pressure_a, wall.force, off_middle(face, &wall))
    };
    Ok(LeafWind {
        speed,
        velocity_pressure: peak.pressure,
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
