//! How far the foot of a post turns under load: measured, else what a footing that may move does.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::{Evidence, Source};
use quantity::{Angle, Length, Quantity as _};
use site::{Foundation, Post, Site};

static HALF_AN_INCH: Source = Source {
    work: "a footing that moves 1/2 in at the ground turns by that over two thirds of its depth",
    clause: "IBC 1806.3.4 for the movement",
    evidence: Evidence::CommonPractice,
    seen: "taken where nobody has measured the turn of a foot that is allowed to move",
};

/// Movement at the ground that goes with twice the sideways bearing: 1/2 in.
const MOVEMENT: f64 = 0.0127;

/// The foundation that a post stands in or on.
pub(super) fn foundation_of<'s>(site: &'s Site, post: &Post) -> Option<&'s Foundation> {
    site.foundation.iter().find(|foundation| {
        post.foundation.as_ref() == Some(&foundation.id)
            || foundation
                .anchor
                .iter()
                .any(|anchor| anchor.carries.as_ref() == Some(&post.id))
    })
}

/// The turn of the foot.
pub(super) fn foot_turn<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    post: &'s Post,
) -> Result<Angle, Halt> {
    let moves = |foundation: &&Foundation| foundation.may_move == Some(true);
    match foundation_of(site, post).filter(moves) {
        Some(foundation) if post.foot_turn.is_none() => estimated(asking, foundation),
        _ => read!(asking, post.foot_turn),
    }
}

fn estimated<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Result<Angle, Halt> {
    let depth = read!(asking, foundation.depth)?;
    if depth.base() <= 0.0 {
        return asking.refuse("a footing has a depth");
    }
    asking.rest_on(&HALF_AN_INCH);
    let turn = Angle::from_base((MOVEMENT / (depth * (2.0 / 3.0)).base()).atan());
    asking.note(|print| {
        format!(
            "The foot is taken to move {} at the ground, which turns it by {}.",
            print.q(Length::from_base(MOVEMENT)),
            print.q(turn)
        )
    });
    Ok(turn)
}
