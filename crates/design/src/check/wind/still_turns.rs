//! Leaves and arms that turn, in the wind in which they must still move.

use super::load::Wind;
use super::still_moves::{ABOVE, called};
use crate::asking::{Asking, read};
use crate::check::force::rising::{Rising, RisingAt, hardest as hardest_rise, rising};
use crate::check::force::turning::{At, torque_at, way};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::motion::{SwingGateTorque, SwingTorques};
use quantity::{Angle, Quantity as _, Torque};
use site::{Direction, Gate, Leaf, Operator, Site};

/// Angles at which a swing leaf is asked about, as shares of its travel.
const STATIONS: [f64; 5] = [0.0, 0.25, 0.5, 0.75, 1.0];

/// A leaf that turns about an upright line.
pub(super) fn swings<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    operator: &'s Operator,
) -> Answer {
    let demand = swing_torque(asking, site, (gate, leaf));
    against_drive(asking, site, leaf, (operator, demand))
}

/// An arm or a leaf that turns up about a level pivot.
pub(super) fn turns_up<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    operator: &'s Operator,
) -> Answer {
    let demand = rise_torque(asking, site, (gate, leaf));
    against_drive(asking, site, leaf, (operator, demand))
}

/// The greatest torque that a swing leaf asks in the operating wind.
pub(crate) fn swing_torque<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
) -> Result<Torque, Halt> {
    let at = At {
        angle: Angle::from_base(0.0),
        wind: Some(Wind::Operating),
        direction: Direction::Opening,
        speeding_up: false,
        hindered: false,
    };
    let torque = torque_at(asking, site, gate, leaf, at)?;
    Ok(hardest(asking, torque)?.total)
}

/// The greatest torque that an arm or a leaf asks on its way up or down in the operating wind.
pub(crate) fn rise_torque<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
) -> Result<Torque, Halt> {
    let worst = hardest_rise(
        asking,
        RisingAt::steady,
        |asking, at| rising(asking, site, gate, leaf, at),
        Rising::demand,
    )?;
    Ok(Torque::from_base(worst.demand()))
}

/// The torque in the wind against what the drive gives and what it takes for an obstacle at the free end.
fn against_drive<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    (operator, demand): (&'s Operator, Result<Torque, Halt>),
) -> Answer {
    let wind = read!(asking, site.climate?.operating_wind_speed);
    let length = read!(asking, leaf.length);
    let rated = read!(asking, operator.rated_torque);
    let threshold = read!(asking, operator.obstruction_force);
    let (wind, demand, length) = (wind?, demand?, length?);
    let (rated, threshold) = (rated?, threshold?);
    let obstacle = Torque::from_base(threshold.base() * length.base());
    let called = called(asking, site, wind);
    asking.say(|print| {
        format!(
            "In {}{called} {} asks {} where it is hardest to turn; the drive gives {} without end and takes {} for an obstacle. {ABOVE}",
            print.q(wind),
            leaf.id,
            print.q(demand),
            print.q(rated),
            print.q(obstacle)
        )
    });
    let demand = Labeled::new("torque in the wind", demand);
    let comparisons = [
        Comparison::at_most(demand, Labeled::new("torque given without end", rated)),
        Comparison::below(
            demand,
            Labeled::new("torque taken for an obstacle", obstacle),
        ),
    ];
    Outcome::worst(comparisons).ok_or(Halt)
}

/// The greatest torque over the travel, both ways.
fn hardest(asking: &mut Asking<'_>, torque: SwingGateTorque) -> Result<SwingTorques, Halt> {
    let mut worst: Option<SwingTorques> = None;
    for direction in [Direction::Opening, Direction::Closing] {
        for share in STATIONS {
            let here = asking.work(&SwingGateTorque {
                angle: torque.travel_angle * share,
                way: way(direction),
                ..torque
            })?;
            if worst.is_none_or(|worst| here.total > worst.total) {
                worst = Some(here);
            }
        }
    }
    worst.ok_or(Halt)
}
