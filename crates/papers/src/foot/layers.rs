//! The layers of the plan for people on foot.

use draw::{Layer, LayerId, LinePattern, LineWeight, Scene};

/// What a symbol on the plan stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// A walk gate, a bell, a letter box.
    Way,
    /// Something that moves the gate.
    Control,
    /// A place at which a drive is let go by hand.
    Release,
    /// A sign.
    Sign,
    /// Where somebody stands.
    Stand,
}

/// The layers, lowest first.
#[derive(Debug, Clone, Copy)]
pub(super) struct Layers {
    pub(super) boundary: LayerId,
    pub(super) ways: LayerId,
    stands: LayerId,
    gates: LayerId,
    controls: LayerId,
    releases: LayerId,
    signs: LayerId,
}

impl Layers {
    /// Adds the layers to a scene.
    pub(super) fn add_to(scene: &mut Scene) -> Self {
        use LinePattern::{DashDotDot, Dashed};
        use LineWeight::{Fine, Medium};
        let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
        Self {
            boundary: layer(
                Layer::new("boundary of the property", Medium).pattern(DashDotDot),
                "Where the property ends.",
            ),
            ways: layer(
                Layer::new("ways on foot", Medium).pattern(Dashed),
                "Lines that people on foot take.",
            ),
            stands: layer(
                Layer::new("where somebody stands", Fine),
                "Where people stand who work something.",
            ),
            gates: layer(
                Layer::new("walk gates and stops", Medium),
                "Walk gates, bells, letter boxes.",
            ),
            controls: layer(Layer::new("controls", Medium), "What makes the gate move."),
            releases: layer(
                Layer::new("hand releases", Medium),
                "Places at which a drive is let go by hand.",
            ),
            signs: layer(Layer::new("signs", Medium), "Signs."),
        }
    }

    /// The layer of a symbol.
    pub(super) fn of(&self, part: Part) -> LayerId {
        match part {
            Part::Way => self.gates,
            Part::Control => self.controls,
            Part::Release => self.releases,
            Part::Sign => self.signs,
            Part::Stand => self.stands,
        }
    }
}
