//! The layers of the network and bus diagram.

use super::view::Carrier;
use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    copper: LayerId,
    fiber: LayerId,
    radio: LayerId,
    cord: LayerId,
    pub(super) trunk: LayerId,
    pub(super) bus: LayerId,
    pub(super) stub: LayerId,
    pub(super) symbols: LayerId,
    pub(super) words: LayerId,
    pub(super) fails: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            copper: layer(Layer::new("copper", Medium), "A data cable of copper."),
            fiber: layer(Layer::new("fiber", Heavy), "A fiber cable."),
            radio: layer(
                Layer::new("radio", Medium).pattern(LinePattern::Dotted),
                "A radio link.",
            ),
            cord: layer(
                Layer::new("patch cord", Fine).pattern(LinePattern::Dashed),
                "A patch cord, or a cable that the site does not write.",
            ),
            trunk: layer(
                Layer::new("inside a switch", Fine),
                "From a switch to its ports.",
            ),
            bus: layer(
                Layer::new("pair of a reader bus", Medium),
                "The pair of a reader bus, from end to end.",
            ),
            stub: layer(
                Layer::new("stub", Fine),
                "From the pair to a device, and to the bias.",
            ),
            symbols: layer(Layer::new("symbols", Medium), "Devices."),
            words: layer(
                Layer::new("words", Fine),
                "Names, addresses, cables, rates and power.",
            ),
            fails: layer(
                Layer::new("fails", Medium).ink(Ink::Fails),
                "Two with one address, more than a switch has, a line or a stub that is too long.",
            ),
        }
    }

    /// The layer of a line.
    pub(super) fn of(&self, carrier: Carrier) -> LayerId {
        match carrier {
            Carrier::Copper => self.copper,
            Carrier::Fiber => self.fiber,
            Carrier::Radio => self.radio,
            Carrier::Cord => self.cord,
        }
    }
}
