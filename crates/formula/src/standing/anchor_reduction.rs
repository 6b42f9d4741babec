//! Strength reduction factors of anchors.

use super::concrete::AnchorKind;
use crate::OutOfReach;
use quantity::{Quantity as _, Ratio};

quantity::words! {
    /// How an anchorage fails.
    pub enum AnchorFailure {
        /// The steel tears.
        SteelTension = "steel in tension",
        /// The steel shears.
        SteelShear = "steel in shear",
        /// A cone of concrete tears out; the side of the concrete bursts; the bond fails.
        ConcreteTension = "concrete or bond in tension",
        /// The edge of the concrete breaks.
        ConcreteShear = "concrete in shear",
        /// The anchor pulls out.
        Pullout = "pull-out",
        /// The anchor pries out the concrete behind it.
        Pryout = "pry-out",
    }
}

quantity::words! {
    /// Whether steel stretches before it tears.
    pub enum SteelKind {
        /// Stretches: 14 % over its test length, and necks.
        Ductile = "ductile",
        /// Tears without warning.
        Brittle = "brittle",
    }
}

quantity::words! {
    /// How sure a post-installed anchor is to be set right, from its tests.
    pub enum AnchorCategory {
        /// Low sensitivity to setting.
        One = "category 1",
        /// Medium sensitivity.
        Two = "category 2",
        /// High sensitivity.
        Three = "category 3",
    }
}

quantity::words! {
    /// Whether bars tie the concrete that would break out to the rest.
    pub enum Supplementary {
        /// Bars are there, placed for it.
        Present = "present",
        /// None, or not known.
        Absent = "absent",
    }
}

quantity::words! {
    /// Whether the design counts earthquake.
    pub enum AnchorLoading {
        /// No earthquake, or a place where it does not govern.
        Static = "static",
        /// Earthquake in a place where the code counts it (design categories C to F).
        Earthquake = "earthquake",
    }
}

formula! {
    /// Strength reduction factor of a failure of an anchor, by ACI 318-19, with the further share under earthquake.
    ///
    /// A cast-in anchor has no category; give any. With bars that tie the breaking concrete the code allows more for
    /// post-installed anchors in tension as well; that gain is not counted here. A product report that prints its own
    /// factors prevails.
    pub struct AnchorReduction = "anchor-reduction" in Standing {
        /// How the anchor came into the concrete.
        anchor ("–"): AnchorKind,
        /// How it fails.
        failure ("–"): AnchorFailure,
        /// Whether its steel stretches.
        steel ("–"): SteelKind,
        /// Category of a post-installed anchor.
        category ("–"): AnchorCategory,
        /// Whether bars tie the concrete.
        supplementary ("–"): Supplementary,
        /// Whether earthquake counts.
        loading ("–"): AnchorLoading,
    }
    gives
    /// Strength reduction factor.
    pub struct ReductionFactor {
        /// Strength reduction factor.
        reduction ("φ"): Ratio,
        /// Further factor under earthquake.
        earthquake ("φeq"): Ratio,
        /// Both multiplied.
        total ("φ · φeq"): Ratio,
    }
    formula "steel in tension: φ = 0.75 ductile, 0.65 brittle; in shear 0.65 and 0.60\nconcrete or bond in tension: φ = 0.70 cast-in (0.75 with bars); 0.65, 0.55, 0.45 post-installed by category\nconcrete in shear: φ = 0.70, with bars 0.75\npull-out: φ = 0.70 cast-in; 0.65, 0.55, 0.45 post-installed by category\npry-out: φ = 0.70\nφeq = 0.75 for concrete, bond and pull-out in tension under earthquake, otherwise 1"
    valid "Load factors of the same code; anchors qualified by ACI 355.2 or 355.4."
    source { work: "ACI 318-19", clause: "tables 17.5.3(a), (b) and (c); 17.10.5.4", evidence: Seen, seen: "table (c) and the remark on earthquake in an anchor maker's guide to the code (name withheld); steel and cast-in rows in a public test file with AISC Design Guide 1 values; factors of worked examples" }
    by factor
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    clippy::unnecessary_wraps,
    reason = "every calculation takes its inputs by reference and may refuse"
)]
fn factor(asked: &AnchorReduction) -> Result<ReductionFactor, OutOfReach> {
    let tied = asked.supplementary == Supplementary::Present;
    let reduction = match (asked.failure, asked.steel, asked.anchor) {
        (AnchorFailure::SteelTension, SteelKind::Ductile, _) => 0.75,
        (AnchorFailure::SteelTension, SteelKind::Brittle, _)
        | (AnchorFailure::SteelShear, SteelKind::Ductile, _) => 0.65,
        (AnchorFailure::SteelShear, SteelKind::Brittle, _) => 0.60,
        (AnchorFailure::ConcreteTension, _, AnchorKind::CastIn)
        | (AnchorFailure::ConcreteShear, ..)
            if tied =>
        {
            0.75
        }
        (AnchorFailure::ConcreteTension | AnchorFailure::Pullout, _, AnchorKind::CastIn)
        | (AnchorFailure::ConcreteShear | AnchorFailure::Pryout, ..) => 0.70,
        (_, _, AnchorKind::PostInstalled) => of_category(asked.category),
    };
    let of_concrete = matches!(
        asked.failure,
        AnchorFailure::ConcreteTension | AnchorFailure::Pullout
    );
    let earthquake = if of_concrete && asked.loading == AnchorLoading::Earthquake {
        0.75
    } else {
        1.0
    };
    Ok(ReductionFactor {
        reduction: Ratio::from_base(reduction),
        earthquake: Ratio::from_base(earthquake),
        total: Ratio::from_base(reduction * earthquake),
    })
}

/// Factor of a post-installed anchor where concrete, bond or pull-out fails in tension.
fn of_category(category: AnchorCategory) -> f64 {
    match category {
        AnchorCategory::One => 0.65,
        AnchorCategory::Two => 0.55,
        AnchorCategory::Three => 0.45,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn all() -> Vec<AnchorReduction> {
        let mut all = Vec::new();
        for anchor in AnchorKind::ALL {
            for failure in AnchorFailure::ALL {
                for steel in SteelKind::ALL {
                    for category in AnchorCategory::ALL {
                        all.push(AnchorReduction {
                            anchor: *anchor,
                            failure: *failure,
                            steel: *steel,
                            category: *category,
                            supplementary: Supplementary::Absent,
                            loading: AnchorLoading::Static,
                        });
                    }
                }
            }
        }
        all
    }

    #[test]
    fn bars_never_lower_and_earthquake_never_raises_a_factor() {
        for asked in all() {
            let plain = asked.evaluate().unwrap();
            let tied = AnchorReduction {
                supplementary: Supplementary::Present,
                ..asked
            };
            let shaken = AnchorReduction {
                loading: AnchorLoading::Earthquake,
                ..asked
            };
            assert!(tied.evaluate().unwrap().reduction >= plain.reduction);
            assert!(shaken.evaluate().unwrap().total <= plain.total);
            assert!((0.45..=0.75).contains(&plain.reduction.base()));
        }
    }
}
