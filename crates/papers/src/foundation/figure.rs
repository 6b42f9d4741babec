//! The figure of a foundation: its plan, and its section beside or under it.

use super::alike::Alike;
use super::layers::Layers;
use super::pattern::{Outline, Pattern, Stub, patterns, stubs, unplaced};
use super::standing::{self, Thing};
use super::{measures, plan, section, words};
use crate::plan::gate::nominal;
use draw::{Point, Scene};
use quantity::{Length, Quantity as _};
use site::{Foundation, Site};

/// A foundation without anchors or conduits that is so many times as long as it is wide is drawn shortened.
const LONG: f64 = 4.0;

/// So many times as long as wide, and the section stands under the plan.
const WIDE: f64 = 2.2;

/// Depth that is drawn where nobody has said, as a share of the width.
const USUAL_DEPTH: f64 = 0.8;

/// A foundation and everything on it, measured from the middle of its top.
pub(super) struct Block<'a> {
    pub(super) foundation: &'a Foundation,
    pub(super) outline: Outline,
    /// Half of what is drawn along the gate line and across it (m).
    pub(super) half: (f64, f64),
    /// It is drawn shortened along the gate line.
    pub(super) shortened: bool,
    /// As given, or as it is drawn (m).
    pub(super) depth: f64,
    pub(super) patterns: Vec<Pattern<'a>>,
    pub(super) stubs: Vec<Stub>,
    pub(super) things: Vec<Thing>,
    /// Level of the top above the ground (m).
    pub(super) level: f64,
    /// Depth of frost below the ground (m).
    pub(super) frost: Option<f64>,
}

impl<'a> Block<'a> {
    fn of(site: &Site, foundation: &'a Foundation) -> Option<Self> {
        let outline = Outline::of(foundation)?;
        let (length, width) = outline.halves();
        let (length, width) = (length.base(), width.base());
        let patterns = patterns(foundation);
        let stubs = stubs(foundation);
        let things = standing::on(site, foundation);
        let bare = patterns.is_empty() && stubs.is_empty() && things.is_empty();
        let shortened = bare && length > LONG * width;
        let climate = site.climate.as_ref();
        let frost = climate.and_then(|climate| nominal(climate.frost_depth.as_ref()));
        Some(Self {
            foundation,
            outline,
            half: (if shortened { 1.5 * width } else { length }, width),
            shortened,
            depth: nominal(foundation.depth.as_ref())
                .map_or(2.0 * USUAL_DEPTH * width, quantity::Quantity::base),
            patterns,
            stubs,
            things,
            level: foundation
                .at
                .as_ref()
                .map_or(0.0, |at| at.z.nominal().base()),
            frost: frost.map(quantity::Quantity::base),
        })
    }

    /// The section is cut across the gate line, where along it there is nothing to see.
    pub(super) fn cut_across(&self) -> bool {
        self.shortened
    }

    /// Half the width of the section (m).
    pub(super) fn half_section(&self) -> f64 {
        if self.cut_across() {
            self.half.1
        } else {
            self.half.0
        }
    }
}

/// The figure of foundations that are alike, and whether a sheet of half the size is enough.
pub(crate) fn scene(site: &Site, group: &Alike<'_>) -> Option<(Scene, bool)> {
    let block = Block::of(site, group.first)?;
    let many = group.names.len() > 1;
    let title = format!(
        "Foundation{} {}",
        if many { "s" } else { "" },
        group.named()
    );
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "Foundation {}: from above with anchors, plates, conduits and what stands on it, and cut through with its depth, the frost line and the anchors.",
        group.named()
    ));
    let layers = Layers::add_to(&mut scene);
    let wide = block.half.0 > WIDE * block.half.1 && !block.shortened;
    plan::draw(&mut scene, &layers, &block);
    measures::of_plan(&mut scene, &layers, &block);
    section::draw(&mut scene, &layers, &block, &place(&block, wide));
    words::remarks(&mut scene, &block);
    for name in unplaced(group.first) {
        scene.remark(format!(
            "Conduit {name} is not drawn: where it comes up is not given."
        ));
    }
    Some((scene, !wide))
}

/// Where the middle of the section's top is drawn.
fn place(block: &Block<'_>, under: bool) -> Point {
    let (length, width) = block.half;
    let (x, y) = if under {
        (0.0, -width - 1.5 * width - section::ABOVE * block.depth)
    } else {
        let gap = (2.0 * length).max(1.05 * block.depth).max(1.3 * width);
        (
            length + gap + block.half_section(),
            width.min(0.35 * block.depth),
        )
    };
    Point::new(Length::from_base(x), Length::from_base(y))
}
