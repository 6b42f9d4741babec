//! Controls: what stops, opens and closes a gate, from where, and what the controller makes of it.

pub(crate) mod auto_close;
pub(crate) mod automatic;
pub(crate) mod envelope;
pub(crate) mod guarded;
pub(crate) mod in_sight;
pub(crate) mod interlock;
pub(crate) mod obstacles;
pub(crate) mod out_of_reach_of_leaf;
pub(crate) mod power_return;
pub(crate) mod priority;
pub(crate) mod remote_out_of_sight;
pub(crate) mod view;
pub(crate) mod wire_cut;

use crate::asking::{Asking, Wants};
use crate::check::drive::operator_of;
pub(crate) use crate::check::protect::means::of_gate as devices_of;
use crate::outcome::Halt;
use site::{Behavior, Command, CommandKind, Device, DeviceKind, Gate, Id, Site};

/// How what a controller does is written.
const BEHAVIOR: &str = "[operator.behavior]\npower_return = \"stands still\"\norder = [\"stop\", \"protection\", \"fire open\", \"open\", \"close\"]";

/// How what a control does is written.
const DOES: &str = "[{ what = \"open\", contact = \"normally open\" }, { what = \"stop\", contact = \"normally closed\" }]";

/// A thing that names its gate belongs to it; one that names none belongs to the only gate of the site.
pub(crate) fn belongs(site: &Site, gate: &Gate, named: Option<&Id>) -> bool {
    named.map_or(site.gate.len() == 1, |name| *name == gate.id)
}

/// The controls of a gate that somebody works with a hand, a card or a voice where they hang.
pub(crate) fn fixed_controls<'s>(
    site: &'s Site,
    gate: &'s Gate,
) -> impl Iterator<Item = &'s Device> {
    use DeviceKind::{Control, Intercom, Keypad, Reader};
    devices_of(site, gate)
        .filter(|device| matches!(device.kind, Control | Keypad | Reader | Intercom))
}

/// What a control makes the gate do; at least one thing, or that it does nothing.
fn does<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<&'s [Command], Halt> {
    if device.does.is_empty() {
        return asking.lack(&device.origin, "does", Wants::Written(DOES));
    }
    Ok(&device.does)
}

/// A control does it.
fn commands(device: &Device, what: CommandKind) -> bool {
    device.does.iter().any(|command| command.what == what)
}

/// What the controller of a gate does: by the first of its operators that says so.
fn behavior_of<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<&'s Behavior, Halt> {
    let written = site
        .operators_of(gate)
        .find_map(|operator| operator.behavior.as_ref());
    if let Some(behavior) = written {
        return Ok(behavior);
    }
    let operator = operator_of(asking, site, gate)?;
    asking.lack(&operator.origin, "behavior", Wants::Table(BEHAVIOR))
}
