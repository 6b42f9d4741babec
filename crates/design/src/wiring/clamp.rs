//! What lies under each clamp.

use super::{Landed, Landing};
use site::{Id, Terminals};

/// One terminal with every core end that lands on it.
#[derive(Debug, Clone)]
pub struct ClampAt<'s> {
    /// What it is in or on.
    pub on: &'s Id,
    /// The terminals that it is one of, where they are described.
    pub strip: Option<&'s Terminals>,
    /// Its mark.
    pub mark: &'s str,
    /// That thing is an enclosure.
    pub boxed: bool,
    /// The cores, each with the number of its end: 0 for the first end of its cable, 1 for the second.
    pub ends: Vec<(Landed<'s>, usize)>,
}

impl ClampAt<'_> {
    /// The terminal as it is printed.
    pub fn printed(&self) -> String {
        let landing = Landing {
            on: self.on,
            strip: self.strip,
            mark: Some(self.mark),
            boxed: self.boxed,
        };
        landing.printed().unwrap_or_default()
    }
}

/// Every terminal on which a core lands, in the order of the cores.
pub fn clamps<'s>(landed: &[Landed<'s>]) -> Vec<ClampAt<'s>> {
    let mut clamps: Vec<ClampAt<'s>> = Vec::new();
    for core in landed.iter().filter(|core| !core.spare) {
        for (end, landing) in core.ends.iter().enumerate() {
            let Some(mark) = landing.mark else { continue };
            let is = |clamp: &&mut ClampAt<'_>| {
                *clamp.on == *landing.on
                    && clamp.mark == mark
                    && clamp.strip.map(|strip| &strip.id) == landing.strip.map(|strip| &strip.id)
            };
            match clamps.iter_mut().find(is) {
                Some(clamp) => clamp.ends.push((*core, end)),
                None => clamps.push(ClampAt {
                    on: landing.on,
                    strip: landing.strip,
                    mark,
                    boxed: landing.boxed,
                    ends: vec![(*core, end)],
                }),
            }
        }
    }
    clamps
}
