//! Whether each conduit was found open, dry, empty and as long as planned before a cable goes in.
//!
//! The mandrel that went through has to be at least 80 % of the bore: manuals ask for 80 to 90 %, or a quarter inch less
//! than the bore. The length by measuring tape may differ from that of the plan by a twentieth, or by 0.3 m (1 ft).

use super::walk::{Piece, pieces};
use crate::asking::{Asking, need, read};
use crate::check::route::bore::{bore, cables_in};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Labeled};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Conduit, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "pull-conduit-clear",
    codes: BOTH,
    leaves_open: "what gets in after the mandrel went through: keep both ends closed until the pull",
    concerns: "each conduit with cables in it",
    ask,
};

static MANDREL: Source = Source {
    work: "a mandrel of 80 % of the bore proves a conduit; length by tape within a twentieth, or 0.3 m (1 ft)",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "a conduit construction manual asks for about 90 % of the inside diameter, a city's specification for a quarter inch less than it",
};

/// Share of the bore that the mandrel has.
const MANDREL_SHARE: f64 = 0.8;
/// Share of the planned length by which the tape may differ, and the least difference that counts, in meters.
const TAPE_SHARE: f64 = 0.05;
const TAPE_LEAST: f64 = 0.3;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for conduit in site
        .conduit
        .iter()
        .filter(|conduit| cables_in(site, conduit).next().is_some())
    {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            clear(asking, conduit)
        });
    }
}

fn clear<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> Answer {
    let inside = bore(asking, conduit);
    let pieces = pieces(asking, conduit);
    let mandrel = read!(asking, conduit.proved?.mandrel);
    let taped = read!(asking, conduit.proved?.taped);
    let dry = need!(asking, conduit.proved?.dry, "true").copied();
    let empty = need!(asking, conduit.proved?.empty, "true").copied();
    let (inside, pieces, mandrel, taped) = (inside?, pieces?, mandrel?, taped?);
    let (dry, empty) = (dry?, empty?);
    asking.rest_on(&MANDREL);
    let planned = length(&pieces);
    let apart = Length::from_base((taped - planned).base().abs());
    let allowed = Length::from_base((TAPE_SHARE * planned.base()).max(TAPE_LEAST));
    let mut rules = Rules::default();
    rules.keep(
        dry,
        "Water stands in it: blow or swab it out, and find where it comes in.",
    );
    rules.keep(
        empty,
        "An old cable lies in it: take it out, or count it in the fill and the pull.",
    );
    let wanted = inside * MANDREL_SHARE;
    rules.compare(Comparison::at_most(
        Labeled::new("mandrel that has to pass", wanted),
        Labeled::new("mandrel that passed", mandrel),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("difference of the taped length from the plan", apart),
        Labeled::new("difference that is allowed", allowed),
    ));
    asking.say(|print| {
        rules.says(|| {
            format!(
                "A mandrel of {} went through {}, where {} is wanted; the tape says {}, the plan {}.",
                print.q(mandrel),
                conduit.id,
                print.q(wanted),
                print.q(taped),
                print.q(planned)
            )
        })
    });
    Ok(rules.outcome())
}

/// Length of a conduit along its center line.
pub(crate) fn length(pieces: &[Piece]) -> Length {
    pieces.iter().fold(Length::from_base(0.0), |sum, piece| {
        sum + match *piece {
            Piece::Straight { length, .. } => length,
            Piece::Bend { angle, radius } => radius * angle.base(),
        }
    })
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
        [[supply]]
        id = "source"
        kind = "power supply"
        [[enclosure]]
        id = "box"
        [[conduit]]
        id = "c-01"
        bore = "1 in"
        segment = [{ straight = "40 ft", bend = "90°", radius = "12 in" }, { straight = "4 ft" }]
        proved = { mandrel = "0.8 in", taped = "45 ft 6 in", dry = true, empty = true }
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        route = ["c-01"]
    "#;

    #[test]
    fn holds_where_mandrel_and_tape_agree() {
        // 40 ft, a quarter turn of 1 ft, 4 ft: 45.571 ft.
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_thin_mandrel_a_wrong_length_and_water() {
        for (from, to) in [
            ("\"0.8 in\"", "\"0.7 in\""),
            ("45 ft 6 in", "52 ft"),
            ("45 ft 6 in", "40 ft"),
            ("dry = true", "dry = false"),
            ("empty = true", "empty = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_before_anybody_tried() {
        let bare = SITE.lines().filter(|line| !line.contains("proved"));
        let bare: Vec<&str> = bare.collect();
        let finding = only(&CHECK, &bare.join("\n"));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 4, "{:?}", finding.missing);
    }
}
