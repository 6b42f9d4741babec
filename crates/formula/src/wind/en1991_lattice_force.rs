//! Wind force on a see-through leaf by EN 1991-1-4.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use crate::table::interpolated;
use quantity::{Area, Force, Pressure, Quantity as _, Ratio};

formula! {
    /// Wind force on a plane frame of flat-sided members: a leaf of pickets, bars or mesh that is less than 80 % solid.
    ///
    /// The coefficient is on the solid area, members only. It is 1.6 in the middle of the range, as a published example
    /// has it too; toward very open and nearly closed leaves the figure is known from memory only, and the greater value
    /// is taken. The end-effect factor is at most 1, and 1 is the safe side. Ice or wet snow can close a mesh: then it
    /// is a wall.
    pub struct En1991LatticeForce = "en1991-lattice-force" in Wind {
        /// Peak velocity pressure at the top of the leaf.
        peak_pressure ("qp"): Pressure,
        /// Area of the members alone, as seen by the wind.
        solid_area ("A"): Area,
        /// Area of the leaf within its outline.
        gross_area ("Ac"): Area,
        /// End-effect factor; 1 is the safe side.
        end_effect ("ψλ"): Ratio,
    }
    gives
    /// Wind force on a lattice.
    pub struct En1991Lattice {
        /// Solid share of the gross area.
        solidity ("φ"): Ratio,
        /// Force coefficient without end effect.
        base_coefficient ("cf,0"): Ratio,
        /// Force coefficient.
        coefficient ("cf"): Ratio,
        /// Pressure on the gross area that gives the same force.
        gross_pressure ("p"): Pressure,
        /// Force, the structural factor taken as 1.
        force ("F"): Force,
    }
    formula "φ = A / Ac\ncf,0 = 1.6 from φ = 0.2 to 0.6, straight up to 2.0 at 0.1 and at 0.8\ncf = cf,0 · ψλ\nF = qp · cf · A, p = F / Ac"
    valid "Solid share above 0 and below 0.8; flat-sided members in one plane. Recommended values, before any national annex."
    source { work: "EN 1991-1-4:2005", clause: "7.11 (equation 7.25, figure 7.33)", evidence: Memory, seen: "the curve is recalled; a published example reads 1.6 from it at φ = 0.31 (https://www.dlubal.com/en-US/support-and-learning/support/knowledge-base/001491)" }
    by lattice_force
}

/// Force coefficient without end effect at a solid share.
const CURVE: [(f64, f64); 4] = [(0.1, 2.0), (0.2, 1.6), (0.6, 1.6), (0.8, 2.0)];

fn lattice_force(leaf: &En1991LatticeForce) -> Result<En1991Lattice, OutOfReach> {
    not_negative("peak_pressure", leaf.peak_pressure, "900 Pa")?;
    positive("gross_area", leaf.gross_area, "7 m²")?;
    let solidity = leaf.solid_area.base() / leaf.gross_area.base();
    if !(solidity > 0.0 && solidity < 0.8 + 1e-9) {
        return Err(OutOfReach::new(
            "solid_area",
            "a lattice is solid over more than none and less than 80 % of its outline; above that use en1991-free-standing-wall",
        ));
    }
    if !(leaf.end_effect.base() > 0.0 && leaf.end_effect.base() <= 1.0) {
        return Err(OutOfReach::new(
            "end_effect",
            "the end-effect factor is above 0 and at most 1; 1 is the safe side",
        ));
    }
    let base = interpolated(solidity, CURVE);
    let coefficient = base * leaf.end_effect.base();
    let force = leaf.peak_pressure * leaf.solid_area * coefficient;
    Ok(En1991Lattice {
        solidity: Ratio::from_base(solidity),
        base_coefficient: Ratio::from_base(base),
        coefficient: Ratio::from_base(coefficient),
        gross_pressure: force / leaf.gross_area,
        force,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(solid: f64) -> Result<En1991Lattice, OutOfReach> {
        En1991LatticeForce {
            peak_pressure: Pressure::from_base(900.0),
            solid_area: Area::from_base(solid),
            gross_area: Area::from_base(10.0),
            end_effect: Ratio::from_base(1.0),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn a_more_solid_leaf_takes_more(solid in 0.1..7.8) {
            prop_assert!(leaf(solid).unwrap().force < leaf(solid + 0.1).unwrap().force);
        }
    }

    #[test]
    fn a_wall_is_refused() {
        assert_eq!(leaf(8.1).unwrap_err().input, "solid_area");
        assert_eq!(leaf(0.0).unwrap_err().input, "solid_area");
    }
}
