//! The layers of the hazard zones and of what protects there.

use super::words::Standing;
use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    as_asked: LayerId,
    not_known: LayerId,
    fails: LayerId,
    pub(super) fields: LayerId,
    pub(super) beams: LayerId,
    pub(super) edges: LayerId,
    pub(super) devices: LayerId,
    pub(super) arrows: LayerId,
    pub(super) numbers: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{DashDot, Dotted};
        use LineWeight::{Fine, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            as_asked: layer(
                Layer::new("zones, protected as asked", Fine),
                "Where somebody could be caught, and what the codes ask is there.",
            ),
            not_known: layer(
                Layer::new("zones, protection not known", Fine).ink(Ink::Gray),
                "Where somebody could be caught, and facts are missing.",
            ),
            fails: layer(
                Layer::new("zones, unprotected or in part", Medium).ink(Ink::Fails),
                "Where somebody could be caught, and what the codes ask is not there.",
            ),
            fields: layer(
                Layer::new("fields of scanners", Fine).pattern(DashDot),
                "What an area scanner watches.",
            ),
            beams: layer(
                Layer::new("beams of photo-eyes", Medium).pattern(Dotted),
                "Beams from end to end.",
            ),
            edges: layer(
                Layer::new("contact edges", Fine),
                "Contact edges on leaf and posts.",
            ),
            devices: layer(
                Layer::new("protective devices", Medium),
                "Protective devices and drives.",
            ),
            arrows: layer(
                Layer::new("ways of the leaf", Medium),
                "Which way the leaf moves where a zone is live.",
            ),
            numbers: layer(Layer::new("numbers", Fine), "Numbers of the zones."),
        }
    }

    /// The layer of a zone.
    pub(super) fn of(&self, standing: Standing) -> LayerId {
        match standing {
            Standing::AsAsked => self.as_asked,
            Standing::NotKnown => self.not_known,
            Standing::InPart | Standing::Unprotected => self.fails,
        }
    }
}
