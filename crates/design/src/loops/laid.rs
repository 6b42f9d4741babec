//! Where a loop lies and how many turns it has.

use crate::asking::{Asking, pick};
use crate::check::gate_of;
use crate::outcome::Halt;
use crate::vehicle::Ground;
use quantity::{Length, Quantity as _};
use site::{Device, DeviceKind, Site};

/// A loop as it lies in the ground.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Laid {
    /// Lesser and greater place along the gate.
    pub(crate) along: (Length, Length),
    /// Lesser and greater place into the property.
    pub(crate) into: (Length, Length),
    /// Depth of its wire below the surface.
    pub(crate) depth: Length,
    pub(crate) turns: u32,
}

impl Laid {
    /// Its side along the gate.
    pub(crate) fn length(&self) -> Length {
        self.along.1 - self.along.0
    }

    /// Its side into the property.
    pub(crate) fn width(&self) -> Length {
        self.into.1 - self.into.0
    }

    /// Its shorter side.
    pub(crate) fn short(&self) -> Length {
        if self.length() < self.width() {
            self.length()
        } else {
            self.width()
        }
    }

    /// Its longer side.
    pub(crate) fn long(&self) -> Length {
        if self.length() < self.width() {
            self.width()
        } else {
            self.length()
        }
    }
}

/// The loops of a site.
pub(crate) fn loops(site: &Site) -> impl Iterator<Item = &Device> {
    let is = |device: &&Device| device.kind == DeviceKind::Loop;
    site.device.iter().filter(is)
}

/// A loop by its two corners, with its turns.
pub(crate) fn laid<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
) -> Result<Laid, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let to = asking.position(&device.origin, "to", device.to.as_ref());
    let turns = pick!(asking, device.turns);
    let gate = gate_of(asking, site, device);
    let ([x, y, z], [to_x, to_y, to_z]) = (at?, to?);
    let (turns, gate) = (turns?, gate?);
    // The wire lies below the surface above it or below that at the gate line, whichever is deeper.
    let above = Ground::of(site, gate).at((y + to_y).base() / 2.0);
    let z = (z + to_z) / 2.0;
    Ok(Laid {
        along: ordered(x, to_x),
        into: ordered(y, to_y),
        depth: Length::from_base((above - z.base()).max(-z.base()).max(0.0)),
        turns,
    })
}

fn ordered(one: Length, other: Length) -> (Length, Length) {
    if one < other {
        (one, other)
    } else {
        (other, one)
    }
}

/// The way between the nearest wires of two loops, seen from above; zero where they cross.
pub(crate) fn apart(one: &Laid, other: &Laid) -> Length {
    let between = |a: (Length, Length), b: (Length, Length)| {
        (a.0 - b.1).base().max((b.0 - a.1).base()).max(0.0)
    };
    Length::from_base(between(one.along, other.along).hypot(between(one.into, other.into)))
}
