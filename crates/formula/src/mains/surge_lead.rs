//! Voltage that the leads of a surge protector add to what it lets through.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Current, Length, Quantity as _, Time, Voltage};

formula! {
    /// Voltage at the terminals of the equipment while a surge runs off: what the protector lets through, and what its
    /// leads add.
    ///
    /// A straight wire has about 1 µH for each meter, whatever its size, and a surge rises so fast that this counts more
    /// than its resistance. Both leads count, the one from the line and the one to the earth bar. A surge of 8 kA with a
    /// front of 8 µs adds 1 kV for each meter, which is the rule of the trade.
    pub struct SurgeLead = "surge-lead" in Power {
        /// What the protector lets through at that surge: its voltage protection level.
        let_through ("Up"): Voltage,
        /// Length of both leads together.
        leads ("l"): Length,
        /// Peak of the surge.
        surge ("I"): Current,
        /// Its front, from nothing to the peak.
        front ("T"): Time,
    }
    gives
    /// Voltage at the equipment.
    pub struct SurgeVoltage {
        /// Voltage along the leads.
        along_leads ("ΔU"): Voltage,
        /// Voltage at the terminals.
        at_terminals ("U"): Voltage,
    }
    formula "ΔU = L′ · l · I / T, L′ = 1 µH/m\nU = Up + ΔU"
    valid "Leads that run straight, without a loop or a coil; a lead bundled with what it protects adds more."
    source { work: "u = L · di/dt, with 1 µH for each meter of wire", clause: "IEC 60364-5-534 takes about 1 kV for each meter", evidence: Physics, seen: "trade-training module: ueba.elkonet.de/wbt, Berechnung der Zusatzspannung" }
    by surge_lead
}

/// Inductance of a straight wire, in henry for each meter.
const INDUCTANCE: f64 = 1e-6;

fn surge_lead(protector: &SurgeLead) -> Result<SurgeVoltage, OutOfReach> {
    not_negative("let_through", protector.let_through, "1.2 kV")?;
    not_negative("leads", protector.leads, "0.4 m")?;
    not_negative("surge", protector.surge, "8 kA")?;
    positive("front", protector.front, "8 µs")?;
    let slope = protector.surge.base() / protector.front.base();
    let along_leads = Voltage::from_base(INDUCTANCE * protector.leads.base() * slope);
    Ok(SurgeVoltage {
        along_leads,
        at_terminals: protector.let_through + along_leads,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn protector(leads: f64, surge: f64, front: f64) -> SurgeLead {
        SurgeLead {
            let_through: Voltage::from_base(1200.0),
            leads: Length::from_base(leads),
            surge: Current::from_base(surge),
            front: Time::from_base(front),
        }
    }

    proptest! {
        #[test]
        fn longer_leads_add_in_proportion(leads in 0.01..5.0, surge in 1.0..20_000.0) {
            let one = protector(leads, surge, 8e-6).evaluate().unwrap();
            let two = protector(2.0 * leads, surge, 8e-6).evaluate().unwrap();
            prop_assert!((two.along_leads.base() - 2.0 * one.along_leads.base()).abs() < 1e-6);
            prop_assert!(two.at_terminals > one.at_terminals);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(
            protector(1.0, 1.0, 0.0).evaluate().unwrap_err().input,
            "front"
        );
        assert_eq!(
            protector(-1.0, 1.0, 1.0).evaluate().unwrap_err().input,
            "leads"
        );
        assert_eq!(
            protector(1.0, -1.0, 1.0).evaluate().unwrap_err().input,
            "surge"
        );
    }
}
