//! The layers of the plan: what a line means.

use draw::{Ink, Layer, LayerId, LinePattern, LineWeight, Scene};

/// The layers of a plan, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) lanes: LayerId,
    pub(super) drive: LayerId,
    pub(super) foundations: LayerId,
    pub(super) old_foundations: LayerId,
    pub(super) bollards: LayerId,
    pub(super) surroundings: LayerId,
    pub(super) open_position: LayerId,
    pub(super) leaves: LayerId,
    pub(super) posts: LayerId,
    pub(super) loops: LayerId,
    pub(super) beams: LayerId,
    pub(super) edges: LayerId,
    pub(super) devices: LayerId,
    pub(super) enclosures: LayerId,
    pub(super) dimensions: LayerId,
    pub(super) notes: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{DashDot, Dashed, Dotted};
        use LineWeight::{Fine, Heavy, Medium};
        Self {
            lanes: scene.layer(
                Layer::new("lanes", Fine)
                    .pattern(DashDot)
                    .ink(Ink::Gray)
                    .describe("Center lines of lanes."),
            ),
            drive: scene.layer(
                Layer::new("edge of the drive", Fine)
                    .ink(Ink::Gray)
                    .describe("Both edges of the drive, by its width."),
            ),
            foundations: scene.layer(
                Layer::new("foundations", Medium)
                    .pattern(Dashed)
                    .describe("Concrete, below the surface."),
            ),
            old_foundations: scene.layer(
                Layer::new("foundations, there before", Medium)
                    .pattern(Dashed)
                    .ink(Ink::Gray)
                    .describe("Concrete that was there before this job."),
            ),
            bollards: scene
                .layer(Layer::new("bollards", Medium).describe("What keeps vehicles off.")),
            surroundings: scene.layer(
                Layer::new("surroundings", Medium)
                    .ink(Ink::Gray)
                    .describe("What was there before: fences, walls, pillars."),
            ),
            open_position: scene.layer(
                Layer::new("open position", Medium)
                    .pattern(Dotted)
                    .describe("The leaf when open, and its way there."),
            ),
            leaves: scene.layer(
                Layer::new("leaf, closed", Heavy).describe("The leaf in the closed position."),
            ),
            posts: scene
                .layer(Layer::new("posts and stops", Heavy).describe("Posts, and positive stops.")),
            loops: scene.layer(
                Layer::new("loops", Medium)
                    .pattern(Dashed)
                    .describe("Loops in the surface."),
            ),
            beams: scene.layer(
                Layer::new("beams, fields, views", Fine)
                    .pattern(DashDot)
                    .describe("Light beams, fields of scanners, and the sides of cameras' views."),
            ),
            edges: scene.layer(
                Layer::new("contact edges", Fine).describe("Contact edges on leaf and posts."),
            ),
            devices: scene
                .layer(Layer::new("devices", Medium).describe("Devices, operators, supplies.")),
            enclosures: scene
                .layer(Layer::new("enclosures", Medium).describe("Boxes that shelter equipment.")),
            dimensions: scene.layer(Layer::new("dimensions", Fine).describe("Measured lengths.")),
            notes: scene.layer(Layer::new("notes", Fine).describe("Words.")),
        }
    }
}
