//! What stands near a gate: posts, bollards, walls and fences, seen from above.

use crate::asking::{Asking, read};
use crate::check::plane::{Piece, Point};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{Bollard, FixedThing, Gate, Post, Site};

/// A fixed thing.
#[derive(Debug, Clone)]
pub(crate) struct Thing {
    /// Its name on the site.
    pub(crate) name: String,
    /// Its outline seen from above.
    pub(crate) outline: Vec<Piece>,
    /// Its height above the finished surface.
    pub(crate) height: f64,
    /// Least gap between it and the moving leaf, where somebody measured it.
    pub(crate) measured: Option<Length>,
    /// It is long and stands beside the leaf: a wall or a fence, not a post.
    pub(crate) is_long: bool,
}

impl Thing {
    /// Corners of the box around it.
    pub(crate) fn bounds(&self) -> (Point, Point) {
        let points = self.outline.iter().flatten();
        points.fold(
            (
                (f64::INFINITY, f64::INFINITY),
                (f64::NEG_INFINITY, f64::NEG_INFINITY),
            ),
            |(low, high), point| {
                (
                    (low.0.min(point.0), low.1.min(point.1)),
                    (high.0.max(point.0), high.1.max(point.1)),
                )
            },
        )
    }
}

/// Everything fixed near a gate.
pub(crate) fn things<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Thing>, Halt> {
    let posts = gate.post.iter().map(|post| of_post(asking, post));
    let posts: Vec<_> = posts.collect();
    let near = gate.nearby.iter().map(|thing| of_thing(asking, thing));
    let near: Vec<_> = near.collect();
    let bollards = site
        .bollard
        .iter()
        .map(|bollard| of_bollard(asking, bollard));
    let bollards: Vec<_> = bollards.collect();
    posts.into_iter().chain(near).chain(bollards).collect()
}

fn of_post<'s>(asking: &mut Asking<'s>, post: &'s Post) -> Result<Thing, Halt> {
    let at = asking.position(&post.origin, "at", post.at.as_ref());
    let height = read!(asking, post.height);
    let (along, across) = if let Some(pillar) = &post.pillar {
        (read!(asking, pillar.length), read!(asking, pillar.width))
    } else {
        let width = read!(asking, post.width);
        (width, width)
    };
    let ([x, y, _], height) = (at?, height?);
    let half = (along?.base() / 2.0, across?.base() / 2.0);
    Ok(Thing {
        name: post.id.to_string(),
        outline: rectangle((x.base(), y.base()), half),
        height: height.base(),
        measured: None,
        is_long: false,
    })
}

fn of_bollard<'s>(asking: &mut Asking<'s>, bollard: &'s Bollard) -> Result<Thing, Halt> {
    let at = asking.position(&bollard.origin, "at", bollard.at.as_ref());
    let diameter = read!(asking, bollard.diameter);
    let height = read!(asking, bollard.height);
    let ([x, y, _], diameter, height) = (at?, diameter?, height?);
    let half = diameter.base() / 2.0;
    Ok(Thing {
        name: bollard.id.to_string(),
        outline: rectangle((x.base(), y.base()), (half, half)),
        height: height.base(),
        measured: None,
        is_long: false,
    })
}

fn of_thing<'s>(asking: &mut Asking<'s>, thing: &'s FixedThing) -> Result<Thing, Halt> {
    let from = asking.position(&thing.origin, "from", thing.from.as_ref());
    let to = asking.position(&thing.origin, "to", thing.to.as_ref());
    let height = read!(asking, thing.height);
    let measured = asking.read_if_there(&thing.origin, "gap", thing.gap.as_ref());
    let ([x0, y0, _], [x1, y1, _]) = (from?, to?);
    Ok(Thing {
        name: thing.id.to_string(),
        outline: vec![[(x0.base(), y0.base()), (x1.base(), y1.base())]],
        height: height?.base(),
        measured,
        is_long: true,
    })
}

/// A rectangle about its middle; a round bollard counts as the square around it, which is the safer one.
fn rectangle((x, y): Point, (along, across): Point) -> Vec<Piece> {
    let corners = [
        (x - along, y - across),
        (x + along, y - across),
        (x + along, y + across),
        (x - along, y + across),
    ];
    (0..4)
        .map(|at| [corners[at], corners[(at + 1) % 4]])
        .collect()
}
