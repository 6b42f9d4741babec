//! What a sheet doesn't show, in words: things beyond its edge with their distance, and things without a place.

use super::equipment::Placed;
use super::ground;
use super::layers::Layers;
use draw::{Point, Scene};
use quantity::{Quantity as _, UnitSystem};

/// Distance under which things share a line (m).
const NEAR: f64 = 3.0;

/// A line for each place beyond the sheet: what stands there, how far from a point, and on which side.
pub(super) fn lines(things: &[Placed], from: Point, units: UnitSystem) -> Vec<String> {
    let mut places: Vec<(Point, Vec<&str>)> = Vec::new();
    for thing in things {
        let near = |(at, _): &&mut (Point, Vec<&str>)| at.distance(thing.at).base() < NEAR;
        match places.iter_mut().find(near) {
            Some((_, names)) => names.push(&thing.name),
            None => places.push((thing.at, vec![&thing.name])),
        }
    }
    let away = |at: &Point| at.distance(from).base();
    places.sort_by(|(one, _), (other, _)| away(one).total_cmp(&away(other)));
    places
        .into_iter()
        .map(|(at, names)| format!("{}: {}", where_it_is(from, at, units), names.join(", ")))
        .collect()
}

/// How far it is from one point to another, and on which side: `50 ft to the right, 232 ft into the property`.
/// What is less than a fifth of the whole goes without saying.
pub(crate) fn where_it_is(from: Point, at: Point, units: UnitSystem) -> String {
    let away = at.distance(from).base();
    let (x, y) = (at.x.base() - from.x.base(), at.y.base() - from.y.base());
    let side = |along: f64, below: &str, above: &str| {
        let words = if along < 0.0 { below } else { above };
        (along.abs() > 0.2 * away).then(|| format!("{} {words}", rounded(along.abs(), units)))
    };
    let sides = [
        side(x, "to the left", "to the right"),
        side(y, "toward the road", "into the property"),
    ];
    sides.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// A length (m) as precise as a far thing needs it.
fn rounded(meters: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::UsCustomary => format!("{:.0} ft", meters / 0.3048),
        UnitSystem::Si => format!("{meters:.1} m"),
    }
}

/// The list of what has no place, from a point and with so many letters in a line.
pub(super) fn list_unplaced(
    scene: &mut Scene,
    layers: &Layers,
    place: (Point, usize),
    names: &[String],
) {
    let lines: Vec<String> = if names.is_empty() {
        Vec::new()
    } else {
        vec![names.join(", ")]
    };
    ground::list(
        scene,
        layers,
        place,
        "Not drawn, since no position is given:",
        &lines,
    );
}
