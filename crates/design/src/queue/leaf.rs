//! How long the leaf takes at the bad end of every tolerance, and which detectors hold it where.

use crate::asking::{Asking, End};
use crate::check::drive::operator_of;
use crate::check::motion::{radius, turns};
use crate::outcome::Halt;
use formula::motion::TrapezoidalTravel;
use quantity::{
    Acceleration, Angle, AngularVelocity, Length, Quantity as _, Ratio, Time, Velocity,
};
use site::{Device, Gate, OnVehicle, Profile, Site, SupplyKind};

/// Time from the start of a travel to its end, as slow as the tolerances leave; on its battery where no mains come.
pub(crate) fn opening_time<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Time, Halt> {
    let Some(motion) = &gate.motion else {
        return asking
            .lack_of::<Velocity>(&gate.origin, "motion.cruise_speed")
            .map(|_| Time::from_base(0.0));
    };
    let way = way(asking, gate, motion);
    let slowed = slowed(asking, site, gate);
    let mut low = |key, value: Option<&quantity::Measured<Acceleration>>| {
        asking.read_at((&motion.origin, key), value, End::Low)
    };
    let acceleration = low("acceleration", motion.acceleration.as_ref());
    let deceleration = low("deceleration", motion.deceleration.as_ref());
    let of = |key| (&motion.origin, key);
    let creep = asking.read_at(of("creep_speed"), motion.creep_speed.as_ref(), End::Low);
    let creeps = asking.read_at(
        of("creep_distance"),
        motion.creep_distance.as_ref(),
        End::High,
    );
    let ((travel, cruise), slowed) = (way?, slowed?);
    let travel = TrapezoidalTravel {
        travel,
        cruise_speed: cruise * slowed,
        acceleration: acceleration?,
        deceleration: deceleration?,
        creep_speed: creep? * slowed,
        creep_distance: creeps?,
    };
    Ok(asking.work(&travel)?.total_time)
}

/// Way and cruise speed of the leaf's edge.
fn way<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    motion: &'s Profile,
) -> Result<(Length, Velocity), Halt> {
    let of_gate = |key| (&gate.origin, key);
    if !turns(gate) {
        let travel = asking.read_at(of_gate("travel"), gate.travel.as_ref(), End::High);
        let key = (&motion.origin, "cruise_speed");
        let cruise = asking.read_at(key, motion.cruise_speed.as_ref(), End::Low);
        return Ok((travel?, cruise?));
    }
    let angle: Result<Angle, Halt> = asking.read_at(
        of_gate("travel_angle"),
        gate.travel_angle.as_ref(),
        End::High,
    );
    let key = (&motion.origin, "cruise_turning_speed");
    let turning: Result<AngularVelocity, Halt> =
        asking.read_at(key, motion.cruise_turning_speed.as_ref(), End::Low);
    let radius = radius(asking, gate)?.base();
    Ok((
        Length::from_base(angle?.base() * radius),
        Velocity::from_base(turning?.base() * radius),
    ))
}

/// Share of its speed that it runs at on its battery; one where mains come.
fn slowed<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Ratio, Halt> {
    let mains = site
        .supply
        .iter()
        .any(|supply| supply.kind == SupplyKind::Mains);
    if mains || site.battery.is_empty() {
        return Ok(Ratio::from_base(1.0));
    }
    let operator = operator_of(asking, site, gate)?;
    let key = (&operator.origin, "battery_speed");
    asking.read_at(key, operator.battery_speed.as_ref(), End::Low)
}

/// Which detectors hold the leaf for a vehicle, and where.
#[derive(Debug, Clone)]
pub(crate) struct Sees<'s> {
    pub(crate) devices: Vec<&'s Device>,
    /// From the gate line outward to the outer edge of the outermost, inward to the inner edge of the innermost.
    pub(crate) before: Length,
    pub(crate) after: Length,
    /// Longest time that one stays on after the vehicle has left.
    pub(crate) drop_out: Time,
}

/// The detectors that hold the leaf of a gate for a vehicle.
pub(crate) fn sees<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Sees<'s> {
    let mut sees = Sees {
        devices: Vec::new(),
        before: Length::from_base(0.0),
        after: Length::from_base(0.0),
        drop_out: Time::from_base(0.0),
    };
    let holds = |device: &&Device| {
        let acts = [OnVehicle::HoldsOpen, OnVehicle::StopsClosing];
        acts.iter().any(|act| device.on_vehicle.contains(act))
    };
    for device in site
        .device
        .iter()
        .filter(|device| at_gate(site, device, gate))
        .filter(holds)
    {
        for (key, corner) in [("at", &device.at), ("to", &device.to)] {
            let place = corner.as_ref().map(|_| (&device.origin, key));
            let Some(Ok([_, y, _])) =
                place.map(|place| asking.position_as_written(place, corner.as_ref()))
            else {
                continue;
            };
            sees.before = longer(sees.before, -y);
            sees.after = longer(sees.after, y);
        }
        let key = (&device.origin, "drop_out");
        if let Some(Ok(drop_out)) = device
            .drop_out
            .as_ref()
            .map(|drop_out| asking.read_at(key, Some(drop_out), End::High))
            && drop_out > sees.drop_out
        {
            sees.drop_out = drop_out;
        }
        sees.devices.push(device);
    }
    sees
}

/// The device belongs to the gate.
pub(crate) fn at_gate(site: &Site, device: &Device, gate: &Gate) -> bool {
    let only = site.gate.len() == 1;
    device.gate.as_ref().map_or(only, |name| *name == gate.id)
}

fn longer(one: Length, other: Length) -> Length {
    if one < other { other } else { one }
}
