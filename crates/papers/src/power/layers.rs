//! The layers of the single-line diagram.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) mains: LayerId,
    pub(super) low: LayerId,
    pub(super) unwritten: LayerId,
    pub(super) symbols: LayerId,
    pub(super) not_known: LayerId,
    pub(super) words: LayerId,
    pub(super) fails: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            mains: layer(
                Layer::new("mains conductors", Heavy),
                "One line for all conductors of a mains circuit.",
            ),
            low: layer(
                Layer::new("low-voltage conductors", Medium),
                "One line for both conductors.",
            ),
            unwritten: layer(
                Layer::new("conductors that are not written", Fine).pattern(LinePattern::Dashed),
                "The site holds no cable here.",
            ),
            symbols: layer(
                Layer::new("symbols", Medium),
                "Sources, fuses, joints and loads.",
            ),
            not_known: layer(
                Layer::new("not known", Fine).ink(Ink::Gray),
                "Facts are missing.",
            ),
            words: layer(
                Layer::new("words", Fine),
                "Names, cables, currents and voltages.",
            ),
            fails: layer(
                Layer::new("fails", Medium).ink(Ink::Fails),
                "A load below its least voltage, or a supply above its rating.",
            ),
        }
    }
}
