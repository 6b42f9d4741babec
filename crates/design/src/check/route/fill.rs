//! How full each conduit is, and whether three like cables would wedge in it.
//!
//! The shares allowed are those of the NEC. For a European site they are good practice and no rule, and shown as such.

use super::bore::{bore, cables_in};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::ways::{CableArea, ConduitFill, ConduitJam, ConduitRun, Jam};
use formula::{Evidence, Source};
use quantity::{Area, Length, Quantity as _, Ratio};
use site::{Cable, CodeBasis, Conduit, Site};
use std::f64::consts::FRAC_PI_4;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "route-fill",
    codes: BOTH,
    leaves_open: "room for the spare cord and one more cable, and cables that are not round",
    concerns: "each conduit with cables in it",
    ask,
};

static EUROPE: Source = Source {
    work: "the shares of the NEC, taken as good practice where it does not rule",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "no European clause was at hand",
};

/// Length up to which a conduit is a nipple: 24 in.
const NIPPLE: f64 = 0.6096;
/// How much wider a field bend makes a conduit.
const BENT: f64 = 1.05;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for conduit in site
        .conduit
        .iter()
        .filter(|conduit| cables_in(site, conduit).next().is_some())
    {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            fill(asking, site, conduit)
        });
    }
}

fn fill<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    let inside = bore(asking, conduit);
    let groups = groups(asking, cables_in(site, conduit));
    let run = run(asking, conduit);
    let (inside, groups) = (inside?, groups?);
    let mut cables = Area::from_base(0.0);
    for group in &groups {
        cables += asking
            .work(&CableArea {
                diameter: group.diameter,
                count: group.count,
            })?
            .all;
    }
    let count = groups.iter().map(|group| group.count).sum();
    let bore_area = Area::from_base(FRAC_PI_4 * inside.base().powi(2));
    let fill = asking.work(&ConduitFill {
        bore: bore_area,
        cables,
        count,
        run,
    })?;
    let in_europe = site.site.code_basis == CodeBasis::Eu;
    if in_europe {
        asking.rest_on(&EUROPE);
    }
    let wedged = wedged(asking, conduit, &groups, inside)?;
    asking.say(|print| {
        let what = if count == 1 {
            "one cable fills".to_owned()
        } else {
            format!("{count} cables fill")
        };
        let by = if in_europe { " by common practice" } else { "" };
        let jam = if wedged {
            " Three like cables of this size wedge at a bend."
        } else {
            ""
        };
        format!(
            "In conduit {} {what} {}; {} is allowed{by}.{jam}",
            conduit.id,
            print.percent(fill.fill),
            print.percent(fill.allowed)
        )
    });
    if wedged {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::at_most(
        Labeled::new("share of the conduit that is filled", fill.fill),
        Labeled::new("share that may be filled", fill.allowed),
    ))
}

/// Like cables: those of one diameter.
struct Group {
    diameter: Length,
    count: u32,
}

fn groups<'s>(
    asking: &mut Asking<'s>,
    cables: impl Iterator<Item = &'s Cable>,
) -> Result<Vec<Group>, Halt> {
    let mut groups: Vec<Group> = Vec::new();
    let mut whole = Ok(());
    for cable in cables {
        match read!(asking, cable.diameter) {
            Ok(diameter) => match groups.iter_mut().find(|group| group.diameter == diameter) {
                Some(group) => group.count += 1,
                None => groups.push(Group { diameter, count: 1 }),
            },
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| groups)
}

/// A nipple where all straight pieces are known and short, and nothing bends.
fn run<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> ConduitRun {
    if conduit.segment.is_empty() {
        return ConduitRun::Run;
    }
    let mut length = 0.0;
    for segment in &conduit.segment {
        if segment.bend.is_some() {
            return ConduitRun::Run;
        }
        length += asking
            .read_if_there(&segment.origin, "straight", segment.straight.as_ref())
            .map_or(f64::INFINITY, Length::base);
    }
    if length <= NIPPLE {
        ConduitRun::Nipple
    } else {
        ConduitRun::Run
    }
}

/// Three like cables, and no other, are as wide as makes them wedge.
fn wedged(
    asking: &mut Asking<'_>,
    conduit: &Conduit,
    groups: &[Group],
    bore: Length,
) -> Result<bool, Halt> {
    let [Group { diameter, count: 3 }] = groups else {
        return Ok(false);
    };
    let bends = conduit.segment.iter().any(|segment| segment.bend.is_some());
    if !bends {
        return Ok(false);
    }
    let danger = asking.work(&ConduitJam {
        bore,
        cable: *diameter,
        oval: Ratio::from_base(BENT),
    })?;
    Ok(danger.jam == Jam::Likely)
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
        kind = "PVC-40"
        trade_size = "1"
        segment = [{ straight = "20 ft", bend = "90°", radius = "6 in" }, { straight = "3 ft" }]
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        diameter = "0.4 in"
        route = ["c-01"]
        [[cable]]
        id = "w-02"
        from = "source"
        to = "box"
        diameter = "0.3 in"
        route = ["c-01"]
    "#;

    #[test]
    fn holds_with_two_thin_cables() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            (finding.capacity.unwrap().value.unwrap() - 0.31).abs() < 1e-12,
            "two cables jam more easily"
        );
    }

    #[test]
    fn fails_with_two_thick_cables() {
        let thick = SITE.replace("0.4 in", "0.6 in");
        assert_eq!(only(&CHECK, &thick).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_three_like_cables_wedge() {
        // 1.05 times a bore of 60 mm over 21 mm is 3.0; filled to 37 %, which alone would be allowed.
        let three = SITE
            .replace(
                "kind = \"PVC-40\"\n        trade_size = \"1\"",
                "bore = \"60 mm\"",
            )
            .replace("0.4 in", "21 mm")
            .replace("0.3 in", "21 mm");
        let third = "\n[[cable]]\nid = \"w-03\"\nfrom = \"source\"\nto = \"box\"\ndiameter = \"21 mm\"\nroute = [\"c-01\"]\n";
        let finding = only(&CHECK, &format!("{three}{third}"));
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("wedge"));
    }

    #[test]
    fn unknown_without_a_diameter_and_a_size() {
        let bare = SITE
            .replace("diameter = \"0.3 in\"", "")
            .replace("trade_size = \"1\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn in_europe_it_rests_on_common_practice() {
        let eu = SITE.replace("code_basis = \"us\"", "code_basis = \"eu\"");
        let finding = only(&CHECK, &eu);
        assert_eq!(finding.verdict, Verdict::Holds);
        assert!(
            finding.sentence.contains("by common practice"),
            "{}",
            finding.sentence
        );
        assert!(
            finding
                .sources
                .iter()
                .any(|source| source.evidence == "common practice")
        );
    }
}
