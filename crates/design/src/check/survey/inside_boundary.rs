//! Whether everything that moves or stands for a gate stays inside the property.
//!
//! The ground that each leaf passes over in its whole travel, and the place of each device, post, operator and box, is held
//! against each boundary line. A point is outside where its straight way to a point of the property crosses the line.

use crate::asking::{Asking, Wants, pick};
use crate::check::control::devices_of;
use crate::check::control::envelope::{Envelope, envelopes};
use crate::check::plane::{Piece, Point, from};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Boundary, Gate, GateKind, Position, Site, SwingSide};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "survey-inside-boundary",
    codes: BOTH,
    leaves_open: "whether the marks are where the deed says, what the road law asks of a gate near the road, and people who stand outside within reach of the leaf",
    concerns: "each gate",
    ask,
};

static INSIDE: Source = Source {
    work: "UL 325, installation instructions",
    clause: "a gate does not open into a public access area",
    evidence: Evidence::Seen,
    seen: "gate-operator manuals from 2008 to 2018 that reprint the instructions (addresses withheld)",
};

static LINES: Source = Source {
    work: "distances of the swept ground from the boundary line",
    clause: "",
    evidence: Evidence::Physics,
    seen: "plane geometry",
};

/// How a boundary is written.
const BOUNDARY: &str = "[[boundary]]\nid = \"lot-line\"\nline = [[\"-60 ft\", \"-20 ft\", \"0 ft\"], [\"80 ft\", \"-20 ft\", \"0 ft\"]]\ninside = [\"10 ft\", \"40 ft\", \"0 ft\"]\nbeyond = \"public way\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            inside(asking, site, gate)
        });
    }
}

/// A boundary as pieces, with a point of the property.
struct Edge<'s> {
    name: &'s str,
    pieces: Vec<Piece>,
    inside: Point,
}

/// Something that stands or moves, with its name: its least distance from a piece, and its points.
struct Body<'s> {
    name: &'s str,
    leaf: Option<Envelope>,
    points: Vec<Point>,
}

fn inside<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&INSIDE);
    asking.rest_on(&LINES);
    let lines = edges(asking, site);
    let bodies = bodies(asking, site, gate);
    let public = opens_into_public(asking, gate);
    let (lines, bodies, public) = (lines?, bodies?, public?);
    let mut worst: Option<(Found<'s>, &Body<'s>)> = None;
    for body in &bodies {
        for edge in &lines {
            let found = held(body, edge);
            if worst
                .as_ref()
                .is_none_or(|(least, _)| found.room < least.room)
            {
                worst = Some((found, body));
            }
        }
    }
    let Some((found, body)) = worst else {
        return asking.refuse("there is nothing to hold against the boundary");
    };
    let room = Length::from_base(found.room.abs());
    asking.say(|print| {
        let said = if found.room > 0.0 {
            format!(
                "nearest to the boundary {} comes {}, with {} to spare",
                found.edge,
                body.name,
                print.q(room)
            )
        } else {
            format!(
                "{} reaches {} beyond the boundary {}",
                body.name,
                print.q(room),
                found.edge
            )
        };
        let swings = if public {
            ". The leaf opens onto ground that everybody may use"
        } else {
            ""
        };
        format!("Of all that stands and moves, {said}{swings}.")
    });
    if public {
        return Ok(Outcome::Rule(false));
    }
    let nothing = Length::default();
    let (over, left) = if found.room > 0.0 {
        (nothing, room)
    } else {
        (room, nothing)
    };
    Ok(Outcome::Compared(Comparison::below(
        Labeled::new("reach beyond the boundary", over),
        Labeled::new("room to the boundary", left),
    )))
}

/// A swing leaf opens onto ground that everybody may use.
fn opens_into_public<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<bool, Halt> {
    if !matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing) {
        return Ok(false);
    }
    if pick!(asking, gate.swings)? == SwingSide::IntoProperty {
        return Ok(false);
    }
    let public = gate.public_in_front.as_ref();
    asking
        .need(&gate.origin, "public_in_front", public, "true")
        .copied()
}

fn edges<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Vec<Edge<'s>>, Halt> {
    if site.boundary.is_empty() {
        return asking.lack(&site.origin, "boundary", Wants::Table(BOUNDARY));
    }
    let edges: Vec<_> = site
        .boundary
        .iter()
        .map(|line| edge(asking, line))
        .collect();
    edges.into_iter().collect()
}

fn edge<'s>(asking: &mut Asking<'s>, boundary: &'s Boundary) -> Result<Edge<'s>, Halt> {
    let inside = asking.position(&boundary.origin, "inside", boundary.inside.as_ref());
    let second = asking.need(
        &boundary.origin,
        "line",
        boundary.line.get(1),
        "[[\"-60 ft\", \"-20 ft\", \"0 ft\"], [\"80 ft\", \"-20 ft\", \"0 ft\"]]",
    );
    let corners: Vec<Point> = boundary.line.iter().map(plan).collect();
    let [x, y, _] = inside?;
    second?;
    Ok(Edge {
        name: boundary.id.as_str(),
        pieces: corners.windows(2).map(|pair| [pair[0], pair[1]]).collect(),
        inside: (x.base(), y.base()),
    })
}

/// A position of the line, as it is marked.
fn plan(position: &Position) -> Point {
    (position.x.nominal().base(), position.y.nominal().base())
}

fn bodies<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Body<'s>>, Halt> {
    let leaves = envelopes(asking, gate);
    let mut bodies = Vec::new();
    let devices = devices_of(site, gate).flat_map(|device| {
        [("at", &device.at), ("to", &device.to)]
            .map(|(key, at)| (device.id.as_str(), &device.origin, key, at))
    });
    let operators = site
        .operators_of(gate)
        .map(|operator| (operator.id.as_str(), &operator.origin, "at", &operator.at));
    let posts = gate
        .post
        .iter()
        .map(|post| (post.id.as_str(), &post.origin, "at", &post.at));
    let boxes = site.enclosure.iter().map(|enclosure| {
        (
            enclosure.id.as_str(),
            &enclosure.origin,
            "at",
            &enclosure.at,
        )
    });
    for (name, origin, key, at) in devices.chain(operators).chain(posts).chain(boxes) {
        if let Some(at) = at {
            let [x, y, _] = asking.position(origin, key, Some(at))?;
            bodies.push(Body {
                name,
                leaf: None,
                points: vec![(x.base(), y.base())],
            });
        }
    }
    for (leaf, envelope) in gate.leaf.iter().zip(leaves?) {
        bodies.push(Body {
            name: leaf.id.as_str(),
            leaf: Some(envelope),
            points: envelope.rim(),
        });
    }
    Ok(bodies)
}

/// How one thing stands to one boundary: room, below zero where it is crossed.
struct Found<'s> {
    room: f64,
    edge: &'s str,
}

fn held<'s>(body: &Body<'_>, edge: &Edge<'s>) -> Found<'s> {
    let to_line = |point: &Point| {
        edge.pieces
            .iter()
            .map(|piece| from(*point, piece))
            .fold(f64::INFINITY, f64::min)
    };
    let over = body
        .points
        .iter()
        .filter(|point| outside(**point, edge))
        .map(to_line)
        .fold(f64::NEG_INFINITY, f64::max);
    let room = if over > f64::NEG_INFINITY {
        -over
    } else if let Some(leaf) = &body.leaf {
        let near = edge.pieces.iter().map(|piece| leaf.distance(piece));
        near.fold(f64::INFINITY, f64::min)
    } else {
        body.points
            .iter()
            .map(to_line)
            .fold(f64::INFINITY, f64::min)
    };
    Found {
        room,
        edge: edge.name,
    }
}

/// The straight way from the property to the point crosses the line an odd number of times.
fn outside(point: Point, edge: &Edge<'_>) -> bool {
    let turn =
        |a: Point, b: Point, c: Point| (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0) > 0.0;
    let crosses = |piece: &&Piece| {
        let apart = turn(edge.inside, point, piece[0]) != turn(edge.inside, point, piece[1]);
        apart && turn(piece[0], piece[1], edge.inside) != turn(piece[0], piece[1], point)
    };
    edge.pieces.iter().filter(crosses).count() % 2 == 1
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "us"
        [[boundary]]
        id = "lot-line"
        line = [["-20 m", "-6 m", "0 m"], ["6.5 m", "-6 m", "0 m"], ["6.5 m", "30 m", "0 m"]]
        inside = ["2 m", "10 m", "0 m"]
        beyond = "public way"
        [[gate]]
        id = "main"
        kind = "single-swing"
        clear_opening = "4 m"
        travel_angle = "90°"
        swings = "into the property"
        [[gate.leaf]]
        id = "leaf"
        length = "4 m"
        thickness = "0.1 m"
        height = "1.8 m"
        ground_clearance = "50 mm"
        [[device]]
        id = "keypad"
        kind = "keypad"
        at = ["-1 m", "-5 m", "1 m"]
    "#;

    #[test]
    fn holds_inside() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!((finding.capacity.unwrap().value.unwrap() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn fails_where_a_pedestal_stands_on_the_road() {
        let out = SITE.replace("\"-5 m\", \"1 m\"", "\"-7.5 m\", \"1 m\"");
        let finding = only(&CHECK, &out);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!((finding.demand.unwrap().value.unwrap() - 1.5).abs() < 1e-9);
    }

    #[test]
    fn fails_where_a_leaf_swings_or_slides_across_the_line() {
        let wide = SITE.replace("\"90°\"", "\"170°\"");
        let finding = only(&CHECK, &wide);
        // Hinge at 4 m, the line at 6.5 m: at 170° the tip is 4.05 · cos 10° = 3.988 m beyond the hinge.
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let over = finding.demand.unwrap().value.unwrap();
        assert!(
            (over - (4.0 + 4.05 * 10_f64.to_radians().cos() - 6.5)).abs() < 1e-9,
            "{over}"
        );
        let slide = SITE
            .replace("single-swing", "track-slide\"\ntravel = \"3 m")
            .replace("length = \"4 m\"", "length = \"4 m\"\nclosed_end = \"0 m\"");
        assert_eq!(only(&CHECK, &slide).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_it_opens_onto_public_ground() {
        let road = SITE.replace("into the property", "toward the road");
        assert_eq!(only(&CHECK, &road).verdict, Verdict::UnknownUntil);
        let public = road.replace("swings =", "public_in_front = true\nswings =");
        let finding = only(&CHECK, &public);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let own = road.replace("swings =", "public_in_front = false\nswings =");
        assert_eq!(only(&CHECK, &own).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_a_boundary() {
        let (head, rest) = SITE.split_once("[[boundary]]").unwrap();
        let (_, tail) = rest.split_once("[[gate]]").unwrap();
        let bare = format!("{head}[[gate]]{tail}");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
    }
}
