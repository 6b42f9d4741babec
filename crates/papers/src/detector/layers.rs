//! The layers of the drawing of detectors: what a line means.

use super::live::live;
use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};
use site::Device;

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) disturbing: LayerId,
    pub(super) set: LayerId,
    closing: LayerId,
    opening: LayerId,
    other: LayerId,
    pub(super) notes: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{DashDot, Dashed, Dotted};
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            disturbing: layer(
                Layer::new("what may pass for a vehicle", Fine).ink(Ink::Gray),
                "Plants, rails and the like beside a field.",
            ),
            set: layer(
                Layer::new("field as it is set", Medium).pattern(Dotted),
                "The field by the settings of its detector, in its own left and right.",
            ),
            closing: layer(
                Layer::new("live while the leaf closes", Heavy),
                "Loops and fields, as chalked, that keep a leaf from closing.",
            ),
            opening: layer(
                Layer::new("live while the leaf opens", Heavy).pattern(Dashed),
                "Loops and fields, as chalked, that keep a leaf from opening, some from closing too.",
            ),
            other: layer(
                Layer::new("opens or reports", Medium).pattern(DashDot),
                "Loops and fields that open the gate, free a reader or count.",
            ),
            notes: layer(Layer::new("notes", Fine), "Words."),
        }
    }

    /// The layer of a detector by what it does.
    pub(super) fn of(&self, device: &Device) -> LayerId {
        match live(device) {
            (_, true) => self.opening,
            (true, false) => self.closing,
            (false, false) => self.other,
        }
    }
}
