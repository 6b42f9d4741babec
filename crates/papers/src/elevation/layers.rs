//! The layers of elevations and sections: what a line means.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers of an elevation or a section, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) surroundings: LayerId,
    pub(super) earth: LayerId,
    pub(super) ground: LayerId,
    pub(super) foundations: LayerId,
    pub(super) open_position: LayerId,
    pub(super) beyond: LayerId,
    pub(super) infill: LayerId,
    pub(super) members: LayerId,
    pub(super) leaf: LayerId,
    pub(super) swing: LayerId,
    pub(super) running: LayerId,
    pub(super) posts: LayerId,
    pub(super) beams: LayerId,
    pub(super) edges: LayerId,
    pub(super) devices: LayerId,
    pub(super) dimensions: LayerId,
    pub(super) notes: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{DashDot, Dashed, Dotted};
        use LineWeight::{Fine, Heavy, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            surroundings: layer(
                Layer::new("surroundings", Fine).ink(Ink::Gray),
                "What was there before: fences, walls, pillars.",
            ),
            earth: layer(
                Layer::new("earth", Fine).ink(Ink::Gray),
                "Below the finished surface.",
            ),
            ground: layer(Layer::new("ground", Heavy), "The finished surface."),
            foundations: layer(
                Layer::new("foundations", Medium).pattern(Dashed),
                "Concrete, below the surface.",
            ),
            open_position: layer(
                Layer::new("open position", Medium).pattern(Dotted),
                "The leaf when open.",
            ),
            beyond: layer(
                Layer::new("beyond", Medium).ink(Ink::Gray),
                "What stands behind the leaf or the cut.",
            ),
            infill: layer(
                Layer::new("infill", Fine).ink(Ink::Gray),
                "What fills the frame.",
            ),
            members: layer(Layer::new("frame", Medium), "Rails, uprights and braces."),
            leaf: layer(
                Layer::new("leaf, closed", Heavy),
                "The outline of the leaf.",
            ),
            swing: layer(
                Layer::new("swings, hinged at the point", Fine).pattern(DashDot),
                "Lines that meet on the hinge side.",
            ),
            running: layer(
                Layer::new("running gear", Medium),
                "Wheels, trolleys, track, guides, hinges.",
            ),
            posts: layer(
                Layer::new("posts and stops", Heavy),
                "Posts, and positive stops.",
            ),
            beams: layer(Layer::new("beams", Fine).pattern(DashDot), "Light beams."),
            edges: layer(Layer::new("contact edges", Fine), "Contact edges."),
            devices: layer(Layer::new("devices", Medium), "Devices and operators."),
            dimensions: layer(Layer::new("dimensions", Fine), "Measured lengths."),
            notes: layer(Layer::new("notes", Fine), "Words."),
        }
    }
}
