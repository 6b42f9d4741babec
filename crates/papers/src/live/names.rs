//! Names beside things, where there is room as long as the page has not placed them itself.

use super::items::Thing;
use super::motion::Motion;
use draw::{Anchor, Group, LabelRequest, Point, Screen, place_labels};
use quantity::{Length, Quantity as _, Ratio};

/// Height of capitals (m of a screen that has four units to the millimeter), and units to the meter there.
const CAPITALS: f64 = 0.0024;
const UNITS: f64 = 4000.0;

/// Draws the names; those without room are there and hidden.
pub(super) fn draw(
    screen: &mut Screen,
    things: &[Thing],
    motions: &[Motion],
    (low, high): (Point, Point),
    (unit, open): (Length, Ratio),
) {
    let to_paper = 1.0 / (unit.base() * UNITS);
    let named: Vec<&Thing> = things
        .iter()
        .filter(|thing| thing.item.key == "at")
        .collect();
    let place = |thing: &Thing| {
        let motion = thing.item.carried_by.and_then(|leaf| motions.get(leaf));
        motion.map_or(thing.item.at, |motion| motion.place(thing.item.at, open))
    };
    let requests: Vec<LabelRequest> = named
        .iter()
        .map(|thing| {
            let at = place(thing);
            let aside = aside(thing.item.beside) / UNITS;
            LabelRequest {
                at: Point::new(
                    (at.x - low.x) * to_paper + Length::from_base(aside),
                    (at.y - low.y) * to_paper,
                ),
                words: thing.item.name.clone(),
                height: Length::from_base(CAPITALS),
            }
        })
        .collect();
    let (wide, tall) = ((high.x - low.x) * to_paper, (high.y - low.y) * to_paper);
    let placed = place_labels(wide, tall, &[], &requests);
    for ((thing, request), placed) in named.iter().zip(&requests).zip(placed) {
        let near = placed.filter(|placed| placed.leader.is_none());
        let offset = near.as_ref().map(|placed| {
            let right = (placed.text.center.x - request.at.x).base() * UNITS;
            let down = (request.at.y - placed.text.center.y).base() * UNITS;
            (
                right + aside(thing.item.beside),
                down + CAPITALS * UNITS / 2.0,
            )
        });
        let class = if offset.is_some() {
            "name"
        } else {
            "name crowded"
        };
        screen.open(&Group::new(class).data("item", thing.item.path.as_str()));
        screen.words(
            place(thing),
            offset.unwrap_or((12.0, -8.0)),
            Anchor::Middle,
            &thing.item.name,
        );
        screen.close();
    }
}

/// How far to the right the symbol of a thing stands that shares its place with others before it (screen units).
pub(super) fn aside(beside: usize) -> f64 {
    22.0 * f64::from(u32::try_from(beside).unwrap_or(0))
}
