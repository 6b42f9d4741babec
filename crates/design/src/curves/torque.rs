//! The torque about the hinge line of a swing leaf over its angle, opening and closing, in the operating wind and calm.

use super::{Graph, Line, Lines, Meaning, TravelCurve};
use crate::asking::{Asking, read};
use crate::check::force::swing_drive::hold;
use crate::check::force::turning::{At, torque_at, way};
use crate::check::wind::load::Wind;
use crate::outcome::Halt;
use quantity::{Angle, Quantity as _, Torque, UnitSystem};
use site::{Direction, Gate, GateKind, Leaf, Site};

/// Into how many steps the travel is cut.
const STEPS: u32 = 36;

/// Torque over angle of each leaf of a swing gate whose facts are known.
pub(super) fn torque(units: UnitSystem, site: &Site, gate: &Gate) -> Vec<TravelCurve> {
    swinging(gate)
        .filter_map(|leaf| curve(&mut Asking::new(units), site, gate, leaf).ok())
        .collect()
}

/// What was asked for the torque of each leaf of a swing gate, and whether that was enough.
pub(super) fn asked<'s>(
    units: UnitSystem,
    site: &'s Site,
    gate: &'s Gate,
) -> Vec<(Asking<'s>, bool)> {
    swinging(gate)
        .map(|leaf| {
            let mut asking = Asking::new(units);
            let is_drawn = curve(&mut asking, site, gate, leaf).is_ok();
            (asking, is_drawn)
        })
        .collect()
}

/// The leaves of a swing gate; none of another.
fn swinging(gate: &Gate) -> impl Iterator<Item = &Leaf> {
    let swings = matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing);
    gate.leaf.iter().filter(move |_| swings)
}

fn curve<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<TravelCurve, Halt> {
    let windy = |direction| (Some(Wind::Operating), direction);
    let opening = line(asking, site, gate, leaf, windy(Direction::Opening))?;
    let closing = line(asking, site, gate, leaf, windy(Direction::Closing))?;
    let calm = line(asking, site, gate, leaf, (None, Direction::Opening))?;
    let highest = |line: &[(Angle, Torque)]| {
        line.iter()
            .copied()
            .reduce(|one, other| if other.1 > one.1 { other } else { one })
    };
    let peak = highest(&opening).into_iter().chain(highest(&closing));
    let peak = peak.reduce(|one, other| if other.1 > one.1 { other } else { one });
    let print = asking.print();
    let points = peak.map(|at| (at, format!("hardest\n{}", print.q(at.1))));
    let named = |name, meaning, points| Line {
        name,
        meaning,
        points,
    };
    let mut lines = vec![
        named("opening, in the operating wind", Meaning::Demand, opening),
        named(
            "closing, in the operating wind",
            Meaning::OtherDemand,
            closing,
        ),
        named("opening on a calm day", Meaning::EasierDemand, calm),
    ];
    let has = capacity(&mut Asking::new(print.units()), site, gate, leaf);
    lines
        .extend(has.map(|has| named("what the drive has at cruise speed", Meaning::Capacity, has)));
    Ok(TravelCurve {
        gate: gate.id.to_string(),
        title: format!("Torque on leaf {} of gate {}", leaf.id, gate.id),
        graph: Graph::Torque(Lines {
            lines,
            points: points.into_iter().collect(),
            stretches: Vec::new(),
        }),
        remarks: vec![
            "At the values as written, without their tolerances; about the hinge line, at a steady speed.".to_owned(),
            "The wind is taken square to the leaf and against it at every angle.".to_owned(),
        ],
    })
}

/// What the leaf's drive brings to the hinge line at each angle, turning at cruise speed; nothing where that is not known.
fn capacity<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Option<Vec<(Angle, Torque)>> {
    let operator = site.operators_of_leaf(gate, leaf).next()?;
    let width = read!(asking, leaf.length).ok()?;
    let travel = read!(asking, gate.travel_angle).ok()?;
    let speed = read!(asking, gate.motion?.cruise_turning_speed).ok()?;
    let hold = hold(asking, operator, width).ok()?;
    let at = |step: u32| {
        let angle = travel * (f64::from(step) / f64::from(STEPS));
        let torque = hold.torque(asking, operator, (angle, speed)).ok()?;
        Some((angle, torque))
    };
    (0..=STEPS).map(at).collect()
}

fn line<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    (wind, direction): (Option<Wind>, Direction),
) -> Result<Vec<(Angle, Torque)>, Halt> {
    let at = At {
        angle: Angle::from_base(0.0),
        wind,
        direction,
        speeding_up: false,
        hindered: false,
    };
    let closed = torque_at(asking, site, gate, leaf, at)?;
    let mut line = Vec::new();
    for step in 0..=STEPS {
        let angle = closed.travel_angle * (f64::from(step) / f64::from(STEPS));
        let asked = formula::motion::SwingGateTorque {
            angle,
            way: way(direction),
            ..closed
        };
        line.push((angle, asking.work(&asked)?.steady));
    }
    Ok(line)
}
