//! What hangs on a battery once the mains have gone: standing loads, and what moves the gate.

use crate::asking::{Asking, End, read};
use crate::check::motion::travel_time::slowest_travel;
use crate::outcome::Halt;
use quantity::{Current, Measured, Quantity as _, Time, Voltage};
use site::{Battery, Device, DeviceKind, Gate, Id, Operator, Origin, PowerLoss, Site, Supply};

/// The battery with the supplies that live on it.
pub(crate) struct Bank<'s> {
    site: &'s Site,
    battery: &'s Battery,
    voltage: Voltage,
    end: Option<End>,
}

/// Supplies in a chain, at most: more would be a circle.
const CHAIN: usize = 8;

impl<'s> Bank<'s> {
    pub(crate) fn new(
        asking: &mut Asking<'s>,
        site: &'s Site,
        battery: &'s Battery,
    ) -> Result<Self, Halt> {
        let voltage = read!(asking, battery.voltage)?;
        Ok(Self {
            site,
            battery,
            voltage,
            end: None,
        })
    }

    /// The same with every current at the high end of its tolerance.
    pub(crate) fn at_its_hungriest(self) -> Self {
        Self {
            end: Some(End::High),
            ..self
        }
    }

    fn current(
        &self,
        asking: &mut Asking<'s>,
        (origin, key): (&'s Origin, &'static str),
        value: Option<&Measured<Current>>,
    ) -> Result<Current, Halt> {
        match self.end {
            Some(end) => asking.read_at((origin, key), value, end),
            None => asking.read(origin, key, value),
        }
    }

    /// The battery, or a supply that lives on it, has this name.
    pub(crate) fn feeds(site: &Site, battery: &Battery, name: &Id) -> bool {
        chain_to(site, battery, name).is_some()
    }

    /// Current that the battery gives for a current of a load: the same, or by power through each converter.
    fn at_battery(
        &self,
        asking: &mut Asking<'s>,
        chain: &[&'s Supply],
        current: Current,
    ) -> Result<Current, Halt> {
        let Some(first) = chain.first().copied() else {
            return Ok(current);
        };
        let voltage = read!(asking, first.voltage);
        let mut efficiency = 1.0;
        let mut whole = Ok(());
        for supply in chain.iter().copied() {
            match read!(asking, supply.efficiency) {
                Ok(share) => efficiency *= share.base(),
                Err(halt) => whole = Err(halt),
            }
        }
        whole?;
        if efficiency <= 0.0 || self.voltage.base() <= 0.0 {
            return asking.refuse(
                "a converter without efficiency or a battery without voltage gives no current",
            );
        }
        Ok(current * (voltage?.base() / (efficiency * self.voltage.base())))
    }

    /// The devices that it feeds, each with the supplies between. What a powered switch feeds is in the switch's current.
    fn devices(&self) -> impl Iterator<Item = (&'s Device, Vec<&'s Supply>)> {
        self.site.device.iter().filter_map(|device| {
            let chain = chain_to(self.site, self.battery, device.supply.as_ref()?)?;
            Some((device, chain))
        })
    }

    fn operators(&self) -> impl Iterator<Item = (&'s Operator, Vec<&'s Supply>)> {
        self.site.operator.iter().filter_map(|operator| {
            let chain = chain_to(self.site, self.battery, operator.supply.as_ref()?)?;
            Some((operator, chain))
        })
    }

    /// Current of everything that runs all the time.
    pub(crate) fn standing(&self, asking: &mut Asking<'s>) -> Result<Current, Halt> {
        let mut sum = Sum::new();
        for (device, chain) in self
            .devices()
            .filter(|(device, _)| !only_while_moving(device))
        {
            let current =
                self.current(asking, (&device.origin, "current"), device.current.as_ref());
            sum.add(current.and_then(|current| self.at_battery(asking, &chain, current)));
        }
        for (operator, chain) in self.operators() {
            let current = self.current(
                asking,
                (&operator.origin, "standing_current"),
                operator.standing_current.as_ref(),
            );
            sum.add(current.and_then(|current| self.at_battery(asking, &chain, current)));
        }
        sum.whole()
    }

    /// Current while the gate moves, beyond the standing one.
    pub(crate) fn moving(&self, asking: &mut Asking<'s>) -> Result<Current, Halt> {
        let mut sum = Sum::new();
        for (device, chain) in self
            .devices()
            .filter(|(device, _)| only_while_moving(device))
        {
            let current =
                self.current(asking, (&device.origin, "current"), device.current.as_ref());
            sum.add(current.and_then(|current| self.at_battery(asking, &chain, current)));
        }
        for (operator, chain) in self.operators() {
            let current = self.current(
                asking,
                (&operator.origin, "running_current"),
                operator.running_current.as_ref(),
            );
            sum.add(current.and_then(|current| self.at_battery(asking, &chain, current)));
        }
        sum.whole()
    }

    /// Time of one cycle, there and back; the longest of the gates that it drives.
    pub(crate) fn cycle(&self, asking: &mut Asking<'s>) -> Result<Time, Halt> {
        let mut longest = Time::from_base(0.0);
        let mut whole = Ok(());
        for gate in self.gates() {
            match slowest_travel(asking, self.site, gate) {
                Ok(time) => {
                    longest = if 2.0 * time > longest {
                        2.0 * time
                    } else {
                        longest
                    }
                }
                Err(halt) => whole = Err(halt),
            }
        }
        whole.map(|()| longest)
    }

    pub(crate) fn gates(&self) -> impl Iterator<Item = &'s Gate> {
        let driven: Vec<&Id> = self
            .operators()
            .map(|(operator, _)| &operator.gate)
            .collect();
        self.site
            .gate
            .iter()
            .filter(move |gate| driven.contains(&&gate.id))
    }
}

/// The supplies between a load and the battery, nearest to the load first; nothing if the battery does not feed it.
fn chain_to<'s>(site: &'s Site, battery: &Battery, name: &Id) -> Option<Vec<&'s Supply>> {
    if *name == battery.id {
        return Some(Vec::new());
    }
    let mut chain = Vec::new();
    let mut name = name;
    for _ in 0..CHAIN {
        if battery.supply.as_ref() == Some(name) {
            return Some(chain);
        }
        let supply = site.supply.iter().find(|supply| supply.id == *name)?;
        chain.push(supply);
        name = supply.fed_by.as_ref()?;
    }
    None
}

/// It draws only while the gate moves: a warning light, or a lock that a spring holds shut.
fn only_while_moving(device: &Device) -> bool {
    match device.kind {
        DeviceKind::WarningLight => true,
        DeviceKind::Lock => device.on_power_loss == Some(PowerLoss::FailSecure),
        _ => false,
    }
}

/// A sum that is whole only when every part of it is known.
struct Sum(Current, Result<(), Halt>);

impl Sum {
    fn new() -> Self {
        Self(Current::from_base(0.0), Ok(()))
    }

    fn add(&mut self, current: Result<Current, Halt>) {
        match current {
            Ok(current) => self.0 += current,
            Err(halt) => self.1 = Err(halt),
        }
    }

    fn whole(self) -> Result<Current, Halt> {
        self.1.map(|()| self.0)
    }
}
