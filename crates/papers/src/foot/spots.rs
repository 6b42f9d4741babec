//! What has a place on the plan for people on foot: its symbol, and what it is called.

use super::layers::Part;
use crate::plan::{seen_from_above, symbols};
use draw::{Point, Symbol};
use site::{Command, CommandKind, Device, FootStop, GateSide, HandRelease, Position, Site};

/// A place with its symbol.
pub(super) struct Spot {
    pub(super) at: Point,
    pub(super) part: Part,
    pub(super) symbol: Symbol,
    /// What it is, for whoever points at it.
    pub(super) title: String,
    /// What stands beside it; nothing beside the feet of somebody who works it.
    pub(super) name: Option<String>,
}

impl Spot {
    fn of(part: Part, at: Option<&Position>, symbol: Symbol, name: String) -> Option<Self> {
        Some(Self {
            at: at.map(seen_from_above)?,
            part,
            title: format!("{} {name}", symbol.name),
            symbol,
            name: Some(name),
        })
    }

    fn stand(at: Option<&Position>, what: &str) -> Option<Self> {
        Some(Self {
            at: at.map(seen_from_above)?,
            part: Part::Stand,
            symbol: symbols::feet(),
            title: format!("where somebody stands who works {what}"),
            name: None,
        })
    }
}

/// Everything that has a place.
pub(super) fn all(site: &Site) -> Vec<Spot> {
    let gates = site.walk_gate.iter().filter_map(|gate| {
        let name = gate.id.to_string();
        Spot::of(Part::Way, gate.at.as_ref(), symbols::walk_gate(), name)
    });
    let signs = site.sign.iter().filter_map(|sign| {
        let name = sign.id.to_string();
        Spot::of(Part::Sign, sign.at.as_ref(), symbols::sign(), name)
    });
    let mut spots: Vec<Spot> = gates.collect();
    spots.extend(site.foot_stop.iter().flat_map(|stop| of_stop(site, stop)));
    spots.extend(of_controls(site));
    spots.extend(of_releases(site));
    spots.extend(signs);
    spots
}

/// A bell, a letter box: itself, unless it is a device that is drawn as a control, and where people stand for it.
fn of_stop(site: &Site, stop: &FootStop) -> impl Iterator<Item = Spot> {
    let name = stop.id.to_string();
    let device = site
        .device
        .iter()
        .find(|device| stop.device.as_ref() == Some(&device.id));
    let drawn = device.is_some_and(moves_the_gate);
    let at = stop.at.as_ref();
    let at = at.or_else(|| device.and_then(|device| device.at.as_ref()));
    let own = Spot::of(Part::Way, at.filter(|_| !drawn), symbols::foot_stop(), name);
    let stand = Spot::stand(stop.stand_at.as_ref(), stop.id.as_str());
    [own, stand].into_iter().flatten()
}

/// Somebody who works it moves the gate, or stops it.
pub(super) fn moves_the_gate(device: &Device) -> bool {
    let moves = |command: &Command| command.what != CommandKind::Nothing;
    device.does.iter().any(moves)
}

/// What makes the gate move.
fn of_controls(site: &Site) -> impl Iterator<Item = Spot> {
    let working = site.device.iter().filter(|device| moves_the_gate(device));
    working.filter_map(|device| {
        let name = device.id.to_string();
        Spot::of(
            Part::Control,
            device.at.as_ref(),
            symbols::device(device.kind),
            name,
        )
    })
}

/// From where a release is reached, where that is one side.
fn from(release: &HandRelease) -> &'static str {
    match release.reached_from.as_slice() {
        [GateSide::Inside] => ", inside",
        [GateSide::Outside] => ", outside",
        _ => "",
    }
}

/// Places at which a drive is let go by hand, and where somebody stands for it.
fn of_releases(site: &Site) -> impl Iterator<Item = Spot> {
    let releases = site
        .gate
        .iter()
        .flat_map(|gate| gate.release.iter().map(move |release| (gate, release)));
    releases.flat_map(|(gate, release)| {
        let lets_go = release.operator.as_ref().unwrap_or(&gate.id);
        let name = format!("release of {lets_go}{}", from(release));
        let stand = Spot::stand(release.stand_at.as_ref(), &name);
        let own = Spot::of(
            Part::Release,
            release.at.as_ref(),
            symbols::hand_release(),
            name,
        );
        [own, stand].into_iter().flatten()
    })
}
