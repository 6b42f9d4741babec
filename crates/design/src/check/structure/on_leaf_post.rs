//! What a leaf does to the post that it hangs from, shuts against or is guided by.

use super::at_foot::Sideways;
use super::on_post::outer;
use super::post_cases::{Case, Part};
use crate::asking::{Asking, Wants, read};
use crate::check::leaf::rated_mass::GRAVITY;
use crate::check::leaf::{center_from_hinge, mass};
use crate::check::wind::guides::{Held, NEAR, Place, SlideWind, Support, slide_wind};
use crate::check::wind::load::{Wind, on_leaf};
use crate::check::wind::reaction::at_free_end;
use crate::check::wind::upright_arm::on_upright_arm;
use crate::outcome::Halt;
use quantity::{Acceleration, Force, Length, Quantity as _};
use site::{Gate, Leaf, Post, PostRole, Site};
use std::f64::consts::FRAC_1_SQRT_2;

/// Gate, leaf and post.
type All<'s> = (&'s Gate, &'s Leaf, &'s Post);

/// Height of the middle of a leaf above the ground.
fn middle<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    Ok(clearance? + height? / 2.0)
}

/// Height of the latch, else of the middle of the leaf.
fn latch<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf, post: &'s Post) -> Result<Length, Halt> {
    let latch = asking.read_if_there(&post.origin, "latch_height", post.latch_height.as_ref());
    let middle = middle(asking, leaf);
    latch.map_or(middle, Ok)
}

/// A leaf that slides: its guides' share of the wind at each place, and at a catch post the wind closed and what its catch holds.
pub(super) fn sliding<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf, post): All<'s>,
) -> Result<Vec<Case>, Halt> {
    let wind = slide_wind(asking, site, gate, leaf);
    let held = if post.role == PostRole::Catch {
        held_by_catch(asking, gate, leaf, post)
    } else {
        Ok(None)
    };
    let Some(at) = &post.at else {
        return asking.lack(&post.origin, "at", Wants::Position);
    };
    let (wind, held) = (wind?, held?);
    let near = Near::of(at.x.nominal(), &wind);
    let of = |place: &Held| {
        let by = place.by.iter().filter(|by| near.holds(by, post.role));
        let push = by.fold(Sideways::none(), |sum, by| sum + on_support(&wind, by));
        Case::blown(in_wind(place.place), Part::across(push))
    };
    let mut cases: Vec<Case> = wind.places.iter().map(of).collect();
    cases.extend(held);
    Ok(cases)
}

/// The case of a person who climbs.
const CLIMBED: &str = "somebody on the end of the leaf";

/// In that case the leaf is away from its catch, or somebody plays on it: latch and lock need not line up.
pub(super) fn is_unlatched(case: &str) -> bool {
    let away = [Place::OffItsCatch, Place::Halfway, Place::Open];
    case == CLIMBED || away.into_iter().any(|place| case == in_wind(place))
}

fn in_wind(place: Place) -> &'static str {
    match place {
        Place::Closed => "the leaf closed in the design wind",
        Place::OffItsCatch => "the leaf stopped just off its catch in the design wind",
        Place::Halfway => "the leaf stopped halfway in the design wind",
        Place::Open => "the leaf open in the design wind",
    }
}

/// A guide holds the top of the leaf; a catch holds its end at the height of the wind's middle.
fn on_support(wind: &SlideWind, by: &Support) -> Sideways {
    if by.is_catch {
        Sideways::at(wind.wind.force * by.share, wind.middle)
    } else {
        Sideways::at(wind.at_guide(by.share), wind.guide_height)
    }
}

/// Which guides a post carries: the nearest, and any others beside it.
struct Near {
    post: Length,
    nearest: f64,
}

impl Near {
    fn of(post: Length, wind: &SlideWind) -> Self {
        let guides = wind.places.iter().flat_map(|held| &held.by);
        let away = guides
            .filter(|by| !by.is_catch)
            .map(|by| (by.at - post).base().abs());
        Self {
            post,
            nearest: away.fold(f64::INFINITY, f64::min),
        }
    }

    fn holds(&self, by: &Support, role: PostRole) -> bool {
        let away = (by.at - self.post).base().abs();
        match role {
            PostRole::Catch => by.is_catch || away <= NEAR,
            _ => !by.is_catch && away <= self.nearest.max(NEAR),
        }
    }
}

/// The most that a catch pulls on its post along the gate line: what it holds.
fn held_by_catch<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    post: &'s Post,
) -> Result<Option<Case>, Halt> {
    let Some(catch) = &gate.catch else {
        return Ok(None);
    };
    let force = asking.read_if_there(&catch.origin, "closed_force", catch.closed_force.as_ref());
    let Some(force) = force else { return Ok(None) };
    let height = latch(asking, leaf, post)?;
    let pull = Part::along(Sideways::at(force, height));
    Ok(Some(Case::pushed("a pull on the shut catch", pull)))
}

/// Weight of a leaf, and how far from the middle of its post it hangs: the hinges are taken at the post's face.
fn weight_and_reach<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    post: &'s Post,
) -> Result<(Force, Length, Length), Halt> {
    let mass = mass(asking, leaf);
    let center = center_from_hinge(asking, leaf);
    let outer = outer(asking, post);
    let (mass, center, outer) = (mass?, center?, outer?);
    let face = if outer.along > outer.across {
        outer.along / 2.0
    } else {
        outer.across / 2.0
    };
    Ok((mass * Acceleration::from_base(GRAVITY), center + face, face))
}

/// A leaf that hangs from its post: closed and latched, stopped halfway and open with the drive alone to hold it, and with
/// somebody who climbs on its end. What the drive's bracket takes comes back through the hinges: together the post has all.
pub(super) fn hanging<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf, post): All<'s>,
) -> Result<Vec<Case>, Halt> {
    let hung = weight_and_reach(asking, leaf, post);
    let latched = at_free_end(asking, site, leaf, Wind::Design);
    let height = middle(asking, leaf);
    let length = read!(asking, leaf.length);
    let climber = asking.read_if_there(&gate.origin, "climbing_load", gate.climbing_load.as_ref());
    let ((weight, reach, face), (wind, share)) = (hung?, latched?);
    let (height, length) = (height?, length?);
    let tips = Sideways::hanging(weight, reach);
    let dead = |along: f64, across: f64| Part {
        along: tips * along,
        across: tips * across,
        down: weight,
    };
    // The wind's middle may lie as far off the leaf's toward the hinges as toward the latch.
    let latched = Sideways::at(share, height);
    let loose = Sideways::at(wind.force, height);
    let half = FRAC_1_SQRT_2;
    let halfway = Part {
        along: loose * half,
        across: loose * -half,
        down: Force::from_base(0.0),
    };
    let mut cases = vec![
        Case::blown(in_wind(Place::Closed), Part::across(latched)).with(dead(1.0, 0.0)),
        Case::blown(in_wind(Place::Halfway), halfway).with(dead(half, half)),
        Case::blown(in_wind(Place::Open), Part::along(loose)).with(dead(0.0, 1.0)),
    ];
    if let Some(climber) = climber {
        let climbs = Sideways::hanging(climber, length + face);
        let on_end = |part: Part| Part {
            down: climber,
            ..part
        };
        let name = CLIMBED;
        cases.push(Case::pushed(name, on_end(Part::along(climbs))).with(dead(1.0, 0.0)));
        cases.push(Case::pushed(name, on_end(Part::across(climbs))).with(dead(0.0, 1.0)));
    }
    Ok(cases)
}

/// A post against which a swing leaf shuts.
pub(super) fn shut<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (_, leaf, post): All<'s>,
) -> Result<Vec<Case>, Halt> {
    let latched = at_free_end(asking, site, leaf, Wind::Design);
    let height = latch(asking, leaf, post);
    let latched = Sideways::at(latched?.1, height?);
    Ok(vec![Case::blown(
        in_wind(Place::Closed),
        Part::across(latched),
    )])
}

/// A post on which an arm or a leaf turns up: closed with nothing at its end, and upright.
pub(super) fn pivoted<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf, post): All<'s>,
) -> Result<Vec<Case>, Halt> {
    let hung = weight_and_reach(asking, leaf, post);
    let wind = on_leaf(asking, site, leaf, Wind::Design);
    let narrow = on_upright_arm(asking, site, leaf, Wind::Design);
    let height = middle(asking, leaf);
    let length = read!(asking, leaf.length);
    let ((weight, reach, _), wind, narrow) = (hung?, wind?, narrow?);
    let (height, length) = (height?, length?);
    let tips = Part {
        down: weight,
        ..Part::along(Sideways::hanging(weight, reach))
    };
    let stands = Part {
        down: weight,
        ..Part::nothing()
    };
    let upright = height + length / 2.0;
    let closed = Part::across(Sideways::at(wind.force, height));
    let broad = Part::across(Sideways::at(wind.force, upright));
    let narrow = Part::along(Sideways::at(narrow, upright));
    Ok(vec![
        Case::blown(in_wind(Place::Closed), closed).with(tips),
        Case::blown(in_wind(Place::Open), broad).with(stands),
        Case::blown(in_wind(Place::Open), narrow).with(stands),
    ]
    .into_iter()
    .chain(climbed(asking, gate, (length, tips)))
    .collect())
}

/// Somebody on the end of an arm.
fn climbed<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    (length, dead): (Length, Part),
) -> Option<Case> {
    let climber =
        asking.read_if_there(&gate.origin, "climbing_load", gate.climbing_load.as_ref())?;
    let part = Part {
        down: climber,
        ..Part::along(Sideways::hanging(climber, length))
    };
    Some(Case::pushed(CLIMBED, part).with(dead))
}

/// A post on which the end of an arm rests.
pub(super) fn turned<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf, _): All<'s>,
) -> Result<Vec<Case>, Halt> {
    let latched = at_free_end(asking, site, leaf, Wind::Design);
    let height = middle(asking, leaf);
    let climber = asking.read_if_there(&gate.origin, "climbing_load", gate.climbing_load.as_ref());
    let latched = Sideways::at(latched?.1, height?);
    let mut cases = vec![Case::blown(in_wind(Place::Closed), Part::across(latched))];
    if let Some(down) = climber {
        let rests = Part {
            down,
            ..Part::nothing()
        };
        cases.push(Case::pushed(CLIMBED, rests));
    }
    Ok(cases)
}

/// A post with the rail of a leaf that rises, which is held at both its ends.
pub(super) fn lifted<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf, _): All<'s>,
) -> Result<Vec<Case>, Halt> {
    let end = at_free_end(asking, site, leaf, Wind::Design);
    let height = middle(asking, leaf);
    let travel = read!(asking, gate.travel);
    let ((_, end), height, travel) = (end?, height?, travel?);
    let at = |up: Length| Part::across(Sideways::at(end, up));
    Ok(vec![
        Case::blown(in_wind(Place::Closed), at(height)),
        Case::blown(in_wind(Place::Halfway), at(height + travel / 2.0)),
        Case::blown(in_wind(Place::Open), at(height + travel)),
    ])
}
