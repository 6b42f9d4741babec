//! The way that pictures take, and what each link on it carries.

use crate::asking::{Asking, Wants, read};
use crate::network::{cable_between, is_fiber, upward};
use crate::outcome::Halt;
use quantity::DataRate;
use site::{Device, Site};

/// Links that are followed upward: more are a circle.
const LONGEST: usize = 32;

/// A link: a device, and the one that it is plugged into.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Edge<'s> {
    pub(crate) lower: &'s Device,
    pub(crate) upper: &'s Device,
}

impl Edge<'_> {
    /// The same link.
    pub(crate) fn is(&self, other: &Self) -> bool {
        std::ptr::eq(self.lower, other.lower)
    }
}

/// The links from a device up to where nothing further is written.
fn edges<'s>(site: &'s Site, device: &'s Device) -> Vec<Edge<'s>> {
    let mut lower = device;
    let mut edges = Vec::new();
    while let Some(upper) = upward(site, lower).filter(|_| edges.len() < LONGEST) {
        edges.push(Edge { lower, upper });
        lower = upper;
    }
    edges
}

/// The links between two devices; nothing where they do not meet.
pub(crate) fn way<'s>(site: &'s Site, from: &'s Device, to: &'s Device) -> Option<Vec<Edge<'s>>> {
    let (mut up, mut down) = (edges(site, from), edges(site, to));
    let ends = |device: &'s Device, edges: &[Edge<'s>]| {
        let last = edges.last().map_or(device, |edge| edge.upper);
        std::ptr::from_ref(last)
    };
    if !std::ptr::eq(ends(from, &up), ends(to, &down)) {
        return None;
    }
    while let (Some(one), Some(other)) = (up.last(), down.last())
        && one.is(other)
    {
        up.pop();
        down.pop();
    }
    up.extend(down.into_iter().rev());
    Some(up)
}

impl<'s> Edge<'s> {
    /// Rate that the link carries: that of its radio in heavy rain, or of the slower of its two ports.
    pub(crate) fn rate(self, asking: &mut Asking<'s>, site: &'s Site) -> Result<DataRate, Halt> {
        let radio = self.lower.network.as_ref().and_then(|network| {
            asking.read_if_there(&network.origin, "radio_rate", network.radio_rate.as_ref())
        });
        if let Some(rate) = radio {
            return Ok(rate);
        }
        let fiber = cable_between(site, self.lower, self.upper).is_some_and(is_fiber);
        let lower = port_rate(asking, self.lower, fiber);
        let upper = port_rate(asking, self.upper, fiber);
        let (lower, upper) = (lower?, upper?);
        Ok(if lower < upper { lower } else { upper })
    }
}

/// Greatest rate of a device's ports, for fiber or for copper.
pub(crate) fn port_rate<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    fiber: bool,
) -> Result<DataRate, Halt> {
    let Some(ethernet) = &device.ethernet else {
        let port = if fiber {
            "ethernet.fiber_speed"
        } else {
            "ethernet.speed"
        };
        return asking.lack(&device.origin, port, Wants::Written("\"100 Mbit/s\""));
    };
    if fiber {
        read!(asking, ethernet.fiber_speed)
    } else {
        read!(asking, ethernet.speed)
    }
}
