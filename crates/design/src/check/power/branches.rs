//! Whether a short outdoors takes only its own branch, and what a branch of protective devices does when it dies.
//!
//! Each cable that leaves the enclosure of its source has a fuse of its own branch; a fuse before another is large enough
//! to stay; nothing else hangs on a fuse of protective devices; and each of those is watched, so that a dead branch stops
//! the gate.

use super::fuse::is_mains;
use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::circuit::{Circuits, Run, Takes};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::counted;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Current;
use site::{Device, Fuse, FuseKind, Id, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-branch-separate",
    codes: BOTH,
    leaves_open: "how far the voltage of the supply dips for the others while a fuse opens",
    concerns: "each low-voltage supply or battery with cables that leave its enclosure",
    ask,
};

static SELECTIVE: Source = Source {
    work: "IEC 60269-2",
    clause: "fuses of one kind in the ratio of 1.6 to 1 are selective",
    evidence: Evidence::Memory,
    seen: "recalled",
};

static APART: Source = Source {
    work: "a fuse opens its own branch, and what hangs on one fuse goes dead together",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as the circuits of the site are drawn",
};

/// Ratio of two fuses one behind the other.
const RATIO: f64 = 1.6;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    for (at, source) in circuits.sources.iter().copied().enumerate() {
        let leaving = leaving(&circuits, at);
        if !leaving.is_empty() && !is_mains(source) {
            round.ask(About::new(source.origin(), source.id()), |asking| {
                separate(asking, site, source.id(), &leaving)
            });
        }
    }
}

/// A cable that leaves the enclosure of its source, with what it feeds.
struct Leaving<'s> {
    run: Run<'s>,
    feeds: Vec<Takes<'s>>,
}

fn leaving<'s>(circuits: &Circuits<'s>, source: usize) -> Vec<Leaving<'s>> {
    let inside = circuits.enclosure(source);
    let mut leaving = Vec::new();
    for part in &circuits.parts {
        for run in part
            .runs
            .iter()
            .filter(|run| part.begins_at(run) == Some(source))
        {
            let feeds: Vec<Takes<'s>> = part.behind(run).map(|taker| taker.takes).collect();
            let outside = feeds
                .iter()
                .any(|takes| takes.enclosure().is_none() || takes.enclosure() != inside);
            if outside {
                leaving.push(Leaving { run: *run, feeds });
            }
        }
    }
    leaving
}

fn separate<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    source: &'s Id,
    leaving: &[Leaving<'s>],
) -> Answer {
    let mut rules = Rules::default();
    let mut whole = Ok(());
    let mut fuses: Vec<&'s Fuse> = Vec::new();
    for cable in leaving {
        match cable.run.fuse {
            Some(fuse) if fuses.iter().all(|known| known.id != fuse.id) => fuses.push(fuse),
            Some(_) => {}
            None => {
                whole = asking.lack(&cable.run.cable.origin, "fuse", Wants::Written("\"f3\""));
            }
        }
    }
    for device in leaving.iter().flat_map(protective) {
        whole = watched(asking, &mut rules, device).and(whole);
    }
    for fuse in &fuses {
        shared(&mut rules, fuse, leaving);
    }
    for fuse in &fuses {
        whole = selective(asking, site, &mut rules, fuse).and(whole);
    }
    whole?;
    asking.rest_on(&APART);
    asking.say(|_| {
        rules.says(|| {
            format!(
                "What leaves {source} by {} has {} of its own; a short takes its own branch, and each protective device is watched.",
                counted(leaving.len(), "cable"),
                counted(fuses.len(), "fuse")
            )
        })
    });
    Ok(rules.outcome())
}

fn protective<'c, 's>(cable: &'c Leaving<'s>) -> impl Iterator<Item = &'s Device> + 'c {
    cable.feeds.iter().filter_map(|takes| match takes {
        Takes::Device(device) if device.protection.is_some() => Some(*device),
        _ => None,
    })
}

fn watched<'s>(asking: &mut Asking<'s>, rules: &mut Rules, device: &'s Device) -> Result<(), Halt> {
    let monitored = *need!(asking, device.monitored, "true")?;
    rules.keep(
        monitored,
        &format!(
            "With its branch dead, {} is blind and nobody notices: have the operator test it.",
            device.id
        ),
    );
    Ok(())
}

/// Nothing but protective devices hangs on the fuse of one.
fn shared(rules: &mut Rules, fuse: &Fuse, leaving: &[Leaving<'_>]) {
    let here: Vec<&Leaving<'_>> = leaving
        .iter()
        .filter(|cable| cable.run.fuse.is_some_and(|other| other.id == fuse.id))
        .collect();
    let mut protective: Vec<&str> = here
        .iter()
        .flat_map(|cable| protective(cable))
        .map(|device| device.id.as_str())
        .collect();
    protective.dedup();
    let other = here
        .iter()
        .flat_map(|cable| &cable.feeds)
        .find(|takes| !matches!(takes, Takes::Device(device) if device.protection.is_some()));
    if let (Some(other), false) = (other, protective.is_empty()) {
        let what = format!(
            "A short in the cable of {} takes {} with it: fuse {} feeds them all.",
            other.id(),
            protective.join(", "),
            fuse.id
        );
        rules.keep(false, &what);
    }
}

fn selective<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    rules: &mut Rules,
    fuse: &'s Fuse,
) -> Result<(), Halt> {
    let Some(before) = &fuse.behind else {
        return Ok(());
    };
    let Some(before) = site.fuse.iter().find(|other| other.id == *before) else {
        return Ok(());
    };
    let small = read!(asking, fuse.rated_current);
    let large = read!(asking, before.rated_current);
    let kind = pick!(asking, fuse.kind);
    let (small, large, kind): (Current, Current, FuseKind) = (small?, large?, kind?);
    if kind == FuseKind::Electronic {
        return Ok(());
    }
    asking.rest_on(&SELECTIVE);
    rules.compare(Comparison::at_most(
        Labeled::new("least rating of the fuse before", small * RATIO),
        Labeled::new("rating of the fuse before", large),
    ));
    Ok(())
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
        [[supply]]
        id = "source"
        kind = "power supply"
        enclosure = "box"
        [[fuse]]
        id = "f1"
        [[fuse]]
        id = "f2"
        [[device]]
        id = "eye"
        kind = "reflective photo-eye"
        protection = "B1"
        monitored = true
        supply = "source"
        current = "50 mA"
        [[device]]
        id = "lamp"
        kind = "warning light"
        supply = "source"
        current = "1 A"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "eye"
        fuse = "f1"
        [[cable]]
        id = "w-02"
        from = "source"
        to = "lamp"
        fuse = "f2"
    "#;

    #[test]
    fn holds_with_a_fuse_each() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_lamp_takes_the_eye_with_it_and_where_nobody_notices() {
        let shared = SITE.replace("fuse = \"f2\"", "fuse = \"f1\"");
        let finding = only(&CHECK, &shared);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("takes eye with it"),
            "{}",
            finding.sentence
        );
        let blind = SITE.replace("monitored = true", "monitored = false");
        assert_eq!(only(&CHECK, &blind).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_the_fuse_before_is_no_larger() {
        let chain = SITE
            .replace(
                "id = \"f1\"",
                "id = \"f1\"\nbehind = \"f2\"\nkind = \"fuse\"\nrated_current = \"2 A\"",
            )
            .replace("id = \"f2\"", "id = \"f2\"\nrated_current = \"2 A\"");
        assert_eq!(only(&CHECK, &chain).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_fuse_on_the_list() {
        let finding = only(&CHECK, &SITE.replace("fuse = \"f2\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
