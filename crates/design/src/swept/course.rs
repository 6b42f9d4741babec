//! The ways in and out: along the road, into the lane, through the gate; and back.

use crate::asking::{Asking, Wants};
use crate::check::bollard::corridor::flat;
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use sim::swept::{Course, Ground};
use sim::walk::Spot;
use site::{Lane, LaneWay, Position, WayDirection};

/// One way through a lane.
pub(crate) struct Way {
    pub(crate) direction: WayDirection,
    pub(crate) course: Course,
    pub(crate) ground: Ground,
    /// Where along it the gate line is.
    pub(crate) gate: Length,
}

/// How a way is written.
const WAY: &str = "[[lane.way]]\ndirection = \"in\"\npath = [[\"-60 ft\", \"-66 ft\", \"0 ft\"], [\"10 ft\", \"-66 ft\", \"0 ft\"]]\nroom_left = \"9 ft\"\nroom_right = \"6 ft\"";
const PATH: &str = "[[\"10 ft\", \"-60 ft\", \"0 ft\"], [\"10 ft\", \"40 ft\", \"0 ft\"]]";

/// The ways of a lane for a vehicle of that width, in the order in which they are written.
pub(crate) fn ways<'s>(
    asking: &mut Asking<'s>,
    lane: &'s Lane,
    vehicle: Length,
) -> Result<Vec<Way>, Halt> {
    let width = asking.read(&lane.origin, "width", lane.width.as_ref());
    if lane.path.len() < 2 {
        return asking.lack(&lane.origin, "path", Wants::Written(PATH));
    }
    if lane.way.is_empty() {
        return asking.lack(&lane.origin, "way", Wants::Table(WAY));
    }
    let ways: Vec<Result<Way, Halt>> = lane
        .way
        .iter()
        .map(|way| {
            let width = width.as_ref().map_err(|halt| *halt);
            of(asking, lane, way, (width.copied(), vehicle))
        })
        .collect();
    ways.into_iter().collect()
}

fn of<'s>(
    asking: &mut Asking<'s>,
    lane: &'s Lane,
    way: &'s LaneWay,
    (width, vehicle): (Result<Length, Halt>, Length),
) -> Result<Way, Halt> {
    let direction = asking.pick(&way.origin, "direction", way.direction);
    let left = asking.read(&way.origin, "room_left", way.room_left.as_ref());
    let right = asking.read(&way.origin, "room_right", way.room_right.as_ref());
    if way.path.len() < 2 {
        return asking.lack(&way.origin, "path", Wants::Written(PATH));
    }
    let (direction, left, right, width) = (direction?, left?, right?, width?);
    let half = vehicle / 2.0;
    let on_road = [left - half, right - half];
    let in_lane = [(width - vehicle) / 2.0; 2];
    let mut points: Vec<(&Position, [Length; 2])> = Vec::new();
    match direction {
        WayDirection::In => {
            points.extend(way.path.iter().map(|at| (at, on_road)));
            points.extend(lane.path.iter().map(|at| (at, in_lane)));
            // The stretch from the road's line to the lane's own first point is the lane's.
        }
        WayDirection::Out => {
            points.extend(lane.path.iter().rev().map(|at| (at, in_lane)));
            points.extend(way.path.iter().map(|at| (at, on_road)));
        }
    }
    made(asking, direction, &points)
}

fn made(
    asking: &mut Asking<'_>,
    direction: WayDirection,
    points: &[(&Position, [Length; 2])],
) -> Result<Way, Halt> {
    let mut corners: Vec<Spot> = Vec::new();
    let mut play: Vec<[Length; 2]> = Vec::new();
    let mut levels: Vec<(Length, Length)> = Vec::new();
    let mut gate = None;
    let mut last: Option<((f64, f64), [Length; 2])> = None;
    let mut along = 0.0;
    for (at, room) in points {
        let here = flat(at);
        if let Some((before, earlier)) = last {
            let step = (here.0 - before.0).hypot(here.1 - before.1);
            if step < 0.05 {
                continue;
            }
            if before.1 * here.1 <= 0.0 && (before.1 - here.1).abs() > 1e-9 && gate.is_none() {
                gate = Some(along + step * before.1 / (before.1 - here.1));
            }
            // Between road and lane the vehicle keeps to the lane.
            let narrower = if room[0] + room[1] < earlier[0] + earlier[1] {
                *room
            } else {
                earlier
            };
            play.push(narrower);
            along += step;
        }
        corners.push(Spot {
            x: Length::from_base(here.0),
            y: Length::from_base(here.1),
        });
        levels.push((Length::from_base(along), at.z.nominal()));
        last = Some((here, *room));
    }
    let ground = asking.in_reach(Ground::new(&levels))?;
    Ok(Way {
        direction,
        course: Course { corners, play },
        ground,
        gate: Length::from_base(gate.unwrap_or(along)),
    })
}
