//! The power that a transmitter with its cable and antenna radiates.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Gain, Power, PowerLevel, Quantity as _};

formula! {
    /// What a transmitter radiates in the direction in which its antenna sends best.
    ///
    /// Some rules count over an antenna that sends evenly in all directions (EIRP), others over a half-wave dipole (ERP),
    /// which is 2.15 dB less. A better antenna counts as much as more power.
    pub struct RadiatedPower = "radiated-power" in Signal {
        /// Power at the transmitter's socket.
        power ("Pt"): PowerLevel,
        /// Loss in cable and plugs up to the antenna.
        cable_loss ("Lc"): Gain,
        /// Gain of the antenna over one that sends evenly.
        antenna_gain ("G"): Gain,
    }
    gives
    /// What is radiated.
    pub struct RadiatedPowers {
        /// Level over an antenna that sends evenly.
        level ("p"): PowerLevel,
        /// Power over an antenna that sends evenly (EIRP).
        even ("EIRP"): Power,
        /// Power over a half-wave dipole (ERP).
        dipole ("ERP"): Power,
    }
    formula "p = Pt − Lc + G\nEIRP = 1 mW · 10^(p / 10)\nERP = EIRP / 10^(0.215)"
    valid "In the direction of the antenna's best sending."
    source { work: "definitions of EIRP and ERP; dipole gain 2.15 dB", clause: "", evidence: Physics, seen: "field of a half-wave dipole" }
    by radiated_power
}

/// Gain of a half-wave dipole in decibels.
const DIPOLE: f64 = 2.15;

fn radiated_power(sender: &RadiatedPower) -> Result<RadiatedPowers, OutOfReach> {
    not_negative("cable_loss", sender.cable_loss, "1 dB")?;
    let level = sender.power.base() - sender.cable_loss.base() + sender.antenna_gain.base();
    if !(-200.0..=120.0).contains(&level) {
        return Err(OutOfReach::new(
            "power",
            "no radio of a gate sends so; give a power such as 14 dBm",
        ));
    }
    let watts = |level: f64| Power::from_base(1e-3 * 10f64.powf(level / 10.0));
    Ok(RadiatedPowers {
        level: PowerLevel::from_base(level),
        even: watts(level),
        dipole: watts(level - DIPOLE),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn sender(power: f64, loss: f64, gain: f64) -> RadiatedPower {
        RadiatedPower {
            power: PowerLevel::from_base(power),
            cable_loss: Gain::from_base(loss),
            antenna_gain: Gain::from_base(gain),
        }
    }

    proptest! {
        #[test]
        fn gain_counts_as_power_and_loss_against_it(p in -20.0..30.0, l in 0.0..5.0, g in -10.0..30.0) {
            let all = sender(p, l, g).evaluate().unwrap();
            let plain = sender(p + g - l, 0.0, 0.0).evaluate().unwrap();
            prop_assert!((all.level.base() - plain.level.base()).abs() < 1e-9);
            prop_assert!(all.dipole < all.even);
        }
    }

    #[test]
    fn a_cable_that_strengthens_is_refused() {
        assert_eq!(
            sender(10.0, -1.0, 0.0).evaluate().unwrap_err().input,
            "cable_loss"
        );
    }
}
