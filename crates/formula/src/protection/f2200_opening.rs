//! Openings in a sliding leaf and the fence it passes, by ASTM F2200.

use crate::OutOfReach;
use quantity::{Length, Quantity as _};

quantity::words! {
    /// Text of ASTM F2200 that a gate is held to.
    pub enum F2200Edition {
        /// Reprints up to about 2012: screened to 48 in.
        To2012 = "to about 2012",
        /// Later reprints: screened to 72 in.
        Later = "later",
    }
}

quantity::words! {
    /// What the rule says about an opening.
    pub enum OpeningVerdict {
        /// Too narrow for the sphere.
        Stops = "stops the sphere",
        /// Wide enough for the sphere, within the height that is screened.
        Passes = "lets the sphere through",
        /// Wide enough for the sphere, but wholly above the height that is screened.
        AboveScreening = "above the screened height",
    }
}

formula! {
    /// Whether an opening in a sliding leaf, its tail or the fence it passes is narrow enough.
    ///
    /// A sphere of 2-1/4 in must not go through, from the bottom of the leaf to its top or to the screened height above
    /// ground, whichever is lower. The width that counts is the smallest clear dimension of the opening: what a stiff
    /// sphere feels. Editions differ in the height; where it is unknown which holds, take the later one.
    pub struct F2200Opening = "f2200-opening" in Protection {
        /// Text that the gate is held to.
        edition ("–"): F2200Edition,
        /// Smallest clear dimension of the opening.
        opening ("e"): Length,
        /// Height of the opening's lower end above ground.
        opening_bottom ("z"): Length,
        /// Height of the leaf's top above ground.
        gate_top ("h"): Length,
    }
    gives
    /// What the rule says about an opening.
    pub struct OpeningRule {
        /// Diameter of the sphere that must not go through.
        sphere ("D"): Length,
        /// Height above ground up to which the leaf is screened.
        screened_height ("hs"): Length,
        /// Room to spare: above zero where the opening is narrow enough.
        margin ("D − e"): Length,
        /// What the rule says.
        verdict ("–"): OpeningVerdict,
    }
    formula "D = 2.25 in\nhs = min(h, 72 in), or min(h, 48 in) to about 2012\ne < D wherever z < hs"
    valid "Sliding gates of usage class I to III; class IV follows the security needs of the site."
    source { work: "ASTM F2200", clause: "slide gate provisions", evidence: Seen, seen: "gate-operator manuals that reprint the provisions, later and earlier text (addresses withheld); the standard itself was not at hand" }
    by opening_rule
}

/// One inch in meters.
const INCH: f64 = 0.0254;
/// Room below which an opening counts as just as wide as the sphere: a thousandth of a millimeter.
const TOUCH: f64 = 1e-6;
/// Diameter of the sphere in inches.
const SPHERE: f64 = 2.25;

fn opening_rule(leaf: &F2200Opening) -> Result<OpeningRule, OutOfReach> {
    if leaf.opening.base() < 0.0 {
        return Err(OutOfReach::new(
            "opening",
            "give the smallest clear dimension of the opening, such as 2 in",
        ));
    }
    if leaf.gate_top.base() <= 0.0 {
        return Err(OutOfReach::new(
            "gate_top",
            "give the height of the leaf's top above ground, such as 6 ft",
        ));
    }
    let sphere = Length::from_base(SPHERE * INCH);
    let limit = match leaf.edition {
        F2200Edition::To2012 => 48.0,
        F2200Edition::Later => 72.0,
    };
    let screened_height = Length::from_base(leaf.gate_top.base().min(limit * INCH));
    let margin = sphere - leaf.opening;
    let verdict = if margin.base() > TOUCH {
        OpeningVerdict::Stops
    } else if leaf.opening_bottom < screened_height {
        OpeningVerdict::Passes
    } else {
        OpeningVerdict::AboveScreening
    };
    Ok(OpeningRule {
        sphere,
        screened_height,
        margin,
        verdict,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn verdict(edition: F2200Edition, opening: f64, bottom: f64) -> OpeningVerdict {
        let leaf = F2200Opening {
            edition,
            opening: Length::from_base(opening * INCH),
            opening_bottom: Length::from_base(bottom * INCH),
            gate_top: Length::from_base(96.0 * INCH),
        };
        leaf.evaluate().unwrap().verdict
    }

    #[test]
    fn an_opening_as_wide_as_the_sphere_lets_it_through() {
        assert_eq!(
            verdict(F2200Edition::Later, 2.25, 10.0),
            OpeningVerdict::Passes
        );
        assert_eq!(
            verdict(F2200Edition::Later, 2.24, 10.0),
            OpeningVerdict::Stops
        );
    }

    proptest! {
        #[test]
        fn the_later_text_never_lets_more_pass(opening in 0.0..8.0, bottom in 0.0..96.0) {
            if verdict(F2200Edition::To2012, opening, bottom) == OpeningVerdict::Passes {
                prop_assert_eq!(verdict(F2200Edition::Later, opening, bottom), OpeningVerdict::Passes);
            }
        }
    }
}
