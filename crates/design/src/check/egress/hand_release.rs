//! Whether those who must can let the drive go by hand, and put it back so that it protects again.
//!
//! Every operator of the gate has a release. Somebody gets to one from inside, and from outside too or through a walk gate;
//! works it without power and without fetching a key; it draws the lock as well; where that person stands the leaf does
//! not come. The handle is held against the rule for doors, the push against the weaker guide figures.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::foot::envelope::envelope;
use crate::check::foot::way::{above, beside};
use crate::check::force::by_hand::{Pushes, pushes};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::motion::{PushPullGuide, Pusher};
use formula::protection::{BhmaPowerFailForce, BodyPart, HandMove, Iso13854Gap};
use formula::{Evidence, Source};
use quantity::{Force, Length, Quantity as _};
use site::{
    DeviceKind, Gate, GateSide, HandRelease, KeyNeeded, Operator, PowerLoss, Site, WalkGatePlace,
    WalkHours,
};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "egress-hand-release",
    codes: BOTH,
    leaves_open: "whether whoever is there at night is one of those who were shown, the height and the light at the handle, how long it takes somebody who is frightened, and wind on the released leaf",
    concerns: "each gate with an operator",
    ask,
};

static RELEASE: Source = Source {
    work: "safety notice of a national authority for powered gates; EN 12453",
    clause: "a gate has an emergency release, and there is a plan for trapped people and lost power",
    evidence: Evidence::Seen,
    seen: "HSE FOD 7-2010 in reprints, and the alert of the Health and Safety Authority (Ireland): http://www.hsa.ie/eng/Safety_Alerts/2015/Crushing_Hazards_on_Electrically_Powered_Gates/",
};

/// How a hand release is written.
pub(crate) const RELEASE_TABLE: &str = "[[gate.release]]\nat = [\"22 ft\", \"14 in\", \"36 in\"]\nstand_at = [\"22 ft\", \"40 in\", \"0 in\"]\nreached_from = [\"inside\"]\nkey = \"key carried\"\nheld_by = [\"yard master\"]\nwithout_power = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        if site.operators_of(gate).next().is_some() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                released(asking, site, gate)
            });
        }
    }
}

fn released<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&RELEASE);
    let body = asking.work(&Iso13854Gap {
        part: BodyPart::Body,
    });
    let swept = envelope(asking, gate);
    let releases = releases(asking, site, gate);
    let pushes: Vec<Result<Pushes, Halt>> = gate
        .leaf
        .iter()
        .map(|leaf| self::pushes(asking, site, gate, leaf))
        .collect();
    let (body, swept, releases) = (body?.gap, swept?, releases?);
    let pushes = pushes.into_iter().collect::<Result<Vec<_>, _>>()?;
    if let Some(fault) = fault(site, gate, &releases) {
        asking.say(|_| fault.to_owned());
        return Ok(Outcome::Rule(false));
    }
    let mut comparisons = Vec::new();
    for one in &releases {
        let latch = BhmaPowerFailForce {
            act: HandMove::Latch,
            force: one.effort,
        };
        comparisons.push(Comparison::at_most(
            Labeled::new("force at the handle", one.effort),
            Labeled::new("force that releases a door", asking.work(&latch)?.limit),
        ));
        comparisons.push(Comparison::at_most(
            Labeled::new("room that a body needs", body),
            Labeled::new(
                "from where one stands to the leaf's travel",
                Length::from_base(swept.to_point(one.stand)),
            ),
        ));
    }
    let guide = asking.work(&PushPullGuide { who: Pusher::Women })?;
    for Pushes { met, clear } in &pushes {
        comparisons.push(Comparison::at_most(
            Labeled::new("push where seals or a catch are met", *met),
            Labeled::new("guide force to start", guide.start),
        ));
        comparisons.push(Comparison::at_most(
            Labeled::new("push to keep moving", *clear),
            Labeled::new("guide force to keep moving", guide.keep),
        ));
    }
    asking.say(|print| {
        let mut shown: Vec<String> = Vec::new();
        for name in releases.iter().flat_map(|one| &one.release.shown_to) {
            if !shown.iter().any(|known| known == name.as_str()) {
                shown.push(name.to_string());
            }
        }
        let hardest = releases
            .iter()
            .map(|one| one.effort)
            .fold(
                Force::default(),
                |most, one| if one > most { one } else { most },
            );
        let in_the_way = releases
            .iter()
            .any(|one| swept.to_point(one.stand) < body.base());
        if in_the_way {
            return "Whoever lets the drive go stands where the leaf comes, or nearer to it than a body is deep: move the handle or lead a cable out.".to_owned();
        }
        format!(
            "The drive is let go by hand with {} at most, from beside the leaf's travel; shown to {}.",
            print.q(hardest),
            and(&shown)
        )
    });
    Outcome::worst(comparisons).ok_or(Halt)
}

/// A release with what was read of it.
struct Released<'s> {
    release: &'s HandRelease,
    stand: (f64, f64),
    key: KeyNeeded,
    effort: Force,
}

fn releases<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Released<'s>>, Halt> {
    let covered = |operator: &Operator| {
        let mut releases = gate.release.iter();
        releases.any(|one| one.operator.as_ref().is_none_or(|id| *id == operator.id))
    };
    if !site.operators_of(gate).all(covered) {
        return asking.lack(&gate.origin, "release", Wants::Table(RELEASE_TABLE));
    }
    let each: Vec<Result<Released<'s>, Halt>> = gate
        .release
        .iter()
        .map(|one| read_release(asking, site, gate, one))
        .collect();
    each.into_iter().collect()
}

fn read_release<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    release: &'s HandRelease,
) -> Result<Released<'s>, Halt> {
    let origin = &release.origin;
    let at = asking.position(origin, "at", release.at.as_ref());
    let stand = asking.position(origin, "stand_at", release.stand_at.as_ref());
    let key = pick!(asking, release.key);
    let sides = asking.need(
        origin,
        "reached_from",
        release.reached_from.first(),
        "[\"inside\"]",
    );
    let power = asking.need(
        origin,
        "without_power",
        release.without_power.as_ref(),
        "true",
    );
    let again = asking.need(
        origin,
        "restores_protection",
        release.restores_protection.as_ref(),
        "true",
    );
    let told = asking.need(origin, "shown_to", release.shown_to.first(), "[\"owner\"]");
    let day = asking.need(origin, "shown", release.shown.as_ref(), "2026-06-15");
    let holder = match key {
        Ok(KeyNeeded::Carried) => asking
            .need(origin, "held_by", release.held_by.first(), "[\"owner\"]")
            .map(Some),
        _ => Ok(None),
    };
    let effort = effort(asking, site, gate, release);
    if locked(site, gate) && !gate.release.iter().any(|one| one.frees_lock.is_some()) {
        let _ = asking.lack::<()>(origin, "frees_lock", Wants::Written("true"));
        return Err(Halt);
    }
    let (_, _, _, _, _, _, _) = (at?, sides?, power?, again?, told?, day?, holder?);
    Ok(Released {
        release,
        stand: above(stand?),
        key: key?,
        effort: effort?,
    })
}

/// The force at the handle: its own, else the greatest on the data sheets of the operators that it lets go.
fn effort<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    release: &'s HandRelease,
) -> Result<Force, Halt> {
    if release.effort.is_some() {
        return read!(asking, release.effort);
    }
    let mut greatest = Ok(Force::default());
    for operator in site.operators_of(gate) {
        if release
            .operator
            .as_ref()
            .is_none_or(|id| *id == operator.id)
        {
            let effort = read!(asking, operator.release_effort);
            greatest =
                greatest.and_then(|most| effort.map(|one| if one > most { one } else { most }));
        }
    }
    greatest
}

/// A powered lock holds the gate when power is lost.
fn locked(site: &Site, gate: &Gate) -> bool {
    site.device.iter().any(|device| {
        device.kind == DeviceKind::Lock
            && device.gate.as_ref() == Some(&gate.id)
            && device.on_power_loss != Some(PowerLoss::FailSafe)
    })
}

/// What is wrong with the releases of a gate.
fn fault(site: &Site, gate: &Gate, releases: &[Released<'_>]) -> Option<&'static str> {
    let from = |side: GateSide| {
        releases
            .iter()
            .any(|one| one.release.reached_from.contains(&side))
    };
    let round = site.walk_gate.iter().any(|walk| {
        beside(walk.gate.as_ref(), gate)
            && walk.place == Some(WalkGatePlace::Apart)
            && matches!(
                walk.usable,
                Some(WalkHours::Always | WalkHours::WithVehicleGate)
            )
    });
    if releases
        .iter()
        .any(|one| one.release.without_power != Some(true))
    {
        return Some(
            "The release wants power: with mains and battery off nobody gets the gate open.",
        );
    }
    if releases.iter().any(|one| one.key == KeyNeeded::Elsewhere) {
        return Some(
            "The key to the release has to be fetched: hang it behind glass beside the release, or give it to whoever may need it.",
        );
    }
    if !from(GateSide::Inside) {
        return Some("Nobody gets to the release from inside, where people can be shut in.");
    }
    if !from(GateSide::Outside) && !round {
        return Some(
            "The release is reached from inside only, and no walk gate leads there: whoever comes to help stands outside.",
        );
    }
    if locked(site, gate)
        && !releases
            .iter()
            .any(|one| one.release.frees_lock == Some(true))
    {
        return Some(
            "The release lets the drive go, and the lock still holds the leaf: it needs a cable or a key of its own.",
        );
    }
    releases
        .iter()
        .any(|one| one.release.restores_protection != Some(true))
        .then_some("Engaged again, the gate may move before its devices protect: the controller has to stay still until it is told to move.")
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
        travel = "20 ft 8 in"
        slope = "0 ± 0.001"
        seal_force = "0 lbf"
        debris_force = "0 lbf"
        [[gate.leaf]]
        id = "leaf"
        mass = "640 lb ± 5 %"
        length = "21 ft 6 in"
        closed_end = "-3 in"
        [gate.wheels]
        diameter = "6 in"
        rolling = "steel on steel"
        bearing_friction = "0.01"
        axle_diameter = "3/4 in"
        [[gate.release]]
        at = ["22 ft", "14 in", "36 in"]
        stand_at = ["22 ft", "40 in", "0 in"]
        reached_from = ["inside", "outside"]
        key = "key carried"
        held_by = ["yard master"]
        without_power = true
        frees_lock = true
        shown_to = ["yard master", "two yard hands"]
        shown = 2026-06-15
        restores_protection = true
        [[operator]]
        id = "drive"
        gate = "main"
        release_effort = "12 lbf"
        [[device]]
        id = "bolt"
        kind = "lock"
        gate = "main"
        on_power_loss = "fail-secure"
    "#;

    #[test]
    fn holds_beside_the_travel_with_a_light_handle() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("two yard hands"));
    }

    #[test]
    fn fails_one_rule_at_a_time() {
        for (from, to) in [
            ("\"12 lbf\"", "\"25 lbf\""),
            ("\"40 in\"", "\"6 in\""),
            ("[\"inside\", \"outside\"]", "[\"inside\"]"),
            ("[\"inside\", \"outside\"]", "[\"outside\"]"),
            ("\"key carried\"", "\"key elsewhere\""),
            ("without_power = true", "without_power = false"),
            ("frees_lock = true", "frees_lock = false"),
            ("restores_protection = true", "restores_protection = false"),
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
    fn a_walk_gate_leads_to_the_release_within() {
        let round = SITE.replace("[\"inside\", \"outside\"]", "[\"inside\"]")
            + "[[walk_gate]]\nid = \"walk\"\nplace = \"apart\"\nusable = \"always\"\n";
        assert_eq!(only(&CHECK, &round).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_a_release_and_without_its_people() {
        let split: Vec<&str> = SITE.split("[[gate.release]]").collect();
        let after = split
            .get(1)
            .and_then(|after| after.split_once("[[operator]]"));
        let none = format!(
            "{}[[operator]]{}",
            split[0],
            after.map_or("", |after| after.1)
        );
        assert_eq!(only(&CHECK, &none).missing.len(), 1);
        let untold = SITE
            .replace("shown_to = [\"yard master\", \"two yard hands\"]", "")
            .replace("shown = 2026-06-15", "")
            .replace("held_by = [\"yard master\"]", "")
            .replace("frees_lock = true", "");
        let finding = only(&CHECK, &untold);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 4, "{:?}", finding.missing);
    }
}
