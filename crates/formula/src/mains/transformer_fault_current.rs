//! Current of a dead short at a transformer's terminals.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Current, Quantity as _, Ratio};

formula! {
    /// Greatest current of a dead short at the secondary terminals of a transformer.
    ///
    /// Nothing before the transformer counts, so that the true current is a little less. Its impedance may be a tenth
    /// below its plate. Every breaker and panel after it must be able to interrupt what arrives there.
    pub struct TransformerFaultCurrent = "transformer-fault-current" in Power {
        /// Rated secondary current.
        rated ("I"): Current,
        /// Impedance on its plate.
        impedance ("Z"): Ratio,
        /// Least impedance over that of the plate: 90 %.
        tolerance ("c"): Ratio,
    }
    gives
    /// Short at the terminals.
    pub struct TransformerFault {
        /// Current of the short.
        fault_current ("Isc"): Current,
    }
    formula "Isc = I / (Z · c)"
    valid "A dead short at the terminals, unlimited power before the transformer, no motors that feed back."
    source { work: "point-to-point method of available fault current", clause: "", evidence: Seen, seen: "worksheet example: www.scribd.com/document/230809087/" }
    by transformer_fault_current
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn transformer_fault_current(
    transformer: &TransformerFaultCurrent,
) -> Result<TransformerFault, OutOfReach> {
    positive("rated", transformer.rated, "104 A")?;
    positive("impedance", transformer.impedance, "2 %")?;
    positive("tolerance", transformer.tolerance, "90 %")?;
    Ok(TransformerFault {
        fault_current: transformer.rated
            / (transformer.impedance.base() * transformer.tolerance.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn short(amperes: f64, impedance: f64) -> Result<f64, OutOfReach> {
        TransformerFaultCurrent {
            rated: Current::from_base(amperes),
            impedance: Ratio::from_base(impedance),
            tolerance: Ratio::from_base(0.9),
        }
        .evaluate()
        .map(|found| found.fault_current.base())
    }

    proptest! {
        #[test]
        fn half_the_impedance_is_twice_the_short(amperes in 1.0..5000.0, impedance in 0.005..0.2) {
            let (one, two) = (short(amperes, impedance).unwrap(), short(amperes, impedance / 2.0).unwrap());
            prop_assert!((two / one - 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn nothing_is_refused() {
        assert_eq!(short(0.0, 0.03).unwrap_err().input, "rated");
        assert_eq!(short(100.0, 0.0).unwrap_err().input, "impedance");
    }
}
