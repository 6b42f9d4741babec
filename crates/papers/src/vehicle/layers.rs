//! The layers of the drawings of vehicles.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};
use sim::vehicle::PartName;

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    bodies: LayerId,
    tails: LayerId,
    pub(super) ground: LayerId,
    pub(super) leaf: LayerId,
    pub(super) holding: LayerId,
    pub(super) not_holding: LayerId,
    pub(super) dimensions: LayerId,
    pub(super) notes: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{Dashed, Dotted};
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            bodies: layer(
                Layer::new("vehicles", Medium),
                "Vehicles, by their boxes; the drawbar is a narrow one.",
            ),
            tails: layer(
                Layer::new("what hangs out behind", Medium).pattern(Dashed),
                "What hangs out behind a vehicle, above its own underside.",
            ),
            ground: layer(
                Layer::new("surface", Medium).ink(Ink::Gray),
                "The finished surface.",
            ),
            leaf: layer(
                Layer::new("where the leaf closes", Heavy).pattern(Dotted),
                "The closed leaf, cut across.",
            ),
            holding: layer(
                Layer::new("holds the leaf", Medium),
                "Devices that see the vehicle there and hold the leaf.",
            ),
            not_holding: layer(
                Layer::new("does not hold the leaf", Fine),
                "Devices that do not see the vehicle there, or do not hold the leaf.",
            ),
            dimensions: layer(Layer::new("dimensions", Fine), "Measured lengths."),
            notes: layer(Layer::new("notes", Fine), "Words."),
        }
    }

    /// The layer of a part of a vehicle.
    pub(super) fn of(&self, part: PartName) -> LayerId {
        match part {
            PartName::Tail => self.tails,
            PartName::Body | PartName::Drawbar | PartName::Trailer => self.bodies,
        }
    }
}
