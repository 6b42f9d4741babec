//! Draws rigs, turns and things beside them, and prints what is left, for cross-checks: values as arguments `name=value`.
//!
//! `cargo run --release --package sim --example swept -- from=0 count=100` prints one drive a line as JSON, lengths in
//! meters.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

#[path = "../tests/swept_world/mod.rs"]
mod swept_world;

use quantity::{Length, Quantity as _};
use sim::swept::{Path, Rig, Target};
use swept_world::{Drawn, drawn};

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
    for seed in from..from + number("count", 100) {
        println!("{}", as_json(&drawn(seed)));
    }
}

fn n(length: Length) -> String {
    format!("{:?}", length.base())
}

fn list<T>(all: &[T], of: impl Fn(&T) -> String) -> String {
    let all: Vec<String> = all.iter().map(of).collect();
    format!("[{}]", all.join(","))
}

fn as_json(drawn: &Drawn) -> String {
    let path = Path::rounded(&drawn.corners, &drawn.radii).unwrap();
    let room = drawn
        .rig
        .sweep(&path, &drawn.place, Length::from_base(0.01))
        .unwrap();
    let outline = drawn.rig.outline(&path, Length::from_base(1e3)).unwrap();
    let obstacles = list(&drawn.place.obstacles, |one| {
        let ends = one.ends.map(|end| format!("[{},{}]", n(end.x), n(end.y)));
        format!(
            r#"{{"ends":[{}],"radius":{}}}"#,
            ends.join(","),
            n(one.radius)
        )
    });
    let edges = list(&drawn.place.edges, |edge| {
        let line = list(&edge.line, |at| format!("[{},{}]", n(at.x), n(at.y)));
        format!(r#"{{"line":{line},"lane_is_left":{}}}"#, edge.lane_is_left)
    });
    let rooms = list(&room.nearest, |one| {
        let (kind, index) = match one.target {
            Target::Obstacle(index) => ("obstacle", index),
            Target::Edge(index) => ("edge", index),
        };
        format!(
            r#"{{"kind":"{kind}","index":{index},"room":{}}}"#,
            n(one.room)
        )
    });
    let corners = list(&drawn.corners, |at| format!("[{},{}]", n(at.x), n(at.y)));
    let radii = list(&drawn.radii, |radius| n(*radius));
    let bent = list(&room.bent, |angle| format!("{:?}", angle.base()));
    format!(
        r#"{{"units":{},"corners":{corners},"radii":{radii},"obstacles":{obstacles},"edges":{edges},"rooms":{rooms},"off_tracking":{},"steered":{:?},"bent":{bent}}}"#,
        units(&drawn.rig),
        n(outline.off_tracking),
        room.steered.base()
    )
}

fn units(rig: &Rig) -> String {
    list(&rig.units, |unit| {
        let body = unit.body.map_or_else(
            || "null".to_owned(),
            |body| {
                format!(
                    r#"{{"ahead":{},"behind":{},"width":{}}}"#,
                    n(body.ahead),
                    n(body.behind),
                    n(body.width)
                )
            },
        );
        format!(
            r#"{{"wheelbase":{},"hitch":{},"over_tires":{},"body":{body}}}"#,
            n(unit.wheelbase),
            n(unit.hitch),
            n(unit.over_tires)
        )
    })
}
