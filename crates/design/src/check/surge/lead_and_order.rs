//! Whether what a surge protector lets through, with its leads, stays below what the equipment behind it stands.
//!
//! The surge is the one for which the data sheet gives the let-through, with a front of 8 µs. The equipment's withstand is
//! on its data sheet; that of a power supply on the mains follows from its overvoltage category.

use super::line::supply;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::mains::{ImpulseWithstand, OvervoltageCategory, SurgeLead};
use quantity::{Quantity as _, Time, Voltage, Word as _};
use site::{Device, DeviceKind, Site, Supply, SupplyKind, Surge};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "surge-lead-and-order",
    codes: BOTH,
    leaves_open: "protected wires bundled with unprotected ones, oscillation on a line longer than 10 m behind the protector, and a stroke larger than the one it was tested with",
    concerns: "each surge protector",
    ask,
};

/// How it is written what a protector stands on.
const SURGE: &str = "[device.surge]\ncables = [\"w-01\"]\nlet_through = \"1.2 kV\"\nsurge = \"5 kA\"\nleads = \"12 in\"\nsame_earth = true\nwithstand = \"2.5 kV\"";

/// Front of the surge, in seconds.
const FRONT: f64 = 8e-6;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let is = |device: &&Device| device.kind == DeviceKind::SurgeProtector;
    for device in site.device.iter().filter(is) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            low_enough(asking, site, device)
        });
    }
}

fn low_enough<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let Some(surge) = &device.surge else {
        return asking.lack(&device.origin, "surge", Wants::Table(SURGE));
    };
    let at = &surge.origin;
    let same_earth = told(asking, at, "same_earth", surge.same_earth);
    let coordinated = match &surge.after {
        Some(_) => told(asking, at, "coordinated", surge.coordinated),
        None => Ok(true),
    };
    let let_through = read!(asking, surge.let_through);
    let leads = read!(asking, surge.leads);
    let current = read!(asking, surge.surge);
    let withstand = withstand(asking, site, surge);
    let fault = if matches!(same_earth, Ok(false)) {
        Some(
            "its earth is not the bar of the equipment: the difference of the two earths goes through the equipment",
        )
    } else if matches!(coordinated, Ok(false)) {
        Some("its papers do not let it stand so close behind the stage before it")
    } else {
        None
    };
    if let Some(fault) = fault {
        asking.say(|_| format!("{}: {fault}.", capitalized(device.id.as_str())));
        return Ok(Outcome::Rule(false));
    }
    let (let_through, leads, current) = (let_through?, leads?, current?);
    let (withstand, _, _) = (withstand?, same_earth?, coordinated?);
    let reached = asking.work(&SurgeLead {
        let_through,
        leads,
        surge: current,
        front: Time::from_base(FRONT),
    })?;
    asking.say(|print| {
        format!(
            "{} lets {} through and its leads of {} add {}; the equipment behind it stands {}.",
            capitalized(device.id.as_str()),
            print.q(let_through),
            print.q(leads),
            print.q(reached.along_leads),
            print.q(withstand)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new(
            "voltage at the equipment during the surge",
            reached.at_terminals,
        ),
        Labeled::new("impulse that the equipment stands", withstand),
    ))
}

/// What the equipment behind it stands: by its data sheet, or by the category of the power supply on the mains.
fn withstand<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    surge: &'s Surge,
) -> Result<Voltage, Halt> {
    let given = asking.read_if_there(&surge.origin, "withstand", surge.withstand.as_ref());
    match (given, behind(site, surge)) {
        (Some(given), _) => Ok(given),
        (None, Some((mains, fed))) => {
            let category = pick!(asking, fed.intake?.category);
            let voltage = read!(asking, mains.circuit?.to_earth);
            let Some(category) = OvervoltageCategory::from_word(category?.word()) else {
                return asking.refuse("no withstand is printed for this category");
            };
            let strength = ImpulseWithstand {
                category,
                voltage: voltage?,
            };
            Ok(asking.work(&strength)?.withstand)
        }
        (None, None) => asking.lack_of(&surge.origin, "withstand"),
    }
}

/// The mains circuit on a protected cable, and the power supply that it feeds.
fn behind<'s>(site: &'s Site, surge: &Surge) -> Option<(&'s Supply, &'s Supply)> {
    site.cable
        .iter()
        .filter(|cable| surge.cables.contains(&cable.id))
        .find_map(|cable| {
            let mains = supply(site, &cable.from).filter(|from| from.kind == SupplyKind::Mains)?;
            Some((mains, supply(site, &cable.to)?))
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
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [supply.circuit]
        to_earth = "120 V"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        fed_by = "mains"
        [supply.intake]
        category = "II"
        [[cable]]
        id = "w-01"
        carries = "mains"
        from = "mains"
        to = "supply-24"
        [[device]]
        id = "surge-mains"
        kind = "surge protector"
        [device.surge]
        cables = ["w-01"]
        let_through = "700 V"
        surge = "5 kA"
        leads = "12 in"
        same_earth = true
    "#;

    #[test]
    fn holds_with_short_leads() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 0.3048 µH · 5 kA / 8 µs is 190.5 V.
        let volts = finding.demand.unwrap().value.unwrap();
        assert!((volts - 890.5).abs() < 0.01, "{volts}");
    }

    #[test]
    fn fails_with_long_leads_another_earth_and_stages_too_close() {
        for (from, to) in [
            ("\"12 in\"", "\"6 ft\""),
            ("same_earth = true", "same_earth = false"),
            (
                "same_earth = true",
                "same_earth = true\nafter = \"surge-mains\"\ncoordinated = false",
            ),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_let_through_and_category() {
        let bare = SITE
            .replace("let_through = \"700 V\"", "")
            .replace("category = \"II\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
