//! Whether somebody who unscrews a station outside holds the wires that open the gate, or a live network socket.
//!
//! A dry contact outside is its two wires: joined, they open. Only a loop that takes a short for a short, and no contact,
//! keeps a jumper from opening; its resistors then have to sit at the contact.

use super::is_reader;
use crate::asking::{Asking, Wants, pick};
use crate::check::protect::means::told;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Quantity as _;
use site::{
    CommandKind, ContactKind, Device, DeviceKind, OpeningContact, ResistorPlace, Site, Speaks,
    Station, Tamper,
};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bus-opening-wires-inside",
    codes: BOTH,
    leaves_open: "somebody who brings a resistor of the right size, wires that run outside the fence in a conduit, and the strength of housings",
    concerns: "each station outside the gate line that opens",
    ask,
};

static INSIDE: Source = Source {
    work: "the contact that opens and its wires belong on the protected side",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "two wires joined are a closed contact",
};

/// How a station is written.
const STATION: &str = "station = { opening_contact = \"on the protected side\", port_locked = true, tamper = \"reported and blocks\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in site
        .device
        .iter()
        .filter(|device| is_outside(device) && opens(device))
    {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            held(asking, site, device)
        });
    }
}

/// A station toward the road, before the gate line.
pub(crate) fn is_outside(device: &Device) -> bool {
    use DeviceKind::{Control, Intercom};
    let before = device
        .at
        .as_ref()
        .is_some_and(|at| at.y.nominal().base() < 0.0);
    before && (is_reader(device) || matches!(device.kind, Control | Intercom))
}

/// It opens the gate, for vehicles or for the fire service.
pub(crate) fn opens(device: &Device) -> bool {
    let kinds = [CommandKind::Open, CommandKind::FireOpen];
    device
        .does
        .iter()
        .any(|command| kinds.contains(&command.what))
}

fn held<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&INSIDE);
    let mut rules = Rules::default();
    let by_contact = device
        .does
        .iter()
        .any(|command| command.contact != Some(ContactKind::Message));
    if by_contact {
        contact(asking, device, &mut rules)?;
    } else {
        let Some(station) = &device.station else {
            return asking.lack(&device.origin, "station", Wants::Table(STATION));
        };
        message(asking, site, device, station, &mut rules)?;
    }
    asking.say(|_| {
        rules.says(|| {
            if by_contact {
                format!("Unscrewed, {} gives two wires; joined, they read as a short and open nothing.", device.id)
            } else {
                format!(
                    "Unscrewed, {} gives nothing that opens: its contact is on the protected side, and taking it off is noticed.",
                    device.id
                )
            }
        })
    });
    Ok(rules.outcome())
}

/// A dry contact: joined wires must read as a short.
fn contact<'s>(asking: &mut Asking<'s>, device: &'s Device, rules: &mut Rules) -> Result<(), Halt> {
    let supervised: Vec<_> = device
        .does
        .iter()
        .filter(|command| matches!(command.what, CommandKind::Open | CommandKind::FireOpen))
        .map(|command| told(asking, &command.origin, "supervised", command.supervised))
        .collect();
    let all: Vec<bool> = supervised.into_iter().collect::<Result<_, _>>()?;
    let watched = all.iter().all(|supervised| *supervised);
    rules.keep(watched, &format!(
        "Whoever unscrews {} joins two wires and the gate opens: put end resistors at its contact and let the input take a short for a fault.",
        device.id
    ));
    if watched {
        let place = pick!(asking, device.supervised_loop?.resistors)?;
        rules.keep(place == ResistorPlace::Device, &format!(
            "The resistors of {} sit in the cabinet: its wires joined outside still read as its contact. Move them to the contact.",
            device.id
        ));
    }
    Ok(())
}

/// A message: where the contact sits, what the socket serves, what taking it off does.
fn message<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    station: &'s Station,
    rules: &mut Rules,
) -> Result<(), Halt> {
    let contact = pick!(asking, station.opening_contact);
    let tamper = pick!(asking, station.tamper);
    let locked = if on_network(site, device) {
        told(asking, &station.origin, "port_locked", station.port_locked)
    } else {
        Ok(true)
    };
    let (contact, tamper, locked) = (contact?, tamper?, locked?);
    rules.keep(contact == OpeningContact::Protected, &format!(
        "The contact that opens sits in {}: whoever unscrews it holds the two wires. Move the contact to the protected side.",
        device.id
    ));
    rules.keep(locked, &format!(
        "The socket behind {} is live for any computer: lock the port of the switch to this device.",
        device.id
    ));
    rules.keep(
        tamper != Tamper::Nothing,
        &format!(
            "Nobody notices when {} is taken off: wire its tamper contact.",
            device.id
        ),
    );
    Ok(())
}

/// A network socket lies behind it.
fn on_network(site: &Site, device: &Device) -> bool {
    let by_network =
        device.data_line.as_ref().and_then(|line| line.speaks) == Some(Speaks::Network);
    let switches = [DeviceKind::NetworkSwitch, DeviceKind::Injector];
    let fed = site
        .device
        .iter()
        .any(|other| Some(&other.id) == device.supply.as_ref() && switches.contains(&other.kind));
    by_network || fed
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "switch"
        kind = "network switch"
        [[device]]
        id = "intercom"
        kind = "intercom"
        supply = "switch"
        at = ["-3 ft", "-20 ft", "4 ft"]
        does = [{ what = "open", contact = "message" }]
        station = { opening_contact = "on the protected side", port_locked = true, tamper = "reported" }
    "#;
    const KEY: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "key"
        kind = "control"
        at = ["-3 ft", "-20 ft", "4 ft"]
        does = [{ what = "fire open", contact = "normally open", supervised = true }]
        supervised_loop = { resistors = "at the device" }
    "#;

    #[test]
    fn holds_with_nothing_behind_it() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert_eq!(only(&CHECK, KEY).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_with_the_contact_in_it_or_a_live_socket() {
        for (from, to) in [
            ("on the protected side", "in the station"),
            ("port_locked = true", "port_locked = false"),
            ("\"reported\"", "\"nothing\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
        let bare = KEY.replace("supervised = true", "supervised = false");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_what_lies_behind() {
        let finding = only(&CHECK, &SITE.replace(", tamper = \"reported\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let key = KEY.replace("supervised_loop = { resistors = \"at the device\" }", "");
        assert_eq!(only(&CHECK, &key).verdict, Verdict::UnknownUntil);
    }
}
