//! What keeps a beam or a field from seeing anybody: a post or a wall in its line, or a place where nobody passes.

use crate::walk::heights;
use quantity::{Length, Measured, Quantity as _};
use site::{Device, DeviceKind, FixedThing, Gate, Position, Post, SectionShape};

/// So near to an end of a beam a post is what carries it, in meters.
const CARRIES: f64 = 0.2;

/// What is wrong with the place of a device, as a sentence.
pub(super) fn trouble(gate: &Gate, device: &Device) -> Option<String> {
    match device.kind {
        DeviceKind::ThroughBeam | DeviceKind::Reflective => beam(gate, device),
        DeviceKind::AreaScanner => field(gate, device),
        _ => None,
    }
}

fn place(position: &Position) -> (f64, f64) {
    (position.x.nominal().base(), position.y.nominal().base())
}

/// From where to where along x people pass.
fn opening(gate: &Gate) -> Option<(f64, f64)> {
    let width = gate.clear_opening.or(gate.travel)?;
    Some((0.0, width.nominal().base()))
}

fn beam(gate: &Gate, device: &Device) -> Option<String> {
    let (from, to) = (place(device.at.as_ref()?), place(device.to.as_ref()?));
    let (low, _) = heights(device);
    let in_line = |post: &&Post| post_blocks(post, from, to, low);
    if let Some(post) = gate.post.iter().find(in_line) {
        return Some(format!(
            "{} cannot see its other end: {} stands in its line.",
            device.id, post.id
        ));
    }
    let in_line = |thing: &&FixedThing| thing_blocks(thing, from, to, low);
    if let Some(thing) = gate.nearby.iter().find(in_line) {
        return Some(format!(
            "{} cannot see its other end: {} stands in its line.",
            device.id, thing.id
        ));
    }
    let (left, right) = opening(gate)?;
    let (first, last) = (from.0.min(to.0), from.0.max(to.0));
    (last <= left || first >= right).then(|| {
        format!(
            "{} looks past the opening: nobody who goes through breaks it.",
            device.id
        )
    })
}

fn post_blocks(post: &Post, from: (f64, f64), to: (f64, f64), height: f64) -> bool {
    let Some(at) = post.at.as_ref().map(place) else {
        return false;
    };
    let top = post
        .height
        .map_or(f64::INFINITY, |top| top.nominal().base());
    let off = |end: (f64, f64)| (end.0 - at.0).hypot(end.1 - at.1);
    let between = off(from) > CARRIES && off(to) > CARRIES;
    between && top > height && distance(at, from, to) < half_width(post)
}

fn half_width(post: &Post) -> f64 {
    let section = post.section.as_ref().map(|section| match section.shape() {
        SectionShape::Hss { depth, width, .. }
        | SectionShape::Tube { depth, width, .. }
        | SectionShape::Flat { depth, width } => {
            if depth < width {
                depth
            } else {
                width
            }
        }
        SectionShape::Pipe { nominal } => nominal,
        SectionShape::RoundTube { diameter, .. } | SectionShape::Rod { diameter } => diameter,
    });
    let width: Option<Length> = post.width.as_ref().map(Measured::nominal).or(section);
    width.map_or(0.0, |width| 0.5 * width.base())
}

/// Distance of a point from a line between two others.
fn distance(at: (f64, f64), from: (f64, f64), to: (f64, f64)) -> f64 {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let square = dx * dx + dy * dy;
    let share = if square > 0.0 {
        (((at.0 - from.0) * dx + (at.1 - from.1) * dy) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (at.0 - from.0 - share * dx).hypot(at.1 - from.1 - share * dy)
}

/// A fixed thing crosses the line of a beam, away from its ends. One that light goes through beside its bars counts too.
fn thing_blocks(thing: &FixedThing, from: (f64, f64), to: (f64, f64), height: f64) -> bool {
    let (Some(a), Some(b)) = (thing.from.as_ref().map(place), thing.to.as_ref().map(place)) else {
        return false;
    };
    let top = thing
        .height
        .map_or(f64::INFINITY, |top| top.nominal().base());
    if top <= height {
        return false;
    }
    let (dx, dy, ex, ey) = (to.0 - from.0, to.1 - from.1, b.0 - a.0, b.1 - a.1);
    let cross = dx * ey - dy * ex;
    let length = dx.hypot(dy);
    if cross.abs() < 1e-12 || length <= 0.0 {
        return false;
    }
    let (fx, fy) = (a.0 - from.0, a.1 - from.1);
    let along = (fx * ey - fy * ex) / cross;
    let across = (fx * dy - fy * dx) / cross;
    let edge = CARRIES / length;
    (edge..=1.0 - edge).contains(&along) && (0.0..=1.0).contains(&across)
}

fn field(gate: &Gate, device: &Device) -> Option<String> {
    let (left, right) = opening(gate)?;
    let xs = device.field.iter().map(|corner| place(corner).0);
    let first = xs.clone().fold(f64::INFINITY, f64::min);
    let last = xs.fold(f64::NEG_INFINITY, f64::max);
    (!device.field.is_empty() && (last <= left || first >= right)).then(|| {
        format!(
            "The field of {} lies beside the opening: nobody who goes through enters it.",
            device.id
        )
    })
}
