//! What is unbalanced on an arm or a leaf that rises over its travel, and what its drive is asked for.

use super::{Graph, Line, Lines, Meaning, TravelCurve};
use crate::asking::Asking;
use crate::check::drive::leaf_of;
use crate::check::drive::operator_of;
use crate::check::force::rising::{Rising, RisingAt, rises, rising};
use crate::outcome::Halt;
use quantity::{Angle, Length, Measured, Quantity, Torque};
use site::{Gate, Site};

/// Into how many steps the travel is cut.
const STEPS: u32 = 36;

/// The curve of a gate that rises; `None` for other gates, and where facts are missing.
pub(super) fn rising_curve<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Option<TravelCurve> {
    rises(gate)
        .then(|| curve(asking, site, gate).ok())
        .flatten()
}

fn curve<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<TravelCurve, Halt> {
    let operator = operator_of(asking, site, gate)?;
    let leaf = leaf_of(asking, gate, operator)?;
    let mut line = |at: fn(f64) -> RisingAt| {
        let shares = (0..=STEPS).map(|step| f64::from(step) / f64::from(STEPS));
        shares
            .map(|share| rising(asking, site, gate, leaf, at(share)))
            .collect::<Result<Vec<Rising>, Halt>>()
    };
    let (starting, free) = (line(RisingAt::starting)?, line(RisingAt::free)?);
    let lifts = matches!(free.first(), Some(Rising::Lifting(..)));
    let (title, graph) = if lifts {
        let rated = operator.rated_force.as_ref().map(Measured::nominal);
        (
            "Force",
            Graph::Force(lines(asking, &starting, &free, (height, rated))),
        )
    } else {
        let rated = operator.rated_torque.as_ref().map(Measured::nominal);
        (
            "Torque",
            Graph::Torque(lines::<Angle, Torque>(
                asking,
                &starting,
                &free,
                (angle, rated),
            )),
        )
    };
    Ok(TravelCurve {
        gate: gate.id.to_string(),
        title: format!("{title} on the leaf of gate {} over its travel", gate.id),
        graph,
        remarks: vec![
            "At the values as written, without their tolerances.".to_owned(),
            "Above zero the leaf falls closed when it is let go, below zero it rises.".to_owned(),
        ],
    })
}

fn angle(rising: &Rising) -> Angle {
    match rising {
        Rising::Turning(angle, _) => *angle,
        Rising::Lifting(..) => Angle::from_base(0.0),
    }
}

fn height(rising: &Rising) -> Length {
    match rising {
        Rising::Lifting(height, _) => *height,
        Rising::Turning(..) => Length::from_base(0.0),
    }
}

fn lines<X: Quantity, Y: Quantity>(
    asking: &Asking<'_>,
    starting: &[Rising],
    free: &[Rising],
    (place, rated): (fn(&Rising) -> X, Option<Y>),
) -> Lines<X, Y> {
    let line = |name, meaning, all: &[Rising], figure: fn(&Rising) -> f64| Line {
        name,
        meaning,
        points: all
            .iter()
            .map(|it| (place(it), Y::from_base(figure(it))))
            .collect(),
    };
    let mut lines = vec![
        line(
            "asked of the drive, speeding up in the operating wind",
            Meaning::Demand,
            starting,
            Rising::demand,
        ),
        line(
            "let go on a calm day",
            Meaning::EasierDemand,
            free,
            Rising::unbalanced,
        ),
    ];
    if let (Some(rated), Some(first), Some(last)) = (rated, free.first(), free.last()) {
        lines.push(Line {
            name: "what the drive gives without end",
            meaning: Meaning::Capacity,
            points: vec![(place(first), rated), (place(last), rated)],
        });
    }
    let worst = starting
        .iter()
        .max_by(|one, other| one.demand().total_cmp(&other.demand()));
    let print = asking.print();
    let points = worst.map(|worst| {
        let at = (place(worst), Y::from_base(worst.demand()));
        (at, format!("hardest\n{}", print.q(at.1)))
    });
    Lines {
        lines,
        points: points.into_iter().collect(),
        stretches: Vec::new(),
    }
}
