//! Open voltage of a panel in the cold.

use crate::OutOfReach;
use quantity::{Quantity as _, Ratio, Temperature, Voltage};

formula! {
    /// Open voltage of a panel or a string of panels at a temperature of its cells.
    ///
    /// On a cold bright morning the cells are as cold as the air and the voltage is there before any current flows.
    pub struct PanelColdVoltage = "panel-cold-voltage" in Power {
        /// Open voltage at standard test conditions, all panels in series together.
        open_voltage ("V₀"): Voltage,
        /// Share of the open voltage that is lost for each degree Celsius warmer; the data sheet prints it with a minus.
        per_celsius ("β"): Ratio,
        /// Temperature of the cells.
        cells ("T"): Temperature,
    }
    gives
    /// A panel in the cold.
    pub struct PanelInCold {
        /// Its open voltage there.
        voltage ("V"): Voltage,
    }
    formula "V = V₀ · (1 + β · (25 °C − T))"
    valid "Cells of −60 to 90 °C; a loss of at most 1 % for each degree."
    source { work: "linear coefficient of the data sheet about standard test conditions", clause: "", evidence: Seen, seen: "http://www.solar-kerberos.cz/en/faq/calculation-of-vocmax" }
    by panel_cold_voltage
}

/// Cells at standard test conditions, in kelvin.
const STANDARD: f64 = 298.15;

fn panel_cold_voltage(panel: &PanelColdVoltage) -> Result<PanelInCold, OutOfReach> {
    let refuse = |input, why: &str| Err(OutOfReach::new(input, why));
    if panel.open_voltage.base() <= 0.0 {
        return refuse("open_voltage", "give the open voltage, above zero");
    }
    if !(0.0..=0.01).contains(&panel.per_celsius.base()) {
        return refuse(
            "per_celsius",
            "give the share that is lost for each degree Celsius, from 0 to 1 %, such as 0.3 %",
        );
    }
    if !(213.15..=363.15).contains(&panel.cells.base()) {
        return refuse(
            "cells",
            "give the temperature of the cells, from −60 to 90 °C",
        );
    }
    let gained = panel.per_celsius.base() * (STANDARD - panel.cells.base());
    Ok(PanelInCold {
        voltage: panel.open_voltage * (1.0 + gained),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::celsius;

    fn panel(volts: f64, share: f64, degrees: f64) -> PanelColdVoltage {
        PanelColdVoltage {
            open_voltage: Voltage::from_base(volts),
            per_celsius: Ratio::from_base(share),
            cells: celsius(degrees),
        }
    }

    proptest! {
        #[test]
        fn colder_is_higher(volts in 5.0..500.0, share in 0.0001..0.005, degrees in -50.0..60.0) {
            let warm = panel(volts, share, degrees + 5.0).evaluate().unwrap().voltage;
            prop_assert!(panel(volts, share, degrees).evaluate().unwrap().voltage > warm);
            let standard = panel(volts, share, 25.0).evaluate().unwrap().voltage.base();
            prop_assert!((standard - volts).abs() < 1e-9 * volts);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(
            panel(0.0, 0.003, 0.0).evaluate().unwrap_err().input,
            "open_voltage"
        );
        assert_eq!(
            panel(40.0, 0.3, 0.0).evaluate().unwrap_err().input,
            "per_celsius"
        );
        assert_eq!(
            panel(40.0, 0.003, -80.0).evaluate().unwrap_err().input,
            "cells"
        );
    }
}
