//! What can be added: every entry of the parts files at every place, as devices of the site.

use super::place::{Bounds, Draft, Placed, places};
use super::{raised, turned};
use crate::asking::{Asking, Lack};
use crate::check::gate_of;
use crate::walk::{GateWalk, Slot, senses_people};
use quantity::Quantity as _;
use sim::walk::AnyWorld;
use site::{Device, DeviceKind, Gate, Leaf, Site, SourceFile, load, part_names};

/// One candidate: where it goes, and the device with everything that its data sheet says.
pub(super) struct Proposed {
    pub(super) placed: Placed,
    pub(super) device: Device,
}

/// Every place for every entry that the walk test takes.
pub(super) fn proposed(
    (main, parts): (&SourceFile, &[SourceFile]),
    bare: &Site,
    at: usize,
) -> Vec<Proposed> {
    let gate = &bare.gate[at];
    let mut asking = Asking::new(bare.site.unit_system());
    let Ok(walk) = GateWalk::read(&mut asking, bare, gate) else {
        return Vec::new();
    };
    let names = part_names(parts, "device");
    let probe = |(index, name): (usize, &String)| {
        format!(
            "[[device]]\nid = \"entry-{index}\"\npart = \"{name}\"\ngate = \"{}\"",
            gate.id
        )
    };
    let probes: Vec<String> = names.iter().enumerate().map(probe).collect();
    let Some(entries) = read_with((main, parts), &probes) else {
        return Vec::new();
    };
    let units = bare.site.unit_system();
    let mut placed = Vec::new();
    for (index, name) in names.iter().enumerate() {
        if let Some(device) = named(&entries, &format!("entry-{index}")) {
            let draft = Draft {
                entry: name,
                gate: gate.id.as_str(),
                units,
            };
            placed.extend(all_places(&draft, device.kind, gate, walk.world()));
        }
    }
    let tables: Vec<String> = placed.iter().map(|one| one.lines.join("\n")).collect();
    let Some(with_all) = read_with((main, parts), &tables) else {
        return Vec::new();
    };
    let devices = placed.into_iter().filter_map(|placed| {
        let device = named(&with_all, &placed.id)?.clone();
        Some(Proposed { placed, device })
    });
    devices
        .filter(|one| is_walked(bare, at, &one.device))
        .collect()
}

/// The places for one entry at a gate.
fn all_places(draft: &Draft<'_>, kind: DeviceKind, gate: &Gate, world: &AnyWorld) -> Vec<Placed> {
    match world {
        AnyWorld::Sliding(_) => bounds(gate).map_or(Vec::new(), |(leaf, bounds)| {
            places(draft, kind, leaf.id.as_str(), &bounds)
        }),
        AnyWorld::Swinging(world) => {
            let names: Vec<&str> = gate.leaf.iter().map(|leaf| leaf.id.as_str()).collect();
            turned::places(draft, kind, world, &names)
        }
        AnyWorld::Rising(world) => {
            let leaf = gate.leaf.first();
            leaf.map_or(Vec::new(), |leaf| {
                raised::places(draft, kind, world, leaf.id.as_str())
            })
        }
    }
}

/// The walk test takes the device: nothing about it is missing, and it acts.
fn is_walked(bare: &Site, at: usize, device: &Device) -> bool {
    let mut site = bare.clone();
    site.device.push(device.clone());
    let mut asking = Asking::new(site.site.unit_system());
    GateWalk::read(&mut asking, &site, &site.gate[at]).is_ok_and(|walk| {
        let mut sensing = walk.lowered.sensing.iter();
        sensing.any(|one| one.id == device.id.as_str() && !matches!(one.slot, Slot::Left(_)))
    })
}

fn named<'s>(site: &'s Site, id: &str) -> Option<&'s Device> {
    site.device.iter().find(|device| device.id.as_str() == id)
}

/// The leaf of a gate that slides, and what bounds the places.
fn bounds(gate: &Gate) -> Option<(&Leaf, Bounds)> {
    let leaf = gate.leaf.first()?;
    let closed = leaf.closed_end.as_ref()?.nominal().base();
    let travel = gate.travel.as_ref()?.nominal().base();
    let tail = closed + leaf.length.as_ref()?.nominal().base();
    let bottom = leaf.ground_clearance.as_ref()?.nominal().base();
    let bounds = Bounds {
        closed,
        open: closed + travel,
        tail: (tail, tail + travel),
        half: 0.5 * leaf.thickness.as_ref()?.nominal().base(),
        bottom,
        top: bottom + leaf.height.as_ref()?.nominal().base(),
    };
    Some((leaf, bounds))
}

/// The site without devices that see people at a gate.
pub(super) fn without_protection(site: &Site, at: usize) -> Site {
    let mut bare = site.clone();
    let gate = &site.gate[at];
    bare.device.retain(|device| {
        let mut asking = Asking::new(site.site.unit_system());
        let own = gate_of(&mut asking, site, device).is_ok_and(|of| of.id == gate.id);
        !(own && senses_people(device))
    });
    bare
}

/// What the walk test of a gate rests on; lines to write where it cannot be walked.
pub(super) fn assumed(site: &Site, at: usize) -> Result<Vec<String>, Vec<String>> {
    let mut asking = Asking::new(site.site.unit_system());
    if let Ok(walk) = GateWalk::read(&mut asking, site, &site.gate[at]) {
        let told = walk.assumptions().iter();
        let told = told.map(|one| format!("{}: {} ({})", one.what, one.value, one.known));
        return Ok(told.collect());
    }
    let lines = asking.lacks.iter().map(Lack::line);
    let refused = asking.beyond.iter().map(|beyond| beyond.reach.why.clone());
    Err(lines.chain(refused).collect())
}

/// The site with tables of its own added.
fn read_with((main, parts): (&SourceFile, &[SourceFile]), tables: &[String]) -> Option<Site> {
    let text = format!("{}\n\n{}\n", main.text, tables.join("\n\n"));
    let file = SourceFile {
        name: main.name.clone(),
        text,
    };
    load(file, parts.to_vec()).site
}
