//! The warmth in each enclosure: a cold night, and the hottest day.

use super::{Group, Picture, lacking, none};
use crate::heat::charts;
use design::heat::warmth;
use site::Site;

/// Name of the group.
pub(super) const NAME: &str = "warmth";

/// A cold night and the hottest day of each enclosure.
pub(super) fn group(site: &Site) -> Group {
    let units = site.site.unit_system();
    let (mut pictures, mut untold) = (Vec::new(), Vec::new());
    for one in warmth(site) {
        let charts = charts(&one, units);
        if charts.len() < 2 {
            let title = format!("Warmth in enclosure {}", one.id);
            untold.push(lacking(title, one.missing.clone()));
        }
        for (what, chart) in charts {
            pictures.push(Picture::curves(
                format!("enclosure-{what}-{}", one.id),
                chart,
            ));
        }
    }
    if site.enclosure.is_empty() {
        untold.push(none(
            "Warmth in an enclosure",
            "The site has no enclosure. Write",
            "[[enclosure]]",
        ));
    }
    Group {
        name: NAME,
        title: "Warmth in each enclosure",
        pictures,
        untold,
    }
}
