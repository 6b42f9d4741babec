//! Supplies, batteries and solar panels.

use crate::model::{
    Charging, Circuit, CurrentKind, Derated, Intake, LastAction, MountedFront, PanelInput,
    PanelSheet, PanelStand,
};
use crate::{Id, Position, Text};
use quantity::{
    Angle, Charge, Current, Measured, Power, Ratio, Resistance, Temperature, Time, Voltage,
};

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
        /// Kind of current that it gives.
        gives: Option<CurrentKind>,
        /// Highest voltage that it ever gives: nothing drawing, mains high, charging at its highest in the cold.
        highest_voltage: Option<Measured<Voltage>>,
        /// Resistance behind its terminals: a transformer's, a battery's; none for a supply that holds its voltage.
        inner_resistance: Option<Measured<Resistance>>,
        /// Current that it gives for a moment, as things start.
        peak_current: Option<Measured<Current>>,
        /// Greatest current that it gives into a short circuit.
        fault_current: Option<Measured<Current>>,
        /// Least voltage at its input at which it works.
        least_input: Option<Measured<Voltage>>,
        /// Greatest current that it takes in the moment in which it is switched on.
        input_inrush: Option<Measured<Current>>,
        /// What it still gives in warmer air.
        derating: Vec<Derated>,
        /// Neither pole of its output is joined to its input or to earth.
        isolated: Option<bool>,
        /// Marked as a class 2 source (NEC) or as of limited power (IEC 62368-1).
        limited: Option<bool>,
        /// The branch circuit that it is, where it is one of the mains.
        circuit: Option<Circuit>,
        /// Its mains side, where it is a power supply.
        intake: Option<Intake>,
        /// Remarks.
        note: Option<Text>,
        /// What it stands on the side of the panels.
        panel_input: Option<PanelInput>,
        /// Its front as it is mounted.
        front: Option<MountedFront>,
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
        /// Voltage at which its loads are switched off.
        end_voltage: Option<Measured<Voltage>>,
        /// Highest voltage at which it is ever charged.
        highest_voltage: Option<Measured<Voltage>>,
        /// Inner resistance, cold and old.
        inner_resistance: Option<Measured<Resistance>>,
        /// Current into a short circuit, warm and new.
        fault_current: Option<Measured<Current>>,
        /// Remarks.
        note: Option<Text>,
        /// How it is charged.
        charging: Option<Charging>,
        /// What the gate does last, before it dies.
        last_action: Option<LastAction>,
        /// Its front as it stands.
        front: Option<MountedFront>,
        /// How its capacity falls with the rate of discharge: Peukert's constant, by its data sheet.
        peukert: Option<Measured<Ratio>>,
        /// Time of discharge for which its capacity is stated; 20 h is usual.
        rated_time: Option<Measured<Time>>,
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
        /// What its data sheet says beside power and voltage.
        sheet: Option<PanelSheet>,
        /// How it stands: its fuse, its dirt, and what shades it.
        stand: Option<PanelStand>,
    }
}
