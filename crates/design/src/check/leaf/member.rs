//! What the members of a leaf weigh, and where they are.

use super::section;
use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::leaf::{MemberMass, Metal, SheetMass};
use quantity::{Length, Mass, MassPerLength, Word as _};
use site::{Leaf, Material, Member};

/// What a kind of members weighs, and where its middle is if that is written.
#[derive(Debug, Clone, Copy)]
pub(super) struct Placed {
    pub(super) mass: Mass,
    pub(super) along: Option<Length>,
    pub(super) up: Option<Length>,
}

/// Every kind of members, all of them read before giving up on one.
pub(super) fn placed<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Vec<Placed>, Halt> {
    let members: Vec<Result<Placed, Halt>> = leaf
        .member
        .iter()
        .map(|member| {
            let mass = mass_of(asking, leaf, member);
            let along = asking.read_if_there(&member.origin, "along", member.along.as_ref());
            let up = asking.read_if_there(&member.origin, "up", member.up.as_ref());
            mass.map(|mass| Placed { mass, along, up })
        })
        .collect();
    members.into_iter().collect()
}

fn mass_of<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf, member: &'s Member) -> Result<Mass, Halt> {
    if member.mass_per_area.is_some() {
        return sheet(asking, member);
    }
    let count = pick!(asking, member.count);
    let length = read!(asking, member.length);
    let mass_per_length = mass_per_length(asking, leaf, member);
    let weighed = asking.work(&MemberMass {
        mass_per_length: mass_per_length?,
        length: length?,
        count: count?,
    })?;
    Ok(weighed.mass)
}

fn sheet<'s>(asking: &mut Asking<'s>, member: &'s Member) -> Result<Mass, Halt> {
    let mass_per_area = read!(asking, member.mass_per_area);
    let length = read!(asking, member.length);
    let width = read!(asking, member.width);
    let weighed = asking.work(&SheetMass {
        mass_per_area: mass_per_area?,
        length: length?,
        width: width?,
        count: member.count.unwrap_or(1),
    })?;
    Ok(weighed.mass)
}

/// As written, else by the section and what it is made of.
fn mass_per_length<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    member: &'s Member,
) -> Result<MassPerLength, Halt> {
    let Some(section) = &member.section else {
        return read!(asking, member.mass_per_length);
    };
    if member.mass_per_length.is_some() {
        return read!(asking, member.mass_per_length);
    }
    match metal(asking, leaf, member)? {
        Some(metal) => section::mass_per_length(asking, section.shape(), metal),
        // Timber and plastic differ too much to go by their sizes.
        None => read!(asking, member.mass_per_length),
    }
}

/// The metal of a member, that of the leaf where it says nothing itself; none for timber and plastic.
pub(super) fn metal<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    member: &'s Member,
) -> Result<Option<Metal>, Halt> {
    let material = match member.material {
        Some(_) => pick!(asking, member.material),
        None => pick!(asking, leaf.material),
    };
    material.map(of_word)
}

/// The tabled metal of a material; none for timber and plastic.
pub(super) fn of_word(material: Material) -> Option<Metal> {
    Metal::from_word(material.word())
}
