//! Loss of a radio wave that must bend over an edge.

use super::fresnel_radius::FresnelRadius;
use crate::{Formula as _, OutOfReach};
use quantity::{Frequency, Gain, Length, Quantity as _, Ratio};

formula! {
    /// What a thin obstacle in or near the straight line between two antennas takes from a radio wave.
    ///
    /// An edge that just touches the line takes half of the field, 6 dB. One that stays below the line by more than
    /// 0.55 of the radius of the first Fresnel zone takes nothing. A round hilltop or a wall with a flat top takes more.
    pub struct KnifeEdgeLoss = "knife-edge-loss" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// Distance from the one antenna to the edge.
        near ("d1"): Length,
        /// Distance from the edge to the other antenna.
        far ("d2"): Length,
        /// Height of the edge above the straight line; below zero where it stays below the line.
        height ("h"): Length,
    }
    gives
    /// What the edge takes.
    pub struct EdgeLoss {
        /// Height of the edge in terms of the Fresnel zone.
        parameter ("ν"): Ratio,
        /// Loss that comes on top of the loss of the way.
        loss ("J"): Gain,
    }
    formula "ν = √2 · h / r,  r = √(λ · d1 · d2 / (d1 + d2))\nJ = 6.9 + 20 · log₁₀(√((ν − 0.1)² + 1) + ν − 0.1) for ν above −0.78, else 0"
    valid "One thin edge across the way; several obstacles take more."
    source { work: "ITU-R P.526-15", clause: "single knife-edge obstacle, formulas (26) and (31)", evidence: Seen, seen: "formula as several public radio programs quote it with its number" }
    by knife_edge_loss
}

/// Below this the approximation is zero, and below it so is the loss that it stands for.
const CLEAR: f64 = -0.78;

fn knife_edge_loss(edge: &KnifeEdgeLoss) -> Result<EdgeLoss, OutOfReach> {
    let zone = FresnelRadius {
        frequency: edge.frequency,
        near: edge.near,
        far: edge.far,
    };
    let radius = zone.evaluate()?.radius.base();
    let parameter = std::f64::consts::SQRT_2 * edge.height.base() / radius;
    if !parameter.is_finite() {
        return Err(OutOfReach::new(
            "height",
            "an edge as high as this is out of reach; give a height such as 6 ft",
        ));
    }
    let shifted = parameter - 0.1;
    let loss = if parameter > CLEAR {
        (6.9 + 20.0 * (shifted.hypot(1.0) + shifted).log10()).max(0.0)
    } else {
        0.0
    };
    Ok(EdgeLoss {
        parameter: Ratio::from_base(parameter),
        loss: Gain::from_base(loss),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;

    fn edge(height: f64) -> KnifeEdgeLoss {
        KnifeEdgeLoss {
            frequency: Frequency::from_base(900e6),
            near: Length::from_base(1000.0),
            far: Length::from_base(1000.0),
            height: Length::from_base(height),
        }
    }

    proptest! {
        #[test]
        fn a_higher_edge_never_takes_less(low in -30.0..30.0, more in 0.0..30.0) {
            let (one, other) = (edge(low).evaluate().unwrap(), edge(low + more).evaluate().unwrap());
            prop_assert!(other.loss >= one.loss && one.loss.base() >= 0.0);
        }
    }

    #[test]
    fn an_edge_far_below_takes_nothing_and_one_at_an_antenna_is_refused() {
        assert!(edge(-30.0).evaluate().unwrap().loss.base().abs() < 1e-12);
        let at_antenna = KnifeEdgeLoss {
            near: Length::from_base(0.0),
            ..edge(1.0)
        };
        assert_eq!(at_antenna.evaluate().unwrap_err().input, "near");
    }
}
