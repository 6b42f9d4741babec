//! Cables of one kind: bought as the same part and taking what is asked of them from its data sheet.

use site::{Cable, Site};

/// Cables of one kind; there is at least one.
pub(crate) struct Alike<'s> {
    pub(crate) first: &'s Cable,
    pub(crate) cables: Vec<&'s Cable>,
}

impl Alike<'_> {
    /// The cables by name, as one says them.
    pub(crate) fn named(&self) -> String {
        const MOST: usize = 4;
        let names: Vec<&str> = self.cables.iter().map(|cable| cable.id.as_str()).collect();
        let part = self.first.part.as_ref().filter(|_| names.len() > 1);
        let listed = if names.len() > MOST {
            format!(
                "{} and {} more",
                names[..MOST - 1].join(", "),
                names.len() + 1 - MOST
            )
        } else {
            names.join(", ")
        };
        match part {
            Some(part) => format!("{part} ({listed})"),
            None => listed,
        }
    }
}

/// The cables that run through conduits, sorted by kind. A cable that writes one of the keys itself stands alone.
pub(crate) fn in_conduits<'s>(site: &'s Site, keys: &[&str]) -> Vec<Alike<'s>> {
    let mut kinds: Vec<Alike<'s>> = Vec::new();
    for cable in site.cable.iter().filter(|cable| !cable.route.is_empty()) {
        let same = |kind: &&mut Alike<'s>| {
            cable.part.is_some()
                && cable.part == kind.first.part
                && !writes(cable, keys)
                && !writes(kind.first, keys)
        };
        match kinds.iter_mut().find(same) {
            Some(kind) => kind.cables.push(cable),
            None => kinds.push(Alike {
                first: cable,
                cables: vec![cable],
            }),
        }
    }
    kinds
}

/// The cable's own entry has one of the keys.
fn writes(cable: &Cable, keys: &[&str]) -> bool {
    keys.iter().any(|key| {
        cable
            .origin
            .field(key)
            .is_some_and(|place| !place.from_part)
    })
}
