//! Whether what is buried is known before the first cut, and every hole, trench and rod near it keeps off or is dug by hand.

use super::cuts::{Cut, cuts};
use crate::asking::{Asking, Wants, read};
use crate::check::plane::{Piece, between, from};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::routes::outline;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Buried, Locate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "survey-buried-services",
    codes: BOTH,
    leaves_open: "lines that nobody marked, how deep a marked line lies, the days that the dig-notice law asks for, and stakes and pins: a mark is no proof of empty ground",
    concerns: "a site with conduits, foundations or electrodes",
    ask,
};

static BY_HAND: Source = Source {
    work: "within the distance that the locate ticket or the owner of a line names, the ground is opened by hand only; no rod is driven there; private lines are traced too",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as dig notices ask; the width is that of the ticket, and the law of the place prevails",
};

/// How a locate is written.
const LOCATE: &str = "[locate]\nasked = 2026-05-01\nticket = \"number of the request\"\nmarks_seen = 2026-05-05\nprivate_traced = true\nslabs_searched = true\nby_hand_within = \"24 in\"";
fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !(site.conduit.is_empty() && site.foundation.is_empty() && site.electrode.is_empty()) {
        round.ask(About::site(&site.origin), |asking| buried(asking, site));
    }
}

fn buried<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&BY_HAND);
    let Some(locate) = &site.locate else {
        return asking.lack(&site.origin, "locate", Wants::Table(LOCATE));
    };
    let asked = asked(asking, locate);
    let cuts = cuts(asking, site, locate);
    let lines = lines(asking, site, locate);
    let (fault, cuts, lines) = (asked?, cuts?, lines?);
    if let Some(fault) = fault {
        asking.say(|_| fault.to_owned());
        return Ok(Outcome::Rule(false));
    }
    let near = nearest(&cuts, &lines);
    let Some((cut, line, room)) = near else {
        asking.say(|_| {
            let dug = counted(cuts.len(), "cut");
            if lines.is_empty() {
                format!("The ground was searched and no line was marked; {dug} may be made. Stop at the first tape or warm sand.")
            } else {
                format!("Of {dug} each within reach of a marked line is dug by hand.")
            }
        });
        return Ok(Outcome::Rule(true));
    };
    asking.say(|print| {
        let what = line.line.what.as_ref().map_or(line.line.id.as_str(), |what| what.as_str());
        let advice = match (room < line.within, cut.rod) {
            (false, _) => "",
            (true, true) => " Drive the rod elsewhere.",
            (true, false) => " Dig there by hand, or keep off.",
        };
        format!(
            "Of all that is not dug by hand, {} comes nearest to what is buried: {} from this: {what}; within {} the ground is opened by hand only.{advice}",
            cut.name,
            print.q(room),
            print.q(line.within)
        )
    });
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new(
            "distance within which the ground is opened by hand",
            line.within,
        ),
        Labeled::new("distance of the nearest cut from a buried line", room),
    )))
}

/// The first thing about the locate that is not as it must be.
fn asked<'s>(asking: &mut Asking<'s>, locate: &'s Locate) -> Result<Option<&'static str>, Halt> {
    let asked = asking.need(&locate.origin, "asked", locate.asked.as_ref(), "2026-05-01");
    let seen = asking.need(
        &locate.origin,
        "marks_seen",
        locate.marks_seen.as_ref(),
        "2026-05-05",
    );
    let ticket = asking.need(
        &locate.origin,
        "ticket",
        locate.ticket.as_ref(),
        "\"number of the request\"",
    );
    let private = asking.need(
        &locate.origin,
        "private_traced",
        locate.private_traced.as_ref(),
        "true",
    );
    let slabs = asking.need(
        &locate.origin,
        "slabs_searched",
        locate.slabs_searched.as_ref(),
        "true",
    );
    let (asked, seen, private, slabs) = (asked?, seen?, private?, slabs?);
    ticket?;
    Ok(if seen < asked {
        Some(
            "The marks were seen before the locate was asked for: they are older ones. Wait for new marks before the first cut.",
        )
    } else if !private {
        Some(
            "The owner's own lines behind the meter were not traced; the public locate ends there. Trace them before the first cut.",
        )
    } else if !slabs {
        Some(
            "The slabs that are cut or drilled were not searched for heating and stressed cables. Search them before the first cut.",
        )
    } else {
        None
    })
}

/// A buried line with the distance within which the ground is opened by hand.
struct Marked<'s> {
    line: &'s Buried,
    pieces: Vec<Piece>,
    within: Length,
}

fn lines<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    locate: &'s Locate,
) -> Result<Vec<Marked<'s>>, Halt> {
    let mut all = Ok(Vec::new());
    for line in &site.buried {
        let own =
            asking.read_if_there(&line.origin, "by_hand_within", line.by_hand_within.as_ref());
        let within = match own {
            Some(own) => Ok(own),
            None => read!(asking, locate.by_hand_within),
        };
        let corners = outline(&line.line);
        let pairs = corners.iter().zip(corners.iter().skip(1));
        let pieces: Vec<Piece> = pairs.map(|(from, to)| [*from, *to]).collect();
        let marked = if pieces.is_empty() {
            asking.lack(
                &line.origin,
                "line",
                Wants::Written(
                    "[[\"-20 ft\", \"-30 ft\", \"0 ft\"], [\"60 ft\", \"-30 ft\", \"0 ft\"]]",
                ),
            )
        } else {
            within.map(|within| Marked {
                line,
                pieces,
                within,
            })
        };
        all = all.and_then(|mut all: Vec<_>| {
            all.push(marked?);
            Ok(all)
        });
    }
    all
}

/// The cut by machine that has least room to a line, over what that line asks for.
fn nearest<'c, 's>(
    cuts: &'c [Cut<'s>],
    lines: &'c [Marked<'s>],
) -> Option<(&'c Cut<'s>, &'c Marked<'s>, Length)> {
    let machine = cuts.iter().filter(|cut| !cut.by_hand);
    let pairs = machine.flat_map(|cut| lines.iter().map(move |line| (cut, line)));
    let roomed = pairs.map(|(cut, line)| (cut, line, Length::from_base(room(cut, line))));
    let spare =
        |(_, line, room): &(&Cut<'_>, &Marked<'_>, Length)| room.base() - line.within.base();
    roomed.min_by(|one, other| spare(one).total_cmp(&spare(other)))
}

fn room(cut: &Cut<'_>, line: &Marked<'_>) -> f64 {
    let pairs = cut
        .pieces
        .iter()
        .flat_map(|one| line.pieces.iter().map(move |other| (one, other)));
    let apart = pairs.map(|(one, other)| {
        if one[0] == one[1] {
            from(one[0], other)
        } else {
            between(one, other)
        }
    });
    (apart.fold(f64::INFINITY, f64::min) - cut.half).max(0.0)
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
        [locate]
        asked = 2026-05-01
        ticket = "26-1001"
        marks_seen = 2026-05-05
        private_traced = true
        slabs_searched = true
        by_hand_within = "24 in"
        [[buried]]
        id = "water-main"
        what = "water main"
        line = [["-20 ft", "-30 ft", "0 ft"], ["60 ft", "-30 ft", "0 ft"]]
        [[conduit]]
        id = "c-01"
        [[foundation]]
        id = "pad"
        at = ["10 ft", "-25 ft", "0 ft"]
        length = "4 ft"
        width = "2 ft"
        [[electrode]]
        id = "rods"
        at = ["10 ft", "-20 ft", "0 ft"]
        rods = 1
        [[way_point]]
        id = "one"
        at = ["0 ft", "-26 ft", "0 ft"]
        [[way_point]]
        id = "two"
        at = ["20 ft", "-26 ft", "0 ft"]
        [[way]]
        id = "way-1"
        from = "one"
        to = "two"
        by = "trench"
        conduits = ["c-01"]
    "#;

    #[test]
    fn holds_where_every_cut_keeps_off() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // The near side of the pad and the trench are both 4 ft off.
        let bare = SITE
            .split("[[buried]]")
            .next()
            .unwrap_or_default()
            .to_owned()
            + "[[conduit]]"
            + SITE.split("[[conduit]]").nth(1).unwrap_or_default();
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_in_the_zone_unless_dug_by_hand() {
        let near = SITE.replace(
            "[\"20 ft\", \"-26 ft\", \"0 ft\"]",
            "[\"20 ft\", \"-29 ft\", \"0 ft\"]",
        );
        let finding = only(&CHECK, &near);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("way-1"), "{}", finding.sentence);
        let by_hand = near.replace("by = \"trench\"", "by = \"trench\"\nby_hand = true");
        assert_eq!(only(&CHECK, &by_hand).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_with_a_rod_in_the_zone_or_private_lines_untraced() {
        let rod = SITE.replace(
            "\"-20 ft\", \"0 ft\"]\n        rods",
            "\"-29 ft\", \"0 ft\"]\n        rods",
        );
        let finding = only(&CHECK, &rod);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("rod elsewhere"),
            "{}",
            finding.sentence
        );
        let private = SITE.replace("private_traced = true", "private_traced = false");
        assert_eq!(only(&CHECK, &private).verdict, Verdict::Fails);
        let old = SITE.replace("2026-05-05", "2026-04-05");
        assert_eq!(only(&CHECK, &old).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_locate_or_a_width() {
        let (before, after) = SITE.split_once("[locate]").unwrap_or_default();
        let (_, rest) = after.split_once("[[buried]]").unwrap_or_default();
        let bare = format!("{before}[[buried]]{rest}");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let width = SITE.replace("by_hand_within = \"24 in\"", "");
        assert_eq!(only(&CHECK, &width).verdict, Verdict::UnknownUntil);
    }
}
