//! A camera of the site as a pinhole, and what it has to see.

use crate::asking::{Asking, Wants, pick, read};
use crate::outcome::Halt;
use quantity::{Angle, Length, Quantity as _};
use sim::camera::Camera;
use sim::glare::Opening;
use site::Device;

pub(crate) use sim::camera::Wanted;

/// How an area is written.
const AREA: &str = "[[\"0 ft\", \"-10 ft\", \"0 ft\"], [\"20 ft\", \"-10 ft\", \"0 ft\"], [\"20 ft\", \"10 ft\", \"0 ft\"]]";

/// A camera by its place, its tilt and its lens.
pub(crate) fn camera<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Camera, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let pan = read!(asking, device.facing);
    let tilt = read!(asking, device.lens?.tilt);
    let focal_length = read!(asking, device.lens?.focal_length);
    let sensor_width = read!(asking, device.lens?.sensor_width);
    let across = pick!(asking, device.lens?.pixels_across);
    let down = pick!(asking, device.lens?.pixels_down);
    let roll = device
        .lens
        .as_ref()
        .and_then(|lens| asking.read_if_there(&lens.origin, "roll", lens.roll.as_ref()));
    Ok(Camera {
        at: at?,
        pan: pan?,
        tilt: tilt?,
        roll: roll.unwrap_or(Angle::from_base(0.0)),
        focal_length: focal_length?,
        sensor_width: sensor_width?,
        pixels: (across?, down?),
    })
}

/// The area that a camera has to see, level at the mean height of its corners.
pub(crate) fn wanted<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Wanted, Halt> {
    let Some(picture) = &device.picture else {
        return asking.lack(&device.origin, "picture.area", Wants::Written(AREA));
    };
    let corner = |asking: &mut Asking<'s>, at| {
        asking.position_as_written((&picture.origin, "area"), Some(at))
    };
    let corners = picture.area.iter().map(|at| corner(asking, at));
    let corners: Vec<[Length; 3]> = corners.collect::<Result<_, _>>()?;
    let Ok(count) = u32::try_from(corners.len()) else {
        return Err(Halt);
    };
    if count < 3 {
        return asking.lack(&picture.origin, "area", Wants::Written(AREA));
    }
    let up = corners.iter().map(|[_, _, z]| z.base()).sum::<f64>();
    Ok(Wanted {
        corners: corners.iter().map(|[x, y, _]| [*x, *y]).collect(),
        height: Length::from_base(up / f64::from(count)),
    })
}

/// The picture of a camera as what looks at the sun.
pub(crate) fn picture(camera: &Camera) -> Opening {
    let (across, down) = camera.half_angles();
    Opening::Picture {
        across,
        down,
        roll: camera.roll,
    }
}
