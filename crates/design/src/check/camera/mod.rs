//! Cameras: what they see, how well, by night, and what they may.

pub(crate) mod allowed;
pub(crate) mod detail;
mod lenses;
pub(crate) mod night;
mod target;
pub(crate) mod view;

use formula::{Evidence, Source};
use site::{Device, DeviceKind, Site};

/// Projection.
static PINHOLE: Source = Source {
    work: "central projection by a lens without distortion, and straight lines of sight past what stands before it",
    clause: "",
    evidence: Evidence::Physics,
    seen: "held against a public library of image geometry",
};

/// The cameras of a site.
pub(crate) fn cameras(site: &Site) -> impl Iterator<Item = &Device> {
    let is_camera = |device: &&Device| device.kind == DeviceKind::Camera;
    site.device.iter().filter(is_camera)
}
