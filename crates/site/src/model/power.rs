//! Supplies, batteries and solar panels.

use crate::{Id, Position, Text};
use quantity::{Angle, Charge, Current, Measured, Power, Ratio, Temperature, Time, Voltage};

site_words! {
    /// What a supply is.
    pub enum SupplyKind {
        /// A branch circuit of the mains.
        Mains = "mains circuit",
        /// A power supply with direct-current output.
        Direct = "power supply",
        /// A charge controller on a battery.
        Charger = "charge controller",
    }
}

record! {
    /// A supply.
    pub struct Supply {
        /// Name, unique on the site.
        id: Id,
        /// What it is.
        kind: SupplyKind,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// Where it is.
        at: Option<Position>,
        /// Enclosure in which it is mounted.
        enclosure: Option<Id>,
        /// Supply that feeds it.
        fed_by: Option<Id>,
        /// Voltage that it gives.
        voltage: Option<Measured<Voltage>>,
        /// Current that it can give without end.
        rated_current: Option<Measured<Current>>,
        /// Output power over input power.
        efficiency: Option<Measured<Ratio>>,
        /// Heat that it gives off at its usual load.
        heat: Option<Measured<Power>>,
        /// Highest air temperature at full load on its data sheet.
        hottest: Option<Measured<Temperature>>,
        /// Lowest air temperature on its data sheet.
        coldest: Option<Measured<Temperature>>,
        /// Remarks.
        note: Option<Text>,
    }
}

site_words! {
    /// Chemistry of a battery.
    pub enum Chemistry {
        /// Valve-regulated lead-acid.
        LeadAcid = "lead-acid",
        /// Lithium iron phosphate.
        LithiumIronPhosphate = "lithium iron phosphate",
    }
}

record! {
    /// A battery.
    pub struct Battery {
        /// Name, unique on the site.
        id: Id,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// Supply that charges it.
        supply: Option<Id>,
        /// Enclosure in which it stands.
        enclosure: Option<Id>,
        /// Chemistry.
        chemistry: Option<Chemistry>,
        /// Voltage.
        voltage: Option<Measured<Voltage>>,
        /// Rated capacity.
        capacity: Option<Measured<Charge>>,
        /// Share of the capacity that may be used.
        usable: Option<Measured<Ratio>>,
        /// How long everything must run without mains or sun.
        wanted_standby: Option<Measured<Time>>,
        /// How many cycles of the gate it must give in that time.
        wanted_cycles: Option<u32>,
        /// Coldest temperature of the battery itself.
        coldest: Option<Measured<Temperature>>,
        /// Capacity at the end of its life over rated capacity.
        end_of_life: Option<Measured<Ratio>>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// A solar panel.
    pub struct SolarPanel {
        /// Name, unique on the site.
        id: Id,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// Charge controller that it feeds.
        supply: Option<Id>,
        /// Where it is.
        at: Option<Position>,
        /// Power at standard test conditions.
        power: Option<Measured<Power>>,
        /// Voltage at no load at standard test conditions.
        open_voltage: Option<Measured<Voltage>>,
        /// Tilt from level.
        tilt: Option<Measured<Angle>>,
        /// Direction that it faces, clockwise from true north.
        azimuth: Option<Measured<Angle>>,
    }
}
