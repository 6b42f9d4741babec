//! A body in the plain numbers of one pass: which of its cylinders the leaf can touch, and what each device sees of it.

use super::body::{Body, Cylinder};
use super::device::{Beam, Direction, Scanner};
use super::field::Field;
use super::harm::Feel;
use super::world::{Pass, World};
use quantity::Quantity as _;

/// What is nearer than this may be seen, in meters: far more than rounding does.
const CLEAR: f64 = 1e-9;

/// One cylinder.
#[derive(Debug, Clone)]
pub(super) struct Part {
    pub ahead: f64,
    pub aside: f64,
    pub radius: f64,
    /// What feels it, and how soft the leaf is there.
    pub feel: Feel,
}

/// A device that sees something of a body.
#[derive(Debug, Clone, Copy)]
pub(super) struct Look {
    pub device: usize,
    /// It sees nothing as long as the middle of the body is less deep.
    pub from: f64,
    /// From the presence to the output.
    pub response: f64,
}

/// A body.
#[derive(Debug, Clone)]
pub(super) struct Person {
    pub parts: Vec<Part>,
    /// How many of them are the arm of one who leans in.
    pub arm: usize,
    /// The cylinders in the height of the leaf.
    pub touchable: Vec<usize>,
    /// For each device the cylinders that it sees, each with the radius that it sees.
    pub seen: Vec<Vec<(usize, f64)>>,
    /// For each way the devices that see something of it, the nearest first.
    pub looks: [Vec<Look>; 2],
    /// No point of it is farther than this from its middle.
    pub reach: f64,
    /// Slowest and fastest.
    pub speeds: Option<(f64, f64)>,
}

impl Person {
    pub(super) fn new(world: &World, pass: &Pass, body: &Body, fields: &[Field]) -> Self {
        let leaf = &world.leaf;
        let feel = |part: &Cylinder| Feel::new(world, pass, part);
        let seeing = (&world.beams[..], &world.scanners[..]);
        // The rest of one who leans in stays beside the leaf's path.
        let ahead = if body.arm > 0 {
            body.arm
        } else {
            body.parts.len()
        };
        let mut touchable = body.within(leaf.bottom, leaf.top);
        touchable.retain(|&at| at < ahead);
        Self {
            touchable,
            ..Self::seen(body, seeing, pass.direction, fields, &feel)
        }
    }

    /// A body as the devices that act in a direction see it.
    pub(super) fn seen(
        body: &Body,
        (beams, scanners): (&[Beam], &[Scanner]),
        direction: Direction,
        fields: &[Field],
        feel: &dyn Fn(&Cylinder) -> Feel,
    ) -> Self {
        let part = |part: &Cylinder| Part {
            ahead: part.ahead.base(),
            aside: part.aside.base(),
            radius: part.radius.base(),
            feel: feel(part),
        };
        let parts: Vec<Part> = body.parts.iter().map(part).collect();
        let beams = beams.iter().filter(|beam| beam.guards.contains(&direction));
        let scanners = scanners
            .iter()
            .filter(|field| field.guards.contains(&direction));
        let seen: Vec<Vec<(usize, f64)>> = beams
            .map(|beam| cut(body, beam))
            .chain(scanners.map(|field| found(body, field)))
            .collect();
        let reach = parts
            .iter()
            .map(|part| part.ahead.hypot(part.aside) + part.radius);
        Self {
            touchable: Vec::new(),
            looks: [0, 1].map(|way| looks(&parts, &seen, fields, way)),
            arm: body.arm,
            seen,
            reach: reach.fold(0.0, f64::max),
            speeds: body
                .speeds
                .map(|speeds| (speeds.from.base(), speeds.to.base())),
            parts,
        }
    }

    /// No device sees the body as long as its middle is less deep than this.
    pub(super) fn seen_from(&self, way: usize) -> f64 {
        self.looks[way]
            .first()
            .map_or(f64::INFINITY, |look| look.from)
    }
}

fn looks(parts: &[Part], seen: &[Vec<(usize, f64)>], fields: &[Field], way: usize) -> Vec<Look> {
    let mut looks: Vec<Look> = fields
        .iter()
        .zip(seen)
        .enumerate()
        .filter(|(_, (_, seen))| !seen.is_empty())
        .map(|(device, (field, seen))| {
            let reach = seen.iter().map(|(at, radius)| {
                let part = &parts[*at];
                part.ahead.hypot(part.aside) + radius
            });
            Look {
                device,
                from: field.begins[way] - reach.fold(0.0, f64::max) - CLEAR,
                response: field.response,
            }
        })
        .collect();
    looks.sort_by(|a, b| a.from.total_cmp(&b.from));
    looks
}

/// The cylinders that cover the whole width of a beam at its height.
fn cut(body: &Body, beam: &Beam) -> Vec<(usize, f64)> {
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
fn found(body: &Body, scanner: &Scanner) -> Vec<(usize, f64)> {
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
