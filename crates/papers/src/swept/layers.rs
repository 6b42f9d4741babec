//! The layers of the drawings of lanes.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// Line patterns by which vehicles are told apart, again and again where there are more.
const PATTERNS: [LinePattern; 4] = [
    LinePattern::Unbroken,
    LinePattern::Dashed,
    LinePattern::DashDot,
    LinePattern::Dotted,
];

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) swept: LayerId,
    pub(super) edges: LayerId,
    pub(super) ground: LayerId,
    pub(super) bodies: LayerId,
    pub(super) tires: LayerId,
    pub(super) least: LayerId,
    pub(super) dimensions: LayerId,
    pub(super) notes: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::Dotted;
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            swept: layer(
                Layer::new("swept", Fine).ink(Ink::Gray),
                "Ground over which a body passes.",
            ),
            edges: layer(
                Layer::new("edges for wheels", Medium).ink(Ink::Gray),
                "Edges of the ground that wheels may use.",
            ),
            ground: layer(
                Layer::new("surface", Medium).ink(Ink::Gray),
                "The finished surface.",
            ),
            bodies: layer(Layer::new("vehicles", Fine), "Vehicles on their way."),
            tires: layer(
                Layer::new("tires", Fine).pattern(Dotted),
                "Lines of the outsides of tires.",
            ),
            least: layer(Layer::new("least room", Heavy), "Places of least room."),
            dimensions: layer(Layer::new("dimensions", Fine), "Measured lengths."),
            notes: layer(Layer::new("notes", Fine), "Words."),
        }
    }

    /// The layer of the outline of the vehicle with this number.
    pub(super) fn of_vehicle(scene: &mut Scene, number: usize, id: &str) -> LayerId {
        let pattern = PATTERNS[number % PATTERNS.len()];
        let layer = Layer::new(format!("outline of {id}"), LineWeight::Fine).pattern(pattern);
        scene.layer(layer.describe(format!("What {id} sweeps, outermost.")))
    }
}
