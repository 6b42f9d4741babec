//! The highest voltage that a device ever sees, the kind of current, and its poles.
//!
//! With nothing drawing, nothing is lost on the way: what the source gives at its highest stands at the device. A source
//! that charges batteries is highest as it charges in the cold; its data sheet or its setting says how high.

use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::circuit::{Circuits, Poles, Source, Takes};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::Voltage;
use site::{CurrentKind, DeviceKind, Site, SupplyKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-overvoltage",
    codes: BOTH,
    leaves_open: "surges and switching peaks, which the questions of surges and coils ask about",
    concerns: "each device and operator that is fed",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    let fed = |takes: Takes<'s>| {
        takes
            .fed_by()
            .is_some_and(|name| circuits.source(name).is_some())
    };
    for operator in &site.operator {
        let takes = Takes::Operator(operator);
        if fed(takes) {
            round.ask(About::new(&operator.origin, &operator.id), |asking| {
                let stands = read!(asking, operator.greatest_voltage);
                highest(asking, &circuits, takes, (stands, operator.takes))
            });
        }
    }
    for device in site
        .device
        .iter()
        .filter(|device| device.kind != DeviceKind::Loop)
    {
        let takes = Takes::Device(device);
        if fed(takes) {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                let stands = read!(asking, device.greatest_voltage);
                highest(asking, &circuits, takes, (stands, device.takes))
            });
        }
    }
}

fn highest<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    takes: Takes<'s>,
    (stands, wanted): (Result<Voltage, Halt>, Option<CurrentKind>),
) -> Answer {
    let source = circuits.feeding(asking, takes)?;
    let highest = highest_of(asking, circuits, circuits.sources[source]);
    let (stands, highest) = (stands?, highest?);
    asking.rest_on(&DATA_SHEET);
    let name = circuits.sources[source].id();
    let given = kind_of(circuits.sources[source]);
    if let (Some(wanted), Some(given)) = (wanted, given)
        && wanted != given
    {
        asking.say(|_| {
            format!(
                "{name} gives {given} current and {} takes {wanted} current.",
                takes.id()
            )
        });
        return Ok(Outcome::Rule(false));
    }
    match circuits.poles(takes.id()) {
        Poles::Right => {}
        Poles::Reversed => {
            asking.say(|_| {
                format!(
                    "The poles reach {} the wrong way round: a cable on its way is written as crossed.",
                    takes.id()
                )
            });
            return Ok(Outcome::Rule(given == Some(CurrentKind::Alternating)));
        }
        Poles::Shorted(cable) => {
            asking.say(|_| {
                format!("Cable {cable} closes a ring with its poles crossed: it shorts {name}. Turn the poles at one end.")
            });
            return Ok(Outcome::Rule(false));
        }
    }
    asking.say(|print| {
        format!(
            "At its highest {name} gives {}, and {} stands {}.",
            print.q(highest),
            takes.id(),
            print.q(stands)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("highest voltage of its source", highest),
        Labeled::new("greatest voltage that it stands", stands),
    ))
}

fn kind_of(source: Source<'_>) -> Option<CurrentKind> {
    match source {
        Source::Supply(supply) => supply.gives.or(match supply.kind {
            SupplyKind::Mains => Some(CurrentKind::Alternating),
            SupplyKind::Charger | SupplyKind::Direct => Some(CurrentKind::Direct),
        }),
        Source::Battery(_) => Some(CurrentKind::Direct),
    }
}

/// The highest voltage of a source: as written, else of a supply without batteries its own with its tolerance.
fn highest_of<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    source: Source<'s>,
) -> Result<Voltage, Halt> {
    match source {
        Source::Battery(battery) => read!(asking, battery.highest_voltage),
        Source::Supply(supply) => {
            let charges = source.charges(circuits.site);
            if charges || supply.highest_voltage.is_some() {
                read!(asking, supply.highest_voltage)
            } else {
                read!(asking, supply.voltage)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[supply]]
        id = "source"
        kind = "power supply"
        voltage = "24 V ± 2 %"
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "source"
        greatest_voltage = "28 V"
        current = "1 A"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "reader"
    "#;

    #[test]
    fn holds_below_what_it_stands() {
        assert_eq!(only(&CHECK, SITE).standing, Standing::Holds);
    }

    #[test]
    fn fails_where_the_charger_goes_higher_and_where_the_current_is_of_the_wrong_kind() {
        let charging = SITE.replace(
            "voltage = \"24 V ± 2 %\"",
            "voltage = \"24 V\"\nhighest_voltage = \"29.4 V\"",
        );
        assert_eq!(only(&CHECK, &charging).verdict, Verdict::Fails);
        let other = SITE.replace("current =", "takes = \"alternating\"\ncurrent =");
        let finding = only(&CHECK, &other);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("takes alternating current"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_its_poles_reversed_and_in_a_ring_that_is_crossed() {
        let crossed = format!("{SITE}\ncrossed = true");
        let finding = only(&CHECK, &crossed);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("wrong way round"),
            "{}",
            finding.sentence
        );
        let ring = SITE.replace(
            "[[cable]]\n        id = \"w-01\"\n        from = \"source\"\n        to = \"reader\"",
            r#"
            [[joint]]
            id = "one"
            [[joint]]
            id = "two"
            [[cable]]
            id = "w-01"
            from = "source"
            to = "one"
            [[cable]]
            id = "w-02"
            from = "one"
            to = "two"
            crossed = true
            [[cable]]
            id = "w-03"
            from = "source"
            to = "two"
            [[cable]]
            id = "w-04"
            from = "two"
            to = "reader"
        "#,
        );
        let finding = only(&CHECK, &ring);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("closes a ring"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_the_highest_voltage_of_a_charger() {
        let charged = format!("{SITE}\n[[battery]]\nid = \"battery\"\nsupply = \"source\"");
        let finding = only(&CHECK, &charged);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(
            finding.missing[0].path.ends_with("highest_voltage"),
            "{:?}",
            finding.missing
        );
    }
}
