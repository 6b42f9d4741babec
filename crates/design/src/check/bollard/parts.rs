//! What stands on a site where a vehicle could hit it, and what the leaves sweep.

use super::corridor::flat;
use crate::asking::{Asking, Wants, read};
use crate::check::leaf::arc;
use crate::check::plane::Piece;
use crate::outcome::Halt;
use quantity::Quantity as _;
use site::{Device, DeviceKind, Gate, GateKind, Id, Origin, Position, Site};

/// A thing that a vehicle could hit.
pub(crate) struct Part<'s> {
    pub(crate) name: String,
    /// Names by which a bollard may say that it guards it.
    pub(crate) ids: Vec<&'s Id>,
    pub(crate) piece: Piece,
}

/// Steps in which an arc is walked through.
const STEPS: u32 = 60;

/// All things of the site that a vehicle could hit. What is missing is noted, thing by thing.
pub(crate) fn parts<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Vec<Part<'s>>, Halt> {
    let mut standing: Vec<(&Id, &Origin, Option<&Position>)> = Vec::new();
    for operator in &site.operator {
        standing.push((&operator.id, &operator.origin, operator.at.as_ref()));
    }
    for post in site.gate.iter().flat_map(|gate| &gate.post) {
        standing.push((&post.id, &post.origin, post.at.as_ref()));
    }
    for enclosure in &site.enclosure {
        standing.push((&enclosure.id, &enclosure.origin, enclosure.at.as_ref()));
    }
    let tallest = tallest(site);
    for device in site.device.iter().filter(|device| stands(device, tallest)) {
        standing.push((&device.id, &device.origin, device.at.as_ref()));
    }
    let mut whole = Ok(());
    let mut parts = Vec::new();
    for (id, origin, at) in standing {
        match asking.position(origin, "at", at) {
            Ok([x, y, _]) => parts.push(Part {
                name: id.to_string(),
                ids: vec![id],
                piece: [(x.base(), y.base()); 2],
            }),
            Err(halt) => whole = Err(halt),
        }
    }
    for gate in &site.gate {
        match open_leaves(asking, gate) {
            Ok(leaves) => parts.extend(leaves),
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| parts)
}

/// Height of the tallest vehicle in meters; beyond every height where none is stated.
fn tallest(site: &Site) -> f64 {
    let heights = site
        .vehicle
        .iter()
        .map(|vehicle| vehicle.height.as_ref().map(|height| height.high().base()));
    let known: Option<Vec<f64>> = heights.collect();
    match known {
        Some(heights) if !heights.is_empty() => heights.into_iter().fold(0.0, f64::max),
        _ => f64::INFINITY,
    }
}

/// The device stands where a vehicle could hit it: not buried, not on a leaf, not in a box, not above every vehicle.
fn stands(device: &Device, tallest: f64) -> bool {
    let inside = matches!(
        device.kind,
        DeviceKind::Radio
            | DeviceKind::Lock
            | DeviceKind::AccessController
            | DeviceKind::NetworkSwitch
            | DeviceKind::Injector
            | DeviceKind::Extender
            | DeviceKind::Recorder
            | DeviceKind::Router
            | DeviceKind::SurgeProtector
            | DeviceKind::Control
    );
    let above = device
        .at
        .as_ref()
        .is_some_and(|at| at.z.nominal().base() > tallest);
    device.kind != DeviceKind::Loop
        && device.carried_by.is_none()
        && device.enclosure.is_none()
        && !above
        && !(inside && device.at.is_none())
}

/// The leaves of a gate as they stand when it is open.
fn open_leaves<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Part<'s>>, Halt> {
    let pieces = match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => slid(asking, gate)?
            .into_iter()
            .map(|(_, open)| open)
            .collect(),
        GateKind::SingleSwing | GateKind::DoubleSwing => arc::of_gate(asking, gate)?
            .iter()
            .map(|arc| arc.at(arc.travel))
            .collect(),
        _ => Vec::new(),
    };
    let named = |(leaf, piece): (&'s site::Leaf, Piece)| Part {
        name: format!("{} where it stands open", leaf.id),
        ids: vec![&leaf.id, &gate.id],
        piece,
    };
    Ok(gate.leaf.iter().zip(pieces).map(named).collect())
}

/// What the leaves of a gate sweep near the ground, as pieces close together.
pub(super) fn swept<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Piece>, Halt> {
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => {
            let slid = slid(asking, gate)?;
            Ok(slid
                .into_iter()
                .map(|(from, to)| [from[0], to[1]])
                .collect())
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            let step = |arc: &arc::Sweep, step: u32| {
                arc.at(arc.travel * f64::from(step) / f64::from(STEPS))
            };
            let arcs = arc::of_gate(asking, gate)?;
            Ok(arcs
                .iter()
                .flat_map(|arc| (0..=STEPS).map(move |at| step(arc, at)))
                .collect())
        }
        _ => gate
            .leaf
            .iter()
            .map(|leaf| {
                let length = read!(asking, leaf.length)?;
                Ok([(0.0, 0.0), (length.base(), 0.0)])
            })
            .collect(),
    }
}

/// Each slide leaf where it is closed and where it is open.
fn slid<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<(Piece, Piece)>, Halt> {
    let travel = read!(asking, gate.travel);
    let mut whole = Ok(Vec::new());
    for leaf in &gate.leaf {
        let closed = read!(asking, leaf.closed_end);
        let length = read!(asking, leaf.length);
        let ends = closed.and_then(|closed| length.map(|length| (closed, length)));
        whole = whole.and_then(|mut whole| {
            let ((closed, length), travel) = (ends?, travel?);
            let piece = |from: f64| [(from, 0.0), (from + length.base(), 0.0)];
            whole.push((piece(closed.base()), piece((closed + travel).base())));
            Ok(whole)
        });
    }
    whole
}

/// The place of a bollard, seen from above.
pub(crate) fn place<'s>(
    asking: &mut Asking<'s>,
    bollard: &'s site::Bollard,
) -> Result<Piece, Halt> {
    match &bollard.at {
        Some(at) => {
            asking.position(&bollard.origin, "at", Some(at))?;
            Ok([flat(at); 2])
        }
        None => asking.lack(&bollard.origin, "at", Wants::Position),
    }
}
