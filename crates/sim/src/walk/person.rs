//! A body in the plain numbers of one pass: which of its cylinders the leaf can touch, and what each device sees of it.

use super::body::Body;
use super::device::{Beam, Scanner};
use super::field::Field;
use super::harm::Feel;
use super::world::{Pass, World};
use quantity::Quantity as _;

/// One cylinder.
#[derive(Debug, Clone)]
pub(super) struct Part {
    pub ahead: f64,
    pub aside: f64,
    pub radius: f64,
    /// What feels it, and how soft the leaf is there.
    pub feel: Feel,
}

/// A body.
#[derive(Debug, Clone)]
pub(super) struct Person {
    pub parts: Vec<Part>,
    /// The cylinders in the height of the leaf.
    pub touchable: Vec<usize>,
    /// For each device the cylinders that it sees, each with the radius that it sees.
    pub seen: Vec<Vec<(usize, f64)>>,
    /// For each way no device sees the body as long as its middle is less deep than this.
    pub seen_from: [f64; 2],
    /// No point of it is farther than this from its middle.
    pub reach: f64,
    /// Slowest and fastest.
    pub speeds: Option<(f64, f64)>,
}

impl Person {
    pub(super) fn new(world: &World, pass: &Pass, body: &Body, fields: &[Field]) -> Self {
        let leaf = &world.leaf;
        let parts: Vec<Part> = body
            .parts
            .iter()
            .map(|part| Part {
                ahead: part.ahead.base(),
                aside: part.aside.base(),
                radius: part.radius.base(),
                feel: Feel::new(world, pass, part),
            })
            .collect();
        let touchable = (0..parts.len())
            .filter(|&at| body.parts[at].top > leaf.bottom && body.parts[at].bottom < leaf.top)
            .collect();
        let beams = world
            .beams
            .iter()
            .filter(|beam| beam.guards.contains(&pass.direction));
        let scanners = world
            .scanners
            .iter()
            .filter(|scanner| scanner.guards.contains(&pass.direction));
        let seen: Vec<Vec<(usize, f64)>> = beams
            .map(|beam| cut(body, beam))
            .chain(scanners.map(|scanner| found(body, scanner)))
            .collect();
        let reach = parts
            .iter()
            .map(|part| part.ahead.hypot(part.aside) + part.radius)
            .fold(0.0, f64::max);
        let seen_from = [0, 1].map(|way| {
            let fields = fields.iter().zip(&seen);
            fields
                .filter(|(_, seen)| !seen.is_empty())
                .map(|(field, _)| field.begins[way] - reach)
                .fold(f64::INFINITY, f64::min)
        });
        Self {
            parts,
            touchable,
            seen,
            seen_from,
            reach,
            speeds: body
                .speeds
                .map(|speeds| (speeds.from.base(), speeds.to.base())),
        }
    }
}

/// The cylinders that cover the whole width of a beam at its height.
pub(super) fn cut(body: &Body, beam: &Beam) -> Vec<(usize, f64)> {
    let half = 0.5 * beam.diameter.base();
    let (low, high) = (beam.height.base() - half, beam.height.base() + half);
    let parts = body.parts.iter().enumerate();
    parts
        .filter(|(_, part)| part.bottom.base() <= low.max(0.0) && part.top.base() >= high)
        .map(|(at, part)| (at, part.radius.base() - half))
        .filter(|(_, radius)| *radius > 0.0)
        .collect()
}

/// The cylinders that reach into a field by the smallest object that it surely sees.
pub(super) fn found(body: &Body, scanner: &Scanner) -> Vec<(usize, f64)> {
    let smallest = scanner.smallest_object.base();
    let (low, high) = (scanner.bottom.base(), scanner.top.base());
    let needed = smallest.min(high - low);
    let parts = body.parts.iter().enumerate();
    parts
        .filter(|(_, part)| {
            let shared = part.top.base().min(high) - part.bottom.base().max(low);
            shared >= needed
        })
        .map(|(at, part)| (at, part.radius.base() - smallest))
        .filter(|(_, radius)| *radius > 0.0)
        .collect()
}
