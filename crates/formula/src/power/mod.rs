//! Conductors, supplies, batteries and enclosures.

mod adiabatic_withstand;
mod battery_recharge;
mod battery_standby;
mod conductor_diameter;
mod conductor_resistance;
mod dew_point;
mod enclosure_dawn;
mod enclosure_heat_balance;
mod enclosure_surface;
mod iec_60228_resistance;
mod ieee_485_temperature_factor;
mod nec_class_2_source;
mod nec_table_8_resistance;
mod panel_array_current;
mod panel_cold_voltage;
mod peukert_discharge_time;
mod voltage_drop;

pub use adiabatic_withstand::{AdiabaticWithstand, FaultWithstand};
pub use battery_recharge::{BatteryRecharge, Recharge};
pub use battery_standby::{BatteryNeeded, BatteryStandby};
pub use conductor_diameter::{BareConductor, ConductorDiameter, metal_area, solid_diameter};
pub use conductor_resistance::{ConductorOhms, ConductorResistance, Metal, Stranding};
pub use dew_point::{DewPoint, Moisture};
pub use enclosure_dawn::{DawnInside, EnclosureDawn};
pub use enclosure_heat_balance::{EnclosureHeatBalance, EnclosureWarmth};
pub use enclosure_surface::{EnclosureFaces, EnclosureSurface};
pub use iec_60228_resistance::{ConductorClass, Iec60228Ohms, Iec60228Resistance};
pub use ieee_485_temperature_factor::{BatteryTemperatureFactor, Ieee485TemperatureFactor};
pub use nec_class_2_source::{Class2Limits, NecClass2Source};
pub use nec_table_8_resistance::{Coating, NecTable8Ohms, NecTable8Resistance};
pub use panel_array_current::{PanelArray, PanelArrayCurrent};
pub use panel_cold_voltage::{PanelColdVoltage, PanelInCold};
pub use peukert_discharge_time::{PeukertDischarge, PeukertDischargeTime};
pub use voltage_drop::{VoltageDrop, VoltageLost};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<ConductorDiameter>(),
    Calculation::of::<ConductorResistance>(),
    Calculation::of::<NecTable8Resistance>(),
    Calculation::of::<Iec60228Resistance>(),
    Calculation::of::<VoltageDrop>(),
    Calculation::of::<AdiabaticWithstand>(),
    Calculation::of::<NecClass2Source>(),
    Calculation::of::<BatteryStandby>(),
    Calculation::of::<Ieee485TemperatureFactor>(),
    Calculation::of::<PeukertDischargeTime>(),
    Calculation::of::<EnclosureSurface>(),
    Calculation::of::<EnclosureHeatBalance>(),
    Calculation::of::<PanelArrayCurrent>(),
    Calculation::of::<PanelColdVoltage>(),
    Calculation::of::<EnclosureDawn>(),
    Calculation::of::<DewPoint>(),
    Calculation::of::<BatteryRecharge>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[
    (
        "power/conductor_diameter.cases.toml",
        include_str!("conductor_diameter.cases.toml"),
    ),
    (
        "power/conductor_resistance.cases.toml",
        include_str!("conductor_resistance.cases.toml"),
    ),
    (
        "power/nec_table_8_resistance.cases.toml",
        include_str!("nec_table_8_resistance.cases.toml"),
    ),
    (
        "power/iec_60228_resistance.cases.toml",
        include_str!("iec_60228_resistance.cases.toml"),
    ),
    (
        "power/voltage_drop.cases.toml",
        include_str!("voltage_drop.cases.toml"),
    ),
    (
        "power/adiabatic_withstand.cases.toml",
        include_str!("adiabatic_withstand.cases.toml"),
    ),
    (
        "power/nec_class_2_source.cases.toml",
        include_str!("nec_class_2_source.cases.toml"),
    ),
    (
        "power/battery_standby.cases.toml",
        include_str!("battery_standby.cases.toml"),
    ),
    (
        "power/ieee_485_temperature_factor.cases.toml",
        include_str!("ieee_485_temperature_factor.cases.toml"),
    ),
    (
        "power/peukert_discharge_time.cases.toml",
        include_str!("peukert_discharge_time.cases.toml"),
    ),
    (
        "power/enclosure_surface.cases.toml",
        include_str!("enclosure_surface.cases.toml"),
    ),
    (
        "power/enclosure_heat_balance.cases.toml",
        include_str!("enclosure_heat_balance.cases.toml"),
    ),
    (
        "power/battery_recharge.cases.toml",
        include_str!("battery_recharge.cases.toml"),
    ),
    (
        "power/dew_point.cases.toml",
        include_str!("dew_point.cases.toml"),
    ),
    (
        "power/enclosure_dawn.cases.toml",
        include_str!("enclosure_dawn.cases.toml"),
    ),
    (
        "power/panel_cold_voltage.cases.toml",
        include_str!("panel_cold_voltage.cases.toml"),
    ),
    (
        "power/panel_array_current.cases.toml",
        include_str!("panel_array_current.cases.toml"),
    ),
];
