//! Lanes with what their vehicles sweep: from above, in and out, and from the side where an underside is lowest.

mod layers;
mod plan;
mod side;

use crate::sheets::{Planned, north};
use design::swept::{ShownLane, ShownSweep, shown};
use draw::{North, Point, ScaleChoice, Scene};
use quantity::Quantity as _;
use sim::walk::Spot;
use site::{Gate, Site, WayDirection};

/// The drawings of the lanes of a site whose ways from the road are described.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let lanes = shown(site);
    let drawn: Vec<&ShownLane> = lanes
        .iter()
        .filter(|lane| !lane.sweeps.is_empty())
        .collect();
    let several = drawn.len() > 1;
    drawn
        .iter()
        .filter_map(|lane| {
            let gate = site
                .gate
                .iter()
                .find(|gate| gate.id == *lane.gate.as_str())?;
            Some(of_lane(site, gate, lane, several))
        })
        .flatten()
        .collect()
}

fn of_lane(site: &Site, gate: &Gate, lane: &ShownLane, several: bool) -> Vec<Planned> {
    let named = |what: &str| {
        if several {
            format!("{what}-{}", lane.id)
        } else {
            what.to_owned()
        }
    };
    let mut sheets = vec![(
        named("lane-plan"),
        plan::scene((site, gate), lane),
        north(site),
    )];
    if let Some(side) = side::scene(site, lane) {
        sheets.push((named("lane-side"), side, North::NotSeenFromAbove));
    }
    let planned = sheets.into_iter().map(|(name, mut scene, north)| {
        remark(&mut scene, lane);
        Planned {
            name,
            scene,
            north,
            scale: ScaleChoice::LargestThatFits,
            half: false,
        }
    });
    planned.collect()
}

fn remark(scene: &mut Scene, lane: &ShownLane) {
    if !lane.missing.is_empty() {
        scene.remark(format!(
            "Not drawn, since measures are missing or no line lets them through: {}.",
            lane.missing.join(", ")
        ));
    }
}

/// The way that a vehicle drives, in a word.
fn direction(sweep: &ShownSweep) -> &'static str {
    match sweep.direction {
        WayDirection::In => "in",
        WayDirection::Out => "out",
    }
}

fn point(at: Spot) -> Point {
    Point::new(at.x, at.y)
}

fn points(line: &[Spot]) -> Vec<Point> {
    line.iter().map(|at| point(*at)).collect()
}

/// The least room of a sweep, edges and obstacles alike (m).
fn tightness(sweep: &ShownSweep) -> f64 {
    let rooms = sweep.nearest.iter().map(|one| one.room.base());
    rooms.fold(f64::INFINITY, f64::min)
}
