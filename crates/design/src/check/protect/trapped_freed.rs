//! How somebody who is caught gets free with the power off, by whom, and with what strength.
//!
//! The gate starts back by its battery, or a passer-by pushes a leaf that its drive does not hold, or works a release that
//! needs no key, or one whose key is kept beside it, from either side of the gate and without a ladder. A release for which
//! a key is carried helps only where the battery has let go of the person already. The handle is held against the force
//! that the rule for doors asks of anybody, the push against the weaker figures of the guide.

use crate::asking::{Asking, Wants, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{PushPullGuide, Pusher};
use formula::protection::{BhmaPowerFailForce, HandMove};
use formula::{Evidence, Source};
use quantity::{Force, Quantity as _};
use site::{Gate, GateSide, HandRelease, KeyNeeded, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-trapped-freed",
    codes: BOTH,
    leaves_open: "whether anybody is near, hears and understands; how a leaf that has stopped against a body moves once its drive is let go, up a slope above all; a test body held by the leaf with the mains off, and a watch, show it",
    concerns: "each gate with an operator",
    ask,
};

static PLAN: Source = Source {
    work: "safety alert of a national authority for powered gates; EN 12453",
    clause: "a plan for trapped people and lost power; an emergency release",
    evidence: Evidence::Seen,
    seen: "alert of the Health and Safety Authority (Ireland), 2015: http://www.hsa.ie/eng/Safety_Alerts/2015/Crushing_Hazards_on_Electrically_Powered_Gates/, and HSE FOD 7-2010 in reprints",
};

static OVERHEAD: Source = Source {
    work: "a handle up to 1.8 m above the feet is reached without a ladder",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice; a small adult's reach overhead",
};

/// Highest handle that a small adult reaches, in meters above the feet.
const REACH: f64 = 1.8;
/// Shortest way back that lets a body go: two inches, as the American rule has it, in meters.
const BACK: f64 = 0.0508;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        if site.operators_of(gate).next().is_some() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                freed(asking, site, gate)
            });
        }
    }
}

fn freed<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let operator = operator_of(asking, site, gate)?;
    let back = read!(asking, gate.motion?.reversal_distance);
    let locked = asking
        .need(
            &operator.origin,
            "self_locking",
            operator.self_locking.as_ref(),
            "true",
        )
        .copied();
    let pushed = pushed(asking, operator);
    let releases = releases(asking, gate);
    let (back, locked, pushed, releases) = (back?, locked?, pushed?, releases?);
    asking.rest_on(&PLAN);
    let starts_back = has_battery(site, operator) && back.base() >= BACK;
    let anybody = from_both_sides(&releases, open_to_all);
    let holder = from_both_sides(&releases, is_at_hand);
    let efforts = efforts(asking, operator, &releases)?;
    let how = if !locked {
        Some("its drive lets the leaf be pushed back")
    } else if anybody {
        Some("anybody works a release from either side")
    } else if starts_back && holder {
        Some(
            "on its battery it still starts back, and whoever carries the key lets it go from either side",
        )
    } else {
        None
    };
    asking.say(|print| {
        let way = how.unwrap_or(if starts_back {
            "on its battery it still starts back, but a release is not reached from both sides with a key at hand"
        } else {
            "nothing lets the person go until somebody fetches a key"
        });
        let time = releases
            .iter()
            .filter_map(|release| release.time.map(|time| time.nominal()))
            .reduce(|a, b| if a > b { a } else { b })
            .map_or_else(String::new, |time| format!("; with the key in hand it took {}", print.q(time)));
        format!("Caught at gate {} with the mains off: {way}{time}.", gate.id)
    });
    if how.is_none() {
        return Ok(Outcome::Rule(false));
    }
    let push = pushed.filter(|_| !locked);
    let all: Vec<Comparison> = efforts.into_iter().chain(push).collect();
    Ok(Outcome::worst(all).unwrap_or(Outcome::Rule(true)))
}

/// The push that overcomes a drive which does not lock, against the weaker figure of the guide.
fn pushed<'s>(asking: &mut Asking<'s>, operator: &'s Operator) -> Result<Option<Comparison>, Halt> {
    if operator.self_locking != Some(false) {
        return Ok(None);
    }
    let push = read!(asking, operator.holding_force)?;
    let guide = asking.work(&PushPullGuide { who: Pusher::Women })?;
    Ok(Some(Comparison::at_most(
        Labeled::new("push that overcomes the drive", push),
        Labeled::new("guide force to start", guide.start),
    )))
}

/// The releases that work without power and are reached without a ladder.
fn releases<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<&'s HandRelease>, Halt> {
    if gate.release.is_empty() {
        let write = Wants::Table(
            "[[gate.release]]\nat = [\"22 ft\", \"14 in\", \"36 in\"]\nstand_at = [\"22 ft\", \"40 in\", \"0 in\"]\nreached_from = [\"inside\"]\nkey = \"key beside it\"\nwithout_power = true",
        );
        return asking.lack(&gate.origin, "release", write);
    }
    asking.rest_on(&OVERHEAD);
    let mut whole = Ok(());
    let mut good = Vec::new();
    for release in &gate.release {
        let at = asking.position(&release.origin, "at", release.at.as_ref());
        let feet = asking.position(&release.origin, "stand_at", release.stand_at.as_ref());
        let power = asking.need(
            &release.origin,
            "without_power",
            release.without_power.as_ref(),
            "true",
        );
        if release.key.is_none() {
            whole = asking.lack(&release.origin, "key", Wants::Written("\"key beside it\""));
        }
        match (at, feet, power) {
            (Ok(at), Ok(feet), Ok(power)) => {
                if *power && (at[2] - feet[2]).base() <= REACH {
                    good.push(release);
                }
            }
            _ => whole = Err(Halt),
        }
    }
    whole.map(|()| good)
}

/// The effort at each handle, against what the rule for doors asks of anybody.
fn efforts<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
    releases: &[&'s HandRelease],
) -> Result<Vec<Comparison>, Halt> {
    let mut all = Vec::new();
    for release in releases {
        let own = asking.read_if_there(&release.origin, "effort", release.effort.as_ref());
        let effort: Force = match own {
            Some(effort) => effort,
            None => read!(asking, operator.release_effort)?,
        };
        let rule = asking.work(&BhmaPowerFailForce {
            act: HandMove::Latch,
            force: effort,
        })?;
        all.push(Comparison::at_most(
            Labeled::new("effort at the release", effort),
            Labeled::new("greatest effort for anybody", rule.limit),
        ));
    }
    Ok(all)
}

/// The operator's supply has a battery.
fn has_battery(site: &Site, operator: &Operator) -> bool {
    let Some(supply) = &operator.supply else {
        return false;
    };
    site.battery
        .iter()
        .any(|battery| battery.supply.as_ref() == Some(supply) || battery.id == *supply)
}

/// Anybody can work it.
fn open_to_all(release: &HandRelease) -> bool {
    matches!(release.key, Some(KeyNeeded::NoKey | KeyNeeded::BesideIt))
}

/// Nobody has to fetch a key from elsewhere.
fn is_at_hand(release: &HandRelease) -> bool {
    open_to_all(release) || release.key == Some(KeyNeeded::Carried)
}

/// Somebody gets to one of them from each side.
fn from_both_sides(releases: &[&HandRelease], works: fn(&HandRelease) -> bool) -> bool {
    [GateSide::Inside, GateSide::Outside].iter().all(|side| {
        releases
            .iter()
            .any(|release| works(release) && release.reached_from.contains(side))
    })
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
        [gate.motion]
        reversal_distance = "6 in"
        [[gate.release]]
        at = ["22 ft", "14 in", "36 in"]
        stand_at = ["22 ft", "40 in", "0 in"]
        reached_from = ["inside", "outside"]
        key = "key beside it"
        without_power = true
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "psu"
        self_locking = true
        release_effort = "12 lbf"
        [[supply]]
        id = "psu"
        kind = "power supply"
    "#;

    fn on_battery(text: &str) -> String {
        format!("{text}\n[[battery]]\nid = \"battery\"\nsupply = \"psu\"\n")
    }

    #[test]
    fn holds_where_anybody_can_let_it_go_or_it_starts_back_by_itself() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let carried = on_battery(&SITE.replace("key beside it", "key carried"));
        let finding = only(&CHECK, &carried);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let loose = SITE
            .replace(
                "self_locking = true",
                "self_locking = false\nholding_force = \"20 lbf\"",
            )
            .replace("key beside it", "key elsewhere");
        let finding = only(&CHECK, &loose);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_on_a_carried_key_without_battery_a_ladder_one_side_and_a_stiff_handle() {
        for (was, is) in [
            ("key beside it", "key carried"),
            ("\"36 in\"]", "\"84 in\"]"),
            ("[\"inside\", \"outside\"]", "[\"inside\"]"),
            ("without_power = true", "without_power = false"),
            ("12 lbf", "18 lbf"),
        ] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
        let fetched = on_battery(&SITE.replace("key beside it", "key elsewhere"));
        assert_eq!(only(&CHECK, &fetched).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_its_release_and_the_way_back() {
        let (head, rest) = SITE.split_once("[[gate.release]]").unwrap_or((SITE, ""));
        let (_, tail) = rest.split_once("[[operator]]").unwrap_or(("", rest));
        let bare = format!(
            "{}[[operator]]{tail}",
            head.replace("reversal_distance = \"6 in\"", "")
        );
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
