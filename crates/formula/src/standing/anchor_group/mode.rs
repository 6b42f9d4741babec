//! A way in which anchors fail, with what is asked of them and what they hold.

use quantity::{Force, Quantity as _};

/// An edge of the concrete.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edge {
    /// On the latching side, toward falling x.
    Latch,
    /// On the far side of the opening, toward rising x.
    Far,
    /// Outside the property, toward falling y.
    Outside,
    /// Inside the property, toward rising y.
    Inside,
}

impl Edge {
    /// The four edges: latching side, far side, outside, inside.
    pub const ALL: [Self; 4] = [Self::Latch, Self::Far, Self::Outside, Self::Inside];

    /// It is reached along the gate line.
    pub fn is_along(self) -> bool {
        matches!(self, Self::Latch | Self::Far)
    }
}

/// A way in which anchors fail.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AnchorMode {
    /// The steel of the worst anchor tears.
    SteelTension,
    /// A cone of concrete tears out.
    Breakout,
    /// The worst anchor pulls out.
    PullOut,
    /// The side of the concrete bursts.
    Blowout,
    /// The bond lets go.
    Bond,
    /// The bond creeps under what hangs on it all the time.
    LastingBond,
    /// The steel shears.
    SteelShear,
    /// An anchor that stands free bends.
    StandOff,
    /// An edge breaks out when it is shoved at.
    Toward(Edge),
    /// An edge breaks out when it is shoved along.
    Along(Edge),
    /// The concrete behind is pried out.
    Pryout,
}

impl AnchorMode {
    /// What holds, in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::SteelTension => "steel of the worst anchor in tension",
            Self::Breakout => "cone of concrete around the pulled anchors",
            Self::PullOut => "worst anchor against pulling out",
            Self::Blowout => "side of the concrete against bursting",
            Self::Bond => "bond of the pulled anchors",
            Self::LastingBond => "bond of one anchor under a lasting pull",
            Self::SteelShear => "steel of one anchor in shear",
            Self::StandOff => "anchor that stands free, in bending",
            Self::Toward(Edge::Latch) => "edge on the latching side, shoved at",
            Self::Toward(Edge::Far) => "edge on the far side, shoved at",
            Self::Toward(Edge::Outside) => "outer edge, shoved at",
            Self::Toward(Edge::Inside) => "inner edge, shoved at",
            Self::Along(Edge::Latch) => "edge on the latching side, shoved along",
            Self::Along(Edge::Far) => "edge on the far side, shoved along",
            Self::Along(Edge::Outside) => "outer edge, shoved along",
            Self::Along(Edge::Inside) => "inner edge, shoved along",
            Self::Pryout => "concrete behind the anchors against prying out",
        }
    }
}

/// A way to fail with its figures.
#[derive(Debug, Clone, Copy)]
pub struct Mode {
    /// The way.
    pub way: AnchorMode,
    /// What is asked of the anchors that fail in this way together.
    pub demand: Force,
    /// Design strength of those anchors.
    pub strength: Force,
}

impl Mode {
    /// Share of the strength that is used; infinite where there is none.
    pub fn share(&self) -> f64 {
        if self.strength.base() > 0.0 {
            self.demand.base() / self.strength.base()
        } else {
            f64::INFINITY
        }
    }
}

/// The one of them that is used most.
pub(super) fn worst(modes: &[Mode]) -> Option<&Mode> {
    modes.iter().max_by(|a, b| a.share().total_cmp(&b.share()))
}
