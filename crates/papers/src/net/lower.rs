//! The data network of a site as things of the diagram.

use super::symbols;
use super::view::{Carrier, Line, Said, Thing};
use design::data_network::{LineMedium, NetworkShown, ShownLine, ShownMember};
use draw::Symbol;
use quantity::{Power, Quantity as _, UnitSystem, print};
use site::DeviceKind;

/// The trees of the network.
pub(super) fn things(network: &NetworkShown, units: UnitSystem) -> Vec<Thing> {
    let mut drawn = Vec::new();
    let roots = network.roots.iter();
    roots
        .filter_map(|at| thing(network, units, *at, true, &mut drawn))
        .collect()
}

/// A member with all that hangs on it; none where it is drawn already.
fn thing(
    network: &NetworkShown,
    units: UnitSystem,
    at: usize,
    root: bool,
    drawn: &mut Vec<usize>,
) -> Option<Thing> {
    if drawn.contains(&at) {
        return None;
    }
    drawn.push(at);
    let member = network.members.get(at)?;
    let next: Vec<Thing> = member
        .next
        .iter()
        .filter_map(|next| thing(network, units, *next, false, drawn))
        .collect();
    Some(Thing {
        symbol: symbol(member.kind),
        name: member.id.clone(),
        said: said(network, units, member),
        line: member
            .line
            .as_ref()
            .filter(|_| !root)
            .map(|it| line(it, member, units)),
        next,
    })
}

fn symbol(kind: DeviceKind) -> Symbol {
    match kind {
        DeviceKind::NetworkSwitch => symbols::switch(),
        DeviceKind::Router => symbols::router(),
        DeviceKind::Injector => symbols::injector(),
        DeviceKind::Extender => symbols::extender(),
        DeviceKind::Camera => symbols::camera(),
        DeviceKind::Intercom => symbols::intercom(),
        DeviceKind::Recorder => symbols::recorder(),
        DeviceKind::Radio => symbols::radio(),
        _ => symbols::other(),
    }
}

/// What stands beside a member: address and segment, then ports and power of what others are plugged into.
fn said(network: &NetworkShown, units: UnitSystem, member: &ShownMember) -> Vec<Said> {
    let segment = member.segment.clone();
    let address = match (&member.address, segment) {
        (Some(address), Some(segment)) => format!("{address} · {segment}"),
        (Some(address), None) => address.clone(),
        (None, Some(segment)) => segment,
        (None, None) => String::new(),
    };
    let mut said = Vec::new();
    if !address.is_empty() {
        let (mark, fails) = if member.doubled {
            ("× taken twice: ", true)
        } else {
            ("", false)
        };
        said.push(Said {
            words: format!("{mark}{address}"),
            fails,
        });
    }
    if let Some(ports) = member.ports.filter(|_| !member.of_owner) {
        let used = network.copper_ports(member);
        said.push(Said::plain(format!("{used} of {ports} copper ports")));
    }
    said.extend(power(network, units, member));
    said
}

/// Power on all ports together against the budget.
fn power(network: &NetworkShown, units: UnitSystem, member: &ShownMember) -> Option<Said> {
    let budget = member.budget?;
    let lines = member
        .next
        .iter()
        .filter_map(|next| network.members.get(*next));
    let powered: Vec<&ShownLine> = lines
        .filter_map(|next| next.line.as_ref())
        .filter(|line| line.powered)
        .collect();
    let known: Option<Vec<Power>> = powered.iter().map(|line| line.power).collect();
    let Some(known) = known else {
        return Some(Said::plain(format!("? of {}", print(budget, units))));
    };
    let sum = known
        .into_iter()
        .fold(Power::from_base(0.0), |sum, one| sum + one);
    let fails = sum > budget;
    let mark = if fails { "× " } else { "" };
    Some(Said {
        words: format!("{mark}{} of {}", print(sum, units), print(budget, units)),
        fails,
    })
}

fn line(line: &ShownLine, member: &ShownMember, units: UnitSystem) -> Line {
    let (carrier, medium) = match line.medium {
        LineMedium::Copper => (Carrier::Copper, "copper"),
        LineMedium::Fiber => (Carrier::Fiber, "fiber"),
        LineMedium::Radio => (Carrier::Radio, "radio"),
        LineMedium::Cord => (Carrier::Cord, "patch cord"),
    };
    let port = member.port.map(|port| format!("port {port}"));
    let cable = line.cable.as_deref().map(crate::power::words::short);
    let length = line
        .length
        .map(|length| crate::power::words::long(length, units));
    let over = [port, cable, Some(medium.to_owned()), length];
    let rate = line.rate.map(|rate| print(rate, units));
    let class = member.class.as_ref().filter(|_| line.powered);
    let class = class.map(|class| format!("class {class}"));
    let power = line.powered.then(|| {
        line.power
            .map_or_else(|| "? W".to_owned(), |power| print(power, units))
    });
    let under = [
        Some(rate.unwrap_or_else(|| "rate ?".to_owned())),
        class,
        power,
    ];
    let joined = |parts: Vec<Option<String>>| {
        let parts: Vec<String> = parts.into_iter().flatten().collect();
        parts.join(" · ")
    };
    Line {
        carrier,
        over: joined(over.to_vec()),
        under: joined(under.to_vec()),
    }
}
