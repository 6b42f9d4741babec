//! What stands around leaves that swing: walls, fences, pillars, posts and bollards with an upright face near them.

use super::assumption::Assumption;
use super::faces::half_width;
use crate::asking::Asking;
use crate::check::plane::from;
use crate::outcome::Halt;
use quantity::{Length, Measured, Quantity as _};
use sim::walk::{Face, Spot, SwingLeaf};
use site::{Bollard, FixedThing, Gate, Post, PostRole, Site};

/// What is lower than this is stepped over and squeezes nobody against a leaf.
const LOW: f64 = 0.15;
/// Farther than this beyond the reach of a leaf nothing has a body between it and the leaf.
const FAR: f64 = 1.0;

/// The faces near the leaves.
#[derive(Debug, Default)]
pub(super) struct Around {
    pub(super) faces: Vec<Face>,
    /// Those of the posts on which the leaves hang.
    pub(super) hung_on: Vec<Face>,
    /// Names of all of them.
    pub(super) names: Vec<String>,
}

/// Reads what stands around the leaves.
pub(super) fn around<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaves: &[SwingLeaf],
    defaults: &mut Vec<Assumption>,
) -> Result<Around, Halt> {
    let mut found = Around::default();
    let mut low = Vec::new();
    for thing in &gate.nearby {
        let Some(face) = of_thing(asking, thing)? else {
            continue;
        };
        if !is_near(leaves, &face) {
            continue;
        }
        let height = thing.height.as_ref().map(|height| height.high().base());
        if height.is_some_and(|height| height < LOW) {
            low.push(thing.id.to_string());
        } else {
            found.faces.push(face);
            found.names.push(thing.id.to_string());
        }
    }
    for post in &gate.post {
        let faces = of_post(asking, post)?;
        if faces.iter().any(|face| is_near(leaves, face)) {
            found.names.push(post.id.to_string());
            match post.role {
                PostRole::Hinge => found.hung_on.extend(faces),
                _ => found.faces.extend(faces),
            }
        }
    }
    for bollard in &site.bollard {
        let faces = of_bollard(asking, bollard)?;
        if faces.iter().any(|face| is_near(leaves, face)) {
            found.names.push(bollard.id.to_string());
            found.faces.extend(faces);
        }
    }
    if !low.is_empty() {
        defaults.push(Assumption::default(
            "what is stepped over and squeezes nobody",
            low.join(", "),
            "lower than 150 mm",
        ));
    }
    Ok(found)
}

fn of_thing<'s>(asking: &mut Asking<'s>, thing: &'s FixedThing) -> Result<Option<Face>, Halt> {
    let (Some(from), Some(to)) = (&thing.from, &thing.to) else {
        return Ok(None);
    };
    let [x0, y0, _] = asking.position_as_written((&thing.origin, "from"), Some(from))?;
    let [x1, y1, _] = asking.position_as_written((&thing.origin, "to"), Some(to))?;
    let face = Face {
        from: Spot { x: x0, y: y0 },
        to: Spot { x: x1, y: y1 },
    };
    Ok((face.from != face.to).then_some(face))
}

/// The four sides of a post; none where nobody wrote how wide it is.
fn of_post<'s>(asking: &mut Asking<'s>, post: &'s Post) -> Result<Vec<Face>, Halt> {
    let half =
        |length: &Option<Measured<Length>>| length.as_ref().map(|length| length.nominal() / 2.0);
    let pillar = post.pillar.as_ref();
    let along = pillar.and_then(|pillar| half(&pillar.length));
    let across = pillar.and_then(|pillar| half(&pillar.width));
    let half = half_width(post);
    let (along, across) = (along.unwrap_or(half), across.unwrap_or(half));
    if along.base() <= 0.0 || across.base() <= 0.0 {
        return Ok(Vec::new());
    }
    let [x, y, _] = asking.position_as_written((&post.origin, "at"), post.at.as_ref())?;
    Ok(sides((x, y), (along, across)))
}

/// A bollard as the square around it.
fn of_bollard<'s>(asking: &mut Asking<'s>, bollard: &'s Bollard) -> Result<Vec<Face>, Halt> {
    let Some(diameter) = &bollard.diameter else {
        return Ok(Vec::new());
    };
    let half = diameter.nominal() / 2.0;
    let [x, y, _] = asking.position_as_written((&bollard.origin, "at"), bollard.at.as_ref())?;
    Ok(sides((x, y), (half, half)))
}

fn sides((x, y): (Length, Length), (along, across): (Length, Length)) -> Vec<Face> {
    let corners = [
        (x - along, y - across),
        (x + along, y - across),
        (x + along, y + across),
        (x - along, y + across),
    ];
    let spot = |at: usize| {
        let (x, y) = corners[at % 4];
        Spot { x, y }
    };
    let side = |at: usize| Face {
        from: spot(at),
        to: spot(at + 1),
    };
    (0..4).map(side).collect()
}

fn is_near(leaves: &[SwingLeaf], face: &Face) -> bool {
    let flat = |spot: Spot| (spot.x.base(), spot.y.base());
    let piece = [flat(face.from), flat(face.to)];
    leaves
        .iter()
        .any(|leaf| from(flat(leaf.pivot), &piece) < leaf.length.base() + FAR)
}
