//! What there is to say about a set of anchors under one plate.

use crate::standing::{AnchorCategory, AnchorKind, AnchorLoading, Cracking, SteelKind};
use quantity::{Area, Force, Length, Pressure, Ratio, Torque};

/// The code by which the strengths are found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AnchorCode {
    /// ACI 318-19, chapter 17.
    Aci318,
    /// EN 1992-4; where no calculation by it is here, ACI 318-19 stands in.
    En1992,
}

quantity::words! {
    /// What an anchor is.
    pub enum AnchorMake {
        /// Bolt or rod with a head or a nut in the concrete, placed before it.
        HeadedBolt = "headed bolt",
        /// Stud with a head, welded to its plate, placed before the concrete.
        HeadedStud = "headed stud",
        /// Bolt bent to a hook, placed before the concrete.
        HookedBolt = "hooked bolt",
        /// Wedge, sleeve or drop-in that spreads in a drilled hole.
        Expansion = "expansion anchor",
        /// Anchor that grips behind a widened hole.
        Undercut = "undercut anchor",
        /// Screw that cuts its thread in a drilled hole.
        Screw = "screw anchor",
        /// Rod glued into a drilled hole.
        Adhesive = "adhesive anchor",
    }
}

impl AnchorMake {
    /// How it came into the concrete.
    pub fn kind(self) -> AnchorKind {
        match self {
            Self::HeadedBolt | Self::HeadedStud | Self::HookedBolt => AnchorKind::CastIn,
            _ => AnchorKind::PostInstalled,
        }
    }
}

/// The rod itself.
#[derive(Debug, Clone, Copy)]
pub struct Rod {
    /// What it is.
    pub make: AnchorMake,
    /// Diameter.
    pub diameter: Length,
    /// Distance from thread to thread.
    pub pitch: Length,
    /// Effective embedment.
    pub embedment: Length,
    /// Tensile strength of the steel.
    pub tensile_strength: Pressure,
    /// Yield strength of the steel.
    pub yield_strength: Pressure,
    /// Whether the steel stretches.
    pub steel: SteelKind,
}

/// What the report of a product or the shape of the anchor adds; missing where it is not known or not asked for.
#[derive(Debug, Clone, Copy)]
pub struct ProductValues {
    /// Category of a post-installed anchor.
    pub category: AnchorCategory,
    /// Net area with which a head bears on the concrete.
    pub bearing_area: Option<Area>,
    /// Length of the hook.
    pub hook_length: Option<Length>,
    /// Pull-out strength in concrete of 2,500 psi; missing where the report says that it does not govern.
    pub pull_out: Option<Force>,
    /// Power with which it grows with the strength of the concrete.
    pub pull_out_exponent: Ratio,
    /// Bond stress in cracked and in uncracked concrete; the code's least where missing.
    pub bond: Option<[Pressure; 2]>,
    /// Coefficient of breakout; the code's where missing.
    pub breakout_coefficient: Option<Ratio>,
    /// Critical edge distance in uncracked concrete; the code's where missing.
    pub critical_edge: Option<Length>,
}

/// How the anchors stand.
#[derive(Debug, Clone, Copy)]
pub enum Pattern {
    /// Even rows along the gate line, one behind another.
    Rows {
        /// Anchors in a row.
        in_row: u32,
        /// Spacing in a row.
        spacing: Length,
        /// Rows.
        rows: u32,
        /// Spacing of the rows.
        row_spacing: Length,
    },
    /// Evenly on a circle.
    Circle {
        /// Number of anchors.
        count: u32,
        /// Diameter of the circle.
        diameter: Length,
    },
}

impl Pattern {
    /// Number of anchors.
    pub fn count(&self) -> u32 {
        match *self {
            Self::Rows { in_row, rows, .. } => in_row * rows,
            Self::Circle { count, .. } => count,
        }
    }
}

/// The concrete around the anchors.
#[derive(Debug, Clone, Copy)]
pub struct ConcreteAround {
    /// Compressive strength.
    pub strength: Pressure,
    /// Whether it counts as cracked.
    pub cracking: Cracking,
    /// Factor for lightweight concrete: 1 for normal weight.
    pub lightweight_factor: Ratio,
    /// Thickness.
    pub thickness: Length,
    /// Distances from the outermost anchors to the edges on the latching side, the far side, outside and inside.
    pub edges: [Length; 4],
    /// A bar of No. 4 or 12 mm and more runs along the edges.
    pub edge_bar: bool,
}

/// What is between plate and concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Seat {
    /// The plate sits on the concrete.
    Bare,
    /// On a pad of grout.
    Grout,
    /// On leveling nuts.
    Nuts {
        /// Distance from the concrete to the middle of the plate.
        stand_off: Length,
    },
}

/// Factored loads on the plate; each may act either way.
#[derive(Debug, Clone, Copy)]
pub struct PlateLoads {
    /// Moment that tips the plate along the gate line.
    pub moment_along: Torque,
    /// Moment that tips the plate across the gate line.
    pub moment_across: Torque,
    /// Shove along the gate line.
    pub shear_along: Force,
    /// Shove across the gate line.
    pub shear_across: Force,
    /// Weight that presses the plate down, as far as it may be counted on.
    pub weight: Force,
    /// Force that lifts the plate.
    pub uplift: Force,
    /// Pull that hangs on the worst anchor all the time.
    pub lasting_pull: Force,
    /// Pull on the worst anchor, where somebody has worked it out: every anchor is taken to be pulled as hard.
    pub stated_pull: Option<Force>,
}

/// A set of anchors under one plate.
#[derive(Debug, Clone, Copy)]
pub struct AnchorSet {
    /// The code.
    pub code: AnchorCode,
    /// The rod.
    pub rod: Rod,
    /// What product and shape add.
    pub product: ProductValues,
    /// How they stand.
    pub pattern: Pattern,
    /// The concrete.
    pub concrete: ConcreteAround,
    /// Length of the plate along the gate line and its width across; not asked of a circle or on leveling nuts.
    pub plate: [Length; 2],
    /// What is under the plate.
    pub seat: Seat,
    /// The loads.
    pub loads: PlateLoads,
    /// Whether earthquake counts.
    pub loading: AnchorLoading,
}
