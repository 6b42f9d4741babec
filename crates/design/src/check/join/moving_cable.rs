//! Whether a cable that goes on to what moves lasts: bendings over its years, radius, cold, ice, guard, and what its breaking does.
//!
//! One cycle of the gate bends it to and fro once, as data sheets count.

use crate::asking::{Asking, need, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round, gate_of};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio, Temperature, Word as _};
use site::{Cable, Device, Id, MovingWay, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "join-moving-cable",
    codes: BOTH,
    leaves_open: "wear of the jacket where it rubs: look at it on each visit",
    concerns: "each cable between what stands still and what a leaf carries",
    ask,
};

static PRACTICE: Source = Source {
    work: "a cable that moves is guarded, hangs free of ice, and shows when it breaks",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice",
};

/// Days in a year on which the gate is used as on a usual day.
const DAYS: f64 = 365.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for cable in &site.cable {
        let (from, to) = (carried(site, &cable.from), carried(site, &cable.to));
        let ((Some(device), None) | (None, Some(device))) = (from, to) else {
            continue;
        };
        round.ask(About::new(&cable.origin, &cable.id), |asking| {
            moves(asking, site, device, cable)
        });
    }
}

/// The device of that name, where a leaf carries it.
fn carried<'s>(site: &'s Site, id: &Id) -> Option<&'s Device> {
    site.device
        .iter()
        .find(|device| device.id == *id && device.carried_by.is_some())
}

/// What a cable is made for, and what it meets.
struct Bent {
    cycles: Ratio,
    needed: Ratio,
    radius: Length,
    least: Length,
    coldest: Temperature,
    stands: Temperature,
}

fn moves<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    cable: &'s Cable,
) -> Answer {
    let way = pick!(asking, cable.moving?.way);
    let bent = bent(asking, site, device, cable);
    let guarded = need!(asking, cable.moving?.guarded, "true").copied();
    let free = need!(asking, cable.moving?.free_of_ice, "true").copied();
    let stops = need!(asking, cable.moving?.break_shows, "true").copied();
    let (way, bent, guarded, free, stops) = (way?, bent?, guarded?, free?, stops?);
    asking.rest_on(&DATA_SHEET);
    asking.rest_on(&PRACTICE);
    let mut rules = Rules::default();
    rules.keep(
        guarded,
        "Something catches, cuts or rubs it on the way: guard it.",
    );
    rules.keep(
        free,
        "Ice can hold it: let it drain and hang free of the ground.",
    );
    rules.keep(
        stops,
        "Its breaking does not show: the gate would go on without what it feeds.",
    );
    compare(&mut rules, &bent);
    asking.say(|print| {
        rules.says(|| {
            format!(
                "{} goes on by {}, bent to {} where {} is the least; {} bendings over its years, and it lasts {}.",
                cable.id,
                said(way),
                print.q(bent.radius),
                print.q(bent.least),
                print.q(bent.needed),
                print.q(bent.cycles)
            )
        })
    });
    Ok(rules.outcome())
}

fn said(way: MovingWay) -> String {
    format!("a {}", way.word())
}

fn compare(rules: &mut Rules, bent: &Bent) {
    rules.compare(Comparison::at_most(
        Labeled::new("bendings over its years", bent.needed),
        Labeled::new("bendings that it lasts", bent.cycles),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("least radius at which it lasts", bent.least),
        Labeled::new("smallest radius through the travel", bent.radius),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("coldest at which it may bend", bent.stands),
        Labeled::new("coldest air of a usual year", bent.coldest),
    ));
}

fn bent<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    cable: &'s Cable,
) -> Result<Bent, Halt> {
    let gate = gate_of(asking, site, device);
    let daily = gate.and_then(|gate| pick!(asking, gate.cycles_per_day));
    let years = pick!(asking, cable.moving?.years);
    let cycles = pick!(asking, cable.flex?.cycles);
    let least = read!(asking, cable.flex?.radius);
    let radius = read!(asking, cable.moving?.radius);
    let stands = read!(asking, cable.flex?.coldest);
    let coldest = read!(asking, site.climate?.coldest);
    let needed = f64::from(daily?) * DAYS * f64::from(years?);
    Ok(Bent {
        cycles: Ratio::from_base(f64::from(cycles?)),
        needed: Ratio::from_base(needed),
        radius: radius?,
        least: least?,
        coldest: coldest?,
        stands: stands?,
    })
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
        [climate]
        coldest = "5 °F"
        [[gate]]
        id = "main"
        kind = "track-slide"
        cycles_per_day = 100
        [[gate.leaf]]
        id = "leaf"
        [[supply]]
        id = "source"
        kind = "power supply"
        [[device]]
        id = "edge"
        kind = "contact edge"
        gate = "main"
        carried_by = "leaf"
        [[cable]]
        id = "w-04"
        from = "source"
        to = "edge"
        flex = { cycles = 1000000, radius = "3 in", coldest = "-4 °F" }
        moving = { way = "cable chain", radius = "4 in", years = 10, guarded = true, free_of_ice = true, break_shows = true }
    "#;

    #[test]
    fn holds_in_a_wide_chain() {
        // 100 a day over 10 years: 365 000.
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_worn_out_bent_too_tight_in_the_cold_and_unguarded() {
        for (from, to) in [
            ("cycles = 1000000", "cycles = 100000"),
            ("radius = \"4 in\"", "radius = \"2 in\""),
            ("\"-4 °F\"", "\"14 °F\""),
            ("guarded = true", "guarded = false"),
            ("free_of_ice = true", "free_of_ice = false"),
            ("break_shows = true", "break_shows = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_its_data_sheet() {
        let bare = SITE.lines().filter(|line| !line.contains("flex = "));
        let bare = bare.collect::<Vec<_>>().join("\n");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }

    #[test]
    fn a_cable_to_what_stands_still_is_not_asked() {
        assert!(all(&CHECK, &SITE.replace("carried_by = \"leaf\"", "")).is_empty());
    }
}
