//! What stands at the ends of a conduit.

use site::{Conduit, Cover, Pit, Site, Text};

/// The pit that the end of a conduit names, with its cover.
pub(super) fn pit<'s>(site: &'s Site, end: Option<&Text>) -> Option<(&'s Cover, &'s Pit)> {
    let named = |pit: &Pit| end.is_some_and(|end| end.as_str() == pit.name.as_str());
    let mut pits = site
        .cover
        .iter()
        .filter_map(|one| Some((one, one.pit.as_ref()?)));
    pits.find(|(_, pit)| named(pit))
}

/// An end of the conduit comes up to something that is no pit.
pub(super) fn rises(site: &Site, conduit: &Conduit) -> bool {
    [&conduit.from, &conduit.to]
        .into_iter()
        .any(|end| pit(site, end.as_ref()).is_none())
}
