//! How warm an enclosure gets through a day: what is in it, the sun on its faces, a thermostat that switches, a cut-out, a vent.
//!
//! One lump of heat behind walls. Between two switchings the air outside and the sun run in straight lines, so that the
//! inside follows a line and an exponential: it is followed exactly, and each switching is found where it is. The day
//! repeats until it has forgotten how it began.

mod course;
mod day;
mod piece;
mod run;
mod year;

pub use day::{Day, SunlitFace};
pub use run::DayInside;
pub use year::YearOutside;

use formula::OutOfReach;
use quantity::{Area, Energy, HeatTransfer, Power, Quantity as _, Temperature};

/// The walls, and what warms and cools with them.
#[derive(Debug, Clone, Copy)]
pub struct Walls {
    /// Heat transfer coefficient, air on both sides included.
    pub transfer: HeatTransfer,
    /// Surface that gives off heat.
    pub area: Area,
    /// Heat that warms the box and all in it by one kelvin.
    pub stores: Energy,
}

/// A heater with its thermostat.
#[derive(Debug, Clone, Copy)]
pub struct Heater {
    /// Its power.
    pub power: Power,
    /// It comes on below this.
    pub on_below: Temperature,
    /// It goes off above this.
    pub off_above: Temperature,
    /// Its thermostat sticks: it is on whatever the temperature.
    pub stuck: bool,
}

/// A switch that opens when it gets warm, and closes again.
#[derive(Debug, Clone, Copy)]
pub struct Switch {
    /// It acts above this.
    pub above: Temperature,
    /// It falls back below this.
    pub below: Temperature,
}

/// A vent or a fan that opens when it gets warm.
#[derive(Debug, Clone, Copy)]
pub struct Vent {
    /// When it opens and closes.
    pub switch: Switch,
    /// Heat that it carries out for each kelvin between inside and outside.
    pub carries: Power,
}

/// An enclosure through a day.
#[derive(Debug, Clone)]
pub struct Enclosure {
    /// Its walls.
    pub walls: Walls,
    /// Heat that everything inside gives off, but for the heater.
    pub inside: Power,
    /// Its heater.
    pub heater: Option<Heater>,
    /// The cut-out in the heater's feed.
    pub cut_out: Option<Switch>,
    /// Its vent.
    pub vent: Option<Vent>,
}

impl Enclosure {
    fn check(&self) -> Result<(), OutOfReach> {
        let refuse = |input, why: &str| Err(OutOfReach::new(input, why));
        let above_zero = |value: f64| value > 0.0 && value.is_finite();
        if !above_zero(self.walls.transfer.base()) {
            return refuse("transfer", "give a heat transfer coefficient above zero");
        }
        if !above_zero(self.walls.area.base()) {
            return refuse("area", "give a surface above zero");
        }
        if !above_zero(self.walls.stores.base()) {
            return refuse(
                "stores",
                "give the heat that warms box and contents by one kelvin",
            );
        }
        if !(self.inside.base() >= 0.0 && self.inside.base().is_finite()) {
            return refuse("inside", "heat given off inside cannot be below zero");
        }
        let heater = self.heater.map(|heater| Switch {
            above: heater.off_above,
            below: heater.on_below,
        });
        let vent = self.vent.map(|vent| vent.switch);
        let gap = |switch: Switch| switch.above.base() - switch.below.base();
        for switch in [heater, self.cut_out, vent].into_iter().flatten() {
            if !(gap(switch) >= GAP && gap(switch).is_finite()) {
                return refuse(
                    "switch",
                    "a switch falls back at least a tenth of a degree below where it acts",
                );
            }
        }
        let power = self.heater.map_or(0.0, |heater| heater.power.base());
        let carries = self.vent.map_or(0.0, |vent| vent.carries.base());
        if !(power >= 0.0 && power.is_finite() && carries >= 0.0 && carries.is_finite()) {
            return refuse("heater", "powers cannot be below zero");
        }
        Ok(())
    }
}

/// Least gap between the two temperatures of a switch, in kelvin.
const GAP: f64 = 0.1;
