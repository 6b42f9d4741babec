//! Whether a cable is bent tighter than it stands: in the bends that it is pulled through, at its last turns, in the cold.
//!
//! A cable under tension lies against the inner wall of a bend, so that half the bore comes off the radius of the conduit.
//! A four-pair data cable without figures of its own has those of the cabling standard, four times its diameter. The last
//! turn is that of the cable itself, or that to which the gauge disc was held at every end.

use super::walk::{Piece, pieces};
use super::{Alike, in_conduits};
use crate::asking::{Asking, read};
use crate::check::route::bore::bore;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Length;
use site::{Cable, Carries, Conduit, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "pull-bend-radius",
    codes: BOTH,
    leaves_open: "a kink made by hand, and turns within handholes",
    concerns: "each kind of cable that runs through a conduit",
    ask,
};

static FOUR_PAIR: Source = Source {
    work: "ANSI/TIA-568.0-D",
    clause: "least inside bend radius of balanced four-pair cable, four times its diameter, with and without load",
    evidence: Evidence::Seen,
    seen: "a trade journal on bend radius and a support maker's guide, which agree",
};

/// Diameters of a four-pair cable to which it may be bent.
const FOUR_PAIR_DIAMETERS: f64 = 4.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for kind in in_conduits(site, &["jacket", "diameter", "carries", "cores"]) {
        round.ask(About::new(&kind.first.origin, &kind.first.id), |asking| {
            bent(asking, site, &kind)
        });
    }
}

fn bent<'s>(asking: &mut Asking<'s>, site: &'s Site, kind: &Alike<'s>) -> Answer {
    let cable = kind.first;
    let (pulled, fixed) = least(asking, cable);
    let tightest = tightest(asking, site, kind);
    let last = last_turn(asking, site, kind);
    let stands = read!(asking, cable.jacket?.coldest_handled);
    let day = read!(asking, site.pulling?.coldest);
    let (pulled, fixed, tightest, last) = (pulled?, fixed?, tightest?, last?);
    let (stands, day) = (stands?, day?);
    let mut rules = Rules::default();
    if let Some(tightest) = tightest {
        rules.compare(Comparison::at_most(
            Labeled::new("least radius while it is pulled", pulled),
            Labeled::new("inside of the tightest bend", tightest),
        ));
    }
    rules.compare(Comparison::at_most(
        Labeled::new("least radius for good", fixed),
        Labeled::new("tightest last turn", last),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("coldest at which it may be bent", stands),
        Labeled::new("coldest of the job", day),
    ));
    asking.say(|print| {
        let bends = tightest.map_or_else(String::new, |tightest| {
            format!(
                "{} inside the tightest bend, where it needs {} while it is pulled; ",
                print.q(tightest),
                print.q(pulled)
            )
        });
        format!(
            "{}: {bends}last turn to {}, where it needs {}; bent at {} and above, where it stands {}.",
            kind.named(),
            print.q(last),
            print.q(fixed),
            print.q(day),
            print.q(stands)
        )
    });
    Ok(rules.outcome())
}

/// The least radius of a cable while it is pulled, and for good.
fn least<'s>(
    asking: &mut Asking<'s>,
    cable: &'s Cable,
) -> (Result<Length, Halt>, Result<Length, Halt>) {
    let written = cable
        .jacket
        .as_ref()
        .is_some_and(|jacket| jacket.radius_pulled.is_some() && jacket.radius_fixed.is_some());
    let four_pair = cable.carries == Some(Carries::Data) && cable.cores == Some(8);
    if !written && four_pair {
        asking.rest_on(&FOUR_PAIR);
        let radius = read!(asking, cable.diameter).map(|diameter| diameter * FOUR_PAIR_DIAMETERS);
        return (radius, radius);
    }
    asking.rest_on(&DATA_SHEET);
    let pulled = read!(asking, cable.jacket?.radius_pulled);
    let fixed = read!(asking, cable.jacket?.radius_fixed);
    (pulled, fixed)
}

/// The inside of the tightest bend of all conduits on the way; nothing where none bends.
fn tightest<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: &Alike<'s>,
) -> Result<Option<Length>, Halt> {
    let mut tightest: Option<Length> = None;
    let mut whole = Ok(());
    for conduit in on_the_way(site, kind) {
        match inside(asking, conduit) {
            Ok(Some(inside)) if tightest.is_none_or(|known| inside < known) => {
                tightest = Some(inside);
            }
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| tightest)
}

/// The conduits that cables of a kind run through.
pub(super) fn on_the_way<'s>(
    site: &'s Site,
    kind: &Alike<'s>,
) -> impl Iterator<Item = &'s Conduit> {
    site.conduit.iter().filter(|conduit| {
        kind.cables
            .iter()
            .any(|cable| cable.route.contains(&conduit.id))
    })
}

/// The inner radius of a conduit's tightest bend.
fn inside<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> Result<Option<Length>, Halt> {
    if conduit.segment.iter().all(|segment| segment.bend.is_none()) {
        return Ok(None);
    }
    let bore = bore(asking, conduit);
    let pieces = pieces(asking, conduit);
    let (bore, pieces) = (bore?, pieces?);
    let radii = pieces.iter().filter_map(|piece| match *piece {
        Piece::Bend { radius, .. } => Some(radius - bore * 0.5),
        Piece::Straight { .. } => None,
    });
    Ok(radii.reduce(|one, other| if other < one { other } else { one }))
}

/// The tightest last turn: of each cable that has its own, and of the site for the others.
fn last_turn<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: &Alike<'s>,
) -> Result<Length, Halt> {
    let mut tightest: Option<Length> = None;
    for cable in &kind.cables {
        let own = cable.laid.as_ref().and_then(|laid| {
            asking.read_if_there(&laid.origin, "last_turn", laid.last_turn.as_ref())
        });
        let turn = match own {
            Some(turn) => turn,
            None => read!(asking, site.pulling?.last_turn)?,
        };
        if tightest.is_none_or(|known| turn < known) {
            tightest = Some(turn);
        }
    }
    tightest.ok_or(Halt)
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
        [pulling]
        coldest = "40 °F"
        last_turn = "2 in"
        [[supply]]
        id = "source"
        kind = "power supply"
        [[enclosure]]
        id = "box"
        [[conduit]]
        id = "c-01"
        bore = "1 in"
        segment = [{ straight = "40 ft", bend = "90°", radius = "6 in" }, { straight = "4 ft" }]
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        carries = "power"
        diameter = "0.5 in"
        jacket = { radius_pulled = "4 in", radius_fixed = "2 in", coldest_handled = "32 °F" }
        route = ["c-01"]
    "#;

    #[test]
    fn holds_in_wide_bends_on_a_mild_day() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("5 1/2 in"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_around_a_tight_bend_a_tight_turn_and_in_the_cold() {
        for (from, to) in [
            ("radius = \"6 in\"", "radius = \"4 in\""),
            ("last_turn = \"2 in\"", "last_turn = \"1 in\""),
            ("coldest = \"40 °F\"", "coldest = \"20 °F\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
        let own = SITE.to_owned() + "laid = { last_turn = \"1 in\" }\n";
        assert_eq!(only(&CHECK, &own).verdict, Verdict::Fails);
    }

    #[test]
    fn a_four_pair_cable_has_the_radius_of_the_standard() {
        let data = SITE
            .replace("radius_pulled = \"4 in\", radius_fixed = \"2 in\", ", "")
            .replace(
                "carries = \"power\"",
                "carries = \"data\"\n        cores = 8",
            );
        let finding = only(&CHECK, &data);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // Four times half an inch is all that the last turn gives.
        assert!((finding.ratio.unwrap() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn unknown_without_the_data_sheet_and_the_turn() {
        let bare = SITE
            .replace("radius_pulled = \"4 in\", ", "")
            .replace("last_turn = \"2 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
