//! The walk test on paper: its worst cases in moments, and where on the plan somebody is touched.

mod case;
mod map;
mod moments;
mod part;
mod proof;
mod raised;
mod shapes;
mod view;
mod window;

pub(crate) use proof::views;

use crate::sheets::{Planned, north, sheet_name};
use design::walk::{GateWalk, Kept, KeptWalk, TouchedSquare};
use draw::{North, Point, ScaleChoice, Scene};
use map::{Map, Square};
use sim::walk::Direction;
use site::{Gate, Site};

/// Worst cases that are drawn of a gate.
const CASES: usize = 4;

/// The drawings of a gate's walk test; none where nobody can be walked past it.
pub(crate) fn planned(site: &Site, gate: &Gate, kept: &[KeptWalk]) -> Vec<Planned> {
    let Ok(walk) = GateWalk::of(site, gate) else {
        return Vec::new();
    };
    let mut planned = maps(site, gate, &walk);
    planned.extend(cases(site, gate, &walk, kept));
    planned
}

fn maps(site: &Site, gate: &Gate, walk: &GateWalk<'_>) -> Vec<Planned> {
    let maps = mapped(site, walk).into_iter();
    maps.map(|map| Planned {
        name: sheet_name(site, gate, &format!("walk-{}", map.word)),
        scene: map.scene,
        north: if map.word.ends_with("-road") {
            North::NotSeenFromAbove
        } else {
            north(site)
        },
        scale: ScaleChoice::LargestThatFits,
        half: false,
    })
    .collect()
}

/// Where the leaf touches people in one direction.
pub(crate) struct Mapped {
    /// The direction, and from where it is seen if not from above: `closing`, `closing-road`.
    pub(crate) word: &'static str,
    /// The map.
    pub(crate) scene: Scene,
    /// Opposite corners of what it shows.
    pub(crate) corners: (Point, Point),
}

/// The maps of a gate, one for each direction in which its leaf goes; of one that rises from the road as well.
pub(crate) fn mapped(site: &Site, walk: &GateWalk<'_>) -> Vec<Mapped> {
    let directions = [
        (Direction::Closing, ["closing", "closing-road"]),
        (Direction::Opening, ["opening", "opening-road"]),
    ];
    let units = site.site.unit_system();
    let mut maps = Vec::new();
    for (direction, [word, road]) in directions {
        let touched = walk.touched_squares(direction);
        let hit = if touched.from_above.is_empty() {
            " Nobody is touched in any of them."
        } else {
            ""
        };
        let words = format!(
            "{} walks of all bodies and habits past the {word} leaf, each body and habit alike often.{hit}",
            touched.walks
        );
        let map = |squares: &[TouchedSquare], title| Map {
            title,
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
            words: words.clone(),
        };
        let title = format!("Where the {word} leaf touches people");
        let upright = map(
            &touched.from_the_road,
            format!("Touches of the {word} leaf, seen from the road"),
        );
        let above = map(&touched.from_above, title);
        for (word, scene, corners) in [
            (word, map::scene(&above, units), map::corners(&above)),
            (
                road,
                raised::scene(&upright, units),
                raised::corners(&upright),
            ),
        ] {
            maps.extend(scene.zip(corners).map(|(scene, corners)| Mapped {
                word,
                scene,
                corners,
            }));
        }
    }
    maps
}

/// The worst cases, those that were kept among them.
fn cases(site: &Site, gate: &Gate, walk: &GateWalk<'_>, kept: &[KeptWalk]) -> Vec<Planned> {
    let known = kept.iter().find(|one| gate.id == *one.gate);
    let record = known.and_then(|one| match &one.kept {
        Kept::Valid(record) => Some(record.as_ref()),
        _ => None,
    });
    let worst = walk.worst_cases(CASES, record);
    let opening = gate.clear_opening.as_ref().map(quantity::Measured::nominal);
    let units = site.site.unit_system();
    let numbered = worst.iter().enumerate();
    let cases = numbered.filter_map(|(index, shown)| {
        let title = format!(
            "Worst case {}: {}, {}",
            index + 1,
            shown.title,
            shown.told.ends
        );
        let words = shown.told.sentence.clone();
        let world = (walk.world(), opening);
        let case = case::case(world, shown, (title, words), units)?;
        let scene = moments::scene(&case, units)?;
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
