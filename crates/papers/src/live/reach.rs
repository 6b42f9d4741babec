//! What devices see, on the screen: beams, loops, edges and fields by the layer they belong to.

use super::items::Thing;
use super::motion::Motion;
use draw::{Group, Scene, Screen, Shape};
use quantity::Ratio;

/// Draws, of a scene, what belongs to each thing whose title says so, in groups that are moved with what carries it.
pub(super) fn draw(
    screen: &mut Screen,
    scene: &Scene,
    things: &[Thing],
    motions: &[Motion],
    (open, belongs): (Ratio, impl Fn(&Thing, &str) -> bool),
) {
    for thing in things.iter().filter(|thing| thing.item.key == "at") {
        let mine = |shape: &Shape| {
            shape
                .title
                .as_deref()
                .is_some_and(|title| belongs(thing, title))
        };
        if !scene.shapes().iter().any(mine) {
            continue;
        }
        let carrier = thing.item.carried_by.and_then(|leaf| motions.get(leaf));
        if let Some(motion) = carrier {
            screen.open(&motion.group("carried", open));
        }
        screen.open(&Group::new("reach").data("item", thing.item.path.as_str()));
        screen.scene(scene, mine);
        screen.close();
        if carrier.is_some() {
            screen.close();
        }
    }
}
