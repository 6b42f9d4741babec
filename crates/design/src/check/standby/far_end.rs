//! Whether the other end still lives when the power fails: the switch in the house, the router, the phone that answers.
//!
//! Each box at the far end has a supply of its own for as long as the battery at the gate is meant to last, or the owner
//! was told what is lost, and when. A device of this site that hangs on mains without a battery is such a box.

use super::load::Bank;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use quantity::{Quantity as _, Time};
use site::{Device, FarEnd, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "standby-far-end",
    codes: BOTH,
    leaves_open: "the line between them, the service provider's own supply, and how old the battery over there is",
    concerns: "each thing at the far end of the line",
    ask,
};

/// How a far end is written.
const FAR_END: &str = "[[far_end]]\nid = \"router-office\"\nwhat = \"router in the office: calls of the intercom\"\nbackup = \"30 min\"\nowner_told = \"2026-09-20: no calls once it is empty\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.far_end.is_empty() && !site.gate.is_empty() {
        round.ask(About::site(&site.origin), |asking| {
            asking.lack(&site.origin, "far_end", Wants::Table(FAR_END))
        });
    }
    for far in &site.far_end {
        round.ask(About::new(&far.origin, &far.id), |asking| {
            far_end(asking, site, far)
        });
    }
    if !site.battery.is_empty() {
        for device in on_mains_alone(site) {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                asking.lack(&site.origin, "far_end", Wants::Table(FAR_END))
            });
        }
    }
}

/// Devices that no battery feeds and no far end names.
fn on_mains_alone(site: &Site) -> impl Iterator<Item = &Device> {
    let dies = |device: &&Device| {
        device.supply.as_ref().is_some_and(|supply| {
            let mains = site.supply.iter().any(|one| one.id == *supply);
            mains
                && !site
                    .battery
                    .iter()
                    .any(|battery| Bank::feeds(site, battery, supply))
        })
    };
    let named = |device: &&Device| {
        let is = |far: &FarEnd| far.device.as_ref() == Some(&device.id);
        site.far_end.iter().any(is)
    };
    site.device
        .iter()
        .filter(dies)
        .filter(move |device| !named(device))
}

fn far_end<'s>(asking: &mut Asking<'s>, site: &'s Site, far: &'s FarEnd) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let backup = read!(asking, far.backup);
    let wanted = wanted(asking, site);
    let (backup, wanted) = (backup?, wanted?);
    if backup < wanted {
        let told = asking.need(
            &far.origin,
            "owner_told",
            far.owner_told.as_ref(),
            "\"2026-09-20: no calls once it is empty\"",
        )?;
        asking.say(|print| {
            let lives = if backup.base() > 0.0 {
                format!("lives {} without mains", print.q(backup))
            } else {
                "dies with the mains".to_owned()
            };
            format!(
                "{} ({}) {lives}, the gate is meant to live {}; the owner was told: {told}.",
                capitalized(far.id.as_str()),
                far.what,
                print.q(wanted)
            )
        });
        return Ok(Outcome::Rule(true));
    }
    asking.say(|print| {
        format!(
            "{} ({}) lives {} without mains, as long as the gate is meant to.",
            capitalized(far.id.as_str()),
            far.what,
            print.q(backup)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("standby of the gate", wanted),
        Labeled::new("standby of the far end", backup),
    ))
}

/// The longest standby that a battery of the gate is meant for; none without a battery.
fn wanted<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Time, Halt> {
    let mut longest = Time::from_base(0.0);
    for battery in &site.battery {
        let time = read!(asking, battery.wanted_standby)?;
        if time > longest {
            longest = time;
        }
    }
    Ok(longest)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[battery]]
        id = "battery"
        supply = "charger"
        wanted_standby = "8 h"
        [[supply]]
        id = "charger"
        kind = "power supply"
        [[supply]]
        id = "mains-office"
        kind = "mains circuit"
        [[device]]
        id = "office-switch"
        kind = "network switch"
        supply = "mains-office"
        [[far_end]]
        id = "router-office"
        what = "router in the office"
        device = "office-switch"
        backup = "10 h"
    "#;

    #[test]
    fn holds_as_long_as_the_gate_or_with_the_owner_told() {
        assert_eq!(only(&CHECK, SITE).verdict, Verdict::Holds);
        let told = SITE.replace(
            "backup = \"10 h\"",
            "backup = \"0 h\"\nowner_told = \"2026-09-20\"",
        );
        assert_eq!(only(&CHECK, &told).verdict, Verdict::Holds);
    }

    /// Nothing fails: a loss that nobody was told of is asked for.
    #[test]
    fn fails_never_but_asks_whom_it_was_told_to() {
        let short = only(&CHECK, &SITE.replace("10 h", "1 h"));
        assert_eq!(short.verdict, Verdict::UnknownUntil);
        assert!(
            short
                .missing
                .iter()
                .any(|one| one.path.contains("owner_told"))
        );
    }

    #[test]
    fn unknown_without_a_far_end_and_for_a_device_on_mains_alone() {
        let bare = SITE.replace("device = \"office-switch\"", "");
        let found = all(&CHECK, &bare);
        assert_eq!(found.len(), 2, "{found:#?}");
        assert_eq!(found.last().unwrap().verdict, Verdict::UnknownUntil);
        let none = SITE.split("[[far_end]]").next().unwrap().to_owned();
        assert!(
            all(&CHECK, &none)
                .iter()
                .all(|one| one.verdict == Verdict::UnknownUntil)
        );
    }
}
