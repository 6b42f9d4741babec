//! A vehicle as a row of boxes: as the site has measured it, or of a usual size where it states none.

use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::protection::{DesignVehicle, DesignVehicleKind};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Velocity};
use sim::vehicle::{Outline, Part, PartName};
use site::{Vehicle, VehicleKind};

/// A vehicle with its width and the speed at which it passes.
pub(crate) struct Sized {
    pub(crate) outline: Outline,
    pub(crate) width: Length,
    pub(crate) speed: Velocity,
}

static USUAL: Source = Source {
    work: "usual heights of sill, drawbar and trailer frame, and the usual open space over a drawbar",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not looked up: measure the vehicles that come",
};

/// A drawbar is a narrow, thin bar: a beam that is not exactly level with it goes over or under.
const DRAWBAR_WIDTH: f64 = 0.15;
const DRAWBAR_THICKNESS: f64 = 0.05;

/// Lengths from the front to the rear, and heights.
struct Measures {
    length: Length,
    width: Length,
    height: Length,
    chassis: Length,
    bar: Option<Bar>,
    tail: Option<(Length, Length)>,
}

/// The drawbar: where it begins, the open space over it, its top.
struct Bar {
    from: Length,
    gap: Length,
    top: Length,
}

/// A vehicle of the site.
pub(crate) fn sized<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<Sized, Halt> {
    let kind = pick!(asking, vehicle.kind);
    let length = read!(asking, vehicle.length);
    let width = read!(asking, vehicle.width);
    let height = read!(asking, vehicle.height);
    let chassis = read!(asking, vehicle.chassis_height);
    let speed = read!(asking, vehicle.speed);
    let bar = bar(asking, vehicle);
    let tail = tail(asking, vehicle);
    let width = width?;
    let measures = Measures {
        length: length?,
        width,
        height: height?,
        chassis: chassis?,
        bar: bar?,
        tail: tail?,
    };
    let kind = kind?;
    let Some(parts) = parts(&measures, kind != VehicleKind::Bicycle) else {
        return asking.refuse(
            "the lengths of the vehicle do not add up: its drawbar ends before its rear, and its underside is below its top",
        );
    };
    let narrow = matches!(kind, VehicleKind::Motorcycle | VehicleKind::Bicycle);
    Ok(Sized {
        outline: Outline { parts, narrow },
        width,
        speed: speed?,
    })
}

fn bar<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<Option<Bar>, Halt> {
    let towed = vehicle.kind == Some(VehicleKind::WithTrailer);
    let gap = match vehicle.drawbar_gap {
        None if !towed => return Ok(None),
        _ => read!(asking, vehicle.drawbar_gap)?,
    };
    if gap.base() <= 0.0 {
        return Ok(None);
    }
    let from = read!(asking, vehicle.towing_length);
    let top = read!(asking, vehicle.drawbar_height);
    Ok(Some(Bar {
        from: from?,
        gap,
        top: top?,
    }))
}

/// Length and underside of what hangs out behind.
fn tail<'s>(
    asking: &mut Asking<'s>,
    vehicle: &'s Vehicle,
) -> Result<Option<(Length, Length)>, Halt> {
    let long = asking.read_if_there(
        &vehicle.origin,
        "tail_overhang",
        vehicle.tail_overhang.as_ref(),
    );
    match long.filter(|long| long.base() > 0.0) {
        Some(long) => Ok(Some((long, read!(asking, vehicle.tail_height)?))),
        None => Ok(None),
    }
}

/// The boxes; none where the lengths do not add up.
fn parts(of: &Measures, metal: bool) -> Option<Vec<Part>> {
    let zero = Length::from_base(0.0);
    let box_of = |name, from, to, bottom| Part {
        name,
        from,
        to,
        width: of.width,
        bottom,
        top: of.height,
        metal: metal && name != PartName::Tail,
    };
    let rear = of.length - of.tail.map_or(zero, |(long, _)| long);
    let mut parts = Vec::with_capacity(4);
    match &of.bar {
        None => parts.push(box_of(PartName::Body, zero, rear, of.chassis)),
        Some(bar) => {
            let coupled = bar.from + bar.gap;
            parts.push(box_of(PartName::Body, zero, bar.from, of.chassis));
            parts.push(Part {
                name: PartName::Drawbar,
                from: bar.from,
                to: coupled,
                width: Length::from_base(DRAWBAR_WIDTH),
                bottom: Length::from_base((bar.top.base() - DRAWBAR_THICKNESS).max(0.0)),
                top: bar.top,
                metal: false,
            });
            parts.push(box_of(PartName::Trailer, coupled, rear, of.chassis));
        }
    }
    if let Some((_, bottom)) = of.tail {
        parts.push(box_of(PartName::Tail, rear, of.length, bottom));
    }
    let sound = |part: &Part| part.from < part.to && part.bottom < part.top;
    parts.iter().all(sound).then_some(parts)
}

/// Vehicles that come to any gate: a car, and a car with a trailer. Their overall sizes are printed; the open space over
/// the drawbar and the heights of what is underneath are remembered.
pub(crate) fn usual(asking: &mut Asking<'_>) -> Result<Vec<(&'static str, Sized)>, Halt> {
    asking.rest_on(&USUAL);
    let of = |asking: &mut Asking<'_>, vehicle, bar| {
        let size = asking.work(&DesignVehicle { vehicle })?;
        let measures = Measures {
            length: size.length,
            width: size.width,
            height: size.height,
            chassis: Length::from_base(0.3),
            bar,
            tail: None,
        };
        let Some(parts) = parts(&measures, true) else {
            return Err(Halt);
        };
        let outline = Outline {
            parts,
            narrow: false,
        };
        Ok(Sized {
            outline,
            width: size.width,
            speed: Velocity::from_base(4.5),
        })
    };
    let car = of(asking, DesignVehicleKind::PassengerCar, None)?;
    let bar = Bar {
        from: Length::from_base(5.8),
        gap: Length::from_base(1.2),
        top: Length::from_base(0.5),
    };
    let towing = of(asking, DesignVehicleKind::CarWithTrailer, Some(bar))?;
    Ok(vec![("a car", car), ("a car with a trailer", towing)])
}
