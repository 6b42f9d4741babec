//! What is said of a vehicle at a gate.

use crate::asking::Asking;
use crate::vehicle::Passage;
use quantity::{Length, Quantity as _, Time, Velocity};
use sim::vehicle::{Facing, PartName, Unwatched};
use sim::walk::Direction;

/// Where it is touched: place, gap, moment.
pub(super) fn say_touched(
    asking: &mut Asking<'_>,
    passage: &Passage<'_>,
    what: &str,
    hold: Option<Time>,
    found: &Unwatched,
) {
    let lost = watching(passage, found, found.from);
    let next = watching(passage, found, found.to);
    asking.say(|print| {
        let front = found.front();
        let side = if front.base() < 0.0 { "outside" } else { "inside" };
        let facing = match found.facing {
            Facing::In => "its front toward the property",
            Facing::Out => "its front toward the road",
        };
        let place = Length::from_base(front.base().abs());
        let (does, starts) = match (found.motion, hold) {
            (Direction::Closing, Some(hold)) => ("closes", format!("when {} of holding open have run out, the leaf starts and", print.q(hold))),
            (Direction::Closing, None) => ("closes", "at the next command the leaf starts and".to_owned()),
            (Direction::Opening, _) => ("opens", "at the next command the leaf starts and".to_owned()),
        };
        let meets = match found.part {
            PartName::Drawbar => "the open space over its drawbar".to_owned(),
            part => format!("its {}", part.words()),
        };
        format!(
            "The gate {does} on the {what}: {facing}, stopped with that front {} {side} the gate line, nothing that holds the leaf sees it \
             over {} of its way{}; {starts} comes upon {meets} {} later with {}. Detectors of vehicles protect property and never count for people.",
            print.q(place),
            print.q(found.length()),
            between(&lost, &next),
            print.q(found.after),
            print.q(found.speed),
        )
    });
}

/// Which devices see it at one end of the stretch and at the other.
fn between(lost: &[&str], next: &[&str]) -> String {
    match (lost, next) {
        ([], []) => String::new(),
        (some, []) | ([], some) => {
            format!(", where {} does not see it any more", some.join(" and "))
        }
        (lost, next) => format!(
            ", between where {} loses it and where {} finds it",
            lost.join(" and "),
            next.join(" and ")
        ),
    }
}

/// The devices that see it with its front just beyond one end of the stretch.
fn watching<'a>(passage: &Passage<'a>, found: &Unwatched, end: Length) -> Vec<&'a str> {
    let beyond = 0.01 * (end - found.front()).base().signum();
    let front = end + Length::from_base(beyond);
    let seeing = passage
        .world
        .holding(found.motion, found.facing, found.middle, front);
    seeing
        .into_iter()
        .filter_map(|at| passage.devices.get(at))
        .map(|device| device.id.as_str())
        .collect()
}

/// Up to which speed it is not.
pub(super) fn say_watched(
    asking: &mut Asking<'_>,
    passage: &Passage<'_>,
    what: &str,
    fastest: Option<Velocity>,
    speed: Velocity,
) {
    let devices: Vec<&str> = passage
        .devices
        .iter()
        .map(|device| device.id.as_str())
        .collect();
    asking.say(|print| {
        let seen = format!(
            "Wherever the {what} stops, some of {} sees it and the leaf does not start",
            devices.join(", ")
        );
        match fastest {
            None => format!("{seen}; but they only hold an open leaf: one that is closing goes on, whoever drives under it."),
            Some(fastest) if fastest < speed => format!(
                "{seen}; but driving in or backing while the leaf closes it is seen in time up to {} only, and it passes at {}.",
                print.q(fastest),
                print.q(speed)
            ),
            Some(fastest) => format!(
                "{seen}; driving in, stopping or backing while the leaf closes it is seen in time up to {}. Detectors of vehicles \
                 protect property and never count for people.",
                print.q(fastest)
            ),
        }
    });
}
