//! The layers of an enclosure's layout.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) spare: LayerId,
    pub(super) not_known: LayerId,
    pub(super) boxes: LayerId,
    pub(super) panel: LayerId,
    pub(super) rails: LayerId,
    pub(super) things: LayerId,
    pub(super) holes: LayerId,
    pub(super) door: LayerId,
    pub(super) over: LayerId,
    pub(super) dimensions: LayerId,
    pub(super) words: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            spare: layer(
                Layer::new("spare rail, hatched", Fine).ink(Ink::Gray),
                "Mounting rail that is free.",
            ),
            not_known: layer(
                Layer::new("not known", Fine).ink(Ink::Gray),
                "A width before it is not written.",
            ),
            boxes: layer(Layer::new("enclosure", Heavy), "Its outside."),
            panel: layer(Layer::new("mounting panel", Medium), "The panel in it."),
            rails: layer(
                Layer::new("mounting rails, middle", Fine).pattern(LinePattern::DashDot),
                "Middle of each mounting rail.",
            ),
            things: layer(
                Layer::new("what is mounted", Medium),
                "Outlines of what is in it, to scale.",
            ),
            holes: layer(
                Layer::new("holes to drill", Medium),
                "Holes for conduits and glands, to scale.",
            ),
            door: layer(
                Layer::new("door as it opens", Fine).pattern(LinePattern::Dashed),
                "The way of the door.",
            ),
            over: layer(
                Layer::new("does not fit", Medium).ink(Ink::Fails),
                "Reaches beyond its rail or the panel.",
            ),
            dimensions: layer(Layer::new("dimensions", Fine), "Measured lengths."),
            words: layer(Layer::new("words", Fine), "Numbers and names."),
        }
    }
}
