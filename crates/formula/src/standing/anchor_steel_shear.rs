//! Steel of a threaded anchor in shear.

use super::anchor_steel_tension::AnchorSteelTension;
use super::factors::reduction;
use crate::{Formula as _, OutOfReach};
use quantity::{Area, Force, Length, Pressure, Ratio};

quantity::words! {
    /// What an anchor that takes shear is.
    pub enum ShearAnchor {
        /// A headed stud welded to its plate.
        WeldedStud = "welded stud",
        /// A bolt or rod through a hole of the plate.
        Bolt = "bolt",
    }
}

quantity::words! {
    /// What is between a plate and the concrete.
    pub enum UnderPlate {
        /// The plate sits on the concrete.
        Bare = "nothing",
        /// A pad of grout.
        Grout = "grout",
    }
}

formula! {
    /// Strength of a threaded anchor's steel in shear, by ACI 318-19.
    ///
    /// The threads are taken to lie where the anchor shears. A plate on leveling nuts without grout bends the anchors,
    /// and is outside this formula. Washers that fill oversize holes, or a weld, are needed for all anchors of a group
    /// to share. A product report that prints its own shear strength prevails.
    pub struct AnchorSteelShear = "anchor-steel-shear" in Standing {
        /// What the anchor is.
        anchor ("–"): ShearAnchor,
        /// What is under the plate.
        under_plate ("–"): UnderPlate,
        /// Diameter of the rod over the threads.
        diameter ("da"): Length,
        /// Distance from thread to thread.
        pitch ("p"): Length,
        /// Specified tensile strength of the steel.
        tensile_strength ("futa"): Pressure,
        /// Specified yield strength of the steel.
        yield_strength ("fya"): Pressure,
        /// Strength reduction factor: 0.65 for ductile steel, 0.60 for brittle.
        reduction ("φ"): Ratio,
    }
    gives
    /// Strength of one anchor's steel in shear.
    pub struct AnchorShear {
        /// Effective area of the thread.
        area ("Ase,V"): Area,
        /// Tensile strength that counts.
        counted_strength ("futa′"): Pressure,
        /// Nominal strength.
        nominal ("Vsa"): Force,
        /// Design strength.
        design ("φVsa"): Force,
    }
    formula "Ase,V = π/4 · (da − 0.9743 · p)²\nfuta′ = min(futa, 1.9 · fya, 125,000 psi)\nVsa = 0.6 · Ase,V · futa′, a welded stud Ase,V · futa′\non grout 0.8 of that"
    valid "Anchors with threads in the shear plane; the plate on the concrete or on grout of no more thickness than the code allows."
    source { work: "ACI 318-19", clause: "17.7.1.2 and 17.7.1.2.1", evidence: Seen, seen: "strengths of worked examples of an anchor maker's guide (name withheld): shear six tenths of tension; a summary of the chapter in a public source; the 0.8 for grout from memory, it only lowers the strength" }
    by shear
}

fn shear(anchor: &AnchorSteelShear) -> Result<AnchorShear, OutOfReach> {
    reduction(anchor.reduction)?;
    let tension = AnchorSteelTension {
        diameter: anchor.diameter,
        pitch: anchor.pitch,
        tensile_strength: anchor.tensile_strength,
        yield_strength: anchor.yield_strength,
        reduction: anchor.reduction,
    }
    .evaluate()?;
    let share = match anchor.anchor {
        ShearAnchor::WeldedStud => 1.0,
        ShearAnchor::Bolt => 0.6,
    };
    let grout = match anchor.under_plate {
        UnderPlate::Bare => 1.0,
        UnderPlate::Grout => 0.8,
    };
    let nominal = tension.nominal * (share * grout);
    Ok(AnchorShear {
        area: tension.area,
        counted_strength: tension.counted_strength,
        nominal,
        design: nominal * anchor.reduction,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn strength(anchor: ShearAnchor, under_plate: UnderPlate, diameter: f64) -> f64 {
        let anchor = AnchorSteelShear {
            anchor,
            under_plate,
            diameter: Length::from_base(diameter),
            pitch: Length::from_base(0.002),
            tensile_strength: Pressure::from_base(400e6),
            yield_strength: Pressure::from_base(250e6),
            reduction: Ratio::from_base(0.65),
        };
        anchor.evaluate().unwrap().nominal.base()
    }

    proptest! {
        #[test]
        fn grout_and_a_loose_bolt_hold_less(diameter in 0.006..0.09) {
            let bolt = strength(ShearAnchor::Bolt, UnderPlate::Bare, diameter);
            prop_assert!(strength(ShearAnchor::WeldedStud, UnderPlate::Bare, diameter) > bolt);
            prop_assert!(strength(ShearAnchor::Bolt, UnderPlate::Grout, diameter) < bolt);
            prop_assert!(strength(ShearAnchor::Bolt, UnderPlate::Bare, diameter + 1e-3) > bolt);
        }
    }
}
