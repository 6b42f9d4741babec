//! The layers of a camera's sheet.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) frames: LayerId,
    pub(super) wanted: LayerId,
    pub(super) hidden: LayerId,
    pub(super) standing: LayerId,
    pub(super) leaf: LayerId,
    pub(super) moved: LayerId,
    pub(super) field: LayerId,
    pub(super) camera: LayerId,
    pub(super) target: LayerId,
    pub(super) words: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            frames: layer(
                Layer::new("frames", Fine).ink(Ink::Gray),
                "Edges of the plans, of the picture and of the tables.",
            ),
            wanted: layer(
                Layer::new("wanted area", Medium).pattern(LinePattern::DashDot),
                "What has to be in the picture.",
            ),
            hidden: layer(
                Layer::new("hidden", Fine),
                "Hatched: parts of the wanted area that something hides.",
            ),
            standing: layer(
                Layer::new("what stands there", Medium),
                "Posts, walls, bollards and boxes.",
            ),
            leaf: layer(Layer::new("leaf", Heavy), "The leaf where it is."),
            moved: layer(
                Layer::new("leaf elsewhere", Fine).pattern(LinePattern::Dotted),
                "The leaf half open and open, in the picture.",
            ),
            field: layer(
                Layer::new("edge of the picture", Fine).pattern(LinePattern::Dashed),
                "The ground that is in the picture.",
            ),
            camera: layer(Layer::new("camera", Medium), "The camera."),
            target: layer(
                Layer::new("place that matters", Medium),
                "The place that matters; in the picture a person and a plate there.",
            ),
            words: layer(Layer::new("words and figures", Fine), "Names and tables."),
        }
    }
}
