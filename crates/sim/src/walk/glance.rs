//! A first look: the first scenarios of each family, evenly over the families.

use super::lane::Walk;
use super::scenario::Class;
use super::sequence::{BLOCK, Block, Draw, Family};
use super::sweep::{Bin, Sweep, glance_with};

impl Walk {
    /// Works the first so many scenarios of each family; the numbers are those of [`Walk::sweep`].
    pub fn glance(&self, each: u64) -> Sweep {
        let work = |family: &Family, block: &Block, bin: &mut Bin| self.work(family, block, bin);
        glance_with(&self.families(), each, &work)
    }

    /// The families of which one of the first so many scenarios ends badly.
    pub fn hit(&self, each: u64) -> Vec<Family> {
        let work = |family: &Family, draw: &Draw| self.ends(family, draw).0;
        hit_with(self.families(), each, &work)
    }
}

/// The families of which one of the first so many scenarios ends badly; none is worked beyond its first such one.
pub(super) fn hit_with(
    mut families: Vec<Family>,
    each: u64,
    run: &impl Fn(&Family, &Draw) -> Class,
) -> Vec<Family> {
    let all = families.len();
    let mut at = 0;
    families.retain(|family| {
        let mut seeds = first_of_one(all as u64, at, each);
        at += 1;
        seeds.any(|seed| run(family, &Draw::new(seed, all)).is_bad())
    });
    families
}

/// The first so many numbers of one of so many families.
fn first_of_one(count: u64, family: u64, each: u64) -> impl Iterator<Item = u64> {
    (0..each).map(move |at| (at / BLOCK * count + family) * BLOCK + at % BLOCK)
}
