//! What voltage reaches each device and operator while it draws its most, and whether it still works at that.
//!
//! The current is the greatest short one where it is known: a lock's pull, a reader's burst, an operator's start. The
//! conductors are as hot as they get, and have the larger of their nominal resistance and that of the printed tables. A
//! device fed by several cables is judged by the worst of them, each taken to carry all of its current.

use super::conductor::resistance;
use super::feed::{Fed, cables_to, source_named, source_of};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::power::VoltageDrop;
use quantity::{Current, Voltage};
use site::{Cable, Device, DeviceKind, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-voltage-at-device",
    codes: BOTH,
    leaves_open: "several loads on one pair of conductors, the battery at its end beyond the supply's own tolerance, and joints",
    concerns: "each device and operator that is fed",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for operator in &site.operator {
        round.ask(About::new(&operator.origin, &operator.id), |asking| {
            at_operator(asking, site, operator)
        });
    }
    for device in site.device.iter().filter(|device| is_fed(site, device)) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            at_device(asking, site, device)
        });
    }
}

/// It draws a current from a supply or a battery. A loop does not: its detector does, in its enclosure.
fn is_fed(site: &Site, device: &Device) -> bool {
    let by_a_source = match &device.supply {
        Some(name) => source_named(site, name).is_some(),
        None => device.current.is_some(),
    };
    by_a_source && device.kind != DeviceKind::Loop
}

fn at_operator<'s>(asking: &mut Asking<'s>, site: &'s Site, operator: &'s Operator) -> Answer {
    let fed = Fed {
        origin: &operator.origin,
        id: &operator.id,
        supply: operator.supply.as_ref(),
        enclosure: None,
    };
    let current = read!(asking, operator.starting_current);
    let least = read!(asking, operator.least_voltage);
    compared(asking, site, fed, (current, least), "as it starts")
}

fn at_device<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let fed = Fed {
        origin: &device.origin,
        id: &device.id,
        supply: device.supply.as_ref(),
        enclosure: device.enclosure.as_ref(),
    };
    let peak = asking.read_if_there(&device.origin, "peak_current", device.peak_current.as_ref());
    let current = match peak {
        Some(peak) => Ok(peak),
        None => read!(asking, device.current),
    };
    let least = read!(asking, device.least_voltage);
    compared(
        asking,
        site,
        fed,
        (current, least),
        "at its greatest draw, conductors at their hottest",
    )
}

fn compared<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    fed: Fed<'s>,
    (current, least): (Result<Current, Halt>, Result<Voltage, Halt>),
    when: &'static str,
) -> Answer {
    let source = source_of(asking, site, fed);
    let (voltage, cables) = match source {
        Ok(source) => (source.voltage(asking), cables_to(asking, site, fed, source)),
        Err(halt) => (Err(halt), Err(halt)),
    };
    let runs = runs(asking, cables);
    let (current, least, voltage, runs) = (current?, least?, voltage?, runs?);
    let mut arriving = voltage;
    for run in runs {
        let lost = asking.work(&VoltageDrop {
            source: voltage,
            current,
            ..run
        })?;
        arriving = if lost.far_end < arriving {
            lost.far_end
        } else {
            arriving
        };
    }
    asking.say(|print| {
        format!(
            "At {}, {} {when}; it needs {}.",
            fed.id,
            print.q(arriving),
            print.q(least)
        )
    });
    let comparison = Comparison::at_most(
        Labeled::new("least voltage at which it works", least),
        Labeled::new("voltage at its terminals", arriving),
    );
    Ok(Outcome::Compared(comparison))
}

/// The runs to a load, without their source and current.
fn runs<'s>(
    asking: &mut Asking<'s>,
    cables: Result<Vec<&'s Cable>, Halt>,
) -> Result<Vec<VoltageDrop>, Halt> {
    let mut runs = Vec::new();
    let mut whole = Ok(());
    for cable in cables? {
        match run(asking, cable) {
            Ok(run) => runs.push(run),
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| runs)
}

fn run<'s>(asking: &mut Asking<'s>, cable: &'s Cable) -> Result<VoltageDrop, Halt> {
    use quantity::Quantity as _;
    let length = read!(asking, cable.length);
    let resistance = resistance(asking, cable);
    let side_by_side = cable.cores_per_pole.unwrap_or(1).max(1);
    Ok(VoltageDrop {
        source: Voltage::from_base(0.0),
        current: Current::from_base(0.0),
        length: length?,
        resistance: resistance? / f64::from(side_by_side),
    })
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
        voltage = "12 V ± 1 %"
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "source"
        least_voltage = "10.2 V"
        current = "500 mA"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "reader"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "120 ft ± 5 ft"
    "#;

    #[test]
    fn holds_over_a_short_run() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // By hand: 7.95 Ω/kft at 75 °C by the table, less 35 · 0.323 %: 240 ft and 0.5 A lose 0.846 V.
        let volts = 12.0 - 0.5 * 0.240 * 7.95 * (1.0 - 0.00323 * 35.0);
        let arriving = finding.capacity.unwrap().value.unwrap();
        assert!((arriving - volts).abs() < 0.005, "{arriving} {volts}");
        assert!(
            finding.sentence.starts_with("At reader, "),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_over_a_long_one_and_for_its_burst() {
        assert_eq!(
            only(&CHECK, &SITE.replace("120 ft", "400 ft")).verdict,
            Verdict::Fails
        );
        let burst = SITE.replace(
            "current = \"500 mA\"",
            "current = \"500 mA\"\npeak_current = \"1.5 A\"",
        );
        assert_eq!(only(&CHECK, &burst).verdict, Verdict::Fails);
    }

    #[test]
    fn two_cores_a_pole_halve_the_loss() {
        let double = SITE.replace("size =", "cores_per_pole = 2\nsize =");
        let volts = |text: &str| only(&CHECK, text).capacity.unwrap().value.unwrap();
        assert!((2.0 * (12.0 - volts(&double)) - (12.0 - volts(SITE))).abs() < 1e-9);
    }

    #[test]
    fn unknown_without_the_length_and_the_least_voltage() {
        let bare = SITE
            .replace("length = \"120 ft ± 5 ft\"", "")
            .replace("least_voltage = \"10.2 V\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn unknown_without_a_cable_and_without_a_supply() {
        let no_cable = &SITE[..SITE.find("[[cable]]").unwrap()];
        let finding = only(&CHECK, no_cable);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("[[cable]]"));
        let no_supply = no_cable.replace("supply = \"source\"", "");
        assert!(only(&CHECK, &no_supply).missing[0].path.ends_with("supply"));
    }
}
