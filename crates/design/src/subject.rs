//! What a finding is about.

use site::Origin;

/// A record of the site, with the name that it goes by.
#[derive(Debug, Clone, Copy)]
pub(crate) struct About<'s> {
    pub(crate) origin: &'s Origin,
    pub(crate) name: &'s str,
}

impl<'s> About<'s> {
    pub(crate) fn new(origin: &'s Origin, name: &'s impl AsRef<str>) -> Self {
        Self {
            origin,
            name: name.as_ref(),
        }
    }
}
