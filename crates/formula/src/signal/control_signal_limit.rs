//! How strong a hand remote may be in the United States.

use crate::OutOfReach;
use quantity::{FieldStrength, Frequency, Quantity as _};

formula! {
    /// The field strength that a transmitter of control signals may have 3 m away in the United States.
    ///
    /// Door openers and remote switches that fall silent within 5 s after the button is let go may be 2.5 times as strong as
    /// what sends from time to time.
    pub struct ControlSignalLimit = "control-signal-limit" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
    }
    gives
    /// The limits, average values 3 m from the antenna.
    pub struct ControlFields {
        /// For control signals (15.231(b)).
        control ("E"): FieldStrength,
        /// For other transmissions from time to time (15.231(e)).
        periodic ("Ep"): FieldStrength,
    }
    formula "E = 3750 µV/m + (f − 260 MHz) / 210 MHz · 8750 µV/m from 260 to 470 MHz, 12,500 µV/m above\nEp = E / 2.5"
    valid "From 260 MHz; the remote falls silent within 5 s. Bands that are kept free of such transmitters are not looked up."
    source { work: "47 CFR 15.231", clause: "(b) and (e)", evidence: Memory, seen: "figures from memory; the conditions of (a) seen in two copies of the section, (e) at 418 MHz in a publisher's worked figure" }
    by control_signal_limit
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn control_signal_limit(sender: &ControlSignalLimit) -> Result<ControlFields, OutOfReach> {
    let megahertz = sender.frequency.base() / 1e6;
    if !(260.0..=1e6).contains(&megahertz) {
        return Err(OutOfReach::new(
            "frequency",
            "the figures here begin at 260 MHz; remotes below that have others",
        ));
    }
    let share = ((megahertz - 260.0) / 210.0).min(1.0);
    let control = (3750.0 + share * 8750.0) * 1e-6;
    Ok(ControlFields {
        control: FieldStrength::from_base(control),
        periodic: FieldStrength::from_base(control / 2.5),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn limit(megahertz: f64) -> Result<ControlFields, OutOfReach> {
        let sender = ControlSignalLimit {
            frequency: Frequency::from_base(megahertz * 1e6),
        };
        sender.evaluate()
    }

    proptest! {
        #[test]
        fn it_rises_up_to_470_megahertz_and_stays(f in 260.0..900.0, more in 0.1..100.0) {
            let (here, there) = (limit(f).unwrap().control, limit(f + more).unwrap().control);
            prop_assert!(there >= here && there.base() <= 12.5e-3 + 1e-12);
        }
    }

    #[test]
    fn lower_bands_are_refused() {
        assert_eq!(limit(40.68).unwrap_err().input, "frequency");
    }
}
