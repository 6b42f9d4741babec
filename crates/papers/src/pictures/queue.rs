//! The queue of each lane, and one vehicle at the gate.

use super::{Group, Picture, Untold, none};
use crate::queue::charts;
use design::queue::LaneQueue;
use site::Site;

/// Name of the group.
pub(super) const NAME: &str = "queue";

/// Every lane.
pub(super) fn group(site: &Site) -> Group {
    let units = site.site.unit_system();
    let (mut pictures, mut untold) = (Vec::new(), Vec::new());
    for lane in &site.lane {
        match LaneQueue::of(site, lane) {
            Ok(queue) => {
                let charts = queue.picture().map(|picture| charts(&picture, units));
                for (what, chart) in charts.into_iter().flatten() {
                    pictures.push(Picture::curves(format!("{what}-{}", lane.id), chart));
                }
            }
            Err(finding) => untold.push(Untold {
                title: format!("Queue on lane {}", lane.id),
                why: finding.sentence.clone(),
                write: finding
                    .missing
                    .iter()
                    .map(|missing| missing.write.clone())
                    .collect(),
            }),
        }
    }
    if site.lane.is_empty() {
        untold.push(none(
            "Queue before the gate",
            "The site has no lane with its traffic. Write",
            "[[lane]]",
        ));
    }
    Group {
        name: NAME,
        title: "Queue before the gate",
        pictures,
        untold,
    }
}
