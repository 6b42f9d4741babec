//! A case as moments: when a device sees the body, when the leaf brakes, when it touches and stands.

use super::moments::{Case, IN_A_ROW, Moment};
use super::part::Part;
use super::shapes::{beams, faces, fields, seen_from_the_road};
use design::walk::ShownCase;
use draw::Point;
use quantity::{Length, Quantity as _, Time};
use sim::walk::{
    Account, AnyWorld, Body, Direction, Frame, Pose, Scenario, Sight, Spot, Touch, Way,
};

/// Moments nearer to each other than this are one (s).
const APART: f64 = 0.02;

/// What is shown before the touch, and how long after it (s).
const BEFORE: f64 = 0.5;
const AFTER: f64 = 2.0;

/// Leaf that is drawn behind its edge (m): more than any strip shows.
const DRAWN: f64 = 50.0;

/// The most moments of a case.
const MOST: usize = 6;

/// The moments of a case.
pub(crate) fn case(
    world: &AnyWorld,
    shown: &ShownCase,
    (title, words): (String, String),
) -> Option<Case> {
    let (scenario, account) = (&shown.scenario, &shown.account);
    let direction = world.direction(scenario.pass)?;
    let body = world.bodies().get(scenario.body)?;
    let touch = account.outcome.touch;
    let moment = |(time, words): (Time, String)| {
        let frame = nearest(&account.frames, time)?;
        Some(Moment {
            time,
            words,
            leaves: leaves(world, direction, &frame.leaf),
            body: parts(body, scenario, frame),
            touched: touch.is_some_and(|touch| touch.time == time),
        })
    };
    let from_the_road = matches!(world, AnyWorld::Rising(_));
    let most = if from_the_road { IN_A_ROW } else { MOST };
    let times = times(account, &shown.devices, most).into_iter();
    let moments: Option<Vec<Moment>> = times.map(moment).collect();
    Some(Case {
        title,
        words,
        from_the_road,
        beams: if from_the_road {
            seen_from_the_road(world, direction)
        } else {
            let fields = fields(world, direction);
            let sides = fields.iter().flat_map(|field| {
                let next = field.iter().cycle().skip(1);
                field.iter().copied().zip(next.copied())
            });
            beams(world, direction).into_iter().chain(sides).collect()
        },
        faces: faces(world, direction),
        touch: touch.and_then(|touch| touched(world, shown, &touch)),
        moments: moments.filter(|moments| !moments.is_empty())?,
    })
}

/// What happens when, in order.
fn times(account: &Account, names: &[String], most: usize) -> Vec<(Time, String)> {
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
        if before.base() > BEFORE {
            times.push((before, format!("{BEFORE} s before")));
        }
        times.push((touch.time, "the leaf touches".to_owned()));
        let stands = account
            .frames
            .windows(2)
            .find(|pair| pair[0].time > touch.time && pair[0].leaf == pair[1].leaf);
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
    while times.len() > most {
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

/// The outlines of the leaves: of one that slides what is behind its edge.
fn leaves(world: &AnyWorld, direction: Direction, pose: &Pose) -> Vec<Vec<Point>> {
    let outline = |corners: &[Spot; 4]| corners.iter().map(|at| Point::new(at.x, at.y)).collect();
    match (pose, world) {
        (Pose::Edge(edge), AnyWorld::Sliding(world)) => {
            let half = world.leaf.thickness / 2.0;
            let behind = match direction {
                Direction::Closing => *edge + Length::from_base(DRAWN),
                Direction::Opening => *edge - Length::from_base(DRAWN),
            };
            vec![vec![
                Point::new(*edge, -half),
                Point::new(behind, -half),
                Point::new(behind, half),
                Point::new(*edge, half),
            ]]
        }
        (Pose::Above(all), _) => all.iter().map(outline).collect(),
        (Pose::Front(one), _) => vec![outline(one)],
        (Pose::Edge(_), _) => Vec::new(),
    }
}

/// The parts of a body that stands or goes at a place.
fn parts(body: &Body, scenario: &Scenario, frame: &Frame) -> Vec<Part> {
    let (slant, forward) = (
        scenario.slant.base(),
        if scenario.way == Way::In { 1.0 } else { -1.0 },
    );
    let long = slant.hypot(1.0);
    let (x, y) = (slant / long, forward / long);
    let from_the_road = matches!(frame.leaf, Pose::Front(_));
    body.parts
        .iter()
        .map(|part| {
            let at = Point::new(
                frame.body.x + part.ahead * x + part.aside * y,
                frame.body.y + part.ahead * y - part.aside * x,
            );
            if from_the_road {
                let (left, right) = (at.x - part.radius, at.x + part.radius);
                Part::Box(Point::new(left, part.bottom), Point::new(right, part.top))
            } else {
                Part::Circle(at, part.radius)
            }
        })
        .collect()
}

/// Where the touch is marked: seen from the road, where leaf and body meet.
fn touched(world: &AnyWorld, shown: &ShownCase, touch: &Touch) -> Option<Point> {
    let frame = nearest(&shown.account.frames, touch.time)?;
    let Pose::Front(leaf) = &frame.leaf else {
        return Some(Point::new(touch.at.x, touch.at.y));
    };
    let body = world.bodies().get(shown.scenario.body)?;
    let part = body.parts.get(touch.part)?;
    let height = middle_at(leaf, touch.at.x.base()).unwrap_or(part.top.base());
    let height = height.clamp(part.bottom.base(), part.top.base().max(part.bottom.base()));
    Some(Point::new(touch.at.x, Length::from_base(height)))
}

/// Height of the middle of an outline over a place; nothing where it is not over it.
fn middle_at(outline: &[Spot; 4], x: f64) -> Option<f64> {
    let ends = (0..4).map(|at| (outline[at], outline[(at + 1) % 4]));
    let crossed = ends.filter_map(|(one, other)| {
        let (from, to) = (one.x.base(), other.x.base());
        let share = (x - from) / (to - from);
        (0.0..=1.0)
            .contains(&share)
            .then(|| one.y.base() + share * (other.y - one.y).base())
    });
    let (low, high) = crossed.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
        (low.min(at), high.max(at))
    });
    (low <= high).then_some(f64::midpoint(low, high))
}
