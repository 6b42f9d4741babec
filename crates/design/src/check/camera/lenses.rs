//! The lenses that show what is wanted.

use super::target::Target;
use crate::asking::Asking;
use crate::outcome::Halt;
use formula::signal::FocalLength;
use quantity::{Length, Quantity as _};
use sim::camera::Camera;
use site::Device;

/// What the picture has to show.
pub(super) struct Wanted {
    pub(super) level: Option<Length>,
    pub(super) named: Option<site::ImageLevel>,
    pub(super) plate: Option<(Length, f64)>,
}

impl Wanted {
    /// The finest detail of all that is wanted.
    fn finest(&self) -> Option<Length> {
        let plate = self.plate.map(|(width, pixels)| width / pixels);
        match (self.level, plate) {
            (Some(level), Some(plate)) if plate < level => Some(plate),
            (Some(level), _) => Some(level),
            (None, plate) => plate,
        }
    }
}

/// The lenses that serve, in words.
pub(super) fn lenses<'s>(
    asking: &mut Asking<'s>,
    camera: &Camera,
    target: &Target,
    (device, wanted): (&'s Device, &Wanted),
) -> Result<String, Halt> {
    let Some(pixel) = wanted.finest() else {
        return Ok(String::new());
    };
    let turned = target.turned.base().cos();
    let pixel = if wanted.plate.is_some() && turned > 0.0 {
        pixel * turned
    } else {
        pixel
    };
    let area = match &device.picture {
        Some(picture) if picture.area.len() > 2 => crate::eye::wanted(asking, device).ok(),
        _ => None,
    };
    let longest = area.and_then(|area| {
        camera.longest_lens(area.corners.iter().map(|[x, y]| [*x, *y, area.height]))
    });
    let across = match longest {
        Some(longest) if longest.base() > 0.0 => camera.sensor_width * (target.depth / longest),
        _ => target.across,
    };
    let serve = asking.work(&FocalLength {
        sensor_width: camera.sensor_width,
        pixels: camera.pixels.0,
        distance: target.depth,
        pixel,
        across,
    })?;
    let print = asking.print();
    Ok(match longest {
        None => format!(
            "; lenses from {} up show that much",
            print.q(serve.shortest)
        ),
        Some(_) if serve.shortest <= serve.longest => format!(
            "; lenses from {} to {} show that much and take its whole area in",
            print.q(serve.shortest),
            print.q(serve.longest)
        ),
        Some(_) => format!(
            "; no lens shows that much, from {}, and takes its whole area in, up to {}: more pixels, a nearer place or a second camera",
            print.q(serve.shortest),
            print.q(serve.longest)
        ),
    })
}
