//! Factors that the strengths of a set share.

use super::set::{AnchorCode, AnchorSet};
use super::works::Works;
use crate::standing::{
    AnchorCategory, AnchorFailure, AnchorKind, AnchorReduction, Cracking, Supplementary,
};
use quantity::{Quantity as _, Ratio};

/// Strength reduction factor of a failure by ACI 318-19, with the share under earthquake.
pub(super) fn reduction<W: Works>(
    set: &AnchorSet,
    failure: AnchorFailure,
    works: &mut W,
) -> Result<Ratio, W::Stop> {
    let factor = works.work(&AnchorReduction {
        anchor: set.rod.make.kind(),
        failure,
        steel: set.rod.steel,
        category: set.product.category,
        supplementary: Supplementary::Absent,
        loading: set.loading,
    })?;
    Ok(factor.total)
}

/// Partial factor of the concrete in tension by EN 1992-4: 1.5, times that of the installation (recalled).
pub(super) fn partial_in_tension(set: &AnchorSet) -> Ratio {
    let installation = match (set.rod.make.kind(), set.product.category) {
        (AnchorKind::CastIn, _) | (_, AnchorCategory::One) => 1.0,
        (_, AnchorCategory::Two) => 1.2,
        (_, AnchorCategory::Three) => 1.4,
    };
    Ratio::from_base(1.5 * installation)
}

/// Partial factor of the concrete in shear by EN 1992-4 (recalled).
pub(super) fn partial_in_shear() -> Ratio {
    Ratio::from_base(1.5)
}

/// Factor ψc,V for cracking at an edge by ACI 318-19.
pub(super) fn edge_cracking(set: &AnchorSet) -> Ratio {
    Ratio::from_base(match (set.concrete.cracking, set.concrete.edge_bar) {
        (Cracking::Uncracked, _) => 1.4,
        (Cracking::Cracked, true) => 1.2,
        (Cracking::Cracked, false) => 1.0,
    })
}

/// Coefficients of EN 1992-4: k1 of the cone and k9 of the edge (recalled).
pub(super) fn coefficients(set: &AnchorSet) -> (Ratio, Ratio) {
    let (cone, edge) = match (set.concrete.cracking, set.rod.make.kind()) {
        (Cracking::Cracked, AnchorKind::CastIn) => (8.9, 1.7),
        (Cracking::Cracked, AnchorKind::PostInstalled) => (7.7, 1.7),
        (Cracking::Uncracked, AnchorKind::CastIn) => (12.7, 2.4),
        (Cracking::Uncracked, AnchorKind::PostInstalled) => (11.0, 2.4),
    };
    (Ratio::from_base(cone), Ratio::from_base(edge))
}

/// The strengths are found by EN 1992-4 where there is a calculation.
pub(super) fn is_european(set: &AnchorSet) -> bool {
    set.code == AnchorCode::En1992
}
