//! The walk test on paper: its worst cases in moments, and where on the plan somebody is touched.

mod case;
mod map;
mod moments;
mod part;
mod proof;
mod shapes;

pub(crate) use proof::views;

use crate::sheets::{Planned, north, sheet_name};
use design::walk::GateWalk;
use draw::{North, Point, ScaleChoice};
use map::{Map, Square};
use sim::walk::Direction;
use site::{Gate, Site};

/// Worst cases that are drawn of a gate.
const CASES: usize = 4;

/// The drawings of a gate's walk test; none where nobody can be walked past it.
pub(crate) fn planned(site: &Site, gate: &Gate) -> Vec<Planned> {
    let Ok(walk) = GateWalk::of(site, gate) else {
        return Vec::new();
    };
    let mut planned = maps(site, gate, &walk);
    planned.extend(cases(site, gate, &walk));
    planned
}

fn maps(site: &Site, gate: &Gate, walk: &GateWalk<'_>) -> Vec<Planned> {
    let directions = [
        (Direction::Closing, "closing"),
        (Direction::Opening, "opening"),
    ];
    let mut maps = Vec::new();
    for (direction, word) in directions {
        let (squares, walks) = walk.touched_squares(direction);
        let map = Map {
            title: format!("Where the {word} leaf touches people"),
            direction,
            world: walk.world(),
            side: walk.side(),
            squares: squares
                .iter()
                .map(|square| Square {
                    at: Point::new(square.at.x, square.at.y),
                    bad: square.bad,
                })
                .collect(),
            words: format!(
                "{walks} walks of all bodies and habits past the {word} leaf, each body and habit alike often."
            ),
        };
        if let Some(scene) = map::scene(&map, site.site.unit_system()) {
            maps.push(Planned {
                name: sheet_name(site, gate, &format!("walk-{word}")),
                scene,
                north: north(site),
                scale: ScaleChoice::LargestThatFits,
                half: false,
            });
        }
    }
    maps
}

fn cases(site: &Site, gate: &Gate, walk: &GateWalk<'_>) -> Vec<Planned> {
    let worst = walk.worst_cases(CASES);
    let numbered = worst.iter().enumerate();
    let cases = numbered.filter_map(|(index, shown)| {
        let title = format!(
            "Worst case {}: {}, {}",
            index + 1,
            shown.title,
            shown.told.ends
        );
        let words = shown.told.sentence.clone();
        let case = case::case(walk.world(), shown, (title, words))?;
        let scene = moments::scene(&case, site.site.unit_system())?;
        Some(Planned {
            name: sheet_name(site, gate, &format!("walk-case-{}", index + 1)),
            scene,
            north: North::NotSeenFromAbove,
            scale: ScaleChoice::LargestThatFits,
            half: true,
        })
    });
    cases.collect()
}
