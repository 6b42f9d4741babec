//! What stands between a camera and what it has to see: posts, pillars, fences, boxes, bollards, the leaf, a vehicle.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use crate::vehicle::{ShownVehicle, leaf};
use crate::walk::half_width;
use quantity::{Length, Quantity as _};
use sim::camera::Hider;
use sim::vehicle::{Hinged, Leaf, Toward};
use site::{FixedThing, Gate, Position, Site};

/// Where the leaf is looked at: its name and the share of its travel.
pub(crate) const PLACES: [(&str, f64); 3] = [("closed", 0.0), ("half open", 0.5), ("open", 1.0)];

/// Something that stands, with its name.
#[derive(Debug, Clone)]
pub(crate) struct Standing {
    pub(crate) name: String,
    pub(crate) hider: Hider,
}

/// A leaf with less of its area solid is seen through.
const HIDING: f64 = 0.5;
/// Half the thickness of a fence or a wall (m).
const THIN: f64 = 0.03;
/// How deep what stands reaches into the ground, and how high what nobody has measured (m).
const ROOTED: f64 = 1.0;
const TALL: f64 = 10.0;
/// Pieces in which an arm is looked at.
const PIECES: u32 = 12;

type Point = (f64, f64);

fn hider(corners: &[Point], bottom: f64, top: f64) -> Hider {
    let corner = |(x, y): &Point| [*x, *y].map(Length::from_base);
    Hider {
        corners: corners.iter().map(corner).collect(),
        bottom: Length::from_base(bottom),
        top: Length::from_base(top),
    }
}

fn square((x, y): Point, half: f64, bottom: f64, top: f64) -> Hider {
    let corners = [
        (x - half, y - half),
        (x + half, y - half),
        (x + half, y + half),
        (x - half, y + half),
    ];
    hider(&corners, bottom, top)
}

/// A straight upright piece with a thickness.
fn wall([from, to]: [Point; 2], half: f64, bottom: f64, top: f64) -> Hider {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = dx.hypot(dy).max(1e-9);
    let (nx, ny) = (-dy / length * half, dx / length * half);
    let corners = [
        (from.0 - nx, from.1 - ny),
        (to.0 - nx, to.1 - ny),
        (to.0 + nx, to.1 + ny),
        (from.0 + nx, from.1 + ny),
    ];
    hider(&corners, bottom, top)
}

fn place(at: &Position) -> [f64; 3] {
    [
        at.x.nominal().base(),
        at.y.nominal().base(),
        at.z.nominal().base(),
    ]
}

/// Posts, fixed things that one does not see through, bollards and boxes, as far as their places are written.
pub(crate) fn fixed(site: &Site, gate: &Gate) -> Vec<Standing> {
    let high = |height: Option<&quantity::Measured<Length>>| {
        height.map_or(TALL, |height| height.nominal().base())
    };
    let posts = gate.post.iter().filter_map(|post| {
        let [x, y, z] = place(post.at.as_ref()?);
        let half = half_width(post).base().max(THIN);
        Some((
            &post.id,
            square((x, y), half, z - ROOTED, z + high(post.height.as_ref())),
        ))
    });
    let things = gate
        .nearby
        .iter()
        .filter_map(|thing| Some((&thing.id, wall_of(thing)?)));
    let bollards = site.bollard.iter().filter_map(|bollard| {
        let [x, y, z] = place(bollard.at.as_ref()?);
        let half = bollard.diameter.as_ref()?.nominal().base() / 2.0;
        Some((
            &bollard.id,
            square((x, y), half, z - ROOTED, z + high(bollard.height.as_ref())),
        ))
    });
    let boxes = site.enclosure.iter().filter_map(|enclosure| {
        let [x, y, z] = place(enclosure.at.as_ref()?);
        let side = |side: Option<&quantity::Measured<Length>>| Some(side?.nominal().base());
        let half = side(enclosure.width.as_ref())?.max(side(enclosure.depth.as_ref())?) / 2.0;
        let up = side(enclosure.height.as_ref())? / 2.0;
        Some((&enclosure.id, square((x, y), half, z - up, z + up)))
    });
    let all = posts.chain(things).chain(bollards).chain(boxes);
    let named = |(id, hider): (&site::Id, Hider)| Standing {
        name: id.to_string(),
        hider,
    };
    all.map(named).collect()
}

/// A fence or a wall; none where one sees through it.
fn wall_of(thing: &FixedThing) -> Option<Hider> {
    if thing.see_through == Some(true) {
        return None;
    }
    let (from, to) = (place(thing.from.as_ref()?), place(thing.to.as_ref()?));
    let foot = from[2].min(to[2]);
    let height = thing.height.map_or(TALL, |height| height.nominal().base());
    let piece = [(from[0], from[1]), (to[0], to[1])];
    Some(wall(piece, THIN, foot - ROOTED, foot + height))
}

/// The leaf or leaves at a share of their travel; nothing where one sees through them.
pub(crate) fn leaf_at<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    share: f64,
) -> Result<Vec<Standing>, Halt> {
    let moving = leaf(asking, gate);
    let Some(first) = gate.leaf.first() else {
        return Err(Halt);
    };
    let length = read!(asking, first.length);
    let start = match gate.kind {
        site::GateKind::SingleSwing | site::GateKind::DoubleSwing => Ok(Length::from_base(0.0)),
        _ => read!(asking, first.closed_end),
    };
    let height = read!(asking, first.height);
    let solid = asking.read_if_there(&first.origin, "solidity", first.solidity.as_ref());
    let (moving, length, start, height) = (moving?, length?, start?, height?);
    if solid.is_some_and(|solid| solid.base() < HIDING) {
        return Ok(Vec::new());
    }
    let hiders = hiders(&moving, share, (start.base(), length.base(), height.base()));
    let named = |(index, hider): (usize, Hider)| {
        let own = gate.leaf.get(index).unwrap_or(first);
        Standing {
            name: own.id.to_string(),
            hider,
        }
    };
    Ok(hiders.into_iter().map(named).collect())
}

/// The leaves as upright pieces, each with the index of its leaf; start, length and height are those of the first.
fn hiders(
    leaf: &Leaf,
    share: f64,
    (start, length, height): (f64, f64, f64),
) -> Vec<(usize, Hider)> {
    match leaf {
        Leaf::Slide {
            open,
            closed,
            bottom,
            top,
            thickness,
        } => {
            let from = closed.base() + share * (*open - *closed).base();
            let piece = [(from, 0.0), (from + length, 0.0)];
            let half = thickness.base() / 2.0;
            vec![(0, wall(piece, half, bottom.base(), top.base()))]
        }
        Leaf::Lift {
            open,
            closed,
            thickness,
        } => {
            let bottom = closed.base() + share * (*open - *closed).base();
            let piece = [(start, 0.0), (start + length, 0.0)];
            vec![(
                0,
                wall(piece, thickness.base() / 2.0, bottom, bottom + height),
            )]
        }
        Leaf::Arm {
            pivot,
            toward,
            length,
            bottom,
            open,
            thickness,
        } => {
            let side = sign(*toward);
            let turn = share * open.base();
            let arm = (pivot.base(), side * length.base() / f64::from(PIECES), turn);
            let piece =
                |at: u32| arm_piece(arm, f64::from(at), (bottom.base(), height), *thickness);
            (0..PIECES).map(|at| (0, piece(at))).collect()
        }
        Leaf::Swing {
            leaves,
            side,
            bottom,
            top,
            thickness,
        } => {
            let swung = |hinged: &Hinged| {
                let turn = share * hinged.open.base();
                let (x, y) = (turn.cos() * sign(hinged.toward), turn.sin() * sign(*side));
                let tip = (
                    hinged.pivot.base() + hinged.length.base() * x,
                    hinged.length.base() * y,
                );
                let piece = [(hinged.pivot.base(), 0.0), tip];
                wall(piece, thickness.base() / 2.0, bottom.base(), top.base())
            };
            leaves.iter().map(swung).enumerate().collect()
        }
    }
}

fn sign(toward: Toward) -> f64 {
    match toward {
        Toward::Greater => 1.0,
        Toward::Smaller => -1.0,
    }
}

/// A piece of an arm that is turned up about its pivot, as a box around it.
fn arm_piece(
    (pivot, step, turn): (f64, f64, f64),
    at: f64,
    (bottom, height): (f64, f64),
    thickness: Length,
) -> Hider {
    let (from, to) = (at * step, (at + 1.0) * step);
    let (cos, sin) = (turn.cos(), turn.sin());
    let lean = height * sin * step.signum();
    let xs = [from * cos, to * cos, from * cos - lean, to * cos - lean];
    let left = xs
        .iter()
        .copied()
        .fold(f64::INFINITY, f64::min)
        .min(-1e-3 + xs[0]);
    let right = xs
        .iter()
        .copied()
        .fold(f64::NEG_INFINITY, f64::max)
        .max(1e-3 + xs[0]);
    let (low, high) = (from.abs() * sin, to.abs() * sin);
    let piece = [(pivot + left, 0.0), (pivot + right, 0.0)];
    wall(
        piece,
        thickness.base() / 2.0,
        bottom + low,
        bottom + high + height * cos,
    )
}

/// A vehicle as it stands in the gate.
pub(crate) fn parked(vehicle: &ShownVehicle) -> Vec<Standing> {
    let (middle, front) = (vehicle.middle.base(), vehicle.front.base());
    let of = |part: &sim::vehicle::Part| {
        let half = part.width.base() / 2.0;
        let (near, far) = (front - part.to.base(), front - part.from.base());
        let corners = [
            (middle - half, near),
            (middle + half, near),
            (middle + half, far),
            (middle - half, far),
        ];
        Standing {
            name: vehicle.id.clone(),
            hider: hider(&corners, part.bottom.base(), part.top.base()),
        }
    };
    vehicle.outline.parts.iter().map(of).collect()
}
