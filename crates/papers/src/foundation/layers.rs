//! The layers of foundation figures and templates: what a line means.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Layers {
    pub(crate) earth: LayerId,
    pub(crate) concrete: LayerId,
    pub(crate) frost: LayerId,
    pub(crate) conduits: LayerId,
    pub(crate) plate: LayerId,
    pub(crate) standing: LayerId,
    pub(crate) anchors: LayerId,
    pub(crate) axes: LayerId,
    pub(crate) dimensions: LayerId,
    pub(crate) notes: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(crate) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{DashDot, DashDotDot, Dashed};
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            earth: layer(Layer::new("ground", Medium).ink(Ink::Gray), "The ground."),
            concrete: layer(Layer::new("concrete", Heavy), "Edges of the concrete."),
            frost: layer(
                Layer::new("depth of frost", Medium).pattern(DashDotDot),
                "How deep the ground freezes.",
            ),
            conduits: layer(
                Layer::new("conduits", Medium).pattern(Dashed),
                "Conduits that come up.",
            ),
            plate: layer(
                Layer::new("plate", Medium).pattern(Dashed),
                "Outline of the plate.",
            ),
            standing: layer(
                Layer::new("what stands on it", Medium),
                "Posts and what else stands there, cut at the foot.",
            ),
            anchors: layer(
                Layer::new("anchors and conduits from above", Medium),
                "Anchors or their holes, and conduits that come up.",
            ),
            axes: layer(
                Layer::new("axes", Fine).pattern(DashDot),
                "Middles of plates and holes.",
            ),
            dimensions: layer(Layer::new("dimensions", Fine), "Measured lengths."),
            notes: layer(Layer::new("notes", Fine), "Words."),
        }
    }
}
