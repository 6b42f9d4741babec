//! A case as moments: when a device sees the body, when the leaf brakes, when it touches and stands.

use super::moments::{Case, IN_A_ROW, Moment, Seen, View};
use super::part::Part;
use super::shapes::{half_thickness, laid_flat};
use super::view::{Stage, views};
use design::walk::ShownCase;
use draw::Point;
use quantity::{Length, Quantity as _, Time, UnitSystem, print};
use sim::walk::{
    Account, AnyWorld, Body, Direction, Frame, Pose, RisingLeaf, Scenario, Sight, Spot, Way,
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

/// The moments of a case, in an opening so wide.
pub(crate) fn case(
    (world, opening): (&AnyWorld, Option<Length>),
    shown: &ShownCase,
    (title, words): (String, String),
    units: UnitSystem,
) -> Option<Case> {
    let (scenario, account) = (&shown.scenario, &shown.account);
    let direction = world.direction(scenario.pass)?;
    let body = world.bodies().get(scenario.body)?;
    let touch = account.outcome.touch;
    let road = matches!(world, AnyWorld::Rising(_));
    let times = times(account, &shown.devices, if road { IN_A_ROW } else { MOST });
    let pictured = times.into_iter().map(|(time, words)| {
        let touched = touch.is_some_and(|touch| touch.time == time);
        let exact = account.at_touch.as_ref().filter(|_| touched);
        let frame = exact.or_else(|| nearest(&account.frames, time))?;
        Some((time, words, touched, frame))
    });
    let pictured: Option<Vec<_>> = pictured.collect();
    let pictured = pictured.filter(|all| !all.is_empty())?;
    let half = half_thickness(world);
    let seen = |view: &View, frame: &Frame| Seen {
        leaves: leaves(world, direction, &frame.leaf, view.from_the_road),
        body: parts(body, scenario, frame, half.filter(|_| view.from_the_road)),
    };
    let last = pictured.last().map(|(.., frame)| frame.body)?;
    let views = views(&Stage {
        world,
        direction,
        opening,
        touched: touch.map(|touch| touch.time),
        touch: touch.map(|touch| touch.at),
        meets: account.meets,
        last,
        frames: &pictured
            .iter()
            .map(|(.., frame)| *frame)
            .collect::<Vec<_>>(),
        units,
    })?;
    let moments = pictured.iter().map(|(time, words, touched, frame)| Moment {
        time: *time,
        words: words.clone(),
        note: note(world, &frame.leaf, units),
        seen: views.iter().map(|view| seen(view, frame)).collect(),
        touched: *touched,
    });
    Some(Case {
        title,
        words,
        moments: moments.collect(),
        views,
    })
}

/// How a leaf that rises stands.
fn note(world: &AnyWorld, pose: &Pose, units: UnitSystem) -> String {
    let (AnyWorld::Rising(world), Pose::Front([heel, tip, other, _])) = (world, pose) else {
        return String::new();
    };
    if let RisingLeaf::Lifting(_) = world.leaf {
        return format!("underside {} up", print(heel.y, units));
    }
    let turned = (tip.y - heel.y).base().atan2((tip.x - heel.x).base().abs());
    let end = (tip.y + other.y) / 2.0;
    format!(
        "{:.0}° up, its end at {}",
        turned.to_degrees(),
        print(end, units)
    )
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
fn leaves(world: &AnyWorld, direction: Direction, pose: &Pose, road: bool) -> Vec<Vec<Point>> {
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
        (Pose::Front(one), _) if road => vec![outline(one)],
        (Pose::Front(one), world) => half_thickness(world)
            .map(|half| laid_flat(one, half))
            .into_iter()
            .collect(),
        (Pose::Edge(_), _) => Vec::new(),
    }
}

/// The parts of a body that stands or goes at a place; seen from the road where half the thickness of the leaf is given.
fn parts(body: &Body, scenario: &Scenario, frame: &Frame, half: Option<Length>) -> Vec<Part> {
    let (slant, forward) = (
        scenario.slant.base(),
        if scenario.way == Way::In { 1.0 } else { -1.0 },
    );
    let long = slant.hypot(1.0);
    let (x, y) = (slant / long, forward / long);
    let parts = body.parts.iter();
    parts
        .map(|part| {
            let at = Point::new(
                frame.body.x + part.ahead * x + part.aside * y,
                frame.body.y + part.ahead * y - part.aside * x,
            );
            let Some(half) = half else {
                return Part::Circle(at, part.radius);
            };
            let (left, right) = (at.x - part.radius, at.x + part.radius);
            let (low, high) = (Point::new(left, part.bottom), Point::new(right, part.top));
            // A touch with the rim counts: there the two are exactly so far apart.
            let off = at.y.base().abs() - (part.radius + half).base();
            Part::Box(low, high, off < 1e-6)
        })
        .collect()
}
