//! Draws worlds with a vehicle and prints them, for cross-checks: values as arguments `name=value`.
//!
//! `cargo run --release --package sim --example vehicle -- from=0 count=1000` prints one world a line as JSON, with the
//! longest stretch of stopping places at which nothing holds the leaf.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

#[path = "../tests/vehicle_world/mod.rs"]
mod vehicle_world;

use quantity::{Length, Quantity as _};
use sim::vehicle::{Detector, Field, Leaf, Outline, Toward, World};
use sim::walk::{Direction, Spot};
use std::fmt::Write as _;

fn main() {
    let number = |name: &str, otherwise: u64| {
        let given = std::env::args().skip(1);
        let mut values = given.filter_map(|argument| {
            let (key, value) = argument.split_once('=')?;
            (key == name).then(|| value.parse().unwrap())
        });
        values.next().unwrap_or(otherwise)
    };
    let from = number("from", 0);
    for seed in from..from + number("count", 1000) {
        println!("{}", world_as_json(&vehicle_world::drawn(seed)));
    }
}

fn world_as_json(world: &World) -> String {
    let worst = world.unwatched().unwrap().map_or_else(
        || "null".to_owned(),
        |found| {
            format!(
                r#"{{"closing":{},"facing":{},"middle":{},"from":{},"to":{},"way":{}}}"#,
                found.motion == Direction::Closing,
                if found.facing == sim::vehicle::Facing::In {
                    1
                } else {
                    -1
                },
                n(found.middle),
                n(found.from),
                n(found.to),
                n(found.way)
            )
        },
    );
    format!(
        r#"{{"leaf":{},"middle":{},"play":{},"parts":[{}],"detectors":[{}],"worst":{worst}}}"#,
        leaf(&world.leaf),
        n(world.lane.middle),
        n(world.lane.play),
        parts(&world.outline),
        world
            .detectors
            .iter()
            .map(detector)
            .collect::<Vec<_>>()
            .join(",")
    )
}

fn n(length: Length) -> String {
    format!("{:?}", length.base())
}

fn leaf(leaf: &Leaf) -> String {
    let sign = |toward: Toward| if toward == Toward::Greater { 1 } else { -1 };
    match leaf {
        Leaf::Slide {
            open,
            closed,
            bottom,
            top,
            thickness,
        } => format!(
            r#"{{"kind":"slide","open":{},"closed":{},"bottom":{},"top":{},"thickness":{}}}"#,
            n(*open),
            n(*closed),
            n(*bottom),
            n(*top),
            n(*thickness)
        ),
        Leaf::Lift {
            open,
            closed,
            thickness,
        } => {
            format!(
                r#"{{"kind":"lift","open":{},"bottom":{},"thickness":{}}}"#,
                n(*open),
                n(*closed),
                n(*thickness)
            )
        }
        Leaf::Arm {
            pivot,
            toward,
            length,
            bottom,
            open,
            thickness,
        } => format!(
            r#"{{"kind":"arm","pivot":{},"toward":{},"length":{},"bottom":{},"open":{:?},"thickness":{}}}"#,
            n(*pivot),
            sign(*toward),
            n(*length),
            n(*bottom),
            open.base(),
            n(*thickness)
        ),
        Leaf::Swing {
            leaves,
            side,
            bottom,
            top,
            thickness,
        } => {
            let hinged = leaves.iter().map(|leaf| {
                format!(
                    r#"{{"pivot":{},"toward":{},"length":{},"open":{:?}}}"#,
                    n(leaf.pivot),
                    sign(leaf.toward),
                    n(leaf.length),
                    leaf.open.base()
                )
            });
            format!(
                r#"{{"kind":"swing","leaves":[{}],"side":{},"bottom":{},"top":{},"thickness":{}}}"#,
                hinged.collect::<Vec<_>>().join(","),
                sign(*side),
                n(*bottom),
                n(*top),
                n(*thickness)
            )
        }
    }
}

fn parts(outline: &Outline) -> String {
    let each = outline.parts.iter().map(|part| {
        format!(
            r#"{{"name":"{}","from":{},"to":{},"width":{},"bottom":{},"top":{},"metal":{}}}"#,
            part.name.words(),
            n(part.from),
            n(part.to),
            n(part.width),
            n(part.bottom),
            n(part.top),
            part.metal
        )
    });
    each.collect::<Vec<_>>().join(",")
}

fn detector(detector: &Detector) -> String {
    let spots = |spots: &[Spot]| {
        let mut text = String::new();
        for spot in spots {
            let comma = if text.is_empty() { "" } else { "," };
            let _ = write!(text, "{comma}[{},{}]", n(spot.x), n(spot.y));
        }
        text
    };
    match &detector.field {
        Field::Beam {
            from,
            to,
            height,
            width,
        } => {
            format!(
                r#"{{"kind":"beam","spots":[{}],"height":{},"least":{}}}"#,
                spots(&[*from, *to]),
                n(*height),
                n(*width)
            )
        }
        Field::Loop {
            near,
            far,
            height,
            least,
        } => {
            format!(
                r#"{{"kind":"loop","spots":[{}],"height":{},"least":{}}}"#,
                spots(&[*near, *far]),
                n(*height),
                n(*least)
            )
        }
        Field::Area {
            corners,
            height,
            smallest,
        } => {
            format!(
                r#"{{"kind":"area","spots":[{}],"height":{},"least":{}}}"#,
                spots(corners),
                n(*height),
                n(*smallest)
            )
        }
    }
}
