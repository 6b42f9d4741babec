//! Whether each device finds a port of its speed and its power, with one left for what is asked for next year, and whether
//! the next line can be pulled without digging.

use crate::asking::{Asking, pick};
use crate::check::{BOTH, Check, Round};
use crate::network::{
    cable_between, is_fiber, is_gear, is_of_owner, names, plugged, port_of, port_rate, upward,
};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::{and, counted};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Cable, Device, DeviceKind, Id, Site, Spare};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-ports",
    codes: BOTH,
    leaves_open: "ports of the owner's own switches, and what the owner will really ask for",
    concerns: "each switch, injector, extender or router of the gate, and each device that finds no port",
    ask,
};

static ONE_SPARE: Source = Source {
    work: "one port is left for what is asked for next year, and a way for its line",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "digging again costs more than the cable",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let gear = |device: &&Device| is_gear(device) && !is_of_owner(site, device);
    for gear in site.device.iter().filter(gear) {
        let used = plugged(site, gear).next().is_some() || upward(site, gear).is_some();
        if !used {
            continue;
        }
        round.ask(About::new(&gear.origin, &gear.id), |asking| {
            served(asking, site, gear)
        });
        for device in left_over(site, gear) {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                without(asking, gear, device)
            });
        }
    }
}

/// What is plugged into a switch, by copper and by fiber; its own way up counts as one.
struct Used<'s> {
    copper: Vec<&'s Device>,
    fiber: Vec<&'s Device>,
}

fn used<'s>(site: &'s Site, gear: &'s Device) -> Used<'s> {
    let all = upward(site, gear).into_iter().chain(plugged(site, gear));
    let by_fiber = |device: &&Device| cable_between(site, gear, device).is_some_and(is_fiber);
    let (fiber, copper) = all.partition(by_fiber);
    Used { copper, fiber }
}

/// The devices for which a switch has no port left: those that the site names last.
fn left_over<'s>(site: &'s Site, gear: &'s Device) -> Vec<&'s Device> {
    let mut used = used(site, gear);
    let Some(ports) = gear.ports else {
        return Vec::new();
    };
    let ports = usize::try_from(ports).unwrap_or(usize::MAX);
    used.copper.split_off(ports.min(used.copper.len()))
}

fn without<'s>(asking: &mut Asking<'s>, gear: &'s Device, device: &'s Device) -> Answer {
    asking.rest_on(&ONE_SPARE);
    let ports = pick!(asking, gear.ports)?;
    asking.say(|_| {
        format!(
            "{} finds no port: the {} of {} are taken. A switch with more ports, or another one at its place, would have one.",
            device.id,
            counted(usize::try_from(ports).unwrap_or(usize::MAX), "port"),
            gear.id
        )
    });
    Ok(Outcome::Rule(false))
}

fn served<'s>(asking: &mut Asking<'s>, site: &'s Site, gear: &'s Device) -> Answer {
    asking.rest_on(&ONE_SPARE);
    let used = used(site, gear);
    let mut found = Vec::new();
    let counts = counts(asking, site, gear, &used, &mut found);
    let speeds = speeds(asking, site, gear, &mut found);
    let ways = ways(asking, site, gear);
    let clash = clash(site, gear);
    if let Some(what) = clash {
        asking.say(|_| what);
        return Ok(Outcome::Rule(false));
    }
    let dug = ways?;
    if !dug.is_empty() {
        asking.say(|_| {
            format!(
                "Nothing lies ready beside {}: the next line there, or the one that takes the place of a broken one, is dug for. Pull a second cable or leave a pull string while the trench is open.",
                and(&dug)
            )
        });
        return Ok(Outcome::Rule(false));
    }
    counts?;
    speeds?;
    asking.say(|_| {
        let fiber = match used.fiber.len() {
            0 => String::new(),
            _ => format!(", by fiber {}", names(used.fiber.iter().copied())),
        };
        format!(
            "Plugged into {}: {}{fiber}; a port of their speed and power for each, and one for the next.",
            gear.id,
            names(used.copper.iter().copied())
        )
    });
    Outcome::worst(found).ok_or(Halt)
}

/// Ports for copper, for fiber and with power.
fn counts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gear: &'s Device,
    used: &Used<'s>,
    found: &mut Vec<Comparison>,
) -> Result<(), Halt> {
    let spare = u32::from(gear.kind == DeviceKind::NetworkSwitch);
    let ports = pick!(asking, gear.ports);
    let fiber = if used.fiber.is_empty() {
        Ok(None)
    } else {
        pick!(asking, gear.ethernet?.fiber_ports).map(Some)
    };
    let powered = plugged(site, gear)
        .filter(|device| port_of(site, device).is_some_and(|port| std::ptr::eq(port, gear)))
        .count();
    let with_power = if powered == 0 {
        Ok(None)
    } else {
        pick!(asking, gear.ethernet?.powered_ports).map(Some)
    };
    found.push(Comparison::at_most(
        Labeled::new(
            "ports needed, one for the next year among them",
            whole(used.copper.len()).saturating_add(spare),
        ),
        Labeled::new("ports for copper", ports?),
    ));
    if let Some(fiber) = fiber? {
        found.push(Comparison::at_most(
            Labeled::new("ports for fiber needed", whole(used.fiber.len())),
            Labeled::new("ports for fiber", fiber),
        ));
    }
    if let Some(with_power) = with_power? {
        found.push(Comparison::at_most(
            Labeled::new("ports with power needed", whole(powered)),
            Labeled::new("ports with power", with_power),
        ));
    }
    Ok(())
}

fn whole(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// The port of each device against the port that it is plugged into.
fn speeds<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gear: &'s Device,
    found: &mut Vec<Comparison>,
) -> Result<(), Halt> {
    let mut whole = Ok(());
    for device in plugged(site, gear).filter(|device| !is_gear(device)) {
        let fiber = cable_between(site, gear, device).is_some_and(is_fiber);
        let wanted = port_rate(asking, device, fiber);
        let given = port_rate(asking, gear, fiber);
        match (wanted, given) {
            (Ok(wanted), Ok(given)) if wanted > given => found.push(Comparison::at_most(
                Labeled::new("rate of a device's port", wanted),
                Labeled::new("rate of the port that it is plugged into", given),
            )),
            (Ok(_), Ok(_)) => {}
            _ => whole = Err(Halt),
        }
    }
    whole
}

/// The buried cables of a switch beside which nothing lies for the next line.
fn ways<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gear: &'s Device,
) -> Result<Vec<String>, Halt> {
    let mut dug = Vec::new();
    let mut whole = Ok(());
    for device in upward(site, gear).into_iter().chain(plugged(site, gear)) {
        let Some(cable) = cable_between(site, gear, device).filter(|it| buried(site, it)) else {
            continue;
        };
        match pick!(asking, cable.spare) {
            Ok(Spare::Nothing) => dug.push(cable.id.to_string()),
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    if dug.is_empty() {
        whole?;
    }
    Ok(dug)
}

/// A cable runs through the ground.
fn buried(site: &Site, cable: &Cable) -> bool {
    let in_ground = |name: &Id| {
        let mut conduits = site.conduit.iter();
        conduits.any(|it| it.id == *name && it.burial_depth.is_some())
    };
    cable.route.iter().any(in_ground)
}

/// Two devices on one port, or a port that is not there.
fn clash<'s>(site: &'s Site, gear: &'s Device) -> Option<String> {
    let mut taken: Vec<(u32, &'s Device)> = Vec::new();
    let ports = gear.ports?;
    let fiber = gear.ethernet.as_ref().and_then(|it| it.fiber_ports);
    let last = ports.saturating_add(fiber.unwrap_or(0));
    for device in plugged(site, gear) {
        let Some(port) = device.network.as_ref().and_then(|network| network.port) else {
            continue;
        };
        if port > last {
            return Some(format!(
                "{} is on port {port} of {}, which has {last}.",
                device.id, gear.id
            ));
        }
        if let Some((_, other)) = taken.iter().find(|(other, _)| *other == port) {
            let free = (1..=last).find(|free| !taken.iter().any(|(taken, _)| taken == free));
            let mend = free.map_or_else(String::new, |free| {
                format!("; port {free} is free: write it at {}", device.id)
            });
            return Some(format!(
                "{} and {} are both on port {port} of {}{mend}.",
                other.id, device.id, gear.id
            ));
        }
        taken.push((port, device));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::check::testing::{all, only};
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "switch"
        kind = "network switch"
        ports = 3
        ethernet = { speed = "1 Gbit/s", fiber_ports = 1, fiber_speed = "1 Gbit/s", powered_ports = 3 }
        [[device]]
        id = "camera-a"
        kind = "camera"
        supply = "switch"
        ethernet = { speed = "100 Mbit/s" }
        network = { port = 1 }
        [[device]]
        id = "camera-b"
        kind = "camera"
        supply = "switch"
        ethernet = { speed = "100 Mbit/s" }
        network = { port = 2 }
        [[conduit]]
        id = "c-01"
        burial_depth = "18 in"
        [[cable]]
        id = "w-01"
        carries = "data"
        from = "switch"
        to = "camera-b"
        route = ["c-01"]
        spare = "room and pull string"
    "#;

    #[test]
    fn holds_with_a_port_for_each_and_one_more() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_at_the_camera_that_finds_no_port() {
        let findings = all(
            &CHECK,
            &SITE
                .replace("ports = 3\n", "ports = 1\n")
                .replace("port = 2", "port = 1"),
        );
        let camera = findings.iter().find(|one| one.subject.name == "camera-b");
        let camera = camera.map(|one| (one.verdict, one.sentence.as_str()));
        assert!(
            matches!(camera, Some((Verdict::Fails, said)) if said.contains("finds no port")),
            "{findings:#?}"
        );
    }

    #[test]
    fn fails_with_two_on_one_port_and_with_a_trench_to_dig_again() {
        let both = only(&CHECK, &SITE.replace("port = 2", "port = 1"));
        assert_eq!(both.verdict, Verdict::Fails);
        assert!(
            both.sentence.contains("both on port 1") && both.sentence.contains("port 2 is free"),
            "{}",
            both.sentence
        );
        let dug = only(&CHECK, &SITE.replace("room and pull string", "nothing"));
        assert_eq!(dug.verdict, Verdict::Fails, "{}", dug.sentence);
        let slow = only(
            &CHECK,
            &SITE.replace(
                "speed = \"1 Gbit/s\", fiber_ports",
                "speed = \"10 Mbit/s\", fiber_ports",
            ),
        );
        assert_eq!(slow.verdict, Verdict::Fails, "{}", slow.sentence);
    }

    #[test]
    fn unknown_without_its_ports_or_what_lies_beside() {
        for gone in ["ports = 3\n", "spare = \"room and pull string\"\n"] {
            let finding = only(&CHECK, &SITE.replace(gone, "\n"));
            assert_eq!(finding.verdict, Verdict::UnknownUntil, "{gone}");
        }
    }
}
