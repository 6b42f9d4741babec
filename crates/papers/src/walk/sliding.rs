//! A case of a sliding leaf as moments: when a device sees the body, when the leaf brakes, when it touches and stands.

use super::moments::{Case, Moment};
use draw::Point;
use quantity::{Length, Quantity as _, Time};
use sim::walk::{Account, Body, Direction, Frame, Pass, Scenario, Sight, Way, World};

/// Moments nearer to each other than this are one (s).
const APART: f64 = 0.02;

/// What is shown before the touch, and how long after it (s).
const BEFORE: f64 = 0.5;
const AFTER: f64 = 2.0;

/// Leaf that is drawn behind its edge (m): more than any strip shows.
const DRAWN: f64 = 50.0;

/// The most moments of a case.
const MOST: usize = 6;

/// The moments of a scenario. `names` are those of the beams, and after them the fields, that act in its pass.
pub(crate) fn case(
    world: &World,
    scenario: &Scenario,
    account: &Account,
    names: &[String],
    (title, words): (String, String),
) -> Option<Case> {
    let pass = world.passes.get(scenario.pass)?;
    let body = world.bodies.get(scenario.body)?;
    let moment = |(time, words): (Time, String)| {
        let frame = nearest(&account.frames, time)?;
        Some(Moment {
            time,
            words,
            leaf: leaf(world, pass, frame.edge),
            body: parts(body, scenario, frame),
            touched: account
                .outcome
                .touch
                .is_some_and(|touch| touch.time == time),
        })
    };
    let moments: Option<Vec<Moment>> = times(account, names).into_iter().map(moment).collect();
    Some(Case {
        title,
        words,
        beams: beams(world, pass.direction),
        faces: faces(pass),
        touch: account
            .outcome
            .touch
            .map(|touch| spot(touch.at.x, touch.at.y)),
        moments: moments.filter(|moments| !moments.is_empty())?,
    })
}

/// What happens when, in order.
fn times(account: &Account, names: &[String]) -> Vec<(Time, String)> {
    let mut times = vec![(Time::from_base(0.0), "the leaf starts".to_owned())];
    for (index, sight) in account.sights.iter().enumerate() {
        if let Sight::Reports { said, .. } = sight {
            let name = names.get(index).map_or("a device", String::as_str);
            times.push((*said, format!("{name} reports")));
        }
    }
    times.extend(
        account
            .command
            .map(|time| (time, "the leaf brakes".to_owned())),
    );
    if let Some(touch) = account.outcome.touch {
        let before = touch.time - Time::from_base(BEFORE);
        times.push((before, format!("{BEFORE} s before")));
        times.push((touch.time, "the leaf touches".to_owned()));
        let stands = account.frames.windows(2).find(|pair| {
            pair[0].time > touch.time && (pair[0].edge - pair[1].edge).base().abs() < 1e-9
        });
        times.extend(stands.map(|pair| (pair[0].time, "the leaf stands".to_owned())));
    }
    if let Some(last) = account.frames.last() {
        let touch = account.outcome.touch;
        let after = touch.map_or(last.time, |touch| touch.time + Time::from_base(AFTER));
        let end = if after < last.time { after } else { last.time };
        times.push((end, "afterward".to_owned()));
        times.retain(|(time, _)| *time <= end);
    }
    times.sort_by(|one, other| one.0.base().total_cmp(&other.0.base()));
    times.dedup_by(|later, earlier| {
        let one = later.0.base() - earlier.0.base() < APART;
        if one {
            // The touch is never dropped for what happens at the same moment.
            if later.1 == "the leaf touches" {
                earlier.0 = later.0;
            }
            earlier.1 = format!("{}, {}", earlier.1, later.1);
        }
        one
    });
    while times.len() > MOST {
        let told = times
            .iter()
            .position(|(_, words)| words.ends_with("reports"));
        times.remove(told.unwrap_or(times.len() - 1));
    }
    times
}

fn nearest(frames: &[Frame], time: Time) -> Option<&Frame> {
    let off = |frame: &&Frame| (frame.time - time).base().abs();
    frames
        .iter()
        .min_by(|one, other| off(one).total_cmp(&off(other)))
}

fn spot(x: Length, y: Length) -> Point {
    Point::new(x, y)
}

/// The leaf's outline behind its edge.
fn leaf(world: &World, pass: &Pass, edge: Length) -> Vec<Point> {
    let half = world.leaf.thickness / 2.0;
    let behind = match pass.direction {
        Direction::Closing => edge + Length::from_base(DRAWN),
        Direction::Opening => edge - Length::from_base(DRAWN),
    };
    vec![
        spot(edge, -half),
        spot(behind, -half),
        spot(behind, half),
        spot(edge, half),
    ]
}

/// The parts of a body that stands or goes at a place.
fn parts(body: &Body, scenario: &Scenario, frame: &Frame) -> Vec<(Point, Length)> {
    let (slant, forward) = (
        scenario.slant.base(),
        if scenario.way == Way::In { 1.0 } else { -1.0 },
    );
    let long = slant.hypot(1.0);
    let (x, y) = (slant / long, forward / long);
    body.parts
        .iter()
        .map(|part| {
            let at = spot(
                frame.body.x + part.ahead * x + part.aside * y,
                frame.body.y + part.ahead * y - part.aside * x,
            );
            (at, part.radius)
        })
        .collect()
}

/// Beams, and sides of fields, that act in a direction.
fn beams(world: &World, direction: Direction) -> Vec<(Point, Point)> {
    let beams = world.beams.iter();
    let beams = beams.filter(|beam| beam.guards.contains(&direction));
    let mut lines: Vec<(Point, Point)> = beams
        .map(|beam| (spot(beam.from.x, beam.from.y), spot(beam.to.x, beam.to.y)))
        .collect();
    for field in &world.scanners {
        if field.guards.contains(&direction) {
            let corners = field.corners.iter();
            let next = corners.clone().cycle().skip(1);
            lines.extend(
                corners
                    .zip(next)
                    .map(|(one, other)| (spot(one.x, one.y), spot(other.x, other.y))),
            );
        }
    }
    lines
}

/// The face that the leaf moves toward, across the gate line.
fn faces(pass: &Pass) -> Vec<(Point, Point)> {
    let half = Length::from_base(0.15);
    pass.opposing
        .map(|face| vec![(spot(face, -half), spot(face, half))])
        .unwrap_or_default()
}
