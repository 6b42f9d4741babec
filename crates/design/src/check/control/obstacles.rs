//! What may stand between a control and the gate: fixed things, boxes, and leaves that stand open.

use super::envelope::{Envelope, Ground};
use super::view::{Eye, Target, Wall, hidden};
use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{Enclosure, FixedThing, Gate, Site};

/// A leaf with more of its area solid than this hides what is behind it.
const HIDING: f64 = 0.5;
/// How far a fixed thing is taken to reach into the ground, in meters.
const ROOTED: f64 = 1.0;
/// Height above everything, in meters, for a thing whose own is not yet asked.
const SKY: f64 = 1e6;

/// Something that may stand in the way, with its name.
pub(crate) struct Hides<'s> {
    pub(crate) name: &'s str,
    pub(crate) walls: Vec<Wall>,
    /// Index of the leaf that it is.
    pub(crate) leaf: Option<usize>,
    thing: Option<&'s FixedThing>,
}

/// Fixed things near the gate, and boxes.
pub(crate) fn in_the_way<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Hides<'s>>, Halt> {
    let fixed = gate.nearby.iter().map(|thing| fixed(asking, thing));
    let mut all: Vec<_> = fixed.collect();
    all.extend(
        site.enclosure
            .iter()
            .map(|enclosure| boxed(asking, enclosure)),
    );
    all.into_iter().collect()
}

fn fixed<'s>(asking: &mut Asking<'s>, thing: &'s FixedThing) -> Result<Hides<'s>, Halt> {
    let from = asking.position(&thing.origin, "from", thing.from.as_ref());
    let to = asking.position(&thing.origin, "to", thing.to.as_ref());
    let (from, to) = (from?, to?);
    let flat = |[x, y, _]: [Length; 3]| (x.base(), y.base());
    let wall = Wall {
        piece: [flat(from), flat(to)],
        bottom: from[2].base().min(to[2].base()) - ROOTED,
        top: SKY,
    };
    Ok(Hides {
        name: thing.id.as_str(),
        walls: vec![wall],
        leaf: None,
        thing: Some(thing),
    })
}

/// A box as the two diagonals of a square of its larger side: they hide what it hides, however it is turned.
fn boxed<'s>(asking: &mut Asking<'s>, enclosure: &'s Enclosure) -> Result<Hides<'s>, Halt> {
    let at = asking.position(&enclosure.origin, "at", enclosure.at.as_ref());
    let width = read!(asking, enclosure.width);
    let depth = read!(asking, enclosure.depth);
    let height = read!(asking, enclosure.height);
    let ([x, y, z], width, depth, height) = (at?, width?.base(), depth?.base(), height?.base());
    let (x, y, z, half) = (x.base(), y.base(), z.base(), width.max(depth) / 2.0);
    let diagonal = |side: f64| Wall {
        piece: [(x - half, y - side), (x + half, y + side)],
        bottom: z - height / 2.0,
        top: z + height / 2.0,
    };
    Ok(Hides {
        name: enclosure.id.as_str(),
        walls: vec![diagonal(half), diagonal(-half)],
        leaf: None,
        thing: None,
    })
}

/// The open leaves of a swing gate that are more solid than not.
pub(crate) fn open_leaves<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaves: &[Envelope],
) -> Result<Vec<Hides<'s>>, Halt> {
    let mut all = Vec::new();
    for (index, (leaf, envelope)) in gate.leaf.iter().zip(leaves).enumerate() {
        if matches!(envelope.ground, Ground::Strip(_)) {
            continue;
        }
        if read!(asking, leaf.solidity)?.base() > HIDING {
            all.push(Hides {
                name: leaf.id.as_str(),
                walls: vec![Wall {
                    piece: envelope.open(),
                    bottom: envelope.bottom,
                    top: envelope.top,
                }],
                leaf: Some(index),
                thing: None,
            });
        }
    }
    Ok(all)
}

/// Fixed things in the line of sight: how tall, and whether one sees through them. Those that are seen through go.
pub(crate) fn solid<'s>(
    asking: &mut Asking<'s>,
    eye: Eye,
    targets: &[(Target, Option<usize>)],
    things: &mut Vec<Hides<'s>>,
) -> Result<(), Halt> {
    let mut found = Ok(());
    things.retain_mut(|hides| {
        let Some(thing) = hides.thing else {
            return true;
        };
        let between = hides.walls.iter().any(|wall| {
            targets
                .iter()
                .any(|(target, _)| hidden(eye, target, wall).is_some())
        });
        if !between || thing.see_through == Some(true) {
            return false;
        }
        if thing.see_through.is_none() {
            found = asking.lack(&thing.origin, "see_through", Wants::Written("true"));
        }
        match read!(asking, thing.height) {
            Ok(height) => {
                for wall in &mut hides.walls {
                    wall.top = wall.bottom + ROOTED + height.base();
                }
            }
            Err(Halt) => found = Err(Halt),
        }
        true
    });
    found
}
