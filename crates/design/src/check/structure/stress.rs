//! The stress at the foot of a post of steel, in the hardest of its cases.

use super::at_foot::{AtFoot, Sideways};
use super::loads::Steel;
use super::on_post::section;
use crate::asking::{Asking, read};
use crate::check::leaf::section::{Bending, DESIGN_WALL};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::leaf::{Metal, MetalProperties};
use formula::standing::{PostBending, PostStresses};
use formula::{Evidence, Formula as _, Source};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio, Torque};
use site::{CodeBasis, Post, SectionShape, Site};
use std::f64::consts::PI;

static WEAKEST_US: Source = Source {
    work: "weakest grades in common use: ASTM A500 tube 36 ksi, ASTM A53 pipe 30 ksi, ASTM A36 bar 36 ksi",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "taken for want of a grade on the site; grades of A500 at https://www.boyersteel.com/resource-astm-specifications/a500-grade-b/",
};

static WEAKEST_EU: Source = Source {
    work: "weakest structural steel in common use: S235, 235 MPa",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "taken for want of a grade on the site",
};

static THIN_WALLS: Source = Source {
    work: "EN 1993-1-1, walls thick enough to yield before they buckle: flat parts c/t ≤ 42 ε, round tubes d/t ≤ 90 ε²",
    clause: "table 5.2, class 3",
    evidence: Evidence::Seen,
    seen: "a copy of the table, https://scribd.com/document/630726662/Table-5-2; the limits of AISC 360 for tubes lie close to it",
};

/// A post in its hardest case.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stressed {
    /// The case, in words that follow "with".
    pub(super) case: &'static str,
    /// Moment at the foot, both directions together.
    pub(super) moment: Torque,
    /// Stresses at the foot.
    pub(super) stresses: PostStresses,
}

impl Stressed {
    /// Stress against what is allowed.
    pub(super) fn compared(&self) -> Comparison {
        Comparison::at_most(
            Labeled::new("stress at the foot of the post", self.stresses.equivalent),
            Labeled::new("stress allowed", self.stresses.allowed),
        )
    }
}

/// The stress in the hardest case.
pub(super) fn hardest_stress<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    post: &'s Post,
    cases: Result<Vec<AtFoot>, Halt>,
    steel: Steel,
) -> Result<Stressed, Halt> {
    let basis = site.site.code_basis;
    let section = section(asking, post);
    let yields = yields(asking, post, basis);
    let height = read!(asking, post.height);
    let (cases, section, yields, height) = (cases?, section?, yields?, height?);
    thick_enough(asking, post, yields)?;
    let of = |case: &AtFoot| bending(post, &section, case, (yields, steel.yield_over));
    let used = |case: &AtFoot| {
        of(case)
            .evaluate()
            .map_or(f64::INFINITY, |one| one.used.base())
    };
    let Some(case) = super::at_foot::hardest(&cases, used) else {
        return asking.refuse("nothing reaches the foot of this post");
    };
    asking.note(|print| {
        format!(
            "With {}: along the gate line {} and {} at the foot, across it {} and {}.",
            case.case,
            print.q(case.along.force),
            print.q(case.along.moment),
            print.q(case.across.force),
            print.q(case.across.moment)
        )
    });
    let stresses = asking.work(&of(case))?;
    buckling(asking, &section, (height, case.weight))?;
    Ok(Stressed {
        case: case.case,
        moment: case.together().moment,
        stresses,
    })
}

/// Yield strength of the post, else of the weakest steel that such a section is commonly made of.
fn yields<'s>(asking: &mut Asking<'s>, post: &'s Post, basis: CodeBasis) -> Result<Pressure, Halt> {
    let stated = asking.read_if_there(&post.origin, "yield_strength", post.yield_strength.as_ref());
    if let Some(stated) = stated {
        return Ok(stated);
    }
    let shape = post.section.as_ref().map(site::Section::shape);
    let pounds = match (basis, shape) {
        (CodeBasis::Eu, Some(_)) => {
            asking.rest_on(&WEAKEST_EU);
            return Ok(Pressure::from_base(235e6));
        }
        (CodeBasis::Us, Some(SectionShape::Pipe { .. })) => 30e3,
        (
            CodeBasis::Us,
            Some(SectionShape::Hss { .. } | SectionShape::Flat { .. } | SectionShape::Rod { .. }),
        ) => 36e3,
        // Tube for furniture and machines has no strength that anybody promises.
        _ => return read!(asking, post.yield_strength),
    };
    asking.rest_on(&WEAKEST_US);
    Ok(Pressure::from_base(pounds * 6_894.757_293_168))
}

/// Both directions on one section. The corners of a tube feel the sum of both moments; a round one their resultant.
fn bending(
    post: &Post,
    section: &Bending,
    case: &AtFoot,
    (yield_strength, over): (Pressure, f64),
) -> PostBending {
    let together = case.together();
    let (along, across) = (case.along.moment.base(), case.across.moment.base());
    let moment = if is_round(post) {
        together.moment.base()
    } else {
        along + across * (section.modulus.base() / section.modulus_across.base())
    };
    let (force, height) = lever(Sideways {
        moment: Torque::from_base(moment),
        ..together
    });
    let narrow = section.depth.base().min(section.width.base());
    let webs = narrow / (section.depth.base() + section.width.base());
    PostBending {
        force,
        height,
        // Rounding may leave a hair below nothing.
        moment: Torque::from_base((moment - force.base() * height.base()).max(0.0)),
        weight: case.weight,
        area: section.area,
        shear_area: section.area * webs,
        section_modulus: section.modulus,
        yield_strength,
        safety_factor: Ratio::from_base(over),
    }
}

/// A force and the height at which it gives the moment; nothing at no height where no force is to speak of.
fn lever(side: Sideways) -> (Force, Length) {
    let force = side.force.base();
    if force < 1.0 {
        return (side.force, Length::from_base(0.0));
    }
    (side.force, Length::from_base(side.moment.base() / force))
}

fn is_round(post: &Post) -> bool {
    matches!(
        post.section.as_ref().map(site::Section::shape),
        Some(SectionShape::Pipe { .. } | SectionShape::RoundTube { .. } | SectionShape::Rod { .. })
    )
}

/// Walls that buckle before they yield are outside of what is worked here.
fn thick_enough(asking: &mut Asking<'_>, post: &Post, yields: Pressure) -> Result<(), Halt> {
    let softness = (235e6 / yields.base()).sqrt();
    let is_thin = match post.section.as_ref().map(site::Section::shape) {
        Some(SectionShape::Hss { depth, width, wall }) => {
            flat(depth, width, wall * DESIGN_WALL) > 42.0 * softness
        }
        Some(SectionShape::Tube { depth, width, wall }) => {
            flat(depth, width, wall) > 42.0 * softness
        }
        Some(SectionShape::RoundTube { diameter, wall }) => {
            diameter.base() / wall.base() > 90.0 * softness * softness
        }
        _ => return Ok(()),
    };
    asking.rest_on(&THIN_WALLS);
    if is_thin {
        return asking.refuse(
            "the walls of this section are so thin that they buckle before they yield: take a thicker wall, or have an engineer work it",
        );
    }
    Ok(())
}

/// Flat part of the wider side over the wall.
fn flat(depth: Length, width: Length, wall: Length) -> f64 {
    depth.base().max(width.base()) / wall.base() - 3.0
}

/// How far the post is from buckling, in the working.
fn buckling(
    asking: &mut Asking<'_>,
    section: &Bending,
    (height, weight): (Length, Force),
) -> Result<(), Halt> {
    let elasticity = asking.work(&MetalProperties {
        metal: Metal::Steel,
    })?;
    let stiffness =
        elasticity.elasticity.base() * section.inertia.base().min(section.inertia_across().base());
    let buckles = Force::from_base((PI / (2.0 * height.base())).powi(2) * stiffness);
    asking.note(|print| {
        format!(
            "Free at its top it would buckle under {}; {} presses on it.",
            print.q(buckles),
            print.q(weight)
        )
    });
    if weight.base() > buckles.base() * LARGEST_SHARE {
        return asking.refuse(
            "the weight on this post is more than a tenth of what would buckle it: have an engineer work it",
        );
    }
    Ok(())
}

/// Share of the buckling load up to which buckling is left out.
const LARGEST_SHARE: f64 = 0.1;
