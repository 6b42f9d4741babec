//! Where along a leaf that rises, and how high, it touches people: the same squares as on the plan, seen from the road.

use super::map::{Layers, Map, draw_squares};
use super::shapes::{raised, seen_from_the_road};
use super::window::{at, point};
use draw::{Figure, Fill, Label, Point, Scene};
use quantity::{Length, Quantity as _, UnitSystem};
use sim::walk::{AnyWorld, Direction, RisingLeaf};

/// What is shown beside and over everything, and below the ground (m).
const NEAR: f64 = 0.5;
const BELOW: f64 = 0.15;
/// How high over the free end its name stands (m).
const OVER: f64 = 0.12;
/// Pieces of the way of the free end.
const PIECES: u32 = 48;

/// The figure of a map; nothing where the leaf does not rise, or does not go that way.
pub(super) fn scene(map: &Map<'_>, units: UnitSystem) -> Option<Scene> {
    let ends = ends(map)?;
    let mut scene = Scene::new(map.title.as_str(), units).describe(format!(
        "{} Squares in which leaf and body meet are hatched: gray where no limit is passed, crosswise in the color of what fails where one is.",
        map.words
    ));
    let layers = Layers::add_to(&mut scene);
    draw_squares(&mut scene, &layers, map);
    let (low, high) = corners(map)?;
    let zero = Length::from_base(0.0);
    let ground = Figure::line(Point::new(low.x, zero), Point::new(high.x, zero));
    scene.add_titled(layers.faces, "ground", ground);
    let way = Figure::path(tips(map)?);
    scene.add_titled(layers.open, "way of the free end", way);
    for (layer, words, outline) in [
        (layers.open, "leaf before it starts", &ends[0]),
        (layers.leaf, "leaf at the end", &ends[1]),
    ] {
        let beside = outline[2].moved(zero, Length::from_base(OVER));
        scene.add_titled(layer, words, Figure::area(outline.to_vec(), Fill::Open));
        scene.add(layers.notes, Label::new(beside, words));
    }
    for (from, to) in seen_from_the_road(map.world, map.direction) {
        scene.add_titled(layers.beams, "beam or field", Figure::line(from, to));
    }
    scene.remark(map.words.as_str());
    scene.remark("Seen from the road. A square is hatched where leaf and body meet in it in at least one walk: gray, no limit is passed; crosswise, one is. An empty square is not proved: the proofs are in the chapter on the walk test.");
    Some(scene)
}

/// Opposite corners of what it shows.
pub(super) fn corners(map: &Map<'_>) -> Option<(Point, Point)> {
    let places = ends(map)?.into_iter().flatten().chain(tips(map)?);
    let squares = map.squares.iter().map(|square| square.at);
    let (mut left, mut right, mut high) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
    for place in places.chain(squares) {
        left = left.min(place.x.base() - NEAR);
        right = right.max(place.x.base() + NEAR);
        high = high.max(place.y.base() + NEAR);
    }
    left.is_finite()
        .then(|| (at(left, -BELOW), at(right, high)))
}

/// A leaf that rises, and how far it travels in the direction of a map.
fn travels<'m>(map: &Map<'m>) -> Option<(&'m RisingLeaf, Length)> {
    let AnyWorld::Rising(world) = map.world else {
        return None;
    };
    let mut passes = world.passes.iter();
    let pass = passes.find(|pass| pass.direction == map.direction)?;
    Some((&world.leaf, pass.plan.travel))
}

/// The leaf before it starts and at the end.
fn ends(map: &Map<'_>) -> Option<[[Point; 4]; 2]> {
    let (leaf, travel) = travels(map)?;
    let mut ends = [Length::from_base(0.0), travel].map(|way| raised(leaf, way).map(point));
    if map.direction == Direction::Closing {
        ends.reverse();
    }
    Some(ends)
}

/// The way of the upper corner of the free end.
fn tips(map: &Map<'_>) -> Option<Vec<Point>> {
    let (leaf, travel) = travels(map)?;
    let share = |piece: u32| f64::from(piece) / f64::from(PIECES);
    let tip = |piece| point(raised(leaf, travel * share(piece))[2]);
    Some((0..=PIECES).map(tip).collect())
}
