//! In which order things are lost as a battery falls to the end of its discharge.

use super::{LoadKind, Moment, PowerShown, ShownLoad, Worked, place};
use crate::circuit::PowerCase;
use quantity::{Measured, Voltage};
use site::{Battery, Site};

/// A load that lives on a battery, and the voltage of the battery at which it is lost.
#[derive(Debug, Clone)]
pub struct Lost {
    /// The battery.
    pub battery: String,
    /// The load.
    pub id: String,
    /// What it is, in words.
    pub what: String,
    /// The converter with which it goes, where it hangs on one.
    pub with: Option<String>,
    /// Voltage of the battery at which it is lost, or would be, were the loads not switched off before.
    pub at: Option<Voltage>,
    /// Voltage at which the loads are switched off.
    pub cut_off: Option<Voltage>,
}

/// The loads of every battery in the order in which they are lost, as the gate starts; what is not known comes last.
pub fn order_of_loss(site: &Site, power: &PowerShown) -> Vec<Lost> {
    let mut all = Vec::new();
    for battery in &site.battery {
        let mut lost: Vec<Lost> = power
            .loads
            .iter()
            .filter(|load| load.kind != LoadKind::Supply && !load.again)
            .filter_map(|load| of_load(battery, power, load))
            .collect();
        lost.sort_by(|one, other| {
            let volts = |lost: &Lost| lost.at.map_or(f64::NEG_INFINITY, quantity::Quantity::base);
            volts(other).total_cmp(&volts(one))
        });
        all.append(&mut lost);
    }
    all
}

impl Lost {
    /// It lives until the loads are switched off; nothing where facts are missing.
    pub fn lives_to_the_end(&self) -> Option<bool> {
        let (at, cut_off) = self.at.zip(self.cut_off)?;
        Some(at <= cut_off)
    }
}

fn of_load(battery: &Battery, power: &PowerShown, load: &ShownLoad) -> Option<Lost> {
    let named = |name: &str| {
        battery.id == *name
            || battery
                .supply
                .as_ref()
                .is_some_and(|supply| *supply == *name)
    };
    let (with, goes) = if named(&load.source) {
        (None, load)
    } else {
        let converter = power
            .loads
            .iter()
            .find(|other| other.kind == LoadKind::Supply && other.id == load.source)?;
        if !named(&converter.source) {
            return None;
        }
        (Some(converter.id.clone()), converter)
    };
    let end = battery.end_voltage.as_ref().map(Measured::nominal);
    let at = end.zip(spare(goes)).map(|(end, spare)| end - spare);
    Some(Lost {
        battery: battery.id.to_string(),
        id: load.id.clone(),
        what: load.what.clone(),
        with,
        at,
        cut_off: end,
    })
}

/// Voltage that a load has over its least one with the battery at its end; below zero where it is lost before.
fn spare(load: &ShownLoad) -> Option<Voltage> {
    match load.moments.get(place(PowerCase::BatteryEnd))? {
        Worked::Known(Moment::Stands { voltage, .. }) => Some(*voltage - load.least?),
        _ => None,
    }
}
