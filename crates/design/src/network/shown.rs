//! The data network as it is drawn and listed: who is plugged into what, over which line, and what each port gives.

use crate::asking::Asking;
use crate::network::{Edge, plugged};
use crate::network::{cable_between, drawn, is_fiber, is_gear, members, port_of, run, upward};
use formula::signal::PoePower;
use quantity::{DataRate, Length, Power, Word as _};
use site::{Device, DeviceKind, Site};

/// On what the signals of a line are carried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LineMedium {
    /// Copper pairs, in a cable that the site writes.
    Copper,
    /// Fiber.
    Fiber,
    /// A radio link.
    Radio,
    /// A patch cord, or a cable that nobody has written yet.
    Cord,
}

/// The line from a device up to what it is plugged into.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownLine {
    /// What carries its signals.
    pub medium: LineMedium,
    /// Cable number.
    pub cable: Option<String>,
    /// Length of the cable.
    pub length: Option<Length>,
    /// Rate that it carries.
    pub rate: Option<DataRate>,
    /// Power that the port has to give in the worst hour, loss in the cable counted; none where it gives none.
    pub power: Option<Power>,
    /// The port gives power, known or not how much.
    pub powered: bool,
}

/// A device on the data network.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownMember {
    /// Name of the device.
    pub id: String,
    /// What it is.
    pub kind: DeviceKind,
    /// What it does here.
    pub purpose: Option<String>,
    /// Segment that it belongs to.
    pub segment: Option<String>,
    /// It belongs to the owner's own network.
    pub of_owner: bool,
    /// Its address.
    pub address: Option<String>,
    /// Another device has the same address.
    pub doubled: bool,
    /// Class of power over Ethernet that it asks for, or gives.
    pub class: Option<String>,
    /// Port that it is plugged into, as marked.
    pub port: Option<u32>,
    /// The device that it is plugged into, among the members.
    pub up: Option<usize>,
    /// The line to it.
    pub line: Option<ShownLine>,
    /// The devices that are plugged into it, among the members.
    pub next: Vec<usize>,
    /// Its ports for copper, where it is there for others to be plugged into.
    pub ports: Option<u32>,
    /// Power that it can give on all ports together.
    pub budget: Option<Power>,
}

/// The data network of a site.
#[derive(Debug, Clone, PartialEq)]
pub struct NetworkShown {
    /// The devices, in the order of the site.
    pub members: Vec<ShownMember>,
    /// Those that are plugged into nothing, among the members.
    pub roots: Vec<usize>,
}

impl NetworkShown {
    /// How many ports for copper of a member are taken, its own way up among them.
    pub fn copper_ports(&self, member: &ShownMember) -> usize {
        let next = member.next.iter().filter_map(|at| self.members.get(*at));
        let lines = next.filter_map(|next| next.line.as_ref());
        lines
            .chain(&member.line)
            .filter(|line| matches!(line.medium, LineMedium::Copper | LineMedium::Cord))
            .count()
    }
}

/// The data network of a site.
pub fn shown(site: &Site) -> NetworkShown {
    let devices: Vec<&Device> = with_what_is_named(site);
    let place = |device: &Device| devices.iter().position(|it| std::ptr::eq(*it, device));
    let mut shown: Vec<ShownMember> = devices
        .iter()
        .map(|device| member(site, device, place))
        .collect();
    let reached = reached(&shown);
    let roots = (0..shown.len())
        .filter(|at| shown.get(*at).is_some_and(|it| it.up.is_none()))
        .collect();
    let mut network = NetworkShown {
        members: Vec::new(),
        roots,
    };
    for (at, member) in shown.iter_mut().enumerate() {
        if !reached.contains(&at) && !network.roots.contains(&at) {
            // Plugged into each other in a circle: the first one is a root, and the circle ends there.
            member.up = None;
            network.roots.push(at);
        }
    }
    network.members = shown;
    network
}

/// The members, and devices that are none but are named as what another one is plugged into.
fn with_what_is_named(site: &Site) -> Vec<&Device> {
    let named = |device: &&Device| {
        let is = |it: &Device| upward(site, it).is_some_and(|up| std::ptr::eq(up, *device));
        members(site).any(|it| std::ptr::eq(it, *device)) || members(site).any(is)
    };
    site.device.iter().filter(named).collect()
}

/// What is reached from the roots downward.
fn reached(members: &[ShownMember]) -> Vec<usize> {
    let mut reached: Vec<usize> = (0..members.len())
        .filter(|at| members.get(*at).is_some_and(|it| it.up.is_none()))
        .collect();
    let mut at = 0;
    while let Some(member) = reached.get(at).and_then(|at| members.get(*at)) {
        let new: Vec<usize> = member
            .next
            .iter()
            .copied()
            .filter(|next| !reached.contains(next))
            .collect();
        reached.extend(new);
        at += 1;
    }
    reached
}

fn member<'s>(
    site: &'s Site,
    device: &'s Device,
    place: impl Fn(&Device) -> Option<usize>,
) -> ShownMember {
    let network = device.network.as_ref();
    let segment = crate::network::segment_of(site, device);
    let address = network.and_then(|network| network.address);
    let up = upward(site, device).filter(|up| !std::ptr::eq(*up, device));
    let same = |other: &Device| {
        let theirs = other.network.as_ref().and_then(|it| it.address);
        other.id != device.id && theirs.is_some() && theirs == address
    };
    ShownMember {
        id: device.id.to_string(),
        kind: device.kind,
        purpose: device.purpose.as_ref().map(ToString::to_string),
        segment: segment.map(|segment| segment.id.to_string()),
        of_owner: segment.is_some_and(|segment| segment.of_owner == Some(true)),
        address: address.map(|address| address.to_string()),
        doubled: site.device.iter().any(same),
        class: device.poe_class.map(|class| class.word().to_owned()),
        port: network.and_then(|network| network.port),
        up: up.and_then(&place),
        line: up.map(|up| line(site, device, up)),
        next: plugged(site, device)
            .filter(|next| !std::ptr::eq(*next, device))
            .filter_map(&place)
            .collect(),
        ports: device.ports.filter(|_| is_gear(device)),
        budget: device.power_budget.map(|budget| budget.nominal()),
    }
}

fn line<'s>(site: &'s Site, device: &'s Device, up: &'s Device) -> ShownLine {
    let cable = cable_between(site, device, up);
    let radio = device
        .network
        .as_ref()
        .is_some_and(|it| it.radio_rate.is_some());
    let medium = match cable {
        _ if radio => LineMedium::Radio,
        Some(cable) if is_fiber(cable) => LineMedium::Fiber,
        Some(_) => LineMedium::Copper,
        None => LineMedium::Cord,
    };
    let units = site.site.unit_system();
    let powered = port_of(site, device).is_some_and(|port| std::ptr::eq(port, up));
    let edge = Edge {
        lower: device,
        upper: up,
    };
    ShownLine {
        medium,
        cable: cable.map(|cable| cable.id.to_string()),
        length: cable.and_then(|cable| cable.length.map(|length| length.nominal())),
        rate: edge.rate(&mut Asking::new(units), site).ok(),
        power: given(site, up, device).filter(|_| powered),
        powered,
    }
}

/// Power that a port has to give in the worst hour.
fn given<'s>(site: &'s Site, port: &'s Device, device: &'s Device) -> Option<Power> {
    let mut asking = Asking::new(site.site.unit_system());
    let power = drawn(&mut asking, site, device).ok()?;
    let run = run(&mut asking, site, port, device).ok()?;
    let arrival = asking.work(&PoePower { power, ..run }).ok()?;
    Some(arrival.source_power)
}
