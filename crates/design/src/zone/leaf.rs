//! What counts of a leaf: how it moves, how thick it is, and how high it is where people are.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::Quantity as _;
use site::{CodeBasis, Gate, GateKind, Leaf, Site};

/// The leaf slides along the gate line.
pub(crate) fn slides(gate: &Gate) -> bool {
    matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide)
}

/// The leaf turns about an upright line.
pub(crate) fn swings(gate: &Gate) -> bool {
    matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing)
}

/// Height up to which zones are looked for: 6 ft in the United States, 2.5 m in Europe.
pub(crate) fn highest(site: &Site) -> f64 {
    match site.site.code_basis {
        CodeBasis::Us => 72.0 * 0.0254,
        CodeBasis::Eu => 2.5,
    }
}

/// A leaf in section.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Panel {
    /// Height of its bottom edge above the finished surface.
    pub(crate) bottom: f64,
    /// Height of its top edge, or that up to which zones are looked for.
    pub(crate) top: f64,
    /// Half of its thickness.
    pub(crate) half: f64,
}

/// The section of a leaf.
pub(crate) fn panel<'s>(
    asking: &mut Asking<'s>,
    site: &Site,
    leaf: &'s Leaf,
) -> Result<Panel, Halt> {
    let bottom = read!(asking, leaf.ground_clearance);
    let height = read!(asking, leaf.height);
    let thickness = read!(asking, leaf.thickness);
    let (bottom, height, thickness) = (bottom?, height?, thickness?);
    Ok(Panel {
        bottom: bottom.base(),
        top: (bottom + height).base().min(highest(site)),
        half: thickness.base() / 2.0,
    })
}

/// Each leaf of a gate with what a function finds for it; what is missing for any is noted before it gives up.
pub(crate) fn each<'s, T>(
    gate: &'s Gate,
    mut find: impl FnMut(&'s Leaf) -> Result<Vec<T>, Halt>,
) -> Result<Vec<T>, Halt> {
    let found: Vec<_> = gate.leaf.iter().map(&mut find).collect();
    let found: Result<Vec<_>, Halt> = found.into_iter().collect();
    Ok(found?.into_iter().flatten().collect())
}
