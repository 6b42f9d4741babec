//! Speed of the leaf's edge over the time of one travel, from the site's motion profile.

use super::{Graph, Line, Lines, Meaning, TravelCurve};
use crate::asking::{Asking, read};
use crate::check::motion::{cruise_of, radius, turns};
use crate::outcome::Halt;
use formula::motion::{TrapezoidalTravel, TravelProfile};
use quantity::{Length, Quantity as _, Time, Velocity};
use site::Gate;

/// The parts of a travel: how long each takes and at which speed it ends (s, m/s).
#[derive(Debug, Clone)]
pub(super) struct Parts {
    pub(super) all: Vec<Part>,
    pub(super) travel: Length,
}

/// One part of a travel.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part {
    pub(super) name: &'static str,
    pub(super) time: f64,
    pub(super) from: f64,
    pub(super) to: f64,
}

impl Part {
    /// Way covered (m).
    pub(super) fn way(&self) -> f64 {
        self.time * f64::midpoint(self.from, self.to)
    }

    /// Change of speed with time (m/s²).
    pub(super) fn acceleration(&self) -> f64 {
        (self.to - self.from) / self.time
    }

    /// Speed after a part of its way (m/s).
    pub(super) fn speed_after(&self, way: f64) -> f64 {
        let squared = self.from.powi(2) + 2.0 * self.acceleration() * way;
        squared.max(0.0).sqrt()
    }
}

/// Speed over time; `None` where the motion is not described or out of reach.
pub(super) fn speed<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Option<TravelCurve> {
    let parts = parts(asking, gate).ok()?;
    let (mut time, mut points, mut stretches) = (0.0, vec![point(0.0, 0.0)], Vec::new());
    for part in &parts.all {
        let begin = time;
        time += part.time;
        points.push(point(time, part.to));
        stretches.push((Time::from_base(begin), Time::from_base(time), part.name));
    }
    let peak = parts.all.iter().map(|part| part.to).fold(0.0, f64::max);
    let words = asking.print();
    let said = |what: &str, value: String| format!("{what}\n{value}");
    let marked = vec![
        (
            point(parts.all.first().map_or(0.0, |part| part.time), peak),
            said("highest speed", words.q(Velocity::from_base(peak))),
        ),
        (
            point(time, 0.0),
            said("whole travel", words.q(Time::from_base(time))),
        ),
    ];
    let mut remarks = vec![
        "At the values as written, without their tolerances; ramps are drawn straight.".to_owned(),
    ];
    if turns(gate) {
        remarks.push("The speed is that of the free end.".to_owned());
    }
    let line = Line {
        name: "speed of the leaf",
        meaning: Meaning::Demand,
        points,
    };
    Some(TravelCurve {
        gate: gate.id.to_string(),
        title: format!("Speed of gate {} over one travel", gate.id),
        graph: Graph::Speed(Lines {
            lines: vec![line],
            points: marked,
            stretches,
        }),
        remarks,
    })
}

fn point(time: f64, speed: f64) -> (Time, Velocity) {
    (Time::from_base(time), Velocity::from_base(speed))
}

/// The parts of the travel at the leaf's edge: by the set point of the slow-down where it is given, else by the creep.
pub(super) fn parts<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Parts, Halt> {
    let travel = way_of_edge(asking, gate)?;
    let cruise_speed = cruise_of(asking, gate)?;
    let acceleration = read!(asking, gate.motion?.acceleration)?;
    let deceleration = read!(asking, gate.motion?.deceleration)?;
    let creep_speed = read!(asking, gate.motion?.creep_speed)?;
    let has_set_point = gate
        .motion
        .as_ref()
        .is_some_and(|motion| motion.slow_down_distance.is_some());
    let times = if has_set_point {
        let set_point = read!(asking, gate.motion?.slow_down_distance)?;
        let gives = asking.work(&TravelProfile {
            travel,
            cruise_speed,
            acceleration,
            deceleration,
            set_point,
            creep_speed,
        })?;
        let arrival = gives.arrival_speed.base();
        [
            ("soft start", gives.start_time, gives.peak_speed.base()),
            ("run", gives.cruise_time, gives.peak_speed.base()),
            (
                "slow-down",
                gives.slow_down_time,
                creep_speed.base().max(arrival),
            ),
            ("creep", gives.creep_time, creep_speed.base().max(arrival)),
            ("stop", gives.stop_time, arrival),
        ]
    } else {
        let creep_distance = read!(asking, gate.motion?.creep_distance)?;
        let gives = asking.work(&TrapezoidalTravel {
            travel,
            cruise_speed,
            acceleration,
            deceleration,
            creep_speed,
            creep_distance,
        })?;
        let creep = if creep_distance.base() > 0.0 {
            creep_speed
        } else {
            Velocity::from_base(0.0)
        };
        let last: Time = creep / deceleration;
        [
            (
                "soft start",
                gives.acceleration_time,
                gives.peak_speed.base(),
            ),
            ("run", gives.cruise_time, gives.peak_speed.base()),
            ("slow-down", gives.deceleration_time - last, creep.base()),
            ("creep", gives.creep_time, creep.base()),
            ("stop", last, 0.0),
        ]
    };
    let mut from = 0.0;
    let mut all = Vec::new();
    for (name, time, to) in times {
        if time.base() > 0.0 {
            all.push(Part {
                name,
                time: time.base(),
                from,
                to,
            });
            from = to;
        }
    }
    Ok(Parts { all, travel })
}

/// Way of the leaf's edge from stop to stop: straight, or along the arc of the free end.
fn way_of_edge<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    if !turns(gate) {
        return read!(asking, gate.travel);
    }
    let angle = read!(asking, gate.travel_angle);
    let radius = radius(asking, gate);
    Ok(radius? * angle?.base())
}
