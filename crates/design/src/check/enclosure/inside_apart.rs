//! Whether mains, low voltage, battery and heater are kept apart in an enclosure.
//!
//! A barrier or a compartment between mains and low voltage needs no figure. A distance does: it is recalled from the
//! codes, so it warns and does not pass. What a finger can touch with the door open, how the battery stands and breathes,
//! and how far the heater is from what burns, are looked at and taped.

use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Battery, Chemistry, CodeBasis, Enclosure, MainsInside, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-inside-apart",
    codes: BOTH,
    leaves_open: "how much gas a lead battery gives off and how large its vents are, the class of each low-voltage circuit, and wires that come loose later",
    concerns: "each enclosure",
    ask,
};

static APART_US: Source = Source {
    work: "NFPA 70",
    clause: "725.136: 2 in between power-limited circuits and mains where no barrier stands",
    evidence: Evidence::Memory,
    seen: "recalled",
};

static APART_EU: Source = Source {
    work: "IEC 60364-4-41",
    clause: "414.4: circuits of extra-low voltage apart from others, or insulated for the highest voltage present",
    evidence: Evidence::Memory,
    seen: "recalled",
};

static PROBE: Source = Source {
    work: "IEC 60529",
    clause: "access to hazardous parts: the jointed test finger of IP2X",
    evidence: Evidence::Seen,
    seen: "public summaries of the code of protection by enclosures",
};

static INSIDE: Source = Source {
    work: "what comes into an enclosure and what is kept there",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as seen with the door open",
};

/// Distance that stands for a barrier, in meters.
const DISTANCE: f64 = 0.0508;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            apart(asking, site, enclosure)
        });
    }
}

fn apart<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    let mut rules = Rules::default();
    let mains = mains(asking, site, enclosure, &mut rules);
    let battery = battery(asking, site, enclosure, &mut rules);
    let heater = heater(asking, enclosure, &mut rules);
    let stored = need!(asking, enclosure.apart?.nothing_stored, "true");
    let (mains, battery, heater, stored) = (mains?, battery?, heater?, stored?);
    rules.keep(*stored, "Things are kept in it that do not belong there.");
    asking.say(|_| {
        rules.says(|| {
            let said = [Some(mains), battery, heater];
            let said: Vec<&str> = said.into_iter().flatten().collect();
            format!(
                "{}: {}.",
                capitalized(enclosure.id.as_str()),
                said.join("; ")
            )
        })
    });
    Ok(rules.outcome())
}

fn mains<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
    rules: &mut Rules,
) -> Result<&'static str, Halt> {
    let kept = pick!(asking, enclosure.apart?.mains)?;
    if kept == MainsInside::NoMains {
        asking.rest_on(&INSIDE);
        return Ok("no mains come into it");
    }
    asking.rest_on(&PROBE);
    let covered = need!(asking, enclosure.apart?.live_covered, "true");
    let said = match kept {
        MainsInside::Barrier => "mains lie behind a barrier",
        MainsInside::Distance => {
            asking.rest_on(match site.site.code_basis {
                CodeBasis::Us => &APART_US,
                CodeBasis::Eu => &APART_EU,
            });
            let gap = read!(asking, enclosure.apart?.mains_gap)?;
            rules.compare(Comparison::at_most(
                Labeled::new(
                    "least distance of mains and low voltage",
                    Length::from_base(DISTANCE),
                ),
                Labeled::new("distance between them", gap),
            ));
            "mains are kept away by distance"
        }
        MainsInside::Together | MainsInside::NoMains => {
            rules.keep(
                false,
                "Mains and low voltage lie together: put a barrier between them.",
            );
            "mains and low voltage lie together"
        }
    };
    rules.keep(
        *covered?,
        "With the door open a finger touches a live part of the mains: cover it.",
    );
    Ok(said)
}

fn battery<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
    rules: &mut Rules,
) -> Result<Option<&'static str>, Halt> {
    let here = |one: &&Battery| one.enclosure.as_ref() == Some(&enclosure.id);
    let Some(battery) = site.battery.iter().find(here) else {
        return Ok(None);
    };
    let chemistry = pick!(asking, battery.chemistry);
    let strapped = need!(asking, enclosure.apart?.battery_strapped, "true");
    let (chemistry, strapped) = (chemistry?, strapped?);
    rules.keep(*strapped, "The battery stands loose: strap it down.");
    if chemistry != Chemistry::LeadAcid {
        return Ok(Some("the battery is strapped"));
    }
    let vented = need!(asking, enclosure.apart?.battery_vented, "true")?;
    rules.keep(
        *vented,
        "A lead battery gives off hydrogen, and the box lets none out: vent it high up.",
    );
    Ok(Some("the battery is strapped and its gas gets out"))
}

fn heater<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    rules: &mut Rules,
) -> Result<Option<&'static str>, Halt> {
    let heater = match &enclosure.heater {
        Some(_) => read!(asking, enclosure.heater)?,
        None => return asking.lack(&enclosure.origin, "heater", Wants::Written("\"0 W\"")),
    };
    if heater.base() <= 0.0 {
        return Ok(None);
    }
    asking.rest_on(&DATA_SHEET);
    let gap = read!(asking, enclosure.apart?.heater_gap);
    let wanted = read!(asking, enclosure.apart?.heater_gap_wanted);
    let (gap, wanted) = (gap?, wanted?);
    rules.compare(Comparison::at_most(
        Labeled::new("distance that the heater asks for", wanted),
        Labeled::new("distance from the heater to what burns", gap),
    ));
    Ok(Some("the heater stands clear"))
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
        [[enclosure]]
        id = "box"
        heater = "60 W"
        [enclosure.apart]
        mains = "barrier"
        mains_gap = "3 in"
        live_covered = true
        battery_strapped = true
        battery_vented = true
        heater_gap = "4 in"
        heater_gap_wanted = "2 in"
        nothing_stored = true
        [[battery]]
        id = "battery"
        enclosure = "box"
        chemistry = "lead-acid"
    "#;

    #[test]
    fn holds_with_a_barrier() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_for_each_thing_left_open() {
        for (from, to) in [
            ("\"barrier\"", "\"together\""),
            ("live_covered = true", "live_covered = false"),
            ("battery_strapped = true", "battery_strapped = false"),
            ("battery_vented = true", "battery_vented = false"),
            ("heater_gap = \"4 in\"", "heater_gap = \"1 in\""),
            ("nothing_stored = true", "nothing_stored = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn a_distance_is_recalled_and_does_not_pass() {
        let apart = SITE.replace("\"barrier\"", "\"distance\"");
        assert_eq!(only(&CHECK, &apart).verdict, Verdict::UnknownUntil);
        let near = apart.replace("mains_gap = \"3 in\"", "mains_gap = \"1 in\"");
        assert_eq!(only(&CHECK, &near).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_look_inside() {
        let bare = SITE
            .replace("live_covered = true", "")
            .replace("nothing_stored = true", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
