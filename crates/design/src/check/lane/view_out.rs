//! What hides a stretch of footpath or road from the eye of a driver who leaves.

use crate::asking::{Asking, read};
use crate::check::control::belongs;
use crate::check::control::envelope::{Ground, envelopes};
use crate::check::control::obstacles::{in_the_way, open_leaves, solid};
use crate::check::control::view::{Eye, Target, Wall, covered, hidden};
use crate::check::plane::{Piece, Point};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{ExitSight, Gate, GateKind, HidesView, Lane, Site};

/// A leaf with more of its area solid than this hides what is behind it.
const HIDING: f64 = 0.5;
/// How far a thing is taken to reach below its ground, in meters.
const ROOTED: f64 = 1.0;

/// How much of a stretch is hidden, and by what most.
pub(super) struct Hidden {
    pub(super) length: f64,
    /// Where the hidden parts begin and end.
    pub(super) ends: Vec<Point>,
    pub(super) by: Option<String>,
}

/// Something that may hide it.
struct Screen {
    name: String,
    walls: Vec<Wall>,
}

/// How much of a stretch at a height is hidden from an eye.
pub(super) fn look<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (lane, sight): (&'s Lane, &'s ExitSight),
    eye: Eye,
    (piece, height): (&Piece, f64),
) -> Result<Hidden, Halt> {
    let target = Target {
        piece: *piece,
        height,
    };
    let mut screens = Vec::new();
    let mut whole = Ok(());
    for thing in &sight.hides {
        match written(asking, thing) {
            Ok(screen) => screens.push(screen),
            Err(halt) => whole = Err(halt),
        }
    }
    let mut gates = site.gate.iter();
    if let Some(gate) = gates.find(|gate| belongs(site, gate, lane.gate.as_ref())) {
        match at_gate(asking, site, gate, (eye, target)) {
            Ok(more) => screens.extend(more),
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    Ok(shadows(&screens, eye, &target))
}

fn written<'s>(asking: &mut Asking<'s>, thing: &'s HidesView) -> Result<Screen, Halt> {
    let from = asking.position(&thing.origin, "from", thing.from.as_ref());
    let to = asking.position(&thing.origin, "to", thing.to.as_ref());
    let height = read!(asking, thing.height);
    let ([x, y, z], [x2, y2, z2]) = (from?.map(Length::base), to?.map(Length::base));
    Ok(Screen {
        name: format!("the {}", thing.what),
        walls: vec![Wall {
            piece: [(x, y), (x2, y2)],
            bottom: z.min(z2) - ROOTED,
            top: z.max(z2) + height?.base(),
        }],
    })
}

/// Fixed things, boxes and open leaves of a gate.
fn at_gate<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    (eye, target): (Eye, Target),
) -> Result<Vec<Screen>, Halt> {
    let things = in_the_way(asking, site, gate);
    let leaves = envelopes(asking, gate);
    let (mut things, leaves) = (things?, leaves?);
    things.extend(open_leaves(asking, gate, &leaves)?);
    solid(asking, eye, &[(target, None)], &mut things)?;
    let mut screens: Vec<Screen> = things
        .into_iter()
        .map(|hides| Screen {
            name: hides.name.to_owned(),
            walls: hides.walls,
        })
        .collect();
    if !matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide) {
        return Ok(screens);
    }
    for (leaf, envelope) in gate.leaf.iter().zip(&leaves) {
        let (Ground::Strip([_, end]), length) = (&envelope.ground, read!(asking, leaf.length)?)
        else {
            continue;
        };
        if read!(asking, leaf.solidity)?.base() > HIDING {
            screens.push(Screen {
                name: leaf.id.to_string(),
                walls: vec![Wall {
                    piece: [(end.0 - length.base(), 0.0), *end],
                    bottom: envelope.bottom,
                    top: envelope.top,
                }],
            });
        }
    }
    Ok(screens)
}

fn shadows(screens: &[Screen], eye: Eye, target: &Target) -> Hidden {
    let cast: Vec<(Vec<(f64, f64)>, &str)> = screens
        .iter()
        .map(|screen| {
            let cast = screen
                .walls
                .iter()
                .filter_map(|wall| hidden(eye, target, wall));
            (cast.collect(), screen.name.as_str())
        })
        .collect();
    let all: Vec<(f64, f64)> = cast
        .iter()
        .flat_map(|(cast, _)| cast.iter().copied())
        .collect();
    let most = cast
        .iter()
        .filter(|(cast, _)| !cast.is_empty())
        .max_by(|one, other| covered(&one.0).total_cmp(&covered(&other.0)));
    let [from, to] = target.piece;
    let at = |share: f64| {
        (
            from.0 + (to.0 - from.0) * share,
            from.1 + (to.1 - from.1) * share,
        )
    };
    Hidden {
        length: covered(&all) * target.length(),
        ends: all
            .iter()
            .flat_map(|(low, high)| [at(*low), at(*high)])
            .collect(),
        by: most.map(|(_, name)| (*name).to_owned()),
    }
}
