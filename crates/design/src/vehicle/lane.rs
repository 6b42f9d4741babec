//! Where vehicles drive, and how high the ground is there.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{Gate, Site};

/// The height of the drive across the gate line, as surveyed along its lane; level where nobody has written it.
pub(crate) struct Ground {
    /// Into the property, and up.
    path: Vec<(f64, f64)>,
    slope: f64,
}

impl Ground {
    pub(crate) fn of(site: &Site, gate: &Gate) -> Self {
        let along = |lane: &&site::Lane| lane.path.len() > 1;
        let path = lanes(site, gate).find(along).map_or(Vec::new(), |lane| {
            let spot = |at: &site::Position| (at.y.nominal().base(), at.z.nominal().base());
            lane.path.iter().map(spot).collect()
        });
        Self {
            path,
            slope: gate.cross_slope.map_or(0.0, |slope| slope.nominal().base()),
        }
    }

    pub(crate) fn at(&self, y: f64) -> f64 {
        between(&self.path, y).unwrap_or(self.slope * y)
    }
}

/// The height of a line of points at a place, beyond its ends that of the end.
pub(crate) fn between(points: &[(f64, f64)], at: f64) -> Option<f64> {
    let (first, last) = (points.first()?, points.last()?);
    let pair = points.windows(2).find(|pair| {
        let (low, high) = (pair[0].0.min(pair[1].0), pair[0].0.max(pair[1].0));
        low <= at && at <= high && high > low
    });
    Some(match pair {
        Some(pair) => {
            pair[0].1 + (pair[1].1 - pair[0].1) * (at - pair[0].0) / (pair[1].0 - pair[0].0)
        }
        None if (at - first.0).abs() < (at - last.0).abs() => first.1,
        None => last.1,
    })
}

/// The lanes through a gate.
pub(crate) fn lanes<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s site::Lane> {
    let only = site.gate.len() == 1;
    site.lane.iter().filter(move |lane| match &lane.gate {
        Some(name) => *name == gate.id,
        None => only,
    })
}

/// Where the middle of a vehicle of that width may be across all lanes of a gate; across the whole opening where the site
/// has no lane.
pub(super) fn lane<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    vehicle: Option<Length>,
) -> Result<sim::vehicle::Lane, Halt> {
    let mut ends: Option<(f64, f64)> = None;
    let mut take = |middle: f64, width: f64| {
        let play = ((width - vehicle.map_or(0.0, quantity::Quantity::base)) / 2.0).max(0.0);
        let (low, high) = ends.unwrap_or((middle, middle));
        ends = Some((low.min(middle - play), high.max(middle + play)));
    };
    for lane in lanes(site, gate) {
        let path: Vec<_> = lane
            .path
            .iter()
            .map(|at| (at.y.nominal().base(), at.x.nominal().base()))
            .collect();
        let width = read!(asking, lane.width)?;
        let Some(middle) = between(&path, 0.0) else {
            return asking.lack(&lane.origin, "path", crate::asking::Wants::Written(PATH));
        };
        take(middle, width.base());
    }
    if ends.is_none() {
        let opening = read!(asking, gate.clear_opening)?.base();
        ends = Some((opening / 2.0, opening / 2.0));
        let play = ((opening - vehicle.map_or(0.0, quantity::Quantity::base)) / 2.0).max(0.0);
        ends = ends.map(|(low, high)| (low - play, high + play));
    }
    let (low, high) = ends.ok_or(Halt)?;
    Ok(sim::vehicle::Lane {
        middle: Length::from_base(f64::midpoint(low, high)),
        play: Length::from_base((high - low) / 2.0),
    })
}

/// How the path of a lane is written.
const PATH: &str = "[[\"10 ft\", \"-40 ft\", \"0 ft\"], [\"10 ft\", \"40 ft\", \"0 ft\"]]";
