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
use draw::{North, Point, ScaleChoice, Scene};
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
    let maps = mapped(site, walk).into_iter();
    maps.map(|map| Planned {
        name: sheet_name(site, gate, &format!("walk-{}", map.word)),
        scene: map.scene,
        north: north(site),
        scale: ScaleChoice::LargestThatFits,
        half: false,
    })
    .collect()
}

/// Where on the plan the leaf touches people in one direction.
pub(crate) struct Mapped {
    /// The direction: `closing`.
    pub(crate) word: &'static str,
    /// The map.
    pub(crate) scene: Scene,
    /// Opposite corners of what it shows.
    pub(crate) corners: (Point, Point),
}

/// The maps of a gate, one for each direction in which its leaf goes.
pub(crate) fn mapped(site: &Site, walk: &GateWalk<'_>) -> Vec<Mapped> {
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
        let scene = map::scene(&map, site.site.unit_system());
        let corners = map::corners(&map);
        maps.extend(scene.zip(corners).map(|(scene, corners)| Mapped {
            word,
            scene,
            corners,
        }));
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
