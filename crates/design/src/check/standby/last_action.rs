//! What the gate does when its battery is about to die, who chose that, and whether the fire service agrees.
//!
//! One action, chosen by somebody and agreed in writing, while there is still charge for a whole travel above the end of
//! discharge, with the protection of people live. Where the site says that the gate opens on its battery when the mains
//! fail, the last action is that opening. Where fire engines pass, the fire service has its word.

use super::load::Bank;
use crate::asking::{Asking, need, pick, read};
use crate::check::fire::opens::WITHOUT_POWER;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use quantity::{Charge, Quantity as _, Word as _};
use site::{Battery, GateOnPowerLoss, LastMove, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "standby-last-action",
    codes: BOTH,
    leaves_open: "a battery that dies between two looks at its voltage, and a leaf that stands blocked at that moment",
    concerns: "each battery",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for battery in &site.battery {
        round.ask(About::new(&battery.origin, &battery.id), |asking| {
            last_action(asking, site, battery)
        });
    }
}

fn last_action<'s>(asking: &mut Asking<'s>, site: &'s Site, battery: &'s Battery) -> Answer {
    asking.rest_on(&WITHOUT_POWER);
    let mut rules = Rules::default();
    let does = pick!(asking, battery.last_action?.does);
    let chosen = need!(asking, battery.last_action?.chosen_by, "\"owner\"");
    let agreed = need!(asking, battery.last_action?.agreed, "2026-02-03");
    let seen = need!(asking, battery.last_action?.seen, "2026-02-20");
    let fire = fire(asking, site, battery);
    let moves = match does {
        Ok(LastMove::Stays) | Err(_) => Ok(None),
        Ok(LastMove::Opens | LastMove::Closes) => {
            travel(asking, site, battery, &mut rules).map(Some)
        }
    };
    let (does, chosen, agreed) = (does?, chosen?, agreed?);
    seen?;
    let (fire, moves) = (fire?, moves?);
    let promised = |gate: &site::Gate| gate.on_power_loss == Some(GateOnPowerLoss::OpensOnBattery);
    rules.keep(
        does == LastMove::Opens || !site.gate.iter().any(promised),
        "The gate is said to open on its battery before that is empty, and its last action is another one.",
    );
    asking.say(|print| {
        rules.says(|| {
            let fire = fire.map_or_else(String::new, |said| format!(" Fire service: {said}."));
            let charge = moves.map_or_else(String::new, |(left, asked)| {
                format!(
                    " A travel takes {} of the {} that are left above the end of discharge.",
                    print.q(asked),
                    print.q(left)
                )
            });
            format!(
                "Before {} dies the gate {}: chosen by {chosen}, agreed on {agreed}.{charge}{fire}",
                battery.id,
                does.word()
            )
        })
    });
    Ok(rules.outcome())
}

/// What the fire service said, where fire engines pass.
fn fire<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
) -> Result<Option<&'s site::Text>, Halt> {
    let engines = site.fire.is_some() || site.lane.iter().any(|lane| lane.fire_lane == Some(true));
    if !engines {
        return Ok(None);
    }
    need!(
        asking,
        battery.last_action?.fire_agreed,
        "\"fire marshal, 2026-02-03\""
    )
    .map(Some)
}

/// Charge that is left at the last action, above the end of discharge, and what one travel takes.
fn travel<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
    rules: &mut Rules,
) -> Result<(Charge, Charge), Halt> {
    let left = read!(asking, battery.last_action?.left);
    let live = need!(asking, battery.last_action?.protection_live, "true");
    let capacity = read!(asking, battery.capacity);
    let usable = read!(asking, battery.usable);
    let bank = Bank::new(asking, site, battery);
    let taken = bank.and_then(|bank| {
        let moving = bank.moving(asking);
        let standing = bank.standing(asking);
        let cycle = bank.cycle(asking);
        Ok((moving? + standing?).base() * cycle?.base() / 2.0)
    });
    let (left, live, capacity, usable, taken) = (left?, live?, capacity?, usable?, taken?);
    rules.keep(
        *live,
        "The protection of people is not live during the last travel: raise the voltage at which it begins.",
    );
    let share = (left.base() - (1.0 - usable.base())).max(0.0);
    let above = Charge::from_base(share * capacity.base());
    let taken = Charge::from_base(taken);
    rules.compare(Comparison::at_most(
        Labeled::new("charge of one travel", taken),
        Labeled::new("charge left above the end of discharge", above),
    ));
    Ok((above, taken))
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
        [fire]
        clear_width = "20 ft"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        on_power_loss = "opens on its battery"
        [gate.motion]
        cruise_speed = "1 ft/s"
        acceleration = "1 ft/s²"
        deceleration = "1 ft/s²"
        creep_speed = "0.5 ft/s"
        creep_distance = "0 in"
        [[supply]]
        id = "charger"
        kind = "charge controller"
        [[battery]]
        id = "battery"
        supply = "charger"
        voltage = "24 V"
        capacity = "30 Ah"
        usable = "90 %"
        [battery.last_action]
        does = "opens and stays open"
        left = "15 %"
        chosen_by = "owner"
        agreed = 2026-02-03
        fire_agreed = "fire marshal, 2026-02-05"
        protection_live = true
        seen = 2026-03-01
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "charger"
        standing_current = "100 mA"
        running_current = "9 A"
        battery_speed = "100 %"
    "#;

    #[test]
    fn holds_with_charge_for_a_travel() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 9.1 A over the 21 s of a travel; 5 % of 30 Ah above the end of discharge.
        let taken = finding.demand.unwrap().value.unwrap();
        assert!((taken - 9.1 * 21.0).abs() < 1e-6, "{taken}");
        assert!((finding.capacity.unwrap().value.unwrap() - 0.05 * 30.0 * 3600.0).abs() < 1e-6);
    }

    #[test]
    fn holds_where_it_stays_and_nobody_was_promised_more() {
        let stays = SITE
            .replace("opens on its battery", "stays as it is")
            .replace("opens and stays open", "stays as it is");
        assert_eq!(only(&CHECK, &stays).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_with_no_charge_no_protection_or_another_promise() {
        for (from, to) in [
            ("left = \"15 %\"", "left = \"10 %\""),
            ("protection_live = true", "protection_live = false"),
            ("opens and stays open", "closes and stays shut"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_until_somebody_chose_and_the_fire_service_agreed() {
        let bare = SITE
            .replace("chosen_by = \"owner\"", "")
            .replace("fire_agreed = \"fire marshal, 2026-02-05\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
