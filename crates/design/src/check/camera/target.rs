//! The place that matters in a picture: how far off, how it is turned, how fast it passes.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::signal::{PixelAtDistance, PixelSize};
use quantity::{Angle, Length, Quantity as _, UnitSystem, Velocity};
use sim::camera::Camera;
use site::{Picture, Site};

/// The place that matters as the camera has it.
pub(super) struct Target {
    pub(super) pixel: Length,
    /// Width of the whole picture there.
    pub(super) across: Length,
    pub(super) depth: Length,
    /// From the way it faces to the camera, to the side.
    pub(super) turned: Angle,
    pub(super) above: Length,
    /// As seen from above.
    pub(super) distance: Length,
    /// Line from the target to the camera and the way that it faces: the angle between them in space.
    pub(super) to_camera: Angle,
}

/// How fast it passes there: as written, or as the fastest vehicle that is expected.
pub(super) fn speed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    picture: &'s Picture,
) -> Result<Velocity, Halt> {
    let written = picture.target_speed.as_ref();
    if let Some(speed) = asking.read_if_there(&picture.origin, "target_speed", written) {
        return Ok(speed);
    }
    let mut fastest: Option<Velocity> = None;
    for vehicle in &site.vehicle {
        let speed = asking.read_if_there(&vehicle.origin, "speed", vehicle.speed.as_ref());
        if speed > fastest {
            fastest = speed;
        }
    }
    match fastest {
        Some(speed) => Ok(speed),
        None => read!(asking, picture.target_speed),
    }
}

/// The target in the picture; none where it is not in it.
pub(super) fn target(
    asking: &mut Asking<'_>,
    camera: &Camera,
    at: [Length; 3],
    facing: Angle,
) -> Result<Option<Target>, Halt> {
    let Some(spot) = camera.project(at).filter(|_| camera.frames(at)) else {
        return Ok(None);
    };
    let PixelAtDistance { pixel, across } = asking.work(&PixelSize {
        sensor_width: camera.sensor_width,
        pixels: camera.pixels.0,
        focal_length: camera.focal_length,
        distance: spot.depth,
    })?;
    let [x, y, z] = [0, 1, 2].map(|along| (camera.at[along] - at[along]).base());
    let distance = x.hypot(y);
    let turn = (y.atan2(x) - facing.base() + std::f64::consts::PI)
        .rem_euclid(std::f64::consts::TAU)
        - std::f64::consts::PI;
    let straight = turn.cos() * distance / distance.hypot(z).max(1e-9);
    Ok(Some(Target {
        pixel,
        across,
        depth: spot.depth,
        turned: Angle::from_base(turn.abs()),
        above: Length::from_base(z),
        distance: Length::from_base(distance),
        to_camera: Angle::from_base(straight.clamp(-1.0, 1.0).acos()),
    }))
}

/// Pixels for each meter or foot.
pub(super) fn density(pixel: Length, units: UnitSystem) -> String {
    match units {
        UnitSystem::UsCustomary => format!("{:.0} pixels per foot", 0.3048 / pixel.base()),
        UnitSystem::Si => format!("{:.0} pixels per meter", 1.0 / pixel.base()),
    }
}
