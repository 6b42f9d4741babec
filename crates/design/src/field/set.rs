//! The field of a detector as it is set, on the ground.

use super::polygon::Spot;
use crate::asking::{Asking, need, read};
use crate::outcome::Halt;
use quantity::Quantity as _;
use site::Device;

/// A field as it is set: seen from the detector, that looks one way.
#[derive(Debug, Clone, Copy)]
pub(crate) struct AsSet {
    /// Where the detector is, and its height above the gate line.
    at: Spot,
    pub(crate) height: f64,
    /// Which way it looks.
    facing: f64,
    begins: f64,
    pub(crate) ends: f64,
    /// What really lies to its left and to its right.
    left: f64,
    right: f64,
}

impl AsSet {
    /// Its corners, around it.
    pub(crate) fn corners(&self) -> Vec<Spot> {
        let of = [
            (self.begins, -self.right),
            (self.ends, -self.right),
            (self.ends, self.left),
            (self.begins, self.left),
        ];
        let (sin, cos) = self.facing.sin_cos();
        let place = |(ahead, left): (f64, f64)| {
            (
                self.at.0 + ahead * cos - left * sin,
                self.at.1 + ahead * sin + left * cos,
            )
        };
        of.into_iter().map(place).collect()
    }

    /// The same with left and right the other way round.
    pub(crate) fn turned_over(&self) -> Self {
        Self {
            left: self.right,
            right: self.left,
            ..*self
        }
    }

    /// How far a place lies outside of it; zero inside.
    pub(crate) fn outside(&self, spot: Spot) -> f64 {
        let (sin, cos) = self.facing.sin_cos();
        let (x, y) = (spot.0 - self.at.0, spot.1 - self.at.1);
        let (ahead, left) = (x * cos + y * sin, y * cos - x * sin);
        let beyond = (self.begins - ahead).max(ahead - self.ends).max(0.0);
        let beside = (left - self.left).max(-self.right - left).max(0.0);
        beyond.hypot(beside)
    }
}

pub(crate) fn as_set<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<AsSet, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let facing = read!(asking, device.facing);
    let begins = read!(asking, device.field_mount?.begins);
    let ends = read!(asking, device.field_mount?.ends);
    let left = read!(asking, device.field_mount?.left);
    let right = read!(asking, device.field_mount?.right);
    let upside_down = need!(asking, device.field_mount?.upside_down, "false");
    let mirrored = need!(asking, device.field_mount?.mirrored, "false");
    let ([x, y, z], facing) = (at?, facing?);
    let (begins, ends) = (begins?, ends?);
    let (left, right) = (left?, right?);
    let set = AsSet {
        at: (x.base(), y.base()),
        height: z.base(),
        facing: facing.base(),
        begins: begins.base(),
        ends: ends.base(),
        left: left.base(),
        right: right.base(),
    };
    Ok(if upside_down? == mirrored? {
        set
    } else {
        set.turned_over()
    })
}
