//! One operating case: what holds which voltage, and what draws how much.

use super::Node;
use formula::OutOfReach;
use quantity::{Current, Power, Quantity as _, Resistance, Voltage};

/// How a load draws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Draw {
    /// The same power at any voltage, as electronics with a regulator of their own do: less voltage, more current.
    Power(Power),
    /// The same current at any voltage.
    Current(Current),
    /// A resistance, as a heater is.
    Resistance(Resistance),
}

/// What holds which voltage and what draws how much, at one moment.
#[derive(Debug, Clone, Default)]
pub struct Case {
    pub(super) held: Vec<(usize, f64)>,
    /// Node, watts.
    pub(super) powers: Vec<(usize, f64)>,
    /// Node, amperes.
    pub(super) currents: Vec<(usize, f64)>,
    /// Node, siemens.
    pub(super) conductances: Vec<(usize, f64)>,
}

impl Case {
    /// Nothing held and nothing drawn.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Holds a place at a voltage.
    ///
    /// # Errors
    /// The voltage is not above zero.
    pub fn hold(&mut self, node: Node, voltage: Voltage) -> Result<(), OutOfReach> {
        let volts = voltage.base();
        if !(volts > 0.0 && volts.is_finite()) {
            return Err(OutOfReach::new(
                "voltage",
                "a source has a voltage above zero",
            ));
        }
        self.held.push((node.0, volts));
        Ok(())
    }

    /// Draws at a place, beside what draws there already.
    ///
    /// # Errors
    /// The draw is below zero, or a resistance is not above zero.
    pub fn draw(&mut self, node: Node, draw: Draw) -> Result<(), OutOfReach> {
        let (list, value) = match draw {
            Draw::Power(power) => (&mut self.powers, power.base()),
            Draw::Current(current) => (&mut self.currents, current.base()),
            Draw::Resistance(resistance) => {
                (&mut self.conductances, 1.0 / super::checked(resistance)?)
            }
        };
        if !(value >= 0.0 && value.is_finite()) {
            return Err(OutOfReach::new(
                "draw",
                "a load draws; it cannot be below zero",
            ));
        }
        list.push((node.0, value));
        Ok(())
    }

    /// Every node that draws.
    pub(super) fn drawing(&self) -> impl Iterator<Item = usize> {
        [&self.powers, &self.currents, &self.conductances]
            .into_iter()
            .flatten()
            .filter(|(_, value)| *value > 0.0)
            .map(|(node, _)| *node)
    }

    /// The same case with all powers and currents at a share of themselves.
    pub(super) fn at(&self, share: f64) -> Self {
        let scaled = |list: &[(usize, f64)]| {
            list.iter()
                .map(|(node, value)| (*node, value * share))
                .collect()
        };
        Self {
            held: self.held.clone(),
            powers: scaled(&self.powers),
            currents: scaled(&self.currents),
            conductances: self.conductances.clone(),
        }
    }
}
