//! How batteries are charged and end, what panels give, and what lives at the far end of the line.

use crate::{Date, Id, Text};
use quantity::{Angle, Current, HeatFlux, Measured, Ratio, Temperature, Time, Voltage};

record! {
    /// How a battery is charged.
    pub struct Charging {
        /// Current with which it is charged, as set or on the data sheet of the charger.
        current: Option<Measured<Current>>,
        /// Charge that comes out over charge that went in.
        efficiency: Option<Measured<Ratio>>,
        /// How soon it must be full again after an outage.
        wanted_recharge: Option<Measured<Time>>,
        /// Coldest at which it may be charged.
        coldest: Option<Measured<Temperature>>,
        /// Hottest that it stands.
        hottest: Option<Measured<Temperature>>,
        /// Charging is held off while it is colder than that.
        held_off_in_cold: Option<bool>,
    }
}

site_words! {
    /// What a gate does last, before its battery dies.
    pub enum LastMove {
        /// It opens and stays open.
        Opens = "opens and stays open",
        /// It closes and stays shut.
        Closes = "closes and stays shut",
        /// It stays as it is.
        Stays = "stays as it is",
    }
}

record! {
    /// What a gate does last, before its battery dies.
    pub struct LastAction {
        /// What it does.
        does: Option<LastMove>,
        /// Share of the rated capacity that is left when it does so.
        left: Option<Measured<Ratio>>,
        /// Who chose it.
        chosen_by: Option<Text>,
        /// Day on which it was agreed in writing.
        agreed: Option<Date>,
        /// What the fire service said to it, who and when.
        fire_agreed: Option<Text>,
        /// Protection of people is live until the leaf stands: tried at that battery voltage.
        protection_live: Option<bool>,
        /// Day on which the low-battery state was set and the action seen.
        seen: Option<Date>,
    }
}

record! {
    /// What a charge controller stands on its panel side.
    pub struct PanelInput {
        /// Greatest voltage that it stands there.
        greatest_voltage: Option<Measured<Voltage>>,
    }
}

record! {
    /// What the data sheet of a panel or string of panels says beside power and voltage.
    pub struct PanelSheet {
        /// Share of the open voltage that is lost for each degree Celsius warmer.
        voltage_per_celsius: Option<Measured<Ratio>>,
        /// Share of the power that is lost for each degree Celsius warmer.
        power_per_celsius: Option<Measured<Ratio>>,
        /// Current at short circuit at standard test conditions.
        short_current: Option<Measured<Current>>,
        /// Greatest fuse in series with it.
        series_fuse: Option<Measured<Current>>,
    }
}

record! {
    /// How a panel stands: its fuse, its dirt, and what shades it.
    pub struct PanelStand {
        /// Fuse in its string.
        fuse: Option<Measured<Current>>,
        /// Share of the sun that dirt takes between two washings.
        dirt: Option<Measured<Ratio>>,
        /// The skyline as seen from the panel, one point for each corner of it, trees with the growth of ten years; the open
        /// leaf is part of it. An empty list is a free skyline.
        skyline: Option<Skyline>,
    }
}

record! {
    /// The skyline as seen from one place.
    pub struct Skyline {
        /// Directions, clockwise from true north, rising.
        toward: Vec<Measured<Angle>>,
        /// Height of the skyline in each of those directions, above level.
        up: Vec<Measured<Angle>>,
    }
}

site_words! {
    /// The plane for which sunshine is given.
    pub enum SunPlane {
        /// On the level.
        Level = "level",
        /// In the plane of the panels.
        Panel = "panel",
    }
}

record! {
    /// Sunshine through the year.
    pub struct SunOverYear {
        /// Mean of each month, January first: twelve values in `kWh/(m²·day)`.
        monthly: Vec<Measured<HeatFlux>>,
        /// The plane for which they are given.
        plane: Option<SunPlane>,
        /// Longest run of dark days in a usual winter.
        dark_run: Option<Measured<Time>>,
    }
}

record! {
    /// The air of a damp morning, as damp as it gets in a usual year.
    pub struct DampMorning {
        /// Its temperature.
        temperature: Option<Measured<Temperature>>,
        /// Its relative humidity.
        humidity: Option<Measured<Ratio>>,
    }
}

record! {
    /// Something away from the gate through which its calls and commands run: router, switch in the house, phone.
    pub struct FarEnd {
        /// Name, unique on the site.
        id: Id,
        /// What it is, and which calls and commands run through it.
        what: Text,
        /// The device of this site that it is, where it is one.
        device: Option<Id>,
        /// How long it lives without mains; zero where it has nothing of its own.
        backup: Option<Measured<Time>>,
        /// What the owner was told of its loss, and when.
        owner_told: Option<Text>,
    }
}
