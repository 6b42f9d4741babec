//! Whether the fire crew opens the gate, with power and without, and one of them by hand.
//!
//! At least one way in is approved, and the gate stays open after it. Behind every electronic one stands one that needs
//! no power. When the mains fail the gate opens, by itself or on a battery that is large enough for it, or one person lets
//! the drive go from outside and pushes the leaf with no more than the weaker guide figures.

use super::apparatus::each_gate;
use super::clear_way::FIRE;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::egress::hand_release::RELEASE_TABLE;
use crate::check::foot::way::beside;
use crate::check::force::by_hand::{Pushes, pushes};
use crate::check::standby::hours_and_moves::needed;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::and;
use formula::motion::{PushPullGuide, Pusher};
use formula::{Evidence, Source};
use quantity::Word as _;
use site::{Fire, FireOpener, FireOpens, Gate, GateOnPowerLoss, GateSide, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "fire-opens",
    codes: BOTH,
    leaves_open: "whether key, code or frequency is still theirs, wind on the released leaf, snow and ice before it, and whether it was ever tried: have the crew open it with mains on, mains off and battery off",
    concerns: "each gate that fire engines pass",
    ask,
};

static APPROVED: Source = Source {
    work: "International Fire Code",
    clause: "503.6: approved gate, approved means of emergency operation, kept working",
    evidence: Evidence::Seen,
    seen: "a township code that repeats it: https://ecode360.com/42498881",
};

pub(crate) static WITHOUT_POWER: Source = Source {
    work: "city codes on gates across fire lanes",
    clause: "manual override, or opens and stays open when power is lost",
    evidence: Evidence::Seen,
    seen: "https://codelibrary.amlegal.com/codes/harrisburg/latest/harrisburg_nc/0-0-0-2385 and https://codelibrary.amlegal.com/codes/pembrokepines/latest/pembrokepines_fl/0-0-0-81085",
};

static SIREN: Source = Source {
    work: "report of a fire crew held up by a siren release that had failed",
    clause: "a way by hand stands behind every electronic one",
    evidence: Evidence::Seen,
    seen: "https://community.nfpa.org/community/nfpa-today/blog/2016/07/29/nfpa-1-fire-department-access-part-2-firecodefridays",
};

/// How a way in is written.
const OPENER: &str = "[[fire.opener]]\nhow = \"key switch\"\ndevice = \"key-fire\"\napproved = true\nholds_open = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    each_gate(site, round, |asking, gate| opens(asking, site, gate));
}

fn opens<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&APPROVED);
    asking.rest_on(&WITHOUT_POWER);
    asking.rest_on(&SIREN);
    let ways = match &site.fire {
        Some(fire) => ways_in(asking, fire, gate),
        None => asking.lack(&site.origin, "fire", Wants::Table(FIRE)),
    };
    let power = pick!(asking, gate.on_power_loss);
    let by_hand = match power {
        Ok(GateOnPowerLoss::OpensByItself) | Err(_) => Ok(Vec::new()),
        Ok(_) => by_hand(asking, site, gate),
    };
    let reserve = match power {
        Ok(GateOnPowerLoss::OpensOnBattery) => reserve(asking, site, gate),
        _ => Ok(Vec::new()),
    };
    let (ways, power, by_hand, reserve) = (ways?, power?, by_hand?, reserve?);
    let fault = fault(&ways, power, gate);
    asking.say(|print| match (fault, by_hand.first()) {
        (Some(fault), _) => fault.to_owned(),
        (None, push) => {
            let names: Vec<String> = ways
                .iter()
                .filter(|way| way.approved)
                .map(|way| way.how.word().to_owned())
                .collect();
            let by_hand = push.map_or_else(String::new, |push| {
                format!(
                    " Let go, one person pushes it with {}.",
                    print.value(&push.demand.value)
                )
            });
            format!(
                "The fire crew opens it by {}; when the mains fail it {}.{by_hand}",
                and(&names),
                power.word()
            )
        }
    });
    if fault.is_some() {
        return Ok(Outcome::Rule(false));
    }
    let comparisons = by_hand.into_iter().chain(reserve);
    Ok(Outcome::worst(comparisons).unwrap_or(Outcome::Rule(true)))
}

/// A way in with what was read of it.
struct WayIn {
    how: FireOpens,
    approved: bool,
    holds: bool,
}

fn ways_in<'s>(
    asking: &mut Asking<'s>,
    fire: &'s Fire,
    gate: &'s Gate,
) -> Result<Vec<WayIn>, Halt> {
    let of_gate = |one: &&FireOpener| beside(one.gate.as_ref(), gate);
    let each: Vec<Result<WayIn, Halt>> = fire
        .opener
        .iter()
        .filter(of_gate)
        .map(|one| {
            let how = pick!(asking, one.how);
            let approved = asking.need(&one.origin, "approved", one.approved.as_ref(), "true");
            let holds = asking.need(&one.origin, "holds_open", one.holds_open.as_ref(), "true");
            Ok(WayIn {
                how: how?,
                approved: *approved?,
                holds: *holds?,
            })
        })
        .collect();
    if each.is_empty() {
        return asking.lack(&fire.origin, "opener", Wants::Table(OPENER));
    }
    each.into_iter().collect()
}

/// What is wrong with the ways in.
fn fault(ways: &[WayIn], power: GateOnPowerLoss, gate: &Gate) -> Option<&'static str> {
    let mut approved = ways.iter().filter(|way| way.approved).peekable();
    if approved.peek().is_none() {
        return Some(
            "No way in is approved by the fire service: show them the gate and have it in writing.",
        );
    }
    if approved.any(|way| !way.holds) {
        return Some(
            "The gate closes again behind the first engine: what the fire service opens has to stay open until they close it.",
        );
    }
    let by_key = ways
        .iter()
        .any(|way| way.approved && way.how.is_mechanical());
    if !by_key {
        return Some(
            "Everything by which the fire crew opens it wants power: put a key box or a padlock of theirs behind it.",
        );
    }
    let from_outside = gate
        .release
        .iter()
        .any(|release| release.reached_from.contains(&GateSide::Outside));
    let cut = ways
        .iter()
        .any(|way| way.approved && way.how == FireOpens::Padlock);
    (power == GateOnPowerLoss::Stays && !from_outside && !cut).then_some(
        "When power is lost the gate stays shut, and the crew outside does not get to the release.",
    )
}

/// The push of one person at each leaf, its drive let go.
fn by_hand<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Comparison>, Halt> {
    let release = if gate.release.is_empty() {
        asking.lack(&gate.origin, "release", Wants::Table(RELEASE_TABLE))
    } else {
        Ok(())
    };
    let pushes: Vec<Result<Pushes, Halt>> = gate
        .leaf
        .iter()
        .map(|leaf| pushes(asking, site, gate, leaf))
        .collect();
    let pushes = pushes.into_iter().collect::<Result<Vec<_>, _>>()?;
    release?;
    let guide = asking.work(&PushPullGuide { who: Pusher::Women })?;
    let each = pushes.into_iter().flat_map(|Pushes { met, clear }| {
        [
            Comparison::at_most(
                Labeled::new("push to keep moving", clear),
                Labeled::new("guide force to keep moving", guide.keep),
            ),
            Comparison::at_most(
                Labeled::new("push where seals or a catch are met", met),
                Labeled::new("guide force to start", guide.start),
            ),
        ]
    });
    Ok(each.collect())
}

/// The capacity of each battery that drives the gate, against what is wanted of it.
fn reserve<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Comparison>, Halt> {
    let feeds = |supply: Option<&site::Id>| {
        let mut operators = site.operators_of(gate);
        supply.is_some() && operators.any(|operator| operator.supply.as_ref() == supply)
    };
    let mut comparisons = Ok(Vec::new());
    for battery in &site.battery {
        if !feeds(battery.supply.as_ref()) && !feeds(Some(&battery.id)) {
            continue;
        }
        let has = read!(asking, battery.capacity);
        let wants = needed(asking, site, battery).and_then(|needed| asking.work(&needed));
        comparisons = comparisons.and_then(|mut all: Vec<_>| {
            all.push(Comparison::at_most(
                Labeled::new("capacity that is needed", wants?.capacity),
                Labeled::new("capacity of the battery", has?),
            ));
            Ok(all)
        });
    }
    match comparisons {
        Ok(none) if none.is_empty() => asking.lack(
            &site.origin,
            "battery",
            Wants::Table(
                "[[battery]]\nid = \"battery\"\nsupply = \"supply-24\"\ncapacity = \"40 Ah\"",
            ),
        ),
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0 ± 0.001"
        seal_force = "0 lbf"
        on_power_loss = "stays as it is"
        [[gate.leaf]]
        id = "leaf"
        mass = "640 lb ± 5 %"
        [gate.wheels]
        diameter = "6 in"
        rolling = "steel on steel"
        bearing_friction = "0.01"
        axle_diameter = "3/4 in"
        [[gate.release]]
        reached_from = ["inside", "outside"]
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "charger"
        [[supply]]
        id = "charger"
        kind = "charge controller"
        [[lane]]
        id = "lane"
        gate = "main"
        fire_lane = true
        [fire]
        agreed_with = "fire marshal"
        [[fire.opener]]
        how = "key switch"
        approved = true
        holds_open = true
        [[fire.opener]]
        how = "key to the hand release"
        approved = true
        holds_open = true
    "#;

    #[test]
    fn holds_with_a_switch_and_a_key_behind_it() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let spring = SITE.replace("stays as it is", "opens by spring or weight");
        assert_eq!(only(&CHECK, &spring).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_without_approval_hold_fallback_or_a_release_outside() {
        for (from, to) in [
            ("approved = true", "approved = false"),
            ("holds_open = true", "holds_open = false"),
            ("\"key to the hand release\"", "\"siren\""),
            ("[\"inside\", \"outside\"]", "[\"inside\"]"),
            ("\"0 ± 0.001\"", "\"0.05\""),
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
    fn unknown_without_ways_in_and_without_the_battery() {
        let none = SITE.split("[fire]").next().unwrap_or_default();
        assert_eq!(only(&CHECK, none).missing.len(), 1);
        let battery = SITE.replace("stays as it is", "opens on its battery");
        let finding = only(&CHECK, &battery);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
        let silent = SITE
            .replace("on_power_loss = \"stays as it is\"", "")
            .replace("approved = true", "");
        assert_eq!(only(&CHECK, &silent).missing.len(), 3);
    }
}
