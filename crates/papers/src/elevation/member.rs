//! The members of a leaf: which is which, and how deep it is seen from the front.

use super::meters;
use quantity::{Length, Quantity as _};
use site::{Leaf, Member, MemberRole, SectionShape};

/// What a member is to the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    TopRail,
    BottomRail,
    Upright,
    Brace,
    Infill,
    /// Rails and end uprights in one line of the list.
    Frame,
    /// Not drawn.
    Other,
}

/// Words that tell what a member is, where the site does not say its role.
const WORDS: [(&str, Part); 14] = [
    ("top rail", Part::TopRail),
    ("upper rail", Part::TopRail),
    ("bottom rail", Part::BottomRail),
    ("lower rail", Part::BottomRail),
    ("upright", Part::Upright),
    ("stile", Part::Upright),
    ("brace", Part::Brace),
    ("diagonal", Part::Brace),
    ("slat", Part::Infill),
    ("board", Part::Infill),
    ("picket", Part::Infill),
    ("mesh", Part::Infill),
    ("sheet", Part::Infill),
    ("frame", Part::Frame),
];

/// What a member is.
pub(super) fn part(member: &Member) -> Part {
    match member.role {
        Some(MemberRole::TopRail) => Part::TopRail,
        Some(MemberRole::BottomRail) => Part::BottomRail,
        Some(MemberRole::Upright) => Part::Upright,
        Some(MemberRole::Brace) => Part::Brace,
        Some(MemberRole::Infill) => Part::Infill,
        Some(MemberRole::Fitting) => Part::Other,
        None => {
            let what = member.what.to_string().to_lowercase();
            let told = WORDS.iter().find(|(word, _)| what.starts_with(word));
            told.map_or(Part::Other, |(_, part)| *part)
        }
    }
}

/// Depth of a member in the plane of the leaf, by its section (m).
pub(super) fn depth(member: &Member) -> Option<f64> {
    let shape = member.section.as_ref()?.shape();
    Some(sides(shape)?.0.base())
}

/// Width of a member across the leaf, by its section (m).
pub(super) fn width(member: &Member) -> Option<f64> {
    let shape = member.section.as_ref()?.shape();
    Some(sides(shape)?.1.base())
}

fn sides(shape: SectionShape) -> Option<(Length, Length)> {
    match shape {
        SectionShape::Hss { depth, width, .. }
        | SectionShape::Tube { depth, width, .. }
        | SectionShape::Flat { depth, width } => Some((depth, width)),
        SectionShape::RoundTube { diameter, .. } | SectionShape::Rod { diameter } => {
            Some((diameter, diameter))
        }
        SectionShape::Pipe { .. } => None,
    }
}

/// The depth that members without a section are drawn with: the leaf's thickness, or else one in thirty of its height.
pub(super) fn usual_depth(leaf: &Leaf, height: f64) -> f64 {
    meters(leaf.thickness.as_ref())
        .unwrap_or(height / 30.0)
        .min(height / 6.0)
}

/// The members of a leaf that are one part.
pub(super) fn all(leaf: &Leaf, wanted: Part) -> impl Iterator<Item = &Member> {
    leaf.member
        .iter()
        .filter(move |member| part(member) == wanted)
}

/// The first member that is one part, with the depth that it is drawn with; a frame stands for each of its sides.
pub(super) fn rail(leaf: &Leaf, wanted: Part, height: f64) -> Option<Rail<'_>> {
    let member = all(leaf, wanted).chain(all(leaf, Part::Frame)).next()?;
    let known = depth(member);
    Some(Rail {
        member,
        depth: known.unwrap_or_else(|| usual_depth(leaf, height)),
        assumed: known.is_none(),
    })
}

/// A rail or an upright as it is drawn.
pub(super) struct Rail<'a> {
    pub(super) member: &'a Member,
    pub(super) depth: f64,
    pub(super) assumed: bool,
}
