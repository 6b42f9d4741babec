//! The tension along each pull, from both ends.

use super::{Group, Picture, lacking, none};
use crate::pulling::{chart, hardest, strain};
use design::pulling::shown;
use site::Site;

/// Name of the group.
pub(super) const NAME: &str = "tension";

/// The hardest pull through each conduit.
pub(super) fn group(site: &Site) -> Group {
    let units = site.site.unit_system();
    let pulls = shown(site);
    let mut untold: Vec<_> = pulls
        .iter()
        .filter_map(|pull| {
            let missing = pull.worked.as_ref().err()?;
            let title = format!("Pull through {}: {}", pull.conduit, pull.cables.join(", "));
            Some(lacking(title, missing.clone()))
        })
        .collect();
    if pulls.is_empty() {
        untold.push(none(
            "Tension along a pull",
            "No cable goes through a conduit. Name the conduits in the way of a cable: write",
            "way = [\"c-1\"]",
        ));
    }
    let mut pulls = hardest(pulls);
    pulls.sort_by(|one, other| strain(&other.1).total_cmp(&strain(&one.1)));
    let pictures = pulls.into_iter().map(|(pull, worked)| {
        Picture::curves(
            format!("pull-{}", pull.conduit),
            chart(&pull, &worked, units),
        )
    });
    Group {
        name: NAME,
        title: "Tension along each pull",
        pictures: pictures.collect(),
        untold,
    }
}
