//! The pull along a slide over its opening way, in the harder direction, against what the operator has at each speed.

use super::speed::{Part, Parts, parts};
use super::{Graph, Line, Lines, Meaning, TravelCurve};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::drive::operator_of;
use crate::check::force::operator_curve::force_at;
use crate::check::force::sliding::{Conditions, on_the_level};
use crate::outcome::Halt;
use formula::motion::SlideGateForce;
use quantity::{Acceleration, Force, Length, Quantity as _, Velocity};
use site::{Direction, Gate, GateKind, Operator, Site};

/// Into how many steps each part of the travel is cut.
const STEPS: u32 = 12;

/// Pull over travel; `None` for other gates, and where facts are missing.
pub(super) fn pull<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Option<TravelCurve> {
    let slides = matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    slides.then(|| curve(asking, site, gate).ok()).flatten()
}

/// A day that is calm, without seals and debris.
const CALM: Conditions = Conditions {
    wind: None,
    hindered: false,
    speeding_up: true,
};

fn curve<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<TravelCurve, Halt> {
    let operator = operator_of(asking, site, gate)?;
    let leaf = leaf_of(asking, gate, operator)?;
    let parts = parts(asking, gate)?;
    let slope = read!(asking, gate.slope)?;
    let worst = on_the_level(asking, site, gate, leaf, Conditions::IN_THE_WIND)?;
    let calm = on_the_level(asking, site, gate, leaf, CALM)?;
    let direction = if slope.base() >= 0.0 {
        Direction::Opening
    } else {
        Direction::Closing
    };
    let slope = if slope.base() >= 0.0 { slope } else { -slope };
    let travel = Travel {
        parts: &parts,
        direction,
    };
    let hardest = travel.line(asking, &SlideGateForce { slope, ..worst })?;
    let easier = travel.line(asking, &SlideGateForce { slope, ..calm })?;
    let capacity = travel.capacity(asking, operator);
    let peak = hardest
        .iter()
        .copied()
        .reduce(|one, other| if other.1 > one.1 { other } else { one });
    let words = asking.print();
    let points = peak
        .map(|at| (at, format!("hardest pull\n{}", words.q(at.1))))
        .into_iter()
        .collect();
    let line = |name, meaning, points| Line {
        name,
        meaning,
        points,
    };
    let mut lines = vec![
        line(
            "pull in the operating wind, seals and debris met",
            Meaning::Demand,
            hardest,
        ),
        line(
            "pull on a calm day, nothing in the way",
            Meaning::EasierDemand,
            easier,
        ),
    ];
    if let Ok(capacity) = capacity {
        lines.push(line(
            "what the operator has at that speed",
            Meaning::Capacity,
            capacity,
        ));
    }
    Ok(TravelCurve {
        gate: gate.id.to_string(),
        title: format!("Pull of gate {} while {direction}", gate.id),
        graph: Graph::Force(Lines { lines, points, stretches: travel.stretches() }),
        remarks: vec![
            "At the values as written, without their tolerances.".to_owned(),
            format!("Drawn for the harder direction, {direction}, with one slope over the whole travel."),
            "Seals and debris are taken to be met all the way; below zero the leaf drives its operator.".to_owned(),
        ],
    })
}

/// A travel in one direction, drawn over the way that the leaf stands open.
struct Travel<'a> {
    parts: &'a Parts,
    direction: Direction,
}

impl Travel<'_> {
    /// How far the leaf stands open after a way.
    fn open(&self, way: f64) -> Length {
        match self.direction {
            Direction::Opening => Length::from_base(way),
            Direction::Closing => self.parts.travel - Length::from_base(way),
        }
    }

    /// Places along the travel: the way there, the part, and the way within it.
    fn places(&self) -> Vec<(f64, Part, f64)> {
        let mut before = 0.0;
        let mut places = Vec::new();
        for part in &self.parts.all {
            for step in 0..=STEPS {
                let within = part.way() * f64::from(step) / f64::from(STEPS);
                places.push((before + within, *part, within));
            }
            before += part.way();
        }
        places
    }

    /// The pull along the travel: steady, and with what speeding up adds or slowing down takes away.
    fn line(
        &self,
        asking: &mut Asking<'_>,
        pull: &SlideGateForce,
    ) -> Result<Vec<(Length, Force)>, Halt> {
        let mut line = Vec::new();
        for (way, part, _) in self.places() {
            let rate = part.acceleration();
            let acceleration = Acceleration::from_base(rate.abs());
            let gives = asking.work(&SlideGateForce {
                acceleration,
                ..*pull
            })?;
            let inertia = if rate < 0.0 {
                -gives.inertia
            } else {
                gives.inertia
            };
            line.push((self.open(way), gives.steady + inertia));
        }
        Ok(line)
    }

    /// What the operator has at the speed of each place.
    fn capacity<'s>(
        &self,
        asking: &mut Asking<'s>,
        operator: &'s Operator,
    ) -> Result<Vec<(Length, Force)>, Halt> {
        let mut line = Vec::new();
        for (way, part, within) in self.places() {
            let speed = Velocity::from_base(part.speed_after(within));
            line.push((self.open(way), force_at(asking, operator, speed)?));
        }
        Ok(line)
    }

    fn stretches(&self) -> Vec<(Length, Length, &'static str)> {
        let mut before = 0.0;
        let mut stretches = Vec::new();
        for part in &self.parts.all {
            let (from, to) = (self.open(before), self.open(before + part.way()));
            stretches.push(if from < to {
                (from, to, part.name)
            } else {
                (to, from, part.name)
            });
            before += part.way();
        }
        stretches
    }
}
