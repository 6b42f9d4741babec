//! Hazard zones: where a moving leaf can squeeze, shear, draw in or carry somebody, worked out from the site.
//!
//! Each kind of zone has a function of its own, which a check asks. [`shown`] gives them all for a drawing, with what sees
//! or feels somebody there; kinds whose facts are missing are left out there, and the checks tell what is missing.

pub(crate) mod arm;
pub(crate) mod beside;
pub(crate) mod extent;
pub(crate) mod field;
pub(crate) mod gap;
pub(crate) mod heel;
pub(crate) mod kind;
pub(crate) mod leaf;
pub(crate) mod means;
pub(crate) mod rising;
pub(crate) mod sector;
pub(crate) mod shown;
pub(crate) mod slide;
pub(crate) mod swing;
pub(crate) mod thing;
pub(crate) mod under;

pub use extent::Extent;
pub use kind::ZoneKind;
pub use shown::{Guarded, Live, ShownZone, all_known, shown};

use crate::asking::Asking;
use crate::check::plane::Piece;
use crate::outcome::{Comparison, Halt, Labeled};
use quantity::Length;
use site::{Direction, Gate, Site};

/// Both directions of travel.
pub(crate) const BOTH_WAYS: &[Direction] = &[Direction::Opening, Direction::Closing];
/// Opening only.
pub(crate) const OPENING: &[Direction] = &[Direction::Opening];
/// Closing only.
pub(crate) const CLOSING: &[Direction] = &[Direction::Closing];

/// A place where somebody could be caught, or one that was looked at and is wide enough.
#[derive(Debug, Clone)]
pub(crate) struct Zone {
    /// What kind of place it is.
    pub(crate) kind: ZoneKind,
    /// The leaf whose motion makes it, by its name.
    pub(crate) leaf: String,
    /// What the leaf moves against: the name of a post, a thing, another leaf.
    pub(crate) against: String,
    /// Where somebody would be.
    pub(crate) extent: Extent,
    /// Least gap through the travel.
    pub(crate) least_gap: Length,
    /// Where the gap is least, seen from above.
    pub(crate) least_at: (f64, f64),
    /// The part of the leaf, as it lies when closed and seen from above, that comes to somebody there; none where it is
    /// the face in passing, or the drive.
    pub(crate) on_leaf: Option<Piece>,
    /// Gap that would make it no zone.
    pub(crate) wanted_gap: Length,
    /// Directions of travel in which it is live.
    pub(crate) live: &'static [Direction],
    /// It can catch somebody by the rule of the site's codes.
    pub(crate) catches: bool,
}

impl Zone {
    /// Its gap against what catches nobody: holds exactly where the zone catches nobody.
    pub(crate) fn compared(&self) -> Comparison {
        let gap = Labeled::new("least gap", self.least_gap);
        let wanted = Labeled::new("gap that catches nobody", self.wanted_gap);
        let is_wider = self.least_gap > self.wanted_gap;
        if is_wider == self.catches {
            Comparison::at_most(gap, wanted)
        } else {
            Comparison::at_most(wanted, gap)
        }
    }

    /// The zone in words: `between the closing edge and post-catch`.
    pub(crate) fn words(&self) -> String {
        self.kind.between(&self.leaf, &self.against)
    }
}

/// One kind of zone of a gate.
pub(crate) type ZonesOf =
    for<'s> fn(&mut Asking<'s>, &'s Site, &'s Gate) -> Result<Vec<Zone>, Halt>;

/// Every kind of zone with a place, in the order of the questions.
pub(crate) const KINDS: &[ZonesOf] = &[
    leading,
    trailing,
    draw_in,
    heel::hinge_side,
    swing::behind,
    below,
    arm::drive_arms,
    rising::arm,
];

/// All zones of a gate; what is missing for any kind is noted before it gives up.
pub(crate) fn zones<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    let kinds: Vec<_> = KINDS.iter().map(|kind| kind(asking, site, gate)).collect();
    let kinds: Result<Vec<_>, Halt> = kinds.into_iter().collect();
    Ok(kinds?.into_iter().flatten().collect())
}

/// What the edge that comes first on closing moves toward.
pub(crate) fn leading<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    use site::GateKind::{BarrierArm, VerticalLift, VerticalPivot};
    match gate.kind {
        _ if leaf::slides(gate) => slide::leading(asking, site, gate),
        _ if leaf::swings(gate) => swing::leading(asking, site, gate),
        VerticalLift | VerticalPivot | BarrierArm => rising::leading(asking, site, gate),
        _ => Ok(Vec::new()),
    }
}

/// What the edge that comes first on opening moves toward: behind the tail of a slide leaf, above one that rises.
pub(crate) fn trailing<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    match gate.kind {
        _ if leaf::slides(gate) => slide::trailing(asking, site, gate),
        site::GateKind::VerticalLift => rising::above(asking, site, gate),
        _ => Ok(Vec::new()),
    }
}

/// What a leaf slides past.
pub(crate) fn draw_in<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    if leaf::slides(gate) || gate.kind == site::GateKind::VerticalLift {
        beside::draw_in(asking, site, gate)
    } else {
        Ok(Vec::new())
    }
}

/// What is under a bottom edge whose gap changes.
pub(crate) fn below<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    if leaf::swings(gate) {
        under::under(asking, site, gate)
    } else {
        Ok(Vec::new())
    }
}
