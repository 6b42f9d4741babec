//! Whether everything that starts at once pulls its supply down.
//!
//! Two moments are asked: power returns, and everything is switched on at once; and the gate starts on the coldest night
//! with all that runs then. A supply that gives less than is asked lets its voltage fall, and controllers start again.

use super::supplied::{each_supply, momentary};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::circuit::{Circuits, PowerCase, Takes, outputs};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use quantity::{Current, Quantity as _};
use site::{Device, DeviceKind, PowerLoss, Site, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-inrush",
    codes: BOTH,
    leaves_open: "an order in which things are switched on one after the other, and how long a controller lives without voltage",
    concerns: "each power supply and charge controller",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    each_supply(site, round, |asking, circuits, (supply, source)| {
        inrush(asking, circuits, supply, source)
    });
}

fn inrush<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    supply: &'s Supply,
    source: usize,
) -> Answer {
    let limit = momentary(asking, circuits, source);
    let together = together(asking, circuits.site, supply);
    let drawn = outputs(circuits, asking, source);
    let (limit, together, drawn) = (limit?, together?, drawn?);
    let start = drawn.in_case(PowerCase::ColdStart);
    asking.say(|print| {
        format!(
            "When power returns, all that {} feeds draws {} for a moment; as the gate starts on the coldest night, {}. It can give {}.",
            supply.id,
            print.q(together),
            print.q(start),
            print.q(limit)
        )
    });
    let limit = Labeled::new("current that the supply gives for a moment", limit);
    let moments = [
        Comparison::at_most(Labeled::new("current as power returns", together), limit),
        Comparison::at_most(Labeled::new("current as the gate starts", start), limit),
    ];
    Outcome::worst(moments).map_or_else(|| asking.refuse("nothing starts"), Ok)
}

/// The inrush of everything that a supply feeds and that comes on with the power.
fn together<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
) -> Result<Current, Halt> {
    let mut sum = Current::from_base(0.0);
    let mut whole = Ok(());
    let mut add = |current: Result<Current, Halt>| match current {
        Ok(current) => sum += current,
        Err(halt) => whole = Err(halt),
    };
    let here = |name: Option<&site::Id>| name == Some(&supply.id);
    for device in site
        .device
        .iter()
        .filter(|device| here(device.supply.as_ref()))
    {
        if comes_on(device) {
            add(read!(asking, device.inrush));
        }
    }
    for operator in site
        .operator
        .iter()
        .filter(|operator| here(operator.supply.as_ref()))
    {
        add(read!(asking, operator.inrush));
    }
    for behind in site
        .supply
        .iter()
        .filter(|behind| here(Takes::Supply(behind).fed_by()))
    {
        add(read!(asking, behind.input_inrush));
    }
    whole.map(|()| sum)
}

/// It draws as soon as there is power: not a warning light, nor a lock that a spring holds shut, nor a loop.
fn comes_on(device: &Device) -> bool {
    match device.kind {
        DeviceKind::WarningLight
        | DeviceKind::Loop
        | DeviceKind::Control
        | DeviceKind::SurgeProtector => false,
        DeviceKind::Lock => device.on_power_loss != Some(PowerLoss::FailSecure),
        _ => true,
    }
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
        [[supply]]
        id = "source"
        kind = "power supply"
        voltage = "24 V"
        rated_current = "10 A"
        peak_current = "15 A"
        [[enclosure]]
        id = "box"
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "source"
        standing_current = "0.2 A"
        running_current = "5 A"
        starting_current = "9 A"
        inrush = "3 A"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "switch"
        kind = "network switch"
        supply = "source"
        voltage = "24 V"
        current = "2 A"
        inrush = "8 A"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "drive"
        size = "8 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "10 ft"
        [[cable]]
        id = "w-02"
        from = "source"
        to = "switch"
        size = "14 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "4 ft"
    "#;

    #[test]
    fn holds_within_what_the_supply_gives_for_a_moment() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("11 A"), "{}", finding.sentence);
    }

    #[test]
    fn fails_without_that_moment_and_for_a_greater_start() {
        let plain = SITE.replace("peak_current = \"15 A\"", "");
        assert_eq!(only(&CHECK, &plain).verdict, Verdict::Fails);
        let start = SITE.replace("\"9 A\"", "\"14 A\"");
        assert_eq!(only(&CHECK, &start).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_inrush_of_one() {
        let finding = only(&CHECK, &SITE.replace("inrush = \"8 A\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
