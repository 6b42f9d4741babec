//! All that stands beside a way, and the edges of its lane.

use crate::asking::{Asking, read};
use crate::check::bollard::corridor::flat;
use crate::check::bollard::parts::{self, Part};
use crate::check::plane::Piece;
use crate::outcome::Halt;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use sim::swept::{Edge, Obstacle, Place, Target};
use sim::walk::Spot;
use site::{Lane, Position, SectionShape, Site};

/// What stands there, with names.
pub(crate) struct Things {
    pub(crate) place: Place,
    names: Vec<String>,
}

static HALF: Source = Source {
    work: "half a thickness of 4 in or 100 mm for pedestals, boxes and posts whose width is not written",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "shown because the site does not give each width",
};

/// Half the thickness of what has no width (m), and of fences and leaves.
const USUAL_HALF: f64 = 0.1;
const THIN: f64 = 0.03;

impl Things {
    /// What the room is beside, as a person says it.
    pub(crate) fn name(&self, target: Target) -> &str {
        match target {
            Target::Obstacle(index) => self.names.get(index).map_or("", String::as_str),
            Target::Edge(0) => "the left edge of the lane",
            Target::Edge(_) => "the right edge of the lane",
        }
    }
}

/// All that stands on the site where a vehicle could hit it, and the edges of a lane.
pub(crate) fn things<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    lane: &'s Lane,
) -> Result<Things, Halt> {
    asking.rest_on(&HALF);
    let parts = parts::parts(asking, site);
    let mut found: Vec<(String, Obstacle)> = Vec::new();
    let mut whole = Ok(());
    for bollard in &site.bollard {
        let place = parts::place(asking, bollard);
        let diameter = read!(asking, bollard.diameter);
        let top = asking.read_if_there(&bollard.origin, "height", bollard.height.as_ref());
        match place.and_then(|piece| diameter.map(|wide| (piece, wide))) {
            Ok((piece, wide)) => {
                let solid = obstacle(piece, wide / 2.0, top);
                found.push((bollard.id.to_string(), solid));
            }
            Err(halt) => whole = Err(halt),
        }
    }
    for thing in site.gate.iter().flat_map(|gate| &gate.nearby) {
        let from = asking.position(&thing.origin, "from", thing.from.as_ref());
        let to = asking.position(&thing.origin, "to", thing.to.as_ref());
        let top = asking.read_if_there(&thing.origin, "height", thing.height.as_ref());
        let flat = |[x, y, _]: [Length; 3]| (x.base(), y.base());
        match from.and_then(|from| to.map(|to| [flat(from), flat(to)])) {
            Ok(piece) => {
                let solid = obstacle(piece, Length::from_base(THIN), top);
                found.push((format!("the {}", thing.id), solid));
            }
            Err(halt) => whole = Err(halt),
        }
    }
    let edges = edges(asking, lane);
    for part in parts? {
        let half = half_of(site, &part);
        found.push((part.name.clone(), obstacle(part.piece, half, None)));
    }
    let edges = edges?;
    whole?;
    let (names, obstacles) = found.into_iter().unzip();
    Ok(Things {
        place: Place { obstacles, edges },
        names,
    })
}

fn obstacle(piece: Piece, radius: Length, top: Option<Length>) -> Obstacle {
    Obstacle {
        ends: piece.map(|(x, y)| Spot {
            x: Length::from_base(x),
            y: Length::from_base(y),
        }),
        radius,
        top: top.unwrap_or(Length::from_base(f64::INFINITY)),
    }
}

/// Half the width of a part: of a post by its width or its section, of a leaf next to nothing.
fn half_of(site: &Site, part: &Part<'_>) -> Length {
    if part.piece[0] != part.piece[1] {
        return Length::from_base(THIN);
    }
    let named = |id: &site::Id| part.ids.first().is_some_and(|first| **first == *id);
    let posts = site.gate.iter().flat_map(|gate| &gate.post);
    let post = posts.into_iter().find(|post| named(&post.id));
    let written = post.and_then(|post| {
        let across = post.width.as_ref().map(quantity::Measured::high);
        across.or_else(|| post.section.as_ref().map(|section| wide(section.shape())))
    });
    let boxes = site.enclosure.iter().find(|one| named(&one.id));
    let boxed = boxes.and_then(|one| one.width.as_ref().map(quantity::Measured::high));
    written
        .or(boxed)
        .map_or(Length::from_base(USUAL_HALF), |width| width / 2.0)
}

fn wide(shape: SectionShape) -> Length {
    match shape {
        SectionShape::Hss { depth, .. }
        | SectionShape::Tube { depth, .. }
        | SectionShape::Flat { depth, .. } => depth,
        SectionShape::RoundTube { diameter, .. } | SectionShape::Rod { diameter } => diameter,
        SectionShape::Pipe { nominal } => nominal,
    }
}

/// The edges of a lane: as written, else half its width beside its path.
fn edges<'s>(asking: &mut Asking<'s>, lane: &'s Lane) -> Result<Vec<Edge>, Halt> {
    let line = |corners: &[Position]| -> Vec<Spot> {
        let points = corners.iter().map(flat);
        points
            .map(|(x, y)| Spot {
                x: Length::from_base(x),
                y: Length::from_base(y),
            })
            .collect()
    };
    let written = lane.edges.as_ref();
    if let Some(edges) = written.filter(|it| it.left.len() > 1 && it.right.len() > 1) {
        return Ok(vec![
            Edge {
                line: line(&edges.left),
                lane_is_left: false,
            },
            Edge {
                line: line(&edges.right),
                lane_is_left: true,
            },
        ]);
    }
    let width = read!(asking, lane.width)?;
    let middle: Vec<(f64, f64)> = lane.path.iter().map(flat).collect();
    let beside = |by: f64| Edge {
        line: moved_aside(&middle, by),
        lane_is_left: by < 0.0,
    };
    let half = width.base() / 2.0;
    Ok(vec![beside(half), beside(-half)])
}

/// A line moved to its left by so much, each corner square to the mean of the directions that meet there.
fn moved_aside(points: &[(f64, f64)], by: f64) -> Vec<Spot> {
    let directions: Vec<(f64, f64)> = points
        .windows(2)
        .map(|pair| {
            let (x, y) = (pair[1].0 - pair[0].0, pair[1].1 - pair[0].1);
            let long = x.hypot(y).max(1e-9);
            (x / long, y / long)
        })
        .collect();
    let moved = |(index, point): (usize, &(f64, f64))| {
        let before = index.checked_sub(1).and_then(|index| directions.get(index));
        let after = directions.get(index);
        let (one, other) = match (before.or(after), after.or(before)) {
            (Some(one), Some(other)) => (*one, *other),
            _ => ((0.0, 1.0), (0.0, 1.0)),
        };
        let (x, y) = (one.0 + other.0, one.1 + other.1);
        let long = x.hypot(y).max(1e-9);
        Spot {
            x: Length::from_base(point.0 - y / long * by),
            y: Length::from_base(point.1 + x / long * by),
        }
    };
    points.iter().enumerate().map(moved).collect()
}
