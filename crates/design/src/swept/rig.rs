//! A vehicle of the site as a rig that rolls: its measures, or those of the design vehicle that it is said to be like.

use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::protection::FrontAxleTurningRadius;
use formula::signal::{AxledVehicle, DesignVehicleAxles, VehicleAxles};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use sim::swept::{Body, Rig, Under, Unit};
use site::{Axles, DesignName, Steering, Vehicle, VehicleKind};

/// A rig, and what hangs under it.
pub(crate) struct Rolling {
    pub(crate) rig: Rig,
    /// Undersides, one for each unit; none where they are not known, which is noted.
    pub(crate) under: Result<Vec<Under>, Halt>,
    pub(crate) height: Result<Length, Halt>,
    pub(crate) width: Length,
}

static ROLLING: Source = Source {
    work: "wheels that roll without slipping: each axle moves toward what pulls it (tractrix), at walking pace on firm ground",
    clause: "",
    evidence: Evidence::Physics,
    seen: "held against a library's integrator and against the inside radii that AASHTO prints",
};

static KINGPIN: Source = Source {
    work: "a semi-trailer reaches 3 ft ahead of its kingpin",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "its corners swing inside those of the tractor; measure where it is more",
};

/// How far a semi-trailer reaches ahead of its kingpin (m).
const AHEAD_OF_PIN: f64 = 0.914;
/// A steered axle that follows the line itself is towed at this distance (m).
const SHORT: f64 = 0.15;

/// The measures of the vehicle that steers.
struct Lengths {
    length: Length,
    width: Length,
    over_tires: Length,
    wheelbase: Length,
    front: Length,
    /// Circle of the middle of the front axle, where a table gives it.
    center: Option<Length>,
    /// Circle of the outer front wheel, where it was measured.
    wheel: Length,
}

/// A vehicle of the site.
pub(crate) fn rolling<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<Rolling, Halt> {
    asking.rest_on(&ROLLING);
    let table = like(asking, vehicle)?;
    let under = undersides(asking, vehicle);
    let height = read!(asking, vehicle.height);
    let steering = steering(asking, vehicle);
    let lengths = lengths(asking, vehicle, table.as_ref());
    let lowest = vehicle_underside(vehicle);
    let (steering, of) = (steering?, lengths?);
    let least_radius = circle(asking, steering, &of)?;
    let units = match steering {
        Steering::Front => front_steered(asking, vehicle, &of, (table.as_ref(), lowest))?,
        Steering::Rear => vec![rear_steered(&of, lowest)],
        Steering::Middle => bent(&of, lowest).into(),
    };
    let under = under.map(|[first, trailer]| {
        let each = |index: usize| if index == 0 { first } else { trailer };
        (0..units.len()).map(each).collect()
    });
    Ok(Rolling {
        rig: Rig {
            units,
            least_radius,
        },
        under,
        height,
        width: of.width,
    })
}

fn like<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<Option<VehicleAxles>, Halt> {
    let Some(name) = vehicle.axles.as_ref().and_then(|axles| axles.like) else {
        return Ok(None);
    };
    let vehicle = match name {
        DesignName::P => AxledVehicle::Car,
        DesignName::Su30 => AxledVehicle::Truck,
        DesignName::Su40 => AxledVehicle::LongTruck,
        DesignName::Bus40 => AxledVehicle::Bus,
        DesignName::CityBus => AxledVehicle::CityBus,
        DesignName::Wb40 => AxledVehicle::ShortSemi,
        DesignName::Wb62 => AxledVehicle::LongSemi,
        DesignName::Wb67 => AxledVehicle::LongestSemi,
    };
    asking.work(&DesignVehicleAxles { vehicle }).map(Some)
}

fn steering<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<Steering, Halt> {
    let written = vehicle.axles.as_ref().and_then(|axles| axles.steers);
    if written.is_none() && vehicle.kind != Some(VehicleKind::Machine) {
        return Ok(Steering::Front);
    }
    pick!(asking, vehicle.axles?.steers)
}

/// Underside that lower things pass beneath, for what stands beside the way.
fn vehicle_underside(vehicle: &Vehicle) -> Length {
    let axles = vehicle.axles.as_ref();
    let all = axles.map_or([None; 4], |axles| {
        [
            axles.underside.as_ref(),
            axles.front_underside.as_ref(),
            axles.rear_underside.as_ref(),
            axles.trailer_underside.as_ref(),
        ]
    });
    let least = all.into_iter().flatten().map(|under| under.low().base());
    Length::from_base(least.fold(f64::INFINITY, f64::min).min(0.3))
}

fn lengths<'s>(
    asking: &mut Asking<'s>,
    vehicle: &'s Vehicle,
    table: Option<&VehicleAxles>,
) -> Result<Lengths, Halt> {
    let length = read!(asking, vehicle.length);
    let width = read!(asking, vehicle.width);
    let over_tires = vehicle.axles.as_ref().and_then(|axles| {
        asking.read_if_there(&axles.origin, "over_tires", axles.over_tires.as_ref())
    });
    let (wheelbase, front, center) = match table {
        Some(table) if vehicle.wheelbase.is_none() => (
            Ok(table.wheelbase),
            Ok(table.front_overhang),
            Some(table.center_radius),
        ),
        _ => (
            read!(asking, vehicle.wheelbase),
            read!(asking, vehicle.front_overhang),
            None,
        ),
    };
    let wheel = match center {
        Some(_) => Ok(Length::default()),
        None => read!(asking, vehicle.turning_radius),
    };
    let (length, width, wheelbase, front) = (length?, width?, wheelbase?, front?);
    let over_tires = over_tires.unwrap_or(width);
    Ok(Lengths {
        length,
        width,
        over_tires,
        wheelbase,
        front,
        center,
        wheel: wheel?,
    })
}

/// Least circle of the middle of the front axle: a front axle that steers comes out wider than one that does not.
fn circle(asking: &mut Asking<'_>, steering: Steering, of: &Lengths) -> Result<Length, Halt> {
    match (of.center, steering) {
        (Some(center), _) => Ok(center),
        (None, Steering::Front) => {
            let circle = asking.work(&FrontAxleTurningRadius {
                wheel_radius: of.wheel,
                wheelbase: of.wheelbase,
                width: of.over_tires,
            })?;
            Ok(circle.center_radius)
        }
        (None, _) => Ok(of.wheel - of.over_tires / 2.0),
    }
}

fn body(of: &Lengths, ahead: Length, behind: Length, underside: Length) -> Body {
    Body {
        ahead,
        behind,
        width: of.width,
        underside,
    }
}

fn unit(of: &Lengths, wheelbase: Length, body: Option<Body>) -> Unit {
    Unit {
        wheelbase,
        body,
        over_tires: of.over_tires,
        hitch: Length::default(),
        widest: None,
    }
}

/// The front axle stays on the line, and the tail swings out.
fn rear_steered(of: &Lengths, low: Length) -> Unit {
    let short = Length::from_base(SHORT);
    let behind = of.length - of.front - short;
    unit(of, short, Some(body(of, of.front, behind, low)))
}

/// Both axles run on one track, the frame bent between them.
fn bent(of: &Lengths, low: Length) -> [Unit; 2] {
    let (short, half) = (Length::from_base(SHORT), of.wheelbase / 2.0);
    let tail = of.length - of.front - of.wheelbase;
    let front = body(of, of.front, half - short, low);
    let rear = body(of, Length::default(), tail, low);
    [
        Unit {
            hitch: half - short,
            ..unit(of, short, Some(front))
        },
        unit(of, half, Some(rear)),
    ]
}

fn front_steered<'s>(
    asking: &mut Asking<'s>,
    vehicle: &'s Vehicle,
    of: &Lengths,
    (table, low): (Option<&VehicleAxles>, Length),
) -> Result<Vec<Unit>, Halt> {
    match vehicle.kind {
        Some(VehicleKind::WithTrailer) => towing(asking, vehicle, of, low),
        Some(VehicleKind::TractorTrailer) => semi(asking, vehicle, of, (table, low)),
        _ => {
            let behind = of.length - of.front - of.wheelbase;
            let whole = body(of, of.front, behind, low);
            Ok(vec![unit(of, of.wheelbase, Some(whole))])
        }
    }
}

/// Coupling and trailer as the site gives them.
struct Towed {
    hitch: Option<Length>,
    drawbar: Option<Length>,
    axle: Result<Length, Halt>,
    widest: Option<quantity::Angle>,
}

fn towed<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Towed {
    let axle = read!(asking, vehicle.axles?.trailer_axle);
    let read_if = |asking: &mut Asking<'s>, axles: &'s Axles| {
        (
            asking.read_if_there(&axles.origin, "hitch", axles.hitch.as_ref()),
            asking.read_if_there(&axles.origin, "drawbar", axles.drawbar.as_ref()),
            asking.read_if_there(&axles.origin, "widest_angle", axles.widest_angle.as_ref()),
        )
    };
    let axles = vehicle.axles.as_ref();
    let (hitch, drawbar, widest) = axles.map_or((None, None, None), |axles| read_if(asking, axles));
    Towed {
        hitch,
        drawbar,
        axle,
        widest,
    }
}

/// A trailer on a drawbar, with a turntable or without.
fn towing<'s>(
    asking: &mut Asking<'s>,
    vehicle: &'s Vehicle,
    of: &Lengths,
    low: Length,
) -> Result<Vec<Unit>, Halt> {
    let towed = towed(asking, vehicle);
    let end = read!(asking, vehicle.towing_length);
    let gap = read!(asking, vehicle.drawbar_gap);
    let (end, gap, axle) = (end?, gap?, towed.axle?);
    let rear = end - of.front - of.wheelbase;
    let hitch = towed.hitch.unwrap_or(rear);
    let coupling = of.front + of.wheelbase + hitch;
    let tow = Unit {
        hitch,
        ..unit(of, of.wheelbase, Some(body(of, of.front, rear, low)))
    };
    let pulled = coupling + towed.drawbar.unwrap_or_default();
    let begins = end + gap;
    let tail = of.length - pulled - axle;
    let trailer = Unit {
        widest: towed.widest,
        ..unit(of, axle, Some(body(of, pulled - begins, tail, low)))
    };
    Ok(match towed.drawbar {
        Some(drawbar) => vec![tow, unit(of, drawbar, None), trailer],
        None => vec![tow, trailer],
    })
}

/// A semi-trailer on a fifth wheel.
fn semi<'s>(
    asking: &mut Asking<'s>,
    vehicle: &'s Vehicle,
    of: &Lengths,
    (table, low): (Option<&VehicleAxles>, Length),
) -> Result<Vec<Unit>, Halt> {
    asking.rest_on(&KINGPIN);
    let (hitch, axle, widest) = match table {
        Some(table) if vehicle.wheelbase.is_none() => (Length::default(), table.trailer, None),
        _ => {
            let towed = towed(asking, vehicle);
            let hitch = read!(asking, vehicle.axles?.hitch);
            (hitch?, towed.axle?, towed.widest)
        }
    };
    let end = asking.read_if_there(
        &vehicle.origin,
        "towing_length",
        vehicle.towing_length.as_ref(),
    );
    let short = Length::from_base(0.6);
    let rear = end.map_or(short, |end| end - of.front - of.wheelbase);
    let tow = Unit {
        hitch,
        ..unit(of, of.wheelbase, Some(body(of, of.front, rear, low)))
    };
    let tail = of.length - of.front - of.wheelbase - hitch - axle;
    let ahead = Length::from_base(AHEAD_OF_PIN);
    let trailer = Unit {
        widest,
        ..unit(of, axle, Some(body(of, ahead, tail, low)))
    };
    Ok(vec![tow, trailer])
}

/// Undersides of the vehicle that steers, and of what it tows.
fn undersides<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<[Under; 2], Halt> {
    let between = read!(asking, vehicle.axles?.underside);
    let ahead = read!(asking, vehicle.axles?.front_underside);
    let tows = matches!(
        vehicle.kind,
        Some(VehicleKind::WithTrailer | VehicleKind::TractorTrailer)
    );
    let behind = if vehicle.kind == Some(VehicleKind::TractorTrailer) {
        Ok(None)
    } else {
        read!(asking, vehicle.axles?.rear_underside).map(Some)
    };
    let trailer = if tows {
        read!(asking, vehicle.axles?.trailer_underside).map(Some)
    } else {
        Ok(None)
    };
    let (between, ahead, behind, trailer) = (between?, ahead?, behind?, trailer?);
    let under = trailer.unwrap_or(between);
    let second = Under {
        between: under,
        ahead: None,
        behind: if tows { Some(under) } else { behind },
    };
    Ok([
        Under {
            between,
            ahead: Some(ahead),
            behind,
        },
        second,
    ])
}
