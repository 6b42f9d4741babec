//! What the anchor calculations share: inch-pound units of the code, kinds of anchor, refusals.

use crate::OutOfReach;
use quantity::{Length, Pressure, Quantity, Ratio};

quantity::words! {
    /// How an anchor came into the concrete.
    pub enum AnchorKind {
        /// Headed bolt or stud, cast into the concrete.
        CastIn = "cast-in",
        /// Set into a hole in hard concrete.
        PostInstalled = "post-installed",
    }
}

quantity::words! {
    /// Whether the concrete around an anchor is taken as cracked.
    pub enum Cracking {
        /// Cracked, or not shown to stay free of cracks.
        Cracked = "cracked",
        /// Shown by analysis to stay free of cracks in use.
        Uncracked = "uncracked",
    }
}

/// One inch in meters.
pub(super) const INCH: f64 = 0.0254;
/// One pound-force in newtons.
pub(super) const POUND: f64 = 4.448_221_615_260_5;
/// One pound-force on each square inch, in pascals.
pub(super) const PSI: f64 = POUND / (INCH * INCH);

/// A length in inches.
pub(super) fn inches(length: Length) -> f64 {
    length.base() / INCH
}

/// Compressive strength in pounds on each square inch, refused outside what the code was tested for.
pub(super) fn strength_in_psi(strength: Pressure, anchor: AnchorKind) -> Result<f64, OutOfReach> {
    let highest = match anchor {
        AnchorKind::CastIn => 10_000.0,
        AnchorKind::PostInstalled => 8_000.0,
    };
    let psi = strength.base() / PSI;
    if (1_000.0..=highest).contains(&psi) {
        return Ok(psi);
    }
    Err(OutOfReach::new(
        "concrete_strength",
        format!(
            "give the compressive strength of the concrete, from 1,000 psi to {highest} psi, such as 3000 psi"
        ),
    ))
}

/// Refuses a factor outside a range.
pub(super) fn within(
    input: &'static str,
    factor: Ratio,
    low: f64,
    high: f64,
    advice: &str,
) -> Result<(), OutOfReach> {
    if (low..=high).contains(&factor.base()) {
        return Ok(());
    }
    Err(OutOfReach::new(input, advice))
}

/// Refuses a value below zero.
pub(super) fn not_negative<Q: Quantity>(
    input: &'static str,
    value: Q,
    advice: &str,
) -> Result<(), OutOfReach> {
    if value.base() >= 0.0 {
        return Ok(());
    }
    Err(OutOfReach::new(input, advice))
}

/// Coefficient kc for basic breakout strength, in inch-pound units, where no product report gives another.
///
/// Source: ACI 318-19, 17.6.2.2.1: 24 cast-in, 17 post-installed (seen in worked examples).
pub fn breakout_coefficient(anchor: AnchorKind) -> Ratio {
    Ratio::from_base(match anchor {
        AnchorKind::CastIn => 24.0,
        AnchorKind::PostInstalled => 17.0,
    })
}

/// Factor ψc,N for cracking, where no product report gives another.
///
/// Source: ACI 318-19, 17.6.2.5.1: 1.25 cast-in and 1.4 post-installed in uncracked concrete; 1.4 seen in an anchor
/// maker's tables, 1.25 from memory.
pub fn cracking_factor(anchor: AnchorKind, concrete: Cracking) -> Ratio {
    Ratio::from_base(match (concrete, anchor) {
        (Cracking::Cracked, _) => 1.0,
        (Cracking::Uncracked, AnchorKind::CastIn) => 1.25,
        (Cracking::Uncracked, AnchorKind::PostInstalled) => 1.4,
    })
}
