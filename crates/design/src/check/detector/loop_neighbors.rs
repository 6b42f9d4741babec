//! Loops that lie so near to each other that they disturb each other.

use crate::asking::{Asking, need, read};
use crate::loops::{Laid, apart, laid, loops};
use crate::outcome::Halt;
use formula::{Evidence, Source};
use quantity::{Frequency, Length, Quantity as _, Ratio};
use site::{Device, Id, Site};

static CROSSTALK: Source = Source {
    work: "instructions of loop detectors: loops 2 m apart, or on frequencies the farther apart the nearer they lie; 150 mm of steel-free ground below is ideal",
    clause: "",
    evidence: Evidence::Seen,
    seen: "two manuals (addresses withheld, they carry company names)",
};

/// Loops this near to each other disturb each other (m).
const NEIGHBORS: f64 = 2.0;
/// A loop nearer than two meters.
pub(super) struct Neighbor<'s> {
    pub(super) id: &'s Id,
    pub(super) way: Length,
    /// A channel of the same detector; whether that one drives its channels in turn.
    pub(super) same_detector: Option<bool>,
    /// How far the frequencies are apart.
    pub(super) step: Option<Ratio>,
}

pub(super) fn neighbors<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (device, of): (&'s Device, &Laid),
) -> Result<Vec<Neighbor<'s>>, Halt> {
    let mut near = Ok(Vec::new());
    for other in loops(site).filter(|other| other.id != device.id) {
        let Ok(there) = laid(asking, site, other) else {
            near = Err(Halt);
            continue;
        };
        let way = apart(of, &there);
        if way.base() >= NEIGHBORS {
            continue;
        }
        asking.rest_on(&CROSSTALK);
        let next = neighbor(asking, device, other, way);
        near = near.and_then(|mut near: Vec<Neighbor<'s>>| {
            near.push(next?);
            Ok(near)
        });
    }
    near
}

fn neighbor<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    other: &'s Device,
    way: Length,
) -> Result<Neighbor<'s>, Halt> {
    let unit = need!(asking, device.loop_setup?.detector, "\"detector 1\"");
    let its = need!(asking, other.loop_setup?.detector, "\"detector 1\"");
    let (unit, its) = (unit?, its?);
    let mut found = Neighbor {
        id: &other.id,
        way,
        same_detector: None,
        step: None,
    };
    if unit.as_str() == its.as_str() {
        let scans = need!(asking, device.loop_detector?.scans, "true")?;
        found.same_detector = Some(*scans);
        return Ok(found);
    }
    let one = read!(asking, device.loop_setup?.frequency);
    let two = read!(asking, other.loop_setup?.frequency);
    let (one, two): (Frequency, Frequency) = (one?, two?);
    let lower = if one < two { one } else { two };
    found.step = Some(Ratio::from_base(((one - two).base() / lower.base()).abs()));
    Ok(found)
}
