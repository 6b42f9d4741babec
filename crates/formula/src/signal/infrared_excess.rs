//! How much brighter a lamp lights what is near than what is far.

use super::picture_angle::above_zero;
use crate::OutOfReach;
use quantity::{Length, Quantity as _, Ratio};

formula! {
    /// How many times as bright a camera's own infrared lights something near as something far.
    ///
    /// Light thins out with the square of the distance. A camera sets its exposure by what is bright: a post, a leaf or a
    /// mesh close before the lamp leaves the far end of the picture black. The range of a lamp grows with the root of its
    /// power.
    pub struct InfraredExcess = "infrared-excess" in Signal {
        /// Distance of what is near.
        near ("d₁"): Length,
        /// Distance of what has to be seen.
        far ("d₂"): Length,
    }
    gives
    /// How unevenly it is lit.
    pub struct UnevenLight {
        /// Light on what is near over light on what is far.
        excess ("k"): Ratio,
    }
    formula "k = (d₂ / d₁)²"
    valid "One lamp at the camera, both in the middle of its beam, both as bright of themselves."
    source { work: "inverse-square law", clause: "", evidence: Physics, seen: "cases worked independently" }
    by infrared_excess
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn infrared_excess(lit: &InfraredExcess) -> Result<UnevenLight, OutOfReach> {
    let near = above_zero("near", lit.near)?;
    let far = above_zero("far", lit.far)?;
    Ok(UnevenLight {
        excess: Ratio::from_base((far / near).powi(2)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn lit(near: f64, far: f64) -> InfraredExcess {
        InfraredExcess {
            near: Length::from_base(near),
            far: Length::from_base(far),
        }
    }

    proptest! {
        #[test]
        fn near_and_far_exchanged_is_one_over_it(near in 0.1..50.0, far in 0.1..50.0) {
            let (one, other) = (lit(near, far).evaluate().unwrap(), lit(far, near).evaluate().unwrap());
            prop_assert!((one.excess.base() * other.excess.base() - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn no_distance_is_refused() {
        assert_eq!(lit(0.0, 5.0).evaluate().unwrap_err().input, "near");
        assert_eq!(lit(1.0, -5.0).evaluate().unwrap_err().input, "far");
    }
}
