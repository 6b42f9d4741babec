//! The gate in motion: its speed over time, and what its drive is asked for and has over the travel.

use super::{Group, Picture, lacking, none};
use crate::curves::charts;
use design::curves::missing;
use site::Site;

/// Name of the group.
pub(super) const NAME: &str = "motion";

/// Speed and force of each gate.
pub(super) fn group(site: &Site) -> Group {
    let (mut pictures, mut untold) = (Vec::new(), Vec::new());
    for gate in &site.gate {
        for (name, chart) in charts(site, gate) {
            pictures.push(Picture::curves(format!("{name}-{}", gate.id), chart));
        }
        let missing = missing(site, gate);
        if !missing.is_empty() {
            let title = format!("Speed and force of gate {}", gate.id);
            untold.push(lacking(title, missing));
        }
    }
    if site.gate.is_empty() {
        untold.push(none(
            "Speed and force of a gate",
            "The site has no gate. Write",
            "[[gate]]",
        ));
    }
    Group {
        name: NAME,
        title: "The gate in motion",
        pictures,
        untold,
    }
}
