//! The two ends of a radio link, and its frequency.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use quantity::{Frequency, Length, Quantity as _};
use site::{Id, RadioEnd, RadioLink, Site};

/// How one end of a link is written.
const END: &str = "{ device = \"radio-bridge\", at = [\"-6 ft\", \"4 ft\", \"12 ft\"], power = \"17 dBm\", antenna_gain = \"14 dBi\", cable_loss = \"0.5 dB\", receiver_limit = \"-82 dBm\" }";

/// Both ends, the one at the gate first.
pub(crate) fn ends<'s>(
    asking: &mut Asking<'s>,
    link: &'s RadioLink,
) -> Result<[&'s RadioEnd; 2], Halt> {
    let near = asking.need(&link.origin, "near", link.near.as_ref(), END);
    let far = asking.need(&link.origin, "far", link.far.as_ref(), END);
    Ok([near?, far?])
}

/// Where an antenna is, in meters.
pub(crate) fn place<'s>(asking: &mut Asking<'s>, end: &'s RadioEnd) -> Result<[f64; 3], Halt> {
    let at = asking.position(&end.origin, "at", end.at.as_ref())?;
    Ok(at.map(Length::base))
}

/// Distance from antenna to antenna.
pub(super) fn distance(from: [f64; 3], to: [f64; 3]) -> f64 {
    (to[0] - from[0])
        .hypot(to[1] - from[1])
        .hypot(to[2] - from[2])
}

/// The frequency of a link: that of the radio at one of its ends.
pub(crate) fn frequency<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    link: &'s RadioLink,
) -> Result<Frequency, Halt> {
    let ends = [&link.near, &link.far].into_iter().flatten();
    let mut named = ends.filter_map(|end| end.device.as_ref());
    let device = named.find_map(|id| device(site, id));
    match device {
        Some(device) => read!(asking, device.frequency),
        None => asking.lack(
            &link.origin,
            "near.device",
            Wants::Written("\"radio-bridge\""),
        ),
    }
}

/// A device by its name.
pub(super) fn device<'s>(site: &'s Site, id: &Id) -> Option<&'s site::Device> {
    site.device.iter().find(|device| device.id == *id)
}
