//! What vehicles sweep in a lane, for drawings: lines, outlines, the places of least room, and the grade under them.

use super::{STEP, Things, Way, drivers, gate_of, over, rolling, things, ways};
use crate::asking::Asking;
use quantity::{Length, Quantity as _};
use sim::swept::{Envelope, Nearest, OverGround, Rig, Under};
use sim::walk::Spot;
use site::{Lane, Site, Vehicle, WayDirection};

/// A lane with the vehicles that drive it.
#[derive(Debug, Clone)]
pub struct ShownLane {
    /// Its name.
    pub id: String,
    /// Its name as a sentence has it.
    pub called: String,
    /// The gate that it leads through.
    pub gate: String,
    /// Its edges, left and right.
    pub edges: Vec<Vec<Spot>>,
    /// What its vehicles sweep, each way.
    pub sweeps: Vec<ShownSweep>,
    /// Names of vehicles that cannot be drawn since facts are missing, or that no line lets through.
    pub missing: Vec<String>,
}

/// What a vehicle sweeps on one way.
#[derive(Debug, Clone)]
pub struct ShownSweep {
    /// Name of the vehicle.
    pub id: String,
    /// What it is.
    pub what: String,
    /// Which way it drives.
    pub direction: WayDirection,
    /// The line of the middle of its front axle.
    pub path: Vec<Spot>,
    /// What is swept.
    pub envelope: Envelope,
    /// The places of least room, the least first.
    pub nearest: Vec<ShownNearest>,
    /// Levels of the ground along the way, counted from the gate line.
    pub ground: Vec<(Length, Length)>,
    /// What each unit stands on where its underside is lowest: front support and axle, counted from the gate line.
    pub supports: Vec<[(Length, Length); 2]>,
    /// The lowest underside, its places counted from the gate line; none where undersides are not known.
    pub lowest: Option<OverGround>,
    /// Its units, for its side view.
    pub rig: Rig,
    /// Their undersides.
    pub under: Vec<Under>,
    /// Its height.
    pub height: Option<Length>,
}

/// A place of little room.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownNearest {
    /// What stands there.
    pub name: String,
    /// The room.
    pub room: Length,
    /// On the vehicle.
    pub on: Spot,
    /// On what stands there, or on the edge.
    pub at: Spot,
    /// It is an edge, which tires keep.
    pub is_edge: bool,
}

/// The lanes of a site with what is swept there.
pub fn shown(site: &Site) -> Vec<ShownLane> {
    let lanes = site.lane.iter().filter(|lane| !lane.way.is_empty());
    lanes.filter_map(|lane| of(site, lane)).collect()
}

fn of(site: &Site, lane: &Lane) -> Option<ShownLane> {
    let gate = gate_of(site, lane)?;
    let mut asking = Asking::new(site.site.unit_system());
    let things = things(&mut asking, site, lane).ok()?;
    let (mut sweeps, mut missing) = (Vec::new(), Vec::new());
    for vehicle in drivers(site, lane) {
        let found = swept(&mut asking, lane, vehicle, &things);
        match found.filter(|found| !found.is_empty()) {
            Some(found) => sweeps.extend(found),
            None => missing.push(vehicle.id.to_string()),
        }
    }
    Some(ShownLane {
        id: lane.id.to_string(),
        called: lane.called(),
        gate: gate.id.to_string(),
        edges: things
            .place
            .edges
            .iter()
            .map(|edge| edge.line.clone())
            .collect(),
        sweeps,
        missing,
    })
}

fn swept<'s>(
    asking: &mut Asking<'s>,
    lane: &'s Lane,
    vehicle: &'s Vehicle,
    things: &Things,
) -> Option<Vec<ShownSweep>> {
    let rolling = rolling(asking, vehicle).ok()?;
    let ways = ways(asking, lane, rolling.width).ok()?;
    let margin = vehicle.margin.as_ref().map(quantity::Measured::nominal);
    let margin = margin.unwrap_or(Length::from_base(super::USUAL_MARGIN));
    let mut all = Vec::new();
    for way in &ways {
        let step = Length::from_base(STEP);
        let found = rolling.rig.best(&way.course, &things.place, (margin, step));
        let found = found.ok()??;
        let every = Length::from_base(3.0);
        let envelope = rolling.rig.outline(&found.path, every).ok()?;
        let under = rolling.under.clone().unwrap_or_default();
        let lowest = over(asking, &rolling, &under, way)
            .ok()
            .map(|over| over.found);
        let supports = lowest.map_or_else(Vec::new, |found| {
            let each = rolling.rig.supports(&way.ground, found.way).into_iter();
            each.map(|ends| ends.map(|(along, up)| (along - way.gate, up)))
                .collect()
        });
        all.push(ShownSweep {
            id: vehicle.id.to_string(),
            what: vehicle.what.to_string(),
            direction: way.direction,
            path: found.path.places(Length::from_base(0.5)),
            envelope,
            nearest: nearest(things, &found.room.nearest),
            ground: from_gate(way),
            supports,
            lowest: lowest.map(|found| moved(found, way)),
            rig: rolling.rig.clone(),
            under,
            height: rolling.height.ok(),
        });
    }
    Some(all)
}

/// The places of least room, the least first.
fn nearest(things: &Things, all: &[Nearest]) -> Vec<ShownNearest> {
    let shown = |one: &Nearest| ShownNearest {
        name: things.name(one.target).to_owned(),
        room: one.room,
        on: one.on,
        at: one.at,
        is_edge: matches!(one.target, sim::swept::Target::Edge(_)),
    };
    let mut all: Vec<ShownNearest> = all.iter().map(shown).collect();
    all.sort_by(|one, other| one.room.base().total_cmp(&other.room.base()));
    all
}

fn from_gate(way: &Way) -> Vec<(Length, Length)> {
    let levels = way.ground.levels().into_iter();
    levels.map(|(along, up)| (along - way.gate, up)).collect()
}

fn moved(found: OverGround, way: &Way) -> OverGround {
    OverGround {
        at: found.at - way.gate,
        way: found.way - way.gate,
        ..found
    }
}
