//! Whether a supply carries everything that really runs together, in the heat of its enclosure.
//!
//! The sum comes from the solved circuits, with the losses of the conductors and of the supplies behind it; a start lasts
//! a moment and is another question. A fifth is kept in hand.

use super::supplied::each_supply;
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::circuit::{CASES, Circuits, PowerCase, outputs};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Ratio, Temperature};
use site::{Site, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-supply-capacity",
    codes: BOTH,
    leaves_open: "what charging the battery asks for beside the loads, which the question of recharging asks",
    concerns: "each power supply and charge controller",
    ask,
};

static SPARE: Source = Source {
    work: "a fifth of a supply is kept in hand",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice",
};

/// Share of a supply that may be used.
const USED: f64 = 0.8;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    each_supply(site, round, |asking, circuits, (supply, source)| {
        capacity(asking, circuits, supply, source)
    });
}

fn capacity<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    supply: &'s Supply,
    source: usize,
) -> Answer {
    let rated = read!(asking, supply.rated_current);
    let share = share_in_heat(asking, circuits.site, supply);
    let drawn = outputs(circuits, asking, source);
    let (rated, share, drawn) = (rated?, share?, drawn?);
    asking.rest_on(&SPARE);
    let (when, most) = CASES
        .into_iter()
        .filter(|case| case.lasts())
        .map(|case| (case, drawn.in_case(case)))
        .fold(
            (PowerCase::Idle, drawn.in_case(PowerCase::Idle)),
            |most, next| {
                if next.1 > most.1 { next } else { most }
            },
        );
    let useful = rated * (share.base() * USED);
    asking.say(|print| {
        format!(
            "{} gives {} {}, its most that lasts; it may give {}, a fifth of {} kept in hand{}.",
            supply.id,
            print.q(most),
            when.when(),
            print.q(useful),
            print.q(rated * share.base()),
            if share.base() < 1.0 {
                " in the heat of its enclosure"
            } else {
                ""
            }
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("greatest lasting current", most),
        Labeled::new("current that it may give", useful),
    ))
}

/// Share of its rating that a supply gives in the hottest air around it.
fn share_in_heat<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
) -> Result<Ratio, Halt> {
    let full_to = read!(asking, supply.hottest);
    let air = air_around(asking, site, supply);
    let (full_to, air) = (full_to?, air?);
    if air <= full_to {
        return Ok(Ratio::from_base(1.0));
    }
    let mut least: Option<(Temperature, Ratio)> = None;
    let mut whole = Ok(());
    for derated in &supply.derating {
        let (at, share) = (read!(asking, derated.at), read!(asking, derated.share));
        match (at, share) {
            (Ok(at), Ok(share)) if at >= air && least.is_none_or(|(known, _)| at < known) => {
                least = Some((at, share));
            }
            (Ok(_), Ok(_)) => {}
            _ => whole = Err(Halt),
        }
    }
    whole?;
    match least {
        Some((_, share)) => Ok(share),
        None => pick_derating(asking, supply),
    }
}

fn pick_derating<'s>(asking: &mut Asking<'s>, supply: &'s Supply) -> Result<Ratio, Halt> {
    asking.lack(
        &supply.origin,
        "derating",
        crate::asking::Wants::Written("[{ at = \"140 °F\", share = \"60 %\" }]"),
    )
}

/// The hottest air around a supply: inside its enclosure, else outdoors.
fn air_around<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
) -> Result<Temperature, Halt> {
    let enclosure = supply.enclosure.as_ref();
    let around = site
        .enclosure
        .iter()
        .find(|other| Some(&other.id) == enclosure);
    match around {
        Some(enclosure) => crate::check::enclosure::inside::hottest(asking, site, enclosure),
        None => read!(asking, site.climate?.hottest),
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
        [climate]
        hottest = "40 °C"
        [[supply]]
        id = "source"
        kind = "power supply"
        voltage = "24 V"
        rated_current = "5 A"
        hottest = "50 °C"
        [[device]]
        id = "switch"
        kind = "network switch"
        supply = "source"
        current = "2 A"
        night_current = "3.5 A"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "switch"
        size = "14 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "10 ft"
    "#;

    #[test]
    fn holds_with_a_fifth_in_hand_by_night() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!((finding.demand.unwrap().value.unwrap() - 3.5).abs() < 1e-12);
        assert!((finding.capacity.unwrap().value.unwrap() - 4.0).abs() < 1e-12);
    }

    #[test]
    fn fails_without_that_fifth_and_in_the_heat() {
        let small = SITE.replace("\"5 A\"", "\"4 A\"");
        assert_eq!(only(&CHECK, &small).verdict, Verdict::Fails);
        let hot = SITE.replace(
            "hottest = \"50 °C\"",
            "hottest = \"35 °C\"\nderating = [{ at = \"60 °C\", share = \"60 %\" }]",
        );
        let finding = only(&CHECK, &hot);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!((finding.capacity.unwrap().value.unwrap() - 2.4).abs() < 1e-12);
    }

    #[test]
    fn unknown_without_what_it_gives_in_the_heat() {
        let finding = only(&CHECK, &SITE.replace("\"50 °C\"", "\"35 °C\""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(
            finding.missing[0].path.ends_with("derating"),
            "{:?}",
            finding.missing
        );
    }
}
