//! Who is hit if one device is missing or dead: each is taken out in turn, and people walk past again.
//!
//! A device without which somebody is hit has to be monitored by an operator that acts on it. Here a first look is taken,
//! which finds such devices and never clears one: where all are monitored, none is lost unnoticed.

use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Outcome};
use crate::plain::and;
use crate::subject::About;
use crate::walk::{GateWalk, Slot};
use formula::{Evidence, Source};
use site::{Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "walk-one-device-lost",
    codes: BOTH,
    leaves_open: "devices that fail together, a monitored device that fails between two tests, and whether a device without which nobody was found hit is truly not needed: only a proof would show that",
    concerns: "each gate",
    ask,
};

/// Walks of each family past a gate with one device less.
const EACH: u64 = 48;

static WALKED: Source = Source {
    work: "bodies on straight paths past a leaf with one device less",
    clause: "",
    evidence: Evidence::Physics,
    seen: "times of contact worked exactly",
};

/// A device that was taken out.
struct Lost<'w> {
    id: &'w str,
    monitored: Option<bool>,
    /// How many families of walks have somebody hit without it, and one of them.
    hit: usize,
    first: String,
}

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask_in_full(About::new(&gate.origin, &gate.id), |asking| {
            each_lost(asking, site, gate)
        });
    }
}

fn each_lost<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let walk = GateWalk::read(asking, site, gate)?;
    asking.rest_on(&WALKED);
    if walk.is_hit_in_a_glance(asking, EACH) {
        return asking.wait_for(
            "Somebody is hit with every device working: mend that first, then ask what hangs on each device."
                .to_owned(),
        );
    }
    let lost = lost(asking, &walk);
    if lost.is_empty() {
        return asking.refuse("no device that senses people stops this gate");
    }
    asking.say(|_| said(&lost));
    let unnoticed = |one: &&Lost<'_>| one.monitored != Some(true);
    let alone = lost.iter().filter(unnoticed).find(|one| one.hit > 0);
    if let Some(one) = alone {
        if one.monitored == Some(false) {
            return Ok(Outcome::Rule(false));
        }
        let device = site.device.iter().find(|device| device.id == *one.id);
        if let Some(device) = device {
            return asking.lack(
                &device.origin,
                "monitored",
                crate::asking::Wants::Written("true"),
            );
        }
    }
    if lost.iter().any(|one| one.monitored != Some(true)) {
        return asking.wait_for(
            "Nobody is hit in a first look without a device that nobody monitors; unknown until proved.".to_owned(),
        );
    }
    Ok(Outcome::Rule(true))
}

fn lost<'w>(asking: &Asking<'_>, walk: &'w GateWalk<'_>) -> Vec<Lost<'w>> {
    let in_it = walk.sensing().iter();
    in_it
        .filter(|one| !matches!(one.slot, Slot::Left(_)))
        .map(|one| {
            let (hit, first) = walk.hit_without(asking, &one.slot, EACH);
            Lost {
                id: &one.id,
                monitored: one.monitored,
                hit,
                first,
            }
        })
        .collect()
}

fn said(lost: &[Lost<'_>]) -> String {
    let mut sentences: Vec<String> = lost
        .iter()
        .filter(|one| one.hit > 0)
        .map(|one| {
            let noticed = match one.monitored {
                Some(true) => "its loss is noticed: it is monitored",
                Some(false) => "its loss goes unnoticed: nobody monitors it",
                None => "nothing says whether its loss is noticed",
            };
            format!(
                "Without {} somebody is hit in {} of the kinds of walk ({}); {noticed}.",
                one.id, one.hit, one.first
            )
        })
        .collect();
    let backed: Vec<String> = lost
        .iter()
        .filter(|one| one.hit == 0)
        .map(|one| one.id.to_owned())
        .collect();
    if !backed.is_empty() {
        let it = if backed.len() == 1 {
            "it"
        } else {
            "one of them"
        };
        sentences.push(format!(
            "Without {} nobody is found hit: the other devices do without {it}.",
            and(&backed)
        ));
    }
    sentences.join(" ")
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::walk::court::{COURT, LANE};
    use crate::check::walk::yard::YARD;

    #[test]
    fn holds_while_every_device_is_monitored() {
        let finding = only(&CHECK, YARD);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding
                .sentence
                .contains("Without edge-leading somebody is hit"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_an_edge_that_nobody_monitors() {
        let alone = YARD.replace("monitored = true", "monitored = false");
        let finding = only(&CHECK, &alone);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_until_somebody_says_whether_it_is_monitored() {
        let silent = YARD.replace("monitored = true", "");
        let finding = only(&CHECK, &silent);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }

    #[test]
    fn each_device_of_a_swing_gate_and_of_an_arm_is_taken_out() {
        for good in [COURT, LANE] {
            let finding = only(&CHECK, good);
            assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
            assert!(
                finding.sentence.contains("Without field somebody is hit"),
                "{}",
                finding.sentence
            );
        }
    }
}
