//! Whether a person inside gets out on foot at night, without key, phone or power.
//!
//! The vehicle gate is not counted. A walk gate counts that is usable at any hour or with the vehicle gate, that somebody
//! within opens by hand without a key or a code, and whose electric lock, where it has one, lets go when power is lost or
//! is drawn by the handle itself. Where no way out is asked, the hand release may serve in its place.

use crate::asking::{Asking, Wants, pick};
use crate::check::foot::way::WALK_GATE;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use site::{
    CodeBasis, Egress, ExitHardware, GateSide, HandRelease, KeyNeeded, PowerLoss, Site, WalkGate,
    WalkGatePlace, WalkHours, WalkLock, WalkWay,
};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "egress-way-out",
    codes: BOTH,
    leaves_open: "width and number of ways out for those inside, panic hardware for a crowd, light and signs on the way, and where one stands once out",
    concerns: "each site with a gate",
    ask,
};

static LETTER: Source = Source {
    work: "what the authority has written about the way out on foot",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the site gives it",
};

static BUILDING_CODE: Source = Source {
    work: "International Building Code",
    clause: "1010: exit gates work without key or special knowledge; a vehicle gate is no exit",
    evidence: Evidence::Memory,
    seen: "not seen",
};

static LOCAL_LAW: Source = Source {
    work: "local building and workplace law on ways out",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen",
};

/// How it is written what is asked of the way out.
const EGRESS: &str =
    "[egress]\nasked = true\nsaid_by = \"building department\"\nwritten = 2026-02-03\npeople = 30";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.gate.is_empty() {
        round.ask(About::site(&site.site.origin), |asking| out(asking, site));
    }
}

fn out<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    let asked = match &site.egress {
        Some(egress) => asked(asking, site.site.code_basis, egress),
        None => asking.lack(&site.origin, "egress", Wants::Table(EGRESS)),
    };
    let ways = walk_gates(asking, site);
    let (asked, ways) = (asked?, ways?);
    let free: Vec<String> = ways
        .iter()
        .filter(|way| way.barred.is_none())
        .map(|way| way.gate.id.to_string())
        .collect();
    let barred = ways.iter().find_map(|way| Some((way.gate, way.barred?)));
    let by_release = !asked && releases(site).any(serves);
    asking.say(|_| match (free.is_empty(), by_release, barred) {
        (false, ..) => format!(
            "At night and without power one gets out by {}, with bare hands.",
            and(&free)
        ),
        (true, true, _) => "No walk gate opens without key and power; no way out is asked here, and the hand release of the vehicle gate is reached from inside.".to_owned(),
        (true, false, Some((gate, why))) => format!(
            "Nobody inside gets out without key and power: {} {why}.",
            gate.id
        ),
        (true, false, None) => "There is no walk gate to get out by.".to_owned(),
    });
    Ok(Outcome::Rule(!free.is_empty() || by_release))
}

/// A way out is asked; by whom it was said decides whether that has to be looked up.
fn asked<'s>(asking: &mut Asking<'s>, basis: CodeBasis, egress: &'s Egress) -> Result<bool, Halt> {
    let asked = asking
        .need(&egress.origin, "asked", egress.asked.as_ref(), "true")
        .copied();
    let from = match (&egress.said_by, egress.written) {
        (Some(_), Some(_)) => &LETTER,
        _ if basis == CodeBasis::Us => &BUILDING_CODE,
        _ => &LOCAL_LAW,
    };
    asking.rest_on(from);
    if let Some(people) = egress.people {
        asking.note(|_| format!("At most {people} people are inside."));
    }
    asked
}

/// A walk gate, and what bars it to somebody within.
struct WayOut<'s> {
    gate: &'s WalkGate,
    barred: Option<&'static str>,
}

fn walk_gates<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Vec<WayOut<'s>>, Halt> {
    if site.walk_gate.is_empty() {
        return asking.lack(&site.origin, "walk_gate", Wants::Table(WALK_GATE));
    }
    let each: Vec<Result<WayOut<'s>, Halt>> = site
        .walk_gate
        .iter()
        .map(|gate| barred(asking, gate).map(|barred| WayOut { gate, barred }))
        .collect();
    each.into_iter().collect()
}

fn barred<'s>(asking: &mut Asking<'s>, gate: &'s WalkGate) -> Result<Option<&'static str>, Halt> {
    let kind = pick!(asking, gate.kind);
    let place = pick!(asking, gate.place);
    let usable = pick!(asking, gate.usable);
    if kind.as_ref().is_ok_and(|kind| *kind == WalkWay::Open) {
        return Ok(out_of_use(place?, usable?));
    }
    let lock = pick!(asking, gate.lock);
    let exit = pick!(asking, gate.exit_by);
    let electric = matches!(lock, Ok(WalkLock::Strike | WalkLock::Magnet));
    let on_loss = if electric {
        pick!(asking, gate.on_power_loss).map(Some)
    } else {
        Ok(None)
    };
    let (_, lock, exit) = (kind?, lock?, exit?);
    let shut = out_of_use(place?, usable?);
    Ok(shut.or(held(lock, exit, on_loss?)))
}

fn out_of_use(place: WalkGatePlace, usable: WalkHours) -> Option<&'static str> {
    if place == WalkGatePlace::InLeaf {
        return Some("is part of the vehicle gate, which is no exit");
    }
    (usable == WalkHours::PartOfTheTime).then_some("is closed at some hours")
}

/// What holds somebody within, as lock and hardware go together without power.
fn held(lock: WalkLock, exit: ExitHardware, on_loss: Option<PowerLoss>) -> Option<&'static str> {
    let lets_go = on_loss == Some(PowerLoss::FailSafe);
    match exit {
        ExitHardware::Key => Some("wants a key; give it a lever that draws latch and bolt"),
        ExitHardware::Code => {
            Some("wants a code or a card; give it a lever that draws latch and bolt")
        }
        ExitHardware::Push if lock == WalkLock::Unlocked || lets_go => None,
        ExitHardware::Push => Some(
            "is locked, and a push does not open it; give it a lever that draws latch and bolt",
        ),
        ExitHardware::Lever | ExitHardware::PanicBar | ExitHardware::ThumbTurn
            if lock != WalkLock::Magnet || lets_go =>
        {
            None
        }
        ExitHardware::Button | ExitHardware::Sensor if lets_go => None,
        _ => Some(
            "stays locked when power is lost; give it a lock that lets go, or a lever that draws it",
        ),
    }
}

fn releases(site: &Site) -> impl Iterator<Item = &HandRelease> {
    site.gate.iter().flat_map(|gate| &gate.release)
}

/// Somebody within can work it at night.
fn serves(release: &HandRelease) -> bool {
    release.reached_from.contains(&GateSide::Inside)
        && release.without_power == Some(true)
        && matches!(release.key, Some(KeyNeeded::NoKey | KeyNeeded::BesideIt))
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
        [[gate.release]]
        reached_from = ["inside"]
        key = "key beside it"
        without_power = true
        [[walk_gate]]
        id = "walk"
        kind = "hinged gate"
        place = "apart"
        usable = "always"
        lock = "electric strike"
        on_power_loss = "fail-secure"
        exit_by = "lever"
        [egress]
        asked = true
        said_by = "building department"
        written = 2026-02-03
        people = 30
    "#;

    #[test]
    fn holds_with_a_lever_that_draws_the_latch() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let button = SITE
            .replace("lever", "exit button")
            .replace("fail-secure", "fail-safe");
        assert_eq!(only(&CHECK, &button).verdict, Verdict::Holds);
        let none_asked = SITE
            .replace("asked = true", "asked = false")
            .replace("lever", "key");
        assert_eq!(only(&CHECK, &none_asked).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_with_a_key_a_dead_button_a_magnet_and_a_door_in_the_leaf() {
        for (from, to) in [
            ("\"lever\"", "\"key\""),
            ("\"lever\"", "\"code or card\""),
            ("\"lever\"", "\"exit button\""),
            ("\"electric strike\"", "\"magnetic lock\""),
            ("\"apart\"", "\"in the vehicle leaf\""),
            ("\"always\"", "\"part of the time\""),
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
    fn unknown_without_the_letter_and_without_the_lock() {
        let unwritten = SITE.replace("written = 2026-02-03", "");
        assert_eq!(only(&CHECK, &unwritten).verdict, Verdict::UnknownUntil);
        let bare = SITE
            .replace("on_power_loss = \"fail-secure\"", "")
            .replace("exit_by = \"lever\"", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 2);
        let none = SITE.split("[[walk_gate]]").next().unwrap_or_default();
        assert_eq!(only(&CHECK, none).missing.len(), 2);
    }
}
