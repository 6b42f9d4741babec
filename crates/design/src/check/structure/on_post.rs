//! What a post carries by itself: its size, its weight, and the wind on it and on what is on top.

use super::at_foot::Sideways;
use crate::asking::{Asking, read};
use crate::check::leaf::rated_mass::GRAVITY;
use crate::check::leaf::section::{Bending, bending, mass_per_length};
use crate::check::wind::bar::{Bar, on_bar};
use crate::check::wind::load::Wind;
use crate::check::wind::velocity::air_at;
use crate::outcome::Halt;
use formula::leaf::Metal;
use quantity::{Acceleration, Area, Force, Length, Mass, Pressure, Quantity as _};
use site::{Post, Site};

/// Outer sizes of a post: along the gate line and across it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Outer {
    /// Along the gate line.
    pub(crate) along: Length,
    /// Across it.
    pub(crate) across: Length,
}

/// The section of a post, of steel.
pub(crate) fn section<'s>(asking: &mut Asking<'s>, post: &'s Post) -> Result<Bending, Halt> {
    let write = "\"HSS 4x4x1/4\"";
    let section = asking.need(&post.origin, "section", post.section.as_ref(), write)?;
    bending(asking, section.shape(), Metal::Steel)
}

/// Outer sizes: of the pillar, else of the section, else the post's width both ways.
pub(crate) fn outer<'s>(asking: &mut Asking<'s>, post: &'s Post) -> Result<Outer, Halt> {
    if let Some(pillar) = &post.pillar {
        let along = read!(asking, pillar.length);
        let across = read!(asking, pillar.width);
        return Ok(Outer {
            along: along?,
            across: across?,
        });
    }
    if post.section.is_some() {
        let section = section(asking, post)?;
        return Ok(Outer {
            along: section.depth,
            across: section.width,
        });
    }
    let width = read!(asking, post.width)?;
    Ok(Outer {
        along: width,
        across: width,
    })
}

/// Wind on a post and on what is on top: along the gate line and across it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PostWind {
    /// The wind blows along the gate line.
    pub(crate) along: Sideways,
    /// The wind blows across it.
    pub(crate) across: Sideways,
    /// Force on what is on top; the wind meets it alike from all sides.
    pub(crate) top: Force,
    /// Height of the middle of what is on top.
    pub(crate) top_height: Length,
}

/// Wind on a post and on what is on top of it.
pub(crate) fn post_wind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    post: &'s Post,
    wind: Wind,
) -> Result<PostWind, Halt> {
    let height = read!(asking, post.height);
    let outer = outer(asking, post);
    let area = asking.read_if_there(&post.origin, "top_area", post.top_area.as_ref());
    let side = area.map_or(Length::from_base(0.0), side);
    let air = air_at(asking, site, wind, height.map(|height| height + side));
    let (height, outer, air) = (height?, outer?, air?);
    let across = on_bar(asking, site, air.pressure, face(outer, height))?;
    let turned = Outer {
        along: outer.across,
        across: outer.along,
    };
    let along = on_bar(asking, site, air.pressure, face(turned, height))?;
    let top = on_top(asking, site, air.pressure, side)?;
    let top_height = height + side / 2.0;
    let both = |post: Force| Sideways::at(post, height / 2.0) + Sideways::at(top, top_height);
    Ok(PostWind {
        along: both(along),
        across: both(across),
        top,
        top_height,
    })
}

/// A post as the wind across the gate line meets it.
fn face(outer: Outer, length: Length) -> Bar {
    Bar {
        width: outer.along,
        depth: outer.across,
        length,
    }
}

/// Side of a square of that area.
fn side(area: Area) -> Length {
    Length::from_base(area.base().max(0.0).sqrt())
}

/// What is on top, as a cube of its area.
fn on_top(
    asking: &mut Asking<'_>,
    site: &Site,
    pressure: Pressure,
    side: Length,
) -> Result<Force, Halt> {
    if side.base() <= 0.0 {
        return Ok(Force::from_base(0.0));
    }
    let cube = Bar {
        width: side,
        depth: side,
        length: side,
    };
    on_bar(asking, site, pressure, cube)
}

/// Weight of the post and of what is on top; of a post without a section only the latter.
pub(crate) fn own_weight<'s>(asking: &mut Asking<'s>, post: &'s Post) -> Result<Force, Halt> {
    let top = asking.read_if_there(&post.origin, "top_mass", post.top_mass.as_ref());
    let mut mass = top.unwrap_or(Mass::from_base(0.0));
    if let Some(pillar) = &post.pillar {
        let own = asking.read_if_there(&pillar.origin, "mass", pillar.mass.as_ref());
        mass += own.unwrap_or(Mass::from_base(0.0));
    } else if let Some(section) = &post.section {
        let height = read!(asking, post.height);
        let line = mass_per_length(asking, section.shape(), Metal::Steel)?;
        mass += Mass::from_base(line.base() * height?.base());
    }
    Ok(mass * Acceleration::from_base(GRAVITY))
}
