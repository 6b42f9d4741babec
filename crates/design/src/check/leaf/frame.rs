//! The frame of a leaf as a braced truss, from its members.

use super::member::metal;
use super::rated_mass::GRAVITY;
use super::section::{Bending, bending};
use super::{mass, section};
use crate::asking::{Asking, Wants, pick, read};
use crate::outcome::Halt;
use formula::leaf::{BracedFrameSag, CantileverBeam, Metal, MetalProperties};
use quantity::{
    Force, ForcePerLength, Length, Pressure, Quantity as _, SecondMomentOfArea, Volume,
};
use site::{Leaf, Member, MemberRole};

/// Share of a length that hangs out which may go without a brace: the rails alone carry it.
const UNBRACED: f64 = 0.25;

/// A braced frame: rails, braces, uprights and their weight.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    top: Bending,
    bottom: Bending,
    brace: Bending,
    upright: Bending,
    elasticity: Pressure,
    height: Length,
    /// How far one brace reaches along the leaf.
    run: Length,
    braces: u32,
    length: Length,
    /// Weight of each unit of length.
    pub(super) weight: ForcePerLength,
}

/// Weight of each unit of length of a leaf.
pub(super) fn weight<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<ForcePerLength, Halt> {
    let mass = mass(asking, leaf);
    let length = read!(asking, leaf.length);
    Ok(ForcePerLength::from_base(
        mass?.base() * GRAVITY / length?.base(),
    ))
}

/// The frame of a leaf.
pub(super) fn frame<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Frame, Halt> {
    let weight = weight(asking, leaf);
    let length = read!(asking, leaf.length);
    let height = read!(asking, leaf.height);
    let top = in_role(asking, leaf, MemberRole::TopRail);
    let bottom = in_role(asking, leaf, MemberRole::BottomRail);
    let upright = uprights(asking, leaf);
    let brace = braces(asking, leaf);
    let (top, bottom, upright) = (top?, bottom?, upright?);
    let (brace, brace_length, braces) = brace?;
    let elasticity = asking.work(&MetalProperties { metal: top.1 })?.elasticity;
    let height = height? - (top.0.depth + bottom.0.depth) / 2.0;
    let (upright, between) = upright;
    if brace_length <= between {
        return asking.refuse(
            "a brace that is no longer than the frame is high reaches nowhere: give its length as it was cut",
        );
    }
    let run = (brace_length.base().powi(2) - between.base().powi(2)).sqrt();
    Ok(Frame {
        top: top.0,
        bottom: bottom.0,
        brace,
        upright,
        elasticity,
        height,
        run: Length::from_base(run),
        braces,
        length: length?,
        weight: weight?,
    })
}

/// The first member in a role, worked to its section.
fn in_role<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    role: MemberRole,
) -> Result<(Bending, Metal), Halt> {
    let member = named(asking, leaf, role)?;
    section_of(asking, leaf, member)
}

fn named<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    role: MemberRole,
) -> Result<&'s Member, Halt> {
    match leaf.member.iter().find(|member| member.role == Some(role)) {
        Some(member) => Ok(member),
        None => asking.lack(
            &leaf.origin,
            "member",
            Wants::Written(
                "[{ what = \"brace\", role = \"brace\", count = 2, length = \"8 ft\", section = \"HSS 2x2x1/8\" }], and so each rail and upright",
            ),
        ),
    }
}

/// A member's section and metal.
pub(super) fn section_of<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    member: &'s Member,
) -> Result<(Bending, Metal), Halt> {
    let metal = metal(asking, leaf, member);
    let Some(section) = &member.section else {
        return asking.lack(&member.origin, "section", Wants::Written("\"HSS 2x2x1/8\""));
    };
    match metal? {
        Some(metal) => Ok((bending(asking, section.shape(), metal)?, metal)),
        None => {
            asking.refuse("a frame of timber or plastic creeps; this tool works frames of metal")
        }
    }
}

/// Section and length of the uprights: the height between the rails.
fn uprights<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
) -> Result<(section::Bending, Length), Halt> {
    let member = named(asking, leaf, MemberRole::Upright)?;
    let section = section_of(asking, leaf, member);
    let length = read!(asking, member.length);
    Ok((section?.0, length?))
}

/// Section, length and number of the braces.
fn braces<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
) -> Result<(section::Bending, Length, u32), Halt> {
    let member = named(asking, leaf, MemberRole::Brace)?;
    let section = section_of(asking, leaf, member);
    let length = read!(asking, member.length);
    let count = pick!(asking, member.count);
    Ok((section?.0, length?, count?))
}

impl Frame {
    /// Sag of a length of the frame that hangs out, under its weight and a load at its end.
    pub(super) fn hanging(
        &self,
        asking: &mut Asking<'_>,
        overhang: Length,
        (end_load, uniform_load): (Force, ForcePerLength),
    ) -> Result<Length, Halt> {
        let bare = self.unbraced();
        if bare > UNBRACED {
            return asking.refuse(
                "the braces reach less than three quarters of the leaf; a frame without a brace in every panel sags far more than this tool can say",
            );
        }
        let truss = asking.work(&BracedFrameSag {
            overhang,
            height: self.height,
            panels: self.panels(overhang),
            end_load,
            uniform_load,
            rail_area: if self.top.area < self.bottom.area {
                self.top.area
            } else {
                self.bottom.area
            },
            brace_area: self.brace.area,
            upright_area: self.upright.area,
            elasticity: self.elasticity,
        })?;
        if bare <= 0.0 {
            return Ok(truss.sag);
        }
        let rails = asking.work(&CantileverBeam {
            length: overhang * bare,
            end_load,
            uniform_load,
            elasticity: self.elasticity,
            inertia: SecondMomentOfArea::from_base(
                self.top.inertia.base() + self.bottom.inertia.base(),
            ),
            modulus: Volume::from_base(self.top.modulus.base() + self.bottom.modulus.base()),
        })?;
        Ok(truss.sag + rails.deflection)
    }

    /// Sag in the middle of a span: from its middle each half is a cantilever that its support pushes up.
    pub(super) fn spanning(&self, asking: &mut Asking<'_>, span: Length) -> Result<Length, Halt> {
        let half = span / 2.0;
        let support = Force::from_base(self.weight.base() * half.base());
        let nothing = (Force::from_base(0.0), ForcePerLength::from_base(0.0));
        let lifted = self.hanging(asking, half, (support, nothing.1))?;
        let weighed = self.hanging(asking, half, (nothing.0, self.weight))?;
        Ok(lifted - weighed)
    }

    /// Share of the leaf that no brace reaches.
    fn unbraced(&self) -> f64 {
        1.0 - f64::from(self.braces) * self.run.base() / self.length.base()
    }

    /// Panels in a length, one at least.
    fn panels(&self, overhang: Length) -> u32 {
        let panels = (overhang.base() / self.run.base()).round();
        (1..=200)
            .find(|count| f64::from(*count) >= panels)
            .unwrap_or(200)
    }
}
