//! Current of the panels that a load asks for in the darkest month.

use crate::OutOfReach;
use quantity::{Charge, Current, Power, Quantity as _, Ratio, Time, Voltage};

formula! {
    /// Current that panels must give so that a day's sun carries a day's load, by the ratio of array to load.
    ///
    /// Sun hours are the kWh/m² of a day in the plane of the panels, in the darkest month. A ratio of 1.1 to 1.2 is for loads
    /// that may fail now and then, 1.3 to 1.4 for those that may not. It is a first guess: the battery through the year hour
    /// by hour says whether it holds.
    pub struct PanelArrayCurrent = "panel-array-current" in Power {
        /// Mean power of the load.
        average ("P"): Power,
        /// Voltage of the battery.
        voltage ("V"): Voltage,
        /// Array over load.
        array_to_load ("r"): Ratio,
        /// Sun hours of a day.
        sun_hours ("h"): Time,
        /// Charge that comes out of the battery over charge that goes in.
        efficiency ("η"): Ratio,
    }
    gives
    /// Panels for a load.
    pub struct PanelArray {
        /// Charge that the load takes in a day.
        daily ("L"): Charge,
        /// Current of the panels at full sun.
        current ("I"): Current,
    }
    formula "L = P · 24 h / V\nI = L · r / (h · η)"
    valid "Loads that are the same every day; sun hours above zero."
    source { work: "IEEE 1562", clause: "array to load", evidence: Memory, seen: "recalled; the arithmetic was worked again" }
    by panel_array_current
}

fn panel_array_current(array: &PanelArrayCurrent) -> Result<PanelArray, OutOfReach> {
    let above_zero = [
        ("voltage", array.voltage.base()),
        ("array_to_load", array.array_to_load.base()),
        ("sun_hours", array.sun_hours.base()),
        ("efficiency", array.efficiency.base()),
    ];
    if let Some((input, _)) = above_zero.iter().find(|(_, value)| *value <= 0.0) {
        return Err(OutOfReach::new(input, "give a value above zero"));
    }
    if array.average.base() < 0.0 {
        return Err(OutOfReach::new("average", "a load cannot be below zero"));
    }
    let daily = array.average.base() * 86_400.0 / array.voltage.base();
    let hours = array.sun_hours.base() * array.efficiency.base();
    Ok(PanelArray {
        daily: Charge::from_base(daily),
        current: Current::from_base(daily * array.array_to_load.base() / hours),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn array(watts: f64, hours: f64) -> PanelArrayCurrent {
        PanelArrayCurrent {
            average: Power::from_base(watts),
            voltage: Voltage::from_base(24.0),
            array_to_load: Ratio::from_base(1.3),
            sun_hours: Time::from_base(hours * 3600.0),
            efficiency: Ratio::from_base(0.95),
        }
    }

    proptest! {
        #[test]
        fn half_the_sun_asks_for_twice_the_panels(watts in 0.1..500.0, hours in 0.2..8.0) {
            let full = array(watts, hours).evaluate().unwrap().current.base();
            let half = array(watts, hours / 2.0).evaluate().unwrap().current.base();
            prop_assert!((half / full - 2.0).abs() < 1e-9);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert_eq!(array(10.0, 0.0).evaluate().unwrap_err().input, "sun_hours");
        assert_eq!(array(-1.0, 3.0).evaluate().unwrap_err().input, "average");
    }
}
