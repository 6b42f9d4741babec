//! What a finding is about.

use site::Origin;
use std::borrow::Cow;

/// A record of the site, with the name that it goes by: small letters, digits and hyphens, safe to type in a command.
#[derive(Debug, Clone)]
pub(crate) struct About<'s> {
    pub(crate) origin: &'s Origin,
    pub(crate) name: Cow<'s, str>,
}

impl<'s> About<'s> {
    /// A record by its id.
    pub(crate) fn new(origin: &'s Origin, name: &'s site::Id) -> Self {
        Self {
            origin,
            name: Cow::Borrowed(name.as_str()),
        }
    }

    /// A record by its id, as it passes a gate where the site has several: `rig-at-main`.
    pub(crate) fn passing(origin: &'s Origin, name: &'s site::Id, gate: Option<&site::Id>) -> Self {
        match gate {
            None => Self::new(origin, name),
            Some(gate) => Self {
                origin,
                name: Cow::Owned(format!("{name}-at-{gate}")),
            },
        }
    }

    /// The site as a whole.
    pub(crate) fn site(origin: &'s Origin) -> Self {
        Self {
            origin,
            name: Cow::Borrowed(WHOLE_SITE),
        }
    }

    /// A record without an id, among others of its kind below a record that has one: `footing-catch`, `footing-catch-2`.
    pub(crate) fn one_of(origin: &'s Origin, below: &'s site::Id, index: usize) -> Self {
        let name = match index {
            0 => Cow::Borrowed(below.as_str()),
            more => Cow::Owned(format!("{below}-{}", more + 1)),
        };
        Self { origin, name }
    }
}

/// What the site as a whole goes by.
pub(crate) const WHOLE_SITE: &str = "site";
