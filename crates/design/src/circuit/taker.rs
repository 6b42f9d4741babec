//! What takes power, and how much in each case.

use super::{How, PowerCase};
use crate::asking::{Asking, End};
use crate::outcome::Halt;
use quantity::{Current, Measured, Power, Quantity as _, Voltage};
use sim::network::Draw;
use site::{Device, DeviceKind, Draws, Enclosure, Id, Operator, Origin, PowerLoss, Supply};

/// What takes power.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Takes<'s> {
    Operator(&'s Operator),
    Device(&'s Device),
    /// A supply that is fed by another one.
    Supply(&'s Supply),
    /// The heater of an enclosure.
    Heater(&'s Enclosure),
}

/// Something that takes power at a place of a part.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Taker<'s> {
    pub(crate) takes: Takes<'s>,
    /// Number of the place among those of its part.
    pub(super) place: usize,
    /// Another cable brings the same thing power too: its current is counted at each, and once in the sum of its source.
    pub(super) again: bool,
}

impl<'s> Takes<'s> {
    pub(crate) fn id(self) -> &'s Id {
        match self {
            Self::Operator(operator) => &operator.id,
            Self::Device(device) => &device.id,
            Self::Supply(supply) => &supply.id,
            Self::Heater(enclosure) => &enclosure.id,
        }
    }

    pub(crate) fn origin(self) -> &'s Origin {
        match self {
            Self::Operator(operator) => &operator.origin,
            Self::Device(device) => &device.origin,
            Self::Supply(supply) => &supply.origin,
            Self::Heater(enclosure) => &enclosure.origin,
        }
    }

    pub(crate) fn fed_by(self) -> Option<&'s Id> {
        match self {
            Self::Operator(operator) => operator.supply.as_ref(),
            Self::Device(device) => device.supply.as_ref(),
            Self::Supply(supply) => supply.fed_by.as_ref(),
            Self::Heater(enclosure) => enclosure.climate_control.as_ref()?.heater_supply.as_ref(),
        }
    }

    pub(crate) fn enclosure(self) -> Option<&'s Id> {
        match self {
            Self::Operator(_) => None,
            Self::Device(device) => device.enclosure.as_ref(),
            Self::Supply(supply) => supply.enclosure.as_ref(),
            Self::Heater(enclosure) => Some(&enclosure.id),
        }
    }

    /// The least voltage at which it works, with its key; a heater only gets less warm.
    pub(crate) fn least(self) -> Option<(&'static str, Option<&'s Measured<Voltage>>)> {
        match self {
            Self::Operator(it) => Some(("least_voltage", it.least_voltage.as_ref())),
            Self::Device(it) => Some(("least_voltage", it.least_voltage.as_ref())),
            Self::Supply(it) => Some(("least_input", it.least_input.as_ref())),
            Self::Heater(_) => None,
        }
    }
}

/// The currents of an operator or a device.
#[derive(Debug, Clone, Copy)]
pub(super) enum Amounts {
    Operator {
        standing: Current,
        running: Current,
        starting: Current,
    },
    Device {
        day: Current,
        night: Current,
        peak: Current,
        when: When,
        draws: Follows,
    },
    /// A heater, taken to keep its power as its voltage falls, which is the safe side for everything beside it.
    Heater(Power),
}

/// When a device draws.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum When {
    Always,
    /// A warning light.
    Moving,
    /// A lock that a spring holds shut.
    Unlocking,
    /// A lock that opens when power is lost.
    Locking,
}

/// How the current of a device follows its voltage.
#[derive(Debug, Clone, Copy)]
pub(super) enum Follows {
    Current,
    /// By its power at this voltage.
    Power(Voltage),
    /// By its resistance at this voltage.
    Resistance(Voltage),
}

impl When {
    fn of(device: &Device) -> Self {
        match device.kind {
            DeviceKind::WarningLight => Self::Moving,
            DeviceKind::Lock if device.on_power_loss == Some(PowerLoss::FailSecure) => {
                Self::Unlocking
            }
            DeviceKind::Lock => Self::Locking,
            _ => Self::Always,
        }
    }
}

impl Amounts {
    /// Reads the currents of an operator.
    pub(super) fn of_operator<'s>(
        asking: &mut Asking<'s>,
        operator: &'s Operator,
        how: How,
    ) -> Result<Self, Halt> {
        let origin = &operator.origin;
        let mut read =
            |key, value: &'s Option<_>| how.read(asking, (origin, key), value.as_ref(), End::High);
        let standing = read("standing_current", &operator.standing_current);
        let running = read("running_current", &operator.running_current);
        let starting = read("starting_current", &operator.starting_current);
        Ok(Self::Operator {
            standing: standing?,
            running: running?,
            starting: starting?,
        })
    }

    /// Reads the power of a heater.
    pub(super) fn of_heater<'s>(
        asking: &mut Asking<'s>,
        enclosure: &'s Enclosure,
        how: How,
    ) -> Result<Self, Halt> {
        let place = (&enclosure.origin, "heater");
        let power = how.read(asking, place, enclosure.heater.as_ref(), End::High)?;
        Ok(Self::Heater(power))
    }

    /// Reads the currents of a device.
    pub(super) fn of_device<'s>(
        asking: &mut Asking<'s>,
        device: &'s Device,
        how: How,
    ) -> Result<Self, Halt> {
        let origin = &device.origin;
        let day = how.read(
            asking,
            (origin, "current"),
            device.current.as_ref(),
            End::High,
        );
        let mut more = |key, value: &'s Option<_>| {
            how.read_if_there(asking, (origin, key), value.as_ref(), End::High)
        };
        let night = more("night_current", &device.night_current);
        let peak = more("peak_current", &device.peak_current);
        let follows = follows(asking, device, how)?;
        let day = day?;
        let night = greater(night.unwrap_or(day), day);
        Ok(Self::Device {
            day,
            night,
            peak: greater(peak.unwrap_or(night), night),
            when: When::of(device),
            draws: follows,
        })
    }

    /// What it draws in a case; in its own worst moment where the question is about itself.
    pub(super) fn draw(&self, case: PowerCase, own: bool) -> Draw {
        match *self {
            Self::Operator {
                standing,
                running,
                starting,
            } => Draw::Current(match case {
                PowerCase::Moving => running,
                case if case.starts() => starting,
                _ => standing,
            }),
            Self::Device {
                day,
                night,
                peak,
                when,
                draws,
            } => {
                let usual = if case.is_dark() { night } else { day };
                let current = match when {
                    When::Always if own => peak,
                    When::Moving => {
                        nothing_unless(case == PowerCase::Moving || case.starts(), usual)
                    }
                    When::Unlocking if case == PowerCase::Release || case.starts() => peak,
                    When::Unlocking => nothing_unless(case == PowerCase::Moving, usual),
                    When::Locking if case == PowerCase::Release => peak,
                    When::Always | When::Locking => usual,
                };
                draws.draw(current)
            }
            Self::Heater(power) if case.is_dark() => Draw::Power(power),
            Self::Heater(_) => Draw::Power(Power::from_base(0.0)),
        }
    }
}

impl Follows {
    fn draw(self, current: Current) -> Draw {
        match self {
            Self::Power(voltage) => Draw::Power(current * voltage),
            Self::Resistance(voltage) if current.base() > 0.0 => {
                Draw::Resistance(voltage / current)
            }
            Self::Current | Self::Resistance(_) => Draw::Current(current),
        }
    }
}

/// As written; else electronics keep their power, and coils and lamps are taken to keep their current.
fn follows<'s>(asking: &mut Asking<'s>, device: &'s Device, how: How) -> Result<Follows, Halt> {
    let simple = matches!(
        device.kind,
        DeviceKind::Lock | DeviceKind::WarningLight | DeviceKind::ContactEdge | DeviceKind::Control
    );
    let draws = match device.draws {
        Some(draws) => asking.pick(&device.origin, "draws", Some(draws))?,
        None if simple || device.voltage.is_none() => Draws::Current,
        None => Draws::Power,
    };
    if draws == Draws::Current {
        return Ok(Follows::Current);
    }
    let voltage = how.read(
        asking,
        (&device.origin, "voltage"),
        device.voltage.as_ref(),
        End::Nominal,
    )?;
    Ok(match draws {
        Draws::Resistance => Follows::Resistance(voltage),
        _ => Follows::Power(voltage),
    })
}

fn greater(a: Current, b: Current) -> Current {
    if a > b { a } else { b }
}

fn nothing_unless(on: bool, current: Current) -> Current {
    if on { current } else { Current::from_base(0.0) }
}
