//! Whether the heavy current of one supply lifts the reference of a data line that ends at a device on another.
//!
//! Half of what a device's run loses is lost in its return: by so much its reference is lifted. A port that is isolated
//! does not mind; else both references are joined, at one place, and the offset stays inside what the receivers bear.

use super::voltage::lowest_on_supply;
use crate::asking::{Asking, need, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::circuit::{Circuits, Source, Takes};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use quantity::{Quantity as _, Voltage};
use site::{Cable, Carries, Device, Id, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-shared-return",
    codes: BOTH,
    leaves_open: "currents of other things through earth and structure, and ports of networks, which a transformer isolates",
    concerns: "each two-wire data line whose ends are on different supplies or both describe their ports",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    let device = |name: &Id| site.device.iter().find(|device| device.id == *name);
    for cable in site
        .cable
        .iter()
        .filter(|cable| cable.carries == Some(Carries::Signal))
    {
        let (Some(from), Some(to)) = (device(&cable.from), device(&cable.to)) else {
            continue;
        };
        let apart = from.supply.is_some() && to.supply.is_some() && from.supply != to.supply;
        let both = from.data_port.is_some() && to.data_port.is_some();
        if apart || both {
            round.ask(About::new(&cable.origin, &cable.id), |asking| {
                offset(asking, &circuits, cable, [from, to])
            });
        }
    }
}

fn offset<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    cable: &'s Cable,
    ends: [&'s Device; 2],
) -> Answer {
    let mut rules = Rules::default();
    let free = |device: &&Device| {
        let port = device.data_port.as_ref();
        port.is_some_and(|port| port.isolated == Some(true))
    };
    if let Some(free) = ends.iter().find(|device| free(device)) {
        asking.say(|_| {
            format!(
                "The port of {} is isolated: no return of another circuit runs through {}.",
                free.id, cable.id
            )
        });
        return Ok(rules.outcome());
    }
    let mut lifted = Voltage::from_base(0.0);
    let mut whole = Ok(());
    for device in ends {
        if let Err(halt) = need!(asking, device.data_port?.isolated, "false") {
            whole = Err(halt);
        }
        match lift(asking, circuits, device) {
            Ok(own) => lifted += own,
            Err(halt) => whole = Err(halt),
        }
        let joined = need!(asking, device.data_port?.reference_joined, "true");
        let range = read!(asking, device.data_port?.offset_range);
        match (joined, range) {
            (Ok(joined), Ok(range)) => {
                rules.keep(
                    *joined,
                    &format!("The reference of {} hangs free of the other end of {}: run a third conductor beside the pair and join it at one place.", device.id, cable.id),
                );
                rules.compare(Comparison::at_most(
                    Labeled::new("offset between the two ends", lifted),
                    Labeled::new("offset that the receiver bears", range),
                ));
            }
            _ => whole = Err(Halt),
        }
    }
    whole?;
    asking.say(|print| {
        rules.says(|| {
            format!(
                "Returns lift the two ends of {} apart by {} at most.",
                cable.id,
                print.q(lifted)
            )
        })
    });
    Ok(rules.outcome())
}

/// By how much a device's own return lifts its reference.
fn lift<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    device: &'s Device,
) -> Result<Voltage, Halt> {
    let takes = Takes::Device(device);
    let source = circuits.feeding(asking, takes)?;
    let voltage = match circuits.sources[source] {
        Source::Supply(supply) => read!(asking, supply.voltage),
        Source::Battery(battery) => read!(asking, battery.voltage),
    };
    let lowest = lowest_on_supply(asking, circuits, takes);
    let (voltage, lowest) = (voltage?, lowest?);
    let lost = voltage - lowest;
    Ok(if lost.base() > 0.0 {
        lost / 2.0
    } else {
        Voltage::from_base(0.0)
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[enclosure]]
        id = "box"
        [[supply]]
        id = "one"
        kind = "power supply"
        enclosure = "box"
        voltage = "24 V"
        [[supply]]
        id = "two"
        kind = "power supply"
        enclosure = "box"
        voltage = "12 V"
        [[device]]
        id = "controller"
        kind = "access controller"
        supply = "one"
        enclosure = "box"
        current = "0.3 A"
        data_port = { isolated = false, offset_range = "7 V", reference_joined = true }
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "two"
        current = "1 A"
        data_port = { isolated = false, offset_range = "7 V", reference_joined = true }
        [[cable]]
        id = "w-01"
        from = "two"
        to = "reader"
        size = "16 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "120 ft"
        [[cable]]
        id = "w-02"
        carries = "signal"
        from = "controller"
        to = "reader"
    "#;

    #[test]
    fn holds_where_the_offset_is_small_and_where_a_port_is_isolated() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let isolated = SITE.replacen("isolated = false", "isolated = true", 1);
        assert_eq!(only(&CHECK, &isolated).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_where_the_return_is_long_and_where_references_hang_free() {
        let long = SITE.replace("7 V", "0.4 V");
        assert_eq!(only(&CHECK, &long).verdict, Verdict::Fails);
        let free = SITE.replacen("reference_joined = true", "reference_joined = false", 1);
        assert_eq!(only(&CHECK, &free).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_ports() {
        let bare = SITE.replace("data_port =", "note = \"none\" #");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing.len() >= 4, "{:?}", finding.missing);
    }
}
