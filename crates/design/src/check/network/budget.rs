//! Whether a switch or an injector has enough power for all its ports at their worst, and whether both ends of each cable
//! speak the same kind of power.
//!
//! What each port has to give is the power that the device takes in its worst hour and what the warm cable loses; an
//! extender passes on what hangs on it. A switch that reserves by class may let a port go dark before that: where the classes
//! come to more than the budget, whatever opens the gate has to be dropped last. What feeds the switch has to be counted
//! with all of it, on the battery too.

use super::poe::{CLASSES, class};
use super::port_power::{of_another_kind, takes};
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::network::{drawn, is_gear, names, port_of, run};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::subject::About;
use formula::signal::{PoePower, poe_class};
use quantity::{Power, Quantity as _};
use site::{CommandKind, Device, DroppedWhen, PortPower, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-poe-budget",
    codes: BOTH,
    leaves_open: "how the budget falls in air warmer than its data sheet's, and what a switch takes while it starts",
    concerns: "each switch, injector or extender that feeds devices over their data cables",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gear in site.device.iter().filter(|device| is_gear(device)) {
        if fed(site, gear).next().is_some() {
            round.ask(About::new(&gear.origin, &gear.id), |asking| {
                budget(asking, site, gear)
            });
        }
    }
}

/// The devices that a switch or an injector feeds over their data cables.
pub(super) fn fed<'s>(site: &'s Site, gear: &'s Device) -> impl Iterator<Item = &'s Device> {
    let is = |device: &&Device| port_of(site, device).is_some_and(|port| std::ptr::eq(port, gear));
    site.device.iter().filter(is)
}

/// What all ports come to.
struct Load {
    given: Power,
    by_class: Power,
    count: usize,
}

fn budget<'s>(asking: &mut Asking<'s>, site: &'s Site, gear: &'s Device) -> Answer {
    asking.rest_on(&CLASSES);
    asking.rest_on(&DATA_SHEET);
    let strangers = of_another_kind(asking, site, gear);
    let budget = read!(asking, gear.power_budget);
    let load = load(asking, site, gear);
    let strangers = strangers?;
    if let Some((device, gives)) = strangers.first() {
        asking.say(|_| {
            format!(
                "{} gives {gives} power to {}, which does not expect it: it may burn, or stay dark. Feed it from a port of its own kind, or through a splitter for it.",
                gear.id, device.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let (budget, load) = (budget?, load?);
    let short = load.by_class > budget;
    let first = if short {
        dropped_first(asking, site, gear)?
    } else {
        Vec::new()
    };
    if !first.is_empty() {
        asking.say(|_| {
            format!(
                "By class the devices on {} come to more than its budget, and {}, which opens the gate, is dropped first: set that port to be dropped last.",
                gear.id,
                names(first)
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let intake = intake(asking, gear, load.given);
    asking.say(|print| {
        let classes = if short {
            format!(
                "; by class they come to {}, more than it has: a switch that reserves by class lets a port go dark, and what opens the gate goes last",
                print.q(load.by_class)
            )
        } else {
            format!("; by class they come to {}", print.q(load.by_class))
        };
        let fed = intake.map_or_else(String::new, |intake| {
            format!(
                "; with its own heat it takes {}, and its feed is counted with {}",
                print.value(&intake.demand.value),
                print.value(&intake.capacity.value)
            )
        });
        format!(
            "{} on {}, with all at their worst {} to give, loss in warm copper counted, of {}{classes}{fed}.",
            counted(load.count, "powered device"),
            gear.id,
            print.q(load.given),
            print.q(budget)
        )
    });
    let all = Comparison::at_most(
        Labeled::new("power that all ports have to give", load.given),
        Labeled::new("power budget", budget),
    );
    Outcome::worst([Some(all), intake].into_iter().flatten()).ok_or(Halt)
}

/// What the switch takes from what feeds it, against what it is counted with there.
fn intake<'s>(asking: &mut Asking<'s>, gear: &'s Device, given: Power) -> Option<Comparison> {
    let voltage = asking.read_if_there(&gear.origin, "voltage", gear.voltage.as_ref())?;
    let current = asking.read_if_there(&gear.origin, "current", gear.current.as_ref())?;
    let heat = asking.read_if_there(&gear.origin, "heat", gear.heat.as_ref())?;
    Some(Comparison::at_most(
        Labeled::new("power of all ports and its own heat", given + heat),
        Labeled::new(
            "power that its feed is counted with (voltage times current)",
            voltage * current,
        ),
    ))
}

fn load<'s>(asking: &mut Asking<'s>, site: &'s Site, gear: &'s Device) -> Result<Load, Halt> {
    let mut load = Ok(Load {
        given: Power::from_base(0.0),
        by_class: Power::from_base(0.0),
        count: 0,
    });
    for device in fed(site, gear) {
        let given = given(asking, site, gear, device);
        let reserved = reserved(asking, device, &given);
        load = load.and_then(|load| {
            Ok(Load {
                given: load.given + given?,
                by_class: load.by_class + reserved?,
                count: load.count + 1,
            })
        });
    }
    load
}

/// What a port has to give for a device at its worst.
fn given<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gear: &'s Device,
    device: &'s Device,
) -> Result<Power, Halt> {
    let power = drawn(asking, site, device);
    let run = run(asking, site, gear, device);
    let arrival = asking.work(&PoePower {
        power: power?,
        ..run?
    })?;
    Ok(arrival.source_power)
}

/// What a switch that reserves by class holds back for a device; what it takes, where it has no class.
fn reserved<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    given: &Result<Power, Halt>,
) -> Result<Power, Halt> {
    if takes(device) == Some(PortPower::Passive) {
        return given.as_ref().copied().map_err(|_| Halt);
    }
    match poe_class(class(asking, device)?) {
        Ok(class) => Ok(class.injector_power),
        Err(_) => asking.refuse("this class of power over Ethernet has no figures"),
    }
}

/// What opens the gate and is dropped before others, where classes come to more than the budget.
fn dropped_first<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gear: &'s Device,
) -> Result<Vec<&'s Device>, Halt> {
    let mut whole = Ok(());
    let opens = |device: &&Device| {
        let mut does = device.does.iter();
        does.any(|command| command.what == CommandKind::Open)
    };
    let mut first = Vec::new();
    for device in fed(site, gear).filter(opens) {
        match pick!(asking, device.network?.dropped) {
            Ok(DroppedWhen::Last) => {}
            Ok(DroppedWhen::First) => first.push(device),
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    Ok(first)
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
        power_budget = "60 W"
        voltage = "24 V"
        current = "1.8 A"
        heat = "8 W"
        [[device]]
        id = "camera"
        kind = "camera"
        supply = "switch"
        poe_class = "4"
        power = "21 W"
        [[device]]
        id = "station"
        kind = "intercom"
        supply = "switch"
        poe_class = "3"
        power = "9 W"
        does = [{ what = "open", contact = "message" }]
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
        [[cable]]
        id = "w-02"
        carries = "data"
        from = "switch"
        to = "station"
        size = "23 AWG"
        metal = "copper"
        stranding = "solid"
        power_pairs = 2
        hottest = "40 °C"
        length = "90 ft"
    "#;

    #[test]
    fn holds_within_the_budget() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("2 powered devices"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_past_the_budget_the_feed_and_on_the_wrong_kind() {
        let small = only(
            &CHECK,
            &SITE.replace("60 W", "30 W").replace(
                "power = \"9 W\"",
                "power = \"9 W\"\n        network = { dropped = \"last\" }",
            ),
        );
        assert_eq!(small.verdict, Verdict::Fails, "{}", small.sentence);
        let starved = only(&CHECK, &SITE.replace("1.8 A", "0.9 A"));
        assert_eq!(starved.verdict, Verdict::Fails, "{}", starved.sentence);
        let passive = SITE.replace(
            "heat = \"8 W\"",
            "heat = \"8 W\"\n        ethernet = { port_power = \"passive\" }",
        );
        let passive = only(&CHECK, &passive);
        assert_eq!(passive.verdict, Verdict::Fails, "{}", passive.sentence);
        assert!(
            passive.sentence.contains("does not expect it"),
            "{}",
            passive.sentence
        );
    }

    #[test]
    fn an_extender_takes_its_own_and_passes_the_rest_on() {
        let through = SITE
            .replacen("supply = \"switch\"", "supply = \"extender\"", 1)
            .replacen("from = \"switch\"", "from = \"extender\"", 1)
            .replace("1.8 A", "2 A")
            + r#"
        [[device]]
        id = "extender"
        kind = "extender"
        supply = "switch"
        poe_class = "4"
        power = "3 W"
        port_voltage = "44 V"
        power_budget = "26 W"
        [[cable]]
        id = "w-03"
        carries = "data"
        from = "switch"
        to = "extender"
        size = "23 AWG"
        metal = "copper"
        stranding = "solid"
        power_pairs = 2
        hottest = "40 °C"
        length = "270 ft"
    "#;
        let findings = crate::check::testing::all(&CHECK, &through);
        assert_eq!(findings.len(), 2);
        assert!(
            findings
                .iter()
                .all(|finding| finding.verdict == Verdict::Holds),
            "{findings:#?}"
        );
    }

    #[test]
    fn unknown_without_the_budget_or_the_order_of_dropping() {
        let bare = only(&CHECK, &SITE.replace("power_budget = \"60 W\"", ""));
        assert_eq!(bare.verdict, Verdict::UnknownUntil);
        let unranked = only(&CHECK, &SITE.replace("60 W", "40 W"));
        assert_eq!(
            unranked.verdict,
            Verdict::UnknownUntil,
            "{}",
            unranked.sentence
        );
    }
}
