//! What each fuse feeds.

use site::{Fuse, Id, Site};

/// A fuse with what it feeds.
#[derive(Debug, Clone)]
pub struct Fed<'s> {
    /// The fuse.
    pub fuse: &'s Fuse,
    /// What goes dead with it: ends of its cables, devices that name it, fuses behind it.
    pub feeds: Vec<&'s Id>,
}

/// Every fuse of the site.
pub fn fed(site: &Site) -> Vec<Fed<'_>> {
    let of = |fuse| Fed {
        fuse,
        feeds: feeds(site, fuse),
    };
    site.fuse.iter().map(of).collect()
}

fn feeds<'s>(site: &'s Site, fuse: &Fuse) -> Vec<&'s Id> {
    let is = |name: Option<&Id>| name == Some(&fuse.id);
    let cables = site.cable.iter().filter(|cable| is(cable.fuse.as_ref()));
    let devices = site.device.iter().filter(|device| is(device.fuse.as_ref()));
    let behind = site.fuse.iter().filter(|other| is(other.behind.as_ref()));
    let mut feeds: Vec<&Id> = Vec::new();
    let all = cables
        .map(|cable| &cable.to)
        .chain(devices.map(|device| &device.id))
        .chain(behind.map(|other| &other.id));
    for name in all {
        if !feeds.contains(&name) {
            feeds.push(name);
        }
    }
    feeds
}
