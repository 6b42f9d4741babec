//! How far ice closes a see-through leaf.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// What the openings of a see-through leaf lie between.
    pub enum OpeningPattern {
        /// Long slots between bars, slats or pickets.
        Bars = "bars",
        /// Square openings of a mesh or grating.
        Mesh = "mesh",
    }
}

formula! {
    /// Solid share of a see-through leaf when ice has grown on its bars or its mesh.
    ///
    /// Ice grows into an opening from both sides: a gap of 1 in is closed by half an inch of ice. A closed leaf takes the
    /// wind like a wall.
    pub struct IcedSolidity = "iced-solidity" in Wind {
        /// Solid share of the bare leaf, seen from the front.
        solidity ("φ"): Ratio,
        /// Width of the openings.
        opening ("g"): Length,
        /// What the openings lie between.
        pattern ("–"): OpeningPattern,
        /// Thickness of the ice.
        thickness ("t"): Length,
    }
    gives
    /// A leaf with ice on it.
    pub struct IcedLeaf {
        /// Width that is left of the openings; none when they are closed.
        gap ("g′"): Length,
        /// Solid share with the ice.
        iced ("φ′"): Ratio,
    }
    formula "g′ = g − 2 · t, not below 0\nbars: φ′ = 1 − (1 − φ) · g′ / g\nmesh: φ′ = 1 − (1 − φ) · (g′ / g)²"
    valid "Openings of one size; ice of one thickness on all sides. Wet snow may bridge a mesh that ice leaves open."
    source { work: "geometry", clause: "", evidence: Physics, seen: "what is left of a gap that narrows from both sides" }
    by iced_leaf
}

fn iced_leaf(leaf: &IcedSolidity) -> Result<IcedLeaf, OutOfReach> {
    if !(0.0..=1.0).contains(&leaf.solidity.base()) {
        return Err(OutOfReach::new(
            "solidity",
            "give a solid share from 0 to 100 %, such as 30 %",
        ));
    }
    positive("opening", leaf.opening, "2 in")?;
    not_negative("thickness", leaf.thickness, "1/4 in")?;
    let gap = (leaf.opening - leaf.thickness * 2.0).base().max(0.0);
    let left = gap / leaf.opening.base();
    let open = match leaf.pattern {
        OpeningPattern::Bars => left,
        OpeningPattern::Mesh => left * left,
    };
    Ok(IcedLeaf {
        gap: Length::from_base(gap),
        iced: Ratio::from_base(1.0 - (1.0 - leaf.solidity.base()) * open),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn leaf(
        solidity: f64,
        pattern: OpeningPattern,
        thickness: f64,
    ) -> Result<IcedLeaf, OutOfReach> {
        IcedSolidity {
            solidity: Ratio::from_base(solidity),
            opening: Length::from_base(0.05),
            pattern,
            thickness: Length::from_base(thickness),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn ice_never_opens_a_leaf_and_a_mesh_closes_first(solidity in 0.0..1.0, thickness in 0.0..0.06) {
            let bars = leaf(solidity, OpeningPattern::Bars, thickness).unwrap().iced.base();
            let mesh = leaf(solidity, OpeningPattern::Mesh, thickness).unwrap().iced.base();
            prop_assert!(solidity <= bars + 1e-12 && bars <= mesh + 1e-12 && mesh <= 1.0);
        }
    }

    #[test]
    fn half_the_gap_closes_it() {
        let closed = leaf(0.2, OpeningPattern::Mesh, 0.025).unwrap();
        assert!(closed.gap.base() < 1e-12 && (closed.iced.base() - 1.0).abs() < 1e-12);
        assert_eq!(
            leaf(1.2, OpeningPattern::Bars, 0.0).unwrap_err().input,
            "solidity"
        );
        assert_eq!(
            leaf(0.2, OpeningPattern::Bars, -0.1).unwrap_err().input,
            "thickness"
        );
    }
}
