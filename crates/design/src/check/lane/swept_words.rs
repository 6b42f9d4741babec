//! What is said of a drive through a lane: where it comes nearest, and what would mend it.

use super::swept_path::least;
use crate::asking::Asking;
use crate::figure::Print;
use crate::plain::capitalized;
use crate::swept::{Over, Things};
use quantity::{Length, Quantity as _};
use sim::swept::{Found, Nearest};
use sim::walk::Spot;
use site::{Vehicle, WayDirection};

/// A drive along one way.
pub(super) struct Drive {
    pub(super) direction: WayDirection,
    /// Where along it the gate line is.
    pub(super) gate: Length,
    /// Least circle of its front axle.
    pub(super) circle: Length,
    /// How far its last axle cuts the corner.
    pub(super) off_tracking: Option<Length>,
    /// The best line; none where none can be steered.
    pub(super) found: Option<Found>,
    pub(super) over: Over,
}

/// Says how the drives go.
pub(super) fn say(
    asking: &mut Asking<'_>,
    vehicle: &Vehicle,
    drives: &[Drive],
    (things, margin, clear, height): (&Things, Length, Length, Length),
) {
    for drive in drives {
        asking.note(|print| line(print, drive));
    }
    asking.note(|_| "The front axle follows straights and arcs at walking pace; the body is taken as wide as its mirrors at every height.".to_owned());
    let what = capitalized(vehicle.what.as_str());
    asking.say(|print| {
        let mut said: Vec<String> = drives
            .iter()
            .map(|drive| beside(print, drive, (things, margin)))
            .collect();
        for (index, one) in said.iter_mut().enumerate() {
            *one = match index {
                0 => format!("{what}: {one}"),
                _ => capitalized(one),
            };
        }
        let lowest = drives
            .iter()
            .min_by(|one, other| one.over.found.room.base().total_cmp(&other.over.found.room.base()));
        if let Some(drive) = lowest {
            said.push(under(print, drive));
        }
        let lifted = drives.iter().map(|drive| drive.over.found.lifted.base());
        let roof = height + Length::from_base(lifted.fold(0.0, f64::max));
        said.push(if roof <= clear {
            format!("Its roof comes to {} over the drive, {} are free.", print.q(roof), print.q(clear))
        } else {
            format!(
                "Its roof comes to {} over the drive, and only {} are free: what hangs there goes up by {}, or it does not pass.",
                print.q(roof),
                print.q(clear),
                print.q(roof - clear)
            )
        });
        said.join(" ")
    });
}

fn way_in_words(direction: WayDirection) -> &'static str {
    match direction {
        WayDirection::In => "in",
        WayDirection::Out => "out",
    }
}

/// The line that was driven, for the working.
fn line(print: Print, drive: &Drive) -> String {
    let Some(found) = &drive.found else {
        return format!(
            "Driving {}, no line fits whose arcs are as wide as {}.",
            way_in_words(drive.direction),
            print.q(drive.circle)
        );
    };
    let tightest = found.path.tightest().unwrap_or(drive.circle);
    let cut = drive.off_tracking.map_or(String::new(), |off| {
        format!("; its last axle cuts the corner by {}", print.q(off))
    });
    format!(
        "Driving {}: best of {} lines, tightest arc {} at the front axle, least {}; front wheels turned by {}{cut}.",
        way_in_words(drive.direction),
        found.tried,
        print.q(tightest),
        print.q(drive.circle),
        print.q(found.room.steered)
    )
}

/// The least room beside it, and what would mend too little.
fn beside(print: Print, drive: &Drive, (things, margin): (&Things, Length)) -> String {
    let way = way_in_words(drive.direction);
    let Some(found) = &drive.found else {
        return format!(
            "driving {way} cannot be done: its front axle needs arcs of {}, and the corners of the way leave no room for them; give it a wider apron or another way.",
            print.q(drive.circle)
        );
    };
    let mut said = Vec::new();
    if let Some(edge) = least(found, true) {
        said.push(if edge.room.base() < 0.0 {
            format!(
                "driving {way} it runs over {} by {}, with {}, {}. Widened there by that it would do.",
                things.name(edge.target),
                print.q(-edge.room),
                unit(&edge),
                place(print, edge.at)
            )
        } else {
            format!(
                "driving {way} its tires keep {} inside {}.",
                print.q(edge.room),
                things.name(edge.target)
            )
        });
    }
    if let Some(near) = least(found, false) {
        said.push(obstacle(print, &near, things.name(near.target), margin));
    }
    said.join(" ")
}

fn obstacle(print: Print, near: &Nearest, name: &str, margin: Length) -> String {
    let place = place(print, near.at);
    if near.room.base() < 0.0 {
        return format!(
            "It strikes {name} with {}, {place}, reaching {} over it. Moved {} away from the way, {name} would be clear.",
            unit(near),
            print.q(-near.room),
            print.q(margin - near.room)
        );
    }
    let least = format!("It leaves {} beside {name}, {place}", print.q(near.room));
    if near.room < margin {
        format!(
            "{least}; {} must be left. Moved {} away from the way, {name} would do.",
            print.q(margin),
            print.q(margin - near.room)
        )
    } else {
        format!("{least}; {} must be left.", print.q(margin))
    }
}

fn unit(near: &Nearest) -> &'static str {
    if near.unit == 0 {
        "the vehicle itself"
    } else {
        "what it tows"
    }
}

/// A place as one finds it with a tape.
fn place(print: Print, at: Spot) -> String {
    let side = if at.y.base() < 0.0 {
        "before"
    } else {
        "behind"
    };
    let along = if at.x.base() < 0.0 { "beyond" } else { "from" };
    format!(
        "{} {side} the gate line and {} {along} the latching side",
        print.q(at.y.abs()),
        print.q(at.x.abs())
    )
}

fn under(print: Print, drive: &Drive) -> String {
    let over = &drive.over;
    let from_gate = over.found.at - drive.gate;
    let outside = (from_gate.base() < 0.0) == (drive.direction == WayDirection::In);
    let side = if outside { "before" } else { "behind" };
    let part = over.part();
    let place = format!("{} {side} the gate line", print.q(from_gate.abs()));
    if over.found.room.base() < 0.0 {
        format!(
            "On the grade {part} would sit {} deep, {place}: round the break there, or lift the vehicle.",
            print.q(-over.found.room)
        )
    } else {
        format!(
            "Over the grade {part} keeps {}, {place}.",
            print.q(over.found.room)
        )
    }
}
