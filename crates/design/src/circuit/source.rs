//! A source of power at a fixed voltage.

use super::How;
use crate::asking::{Asking, End};
use crate::outcome::Halt;
use quantity::{Quantity as _, Voltage};
use site::{Battery, Id, Origin, Site, Supply};

/// A supply, or a battery that feeds something by itself.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Source<'s> {
    Supply(&'s Supply),
    Battery(&'s Battery),
}

impl<'s> Source<'s> {
    /// Every one of a site.
    pub(super) fn all(site: &'s Site) -> Vec<Self> {
        let supplies = site.supply.iter().map(Self::Supply);
        supplies
            .chain(site.battery.iter().map(Self::Battery))
            .collect()
    }

    pub(crate) fn id(self) -> &'s Id {
        match self {
            Self::Supply(supply) => &supply.id,
            Self::Battery(battery) => &battery.id,
        }
    }

    pub(crate) fn origin(self) -> &'s Origin {
        match self {
            Self::Supply(supply) => &supply.origin,
            Self::Battery(battery) => &battery.origin,
        }
    }

    /// The batteries that a supply keeps charged.
    pub(super) fn batteries(self, site: &'s Site) -> impl Iterator<Item = &'s Battery> {
        let id = match self {
            Self::Supply(supply) => Some(&supply.id),
            Self::Battery(_) => None,
        };
        site.battery
            .iter()
            .filter(move |battery| id.is_some() && battery.supply.as_ref() == id)
    }

    /// The batteries that push into a short at its terminals: those that it charges, or itself.
    pub(crate) fn pushing(self, site: &'s Site) -> Vec<&'s Battery> {
        match self {
            Self::Battery(battery) => vec![battery],
            Self::Supply(_) => self.batteries(site).collect(),
        }
    }

    /// It keeps a battery charged.
    pub(crate) fn charges(self, site: &'s Site) -> bool {
        self.batteries(site).next().is_some()
    }

    pub(super) fn enclosure(self) -> Option<&'s Id> {
        match self {
            Self::Supply(supply) => supply.enclosure.as_ref(),
            Self::Battery(battery) => battery.enclosure.as_ref(),
        }
    }

    /// The voltage behind its terminals.
    pub(super) fn voltage(self, asking: &mut Asking<'s>, how: How) -> Result<Voltage, Halt> {
        let (origin, value) = match self {
            Self::Supply(supply) => (&supply.origin, supply.voltage.as_ref()),
            Self::Battery(battery) => (&battery.origin, battery.voltage.as_ref()),
        };
        how.read(asking, (origin, "voltage"), value, End::Low)
    }

    /// It has a resistance behind its terminals, so that everything that it feeds is felt by everything else.
    pub(super) fn gives_way(self) -> bool {
        let value = match self {
            Self::Supply(supply) => supply.inner_resistance.as_ref(),
            Self::Battery(battery) => battery.inner_resistance.as_ref(),
        };
        value.is_some_and(|value| value.nominal().base() > 0.0)
    }
}
