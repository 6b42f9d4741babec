//! Heat and the life of batteries, motors and electronics, by the rule of ten degrees.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Quantity as _, Ratio, Temperature, Time};

formula! {
    /// Life at another temperature by the rule that each ten kelvin of heat halve it.
    ///
    /// The rule is used for the insulation of motors, for batteries and for electronics alike. It is a rule of thumb: use
    /// it to see whether heat matters, not to promise a date. Cold does not lengthen a life without end.
    pub struct AgingTenDegreeRule = "aging-ten-degree-rule" in Life {
        /// Life at the rated temperature.
        rated_life ("L0"): Time,
        /// Temperature at which that life is stated.
        rated ("T0"): Temperature,
        /// Temperature at which the part lives.
        actual ("T"): Temperature,
    }
    gives
    /// Life at a temperature.
    pub struct AgedLife {
        /// Life over rated life.
        factor ("k"): Ratio,
        /// Life at that temperature.
        life ("L"): Time,
    }
    formula "k = 2^((T0 − T) / 10 K)\nL = k · L0"
    valid "Up to 60 K away from the rated temperature."
    source { work: "rule of ten degrees, after Arrhenius and Montsinger", clause: "", evidence: CommonPractice, seen: "https://www.eng-tips.com/threads/effects-of-heat-on-a-motors-life.81140/post-301329 and others" }
    by aged
}

fn aged(part: &AgingTenDegreeRule) -> Result<AgedLife, OutOfReach> {
    positive("rated_life", part.rated_life, "5 years")?;
    let margin = part.rated.base() - part.actual.base();
    if !(-60.0 - 1e-9..=60.0 + 1e-9).contains(&margin) {
        return Err(OutOfReach::new(
            "actual",
            "the rule says nothing more than 60 K away from the rated temperature",
        ));
    }
    let factor = (margin / 10.0).exp2();
    Ok(AgedLife {
        factor: Ratio::from_base(factor),
        life: part.rated_life * factor,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(kelvin: f64) -> Result<AgedLife, OutOfReach> {
        AgingTenDegreeRule {
            rated_life: Time::from_base(1e8),
            rated: Temperature::from_base(300.0),
            actual: Temperature::from_base(kelvin),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn ten_kelvin_more_halve_it(kelvin in 240.0..350.0) {
            let ratio = at(kelvin).unwrap().life.base() / at(kelvin + 10.0).unwrap().life.base();
            prop_assert!((ratio - 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn far_from_the_rated_temperature_is_refused() {
        assert_eq!(at(361.0).unwrap_err().input, "actual");
    }
}
