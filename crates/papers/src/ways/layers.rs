//! The layers of the plan of ways.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};
use site::{MadeBy, Way};

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) keep_off: LayerId,
    pub(super) buried: LayerId,
    allowed: LayerId,
    trenches: LayerId,
    bores: LayerId,
    pub(super) pits: LayerId,
    pub(super) ends: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{DashDotDot, Dashed, Dotted};
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            keep_off: layer(
                Layer::new("ground to keep off", Medium)
                    .pattern(Dotted)
                    .ink(Ink::Gray),
                "Ground that no way may cross, or only as its words say.",
            ),
            buried: layer(
                Layer::new("buried before", Medium).pattern(DashDotDot),
                "Lines that are buried already, as marked.",
            ),
            allowed: layer(
                Layer::new("ways not taken", Fine).pattern(Dotted),
                "Ways that are allowed and hold no conduit.",
            ),
            trenches: layer(
                Layer::new("trenches", Heavy),
                "Ways that are dug, sawn, there already or on the surface, with conduits in them.",
            ),
            bores: layer(
                Layer::new("bores", Heavy).pattern(Dashed),
                "Ways that are bored, with conduits in them.",
            ),
            pits: layer(Layer::new("pull points", Medium), "Pits and handholes."),
            ends: layer(
                Layer::new("ends of ways", Medium),
                "Where something is wired from a way.",
            ),
        }
    }

    /// The layer of a way.
    pub(super) fn of(&self, way: &Way) -> LayerId {
        match way.by {
            _ if way.conduits.is_empty() => self.allowed,
            Some(MadeBy::Bore) => self.bores,
            _ => self.trenches,
        }
    }
}
