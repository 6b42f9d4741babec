//! Whether the watts that a camera or a station takes in its worst hour reach it over the data cable.
//!
//! Three things are held against each other: what the device takes against what its class lets it take; the class that it
//! asks for against the one that the port gives; and, with the cable as hot as it gets, what the port has to give
//! against what its class has. A device that takes more than the cable can carry at all is outside of the calculation.

use crate::asking::{Asking, pick};
use crate::check::{BOTH, Check, Round};
use crate::network::{drawn, port_of, run};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::{PoePower, poe_class};
use formula::{Evidence, Source};
use quantity::Word as _;
use site::{Device, PoeClass, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-poe-at-device",
    codes: BOTH,
    leaves_open: "connectors on the way, patch cords that the site does not write, and pairs of unequal resistance",
    concerns: "each device that takes its power over a data cable",
    ask,
};

pub(super) static CLASSES: Source = Source {
    work: "IEEE 802.3",
    clause: "clauses 33 and 145, classes 1 to 8",
    evidence: Evidence::Seen,
    seen: "public notes with the class table, recomputed from power, voltage and loop resistance",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in &site.device {
        if let Some(port) = port_of(site, device) {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                arrival(asking, site, port, device)
            });
        }
    }
}

fn arrival<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    port: &'s Device,
    device: &'s Device,
) -> Answer {
    let power = drawn(asking, site, device);
    let asked = class(asking, device);
    let given = class(asking, port);
    let run = run(asking, site, port, device);
    let (power, asked, given, run) = (power?, asked?, given?, run?);
    asking.rest_on(&CLASSES);
    let (Ok(asks), Ok(gives)) = (poe_class(asked), poe_class(given)) else {
        return asking.refuse("this class of power over Ethernet has no figures");
    };
    let arrival = asking.work(&PoePower { power, ..run })?;
    asking.say(|print| {
        format!(
            "{} takes {} in its worst hour and asks for class {asked}, which is {}; port {} gives class {given}, {}, and has to give {} for it, {} of that lost on the way.",
            device.id,
            print.q(power),
            print.q(asks.device_power),
            port.id,
            print.q(gives.injector_power),
            print.q(arrival.source_power),
            print.q(arrival.loss)
        )
    });
    Outcome::worst([
        Comparison::at_most(
            Labeled::new("power that the device takes", power),
            Labeled::new("power that its class allows", asks.device_power),
        ),
        Comparison::at_most(
            Labeled::new("power that the device takes", power),
            Labeled::new(
                "power that the port's class lets through",
                gives.device_power,
            ),
        ),
        Comparison::at_most(
            Labeled::new("power that the port has to give", arrival.source_power),
            Labeled::new("power that the port's class has", gives.injector_power),
        ),
    ])
    .ok_or(Halt)
}

pub(super) fn class<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<u32, Halt> {
    let class: PoeClass = pick!(asking, device.poe_class)?;
    class
        .word()
        .parse()
        .or_else(|_| asking.refuse("this class of power over Ethernet has no figures"))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "switch"
        kind = "network switch"
        poe_class = "4"
        port_voltage = "50 V"
        [[device]]
        id = "camera"
        kind = "camera"
        supply = "switch"
        poe_class = "4"
        power = "21 W"
        [[cable]]
        id = "w-01"
        carries = "data"
        from = "switch"
        to = "camera"
        size = "23 AWG"
        metal = "copper"
        stranding = "solid"
        power_pairs = 2
        hottest = "40 °C"
        length = "270 ft ± 5 ft"
    "#;

    #[test]
    fn holds_within_its_class() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_past_its_class_and_past_the_ports() {
        let hungry = only(&CHECK, &SITE.replace("21 W", "36 W"));
        assert_eq!(hungry.verdict, Verdict::Fails, "{}", hungry.sentence);
        let modest = SITE.replacen(
            "poe_class = \"4\"\n        port",
            "poe_class = \"3\"\n        port",
            1,
        );
        assert_eq!(only(&CHECK, &modest).verdict, Verdict::Fails);
    }

    #[test]
    fn a_cable_that_cannot_carry_it_is_outside() {
        let far = SITE.replace("270 ft", "3000 ft");
        assert_eq!(only(&CHECK, &far).verdict, Verdict::OutsideThisTool);
    }

    #[test]
    fn unknown_without_the_worst_hours_power() {
        let finding = only(&CHECK, &SITE.replace("power = \"21 W\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
    }
}
