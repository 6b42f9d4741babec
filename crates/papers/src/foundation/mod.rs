//! Figures of foundations, and the full-size templates of their anchors.

mod alike;
mod figure;
mod layers;
mod measures;
mod pattern;
mod plan;
mod section;
mod standing;
mod template;
mod words;

pub(crate) use template::templates;

use crate::sheets::{Planned, north};
use draw::ScaleChoice;
use site::Site;

/// A figure for each foundation that has sizes; those alike share one.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    alike::groups(site)
        .iter()
        .filter_map(|group| {
            let (scene, half) = figure::scene(site, group)?;
            Some(Planned {
                name: format!("foundation-{}", group.first.id),
                scene,
                north: north(site),
                scale: ScaleChoice::LargestThatFits,
                half,
            })
        })
        .collect()
}
