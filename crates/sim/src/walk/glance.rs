//! A first look: so many scenarios of each family, on one thread.

use super::lane::Walk;
use super::sequence::{BLOCK, Draw, Family};
use super::sweep::{Sweep, glance_with};

impl Walk {
    /// Works the first so many scenarios of each family; the numbers are those of [`Walk::sweep`].
    pub fn glance(&self, each: u64) -> Sweep {
        let families = self.families();
        let work = |family: &Family, draw: &Draw| self.work(family, draw);
        glance_with(&families, first_of_each(families.len(), each), &work)
    }
}

/// The first so many numbers of each of so many families.
pub(super) fn first_of_each(families: usize, each: u64) -> impl Iterator<Item = u64> {
    let count = families as u64;
    (0..count).flat_map(move |family| {
        (0..each).map(move |at| (at / BLOCK * count + family) * BLOCK + at % BLOCK)
    })
}
