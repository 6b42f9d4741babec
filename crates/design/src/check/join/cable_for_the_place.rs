//! Whether the jacket of a cable is made for where it runs: water, sun, cold and heat.
//!
//! Any conduit out of doors counts as a wet place. Data cables below ground are filled as well, since water that creeps along
//! a core changes what it carries.

use crate::asking::{Asking, need, read};
use crate::check::pull::{Alike, in_conduits};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Temperature;
use site::{Carries, CodeBasis, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "join-cable-for-the-place",
    codes: BOTH,
    leaves_open: "oil and solvents, and mice where the ends of a conduit are not closed",
    concerns: "each kind of cable that runs through a conduit",
    ask,
};

static WET: Source = Source {
    work: "NFPA 70 (NEC) 300.5(B), 300.9 and 310.10(C)",
    clause: "the inside of raceways underground, and of those in wet places above ground, is a wet location; cables in them are listed for it",
    evidence: Evidence::Seen,
    seen: "a trade journal's code column and a building code forum, which quote the clauses",
};

static PRACTICE: Source = Source {
    work: "ducts out of doors fill with water; data cables in them have a filled core; jackets in the sun are rated for it",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for kind in in_conduits(site, &["jacket", "insulation_rating", "carries"]) {
        round.ask(About::new(&kind.first.origin, &kind.first.id), |asking| {
            made_for(asking, site, &kind)
        });
    }
}

fn made_for<'s>(asking: &mut Asking<'s>, site: &'s Site, kind: &Alike<'s>) -> Answer {
    let cable = kind.first;
    let wet = need!(asking, cable.jacket?.wet, "true").copied();
    let filled = if cable.carries == Some(Carries::Data) {
        need!(asking, cable.jacket?.water_blocked, "true").copied()
    } else {
        Ok(true)
    };
    let in_sun = in_sun(asking, kind);
    let stands_cold = read!(asking, cable.jacket?.coldest_fixed);
    let coldest = read!(asking, site.climate?.coldest);
    let rated = read!(asking, cable.insulation_rating);
    let hottest = hottest(asking, kind);
    let (wet, filled, in_sun) = (wet?, filled?, in_sun?);
    let (stands_cold, coldest, rated, hottest) = (stands_cold?, coldest?, rated?, hottest?);
    asking.rest_on(&DATA_SHEET);
    asking.rest_on(&PRACTICE);
    if site.site.code_basis == CodeBasis::Us {
        asking.rest_on(&WET);
    }
    let mut rules = Rules::default();
    rules.keep(
        wet,
        "Its conduit is a wet place, and it is not rated for wet places.",
    );
    rules.keep(
        filled,
        "A data cable below ground needs a filled core: water creeps along this one.",
    );
    rules.keep(
        !in_sun,
        "The sun reaches its jacket, and it is not rated for sunlight: cover it or take one that is.",
    );
    rules.compare(Comparison::at_most(
        Labeled::new("coldest that the jacket stands", stands_cold),
        Labeled::new("coldest air of a usual year", coldest),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("hottest that the conductor gets", hottest),
        Labeled::new("temperature that its insulation stands", rated),
    ));
    asking.say(|print| {
        rules.says(|| {
            format!(
                "{}: rated for wet places, good from {} to {}, and meets {} to {}.",
                kind.named(),
                print.q(stands_cold),
                print.q(rated),
                print.q(coldest),
                print.q(hottest)
            )
        })
    });
    Ok(rules.outcome())
}

/// The sun reaches a jacket that is not rated for it.
fn in_sun<'s>(asking: &mut Asking<'s>, kind: &Alike<'s>) -> Result<bool, Halt> {
    let cable = kind.first;
    if *need!(asking, cable.jacket?.sunlight, "true")? {
        return Ok(false);
    }
    let mut reached = false;
    let mut whole = Ok(());
    for cable in &kind.cables {
        let cable: &'s site::Cable = cable;
        match need!(asking, cable.laid?.in_sun, "false") {
            Ok(in_sun) => reached |= *in_sun,
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| reached)
}

/// The hottest of the cables: those that say so themselves, and what the part says for the others.
fn hottest<'s>(asking: &mut Asking<'s>, kind: &Alike<'s>) -> Result<Temperature, Halt> {
    let mut hottest: Option<Temperature> = None;
    let mut said_for_all = false;
    for cable in &kind.cables {
        let cable: &'s site::Cable = cable;
        let from_part = cable.origin.from_part("hottest");
        if from_part && said_for_all {
            continue;
        }
        said_for_all |= from_part;
        let one = read!(asking, cable.hottest)?;
        if hottest.is_none_or(|known| one > known) {
            hottest = Some(one);
        }
    }
    hottest.ok_or(Halt)
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
        coldest = "5 °F"
        [[supply]]
        id = "source"
        kind = "power supply"
        [[enclosure]]
        id = "box"
        [[conduit]]
        id = "c-01"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        carries = "data"
        hottest = "104 °F"
        insulation_rating = "75 °C"
        jacket = { wet = true, water_blocked = true, sunlight = false, coldest_fixed = "-22 °F" }
        laid = { in_sun = false }
        route = ["c-01"]
    "#;

    #[test]
    fn holds_for_a_filled_cable_out_of_the_sun() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_dry_unfilled_in_the_sun_in_the_cold_and_in_the_heat() {
        for (from, to) in [
            ("wet = true", "wet = false"),
            ("water_blocked = true", "water_blocked = false"),
            ("in_sun = false", "in_sun = true"),
            ("\"-22 °F\"", "\"14 °F\""),
            ("\"104 °F\"", "\"180 °F\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn a_jacket_for_sunlight_may_lie_in_it() {
        let lit = SITE
            .replace("sunlight = false", "sunlight = true")
            .replace("in_sun = false", "in_sun = true");
        assert_eq!(only(&CHECK, &lit).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_the_print_on_the_jacket() {
        let bare = SITE.lines().filter(|line| !line.contains("jacket"));
        let bare = bare.collect::<Vec<_>>().join("\n");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 4, "{:?}", finding.missing);
    }
}
