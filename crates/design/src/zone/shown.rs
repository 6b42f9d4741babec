//! The zones of a gate for drawings and schedules, with what sees or feels somebody in each.

use crate::asking::Asking;
use crate::check::protect::every_zone::{missing, own_sensing};
use crate::zone::means::covering;
use crate::zone::{Extent, KINDS, Zone, ZoneKind, gap};
use quantity::Length;
use site::{Direction, Gate, Site};

/// A zone as it is drawn.
#[derive(Debug, Clone)]
pub struct ShownZone {
    /// What kind of place it is.
    pub kind: ZoneKind,
    /// Where it is, in words.
    pub place: String,
    /// The leaf whose motion makes it.
    pub leaf: String,
    /// What the leaf moves against.
    pub against: String,
    /// Where somebody would be.
    pub extent: Extent,
    /// Least gap through the travel.
    pub least_gap: Length,
    /// Parts of the body that the gap would crush, in words.
    pub parts: String,
    /// Directions of travel in which it is live, with what sees or feels somebody there.
    pub live: Vec<Live>,
}

/// A direction of travel in which a zone is live.
#[derive(Debug, Clone)]
pub struct Live {
    /// The direction.
    pub direction: Direction,
    /// The devices that see or feel somebody there, by name.
    pub devices: Vec<String>,
    /// The drive itself senses what the leaf meets.
    pub own_sensing: bool,
    /// Whether what the site's codes ask is there.
    pub guarded: Guarded,
}

/// Whether what the codes ask at a zone is there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Guarded {
    /// It is.
    AsAsked,
    /// It is not: what is missing, in words.
    Lacks(String),
    /// Facts are missing.
    NotKnown,
}

/// Every kind of zone of a gate could be worked out, so that [`shown`] leaves none out.
pub fn all_known(site: &Site, gate: &Gate) -> bool {
    let mut asking = Asking::new(site.site.unit_system());
    KINDS
        .iter()
        .all(|kind| kind(&mut asking, site, gate).is_ok())
}

/// The zones of a gate that can catch somebody, at the values as written. Kinds whose facts are missing are left out.
pub fn shown(site: &Site, gate: &Gate) -> Vec<ShownZone> {
    let mut asking = Asking::new(site.site.unit_system());
    let kinds = KINDS
        .iter()
        .filter_map(|kind| kind(&mut asking, site, gate).ok());
    let zones: Vec<Zone> = kinds.flatten().filter(|zone| zone.catches).collect();
    zones
        .into_iter()
        .map(|zone| ShownZone {
            kind: zone.kind,
            place: zone.words(),
            live: live(&mut asking, site, gate, &zone),
            parts: gap::parts(zone.least_gap),
            leaf: zone.leaf,
            against: zone.against,
            extent: zone.extent,
            least_gap: zone.least_gap,
        })
        .collect()
}

fn live<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, zone: &Zone) -> Vec<Live> {
    let own_sensing =
        zone.kind.is_felt_by_the_drive() && own_sensing(asking, site, gate).unwrap_or_default();
    zone.live
        .iter()
        .map(|direction| Live {
            direction: *direction,
            devices: covering(asking, site, gate, (zone, *direction))
                .unwrap_or_default()
                .iter()
                .map(|device| device.id.to_string())
                .collect(),
            own_sensing,
            guarded: guarded(asking, site, gate, (zone, *direction)),
        })
        .collect()
}

fn guarded<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    at: (&Zone, Direction),
) -> Guarded {
    match missing(asking, (site, gate), at) {
        Ok(None) => Guarded::AsAsked,
        Ok(Some(missing)) => Guarded::Lacks(missing),
        Err(_) => Guarded::NotKnown,
    }
}
