//! The pull and the side-wall load in each conduit, from both ends.
//!
//! Cables that share their whole route are pulled together; those of another route are a pull of their own. Nobody can
//! promise how a grip shares the tension among the cables in it, so the whole of it is held against the limit of the weakest.
//! The finding stands for the easier end, and says what the other one takes. A four-pair data cable without a limit of
//! its own has that of the cabling standard, 110 N.

use super::together::{bundle, together};
use super::walk::{Bundle, Piece, Pulled, pieces, pull, turned_round};
use crate::asking::{Asking, read};
use crate::check::route::bore::{bore, cables_in};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Force, ForcePerLength, Length, Quantity as _, Ratio};
use site::{Cable, Carries, Conduit, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "pull-tension",
    codes: BOTH,
    leaves_open: "the drag of the reel, cables that are in the conduit already, and a bend that was crushed in the trench",
    concerns: "each conduit with cables in it",
    ask,
};

static DATA_CABLE: Source = Source {
    work: "ANSI/TIA-568",
    clause: "greatest pull on a four-pair cable, 110 N (25 lbf)",
    evidence: Evidence::Seen,
    seen: "a university's cable installation guidelines and a naval training page, which agree",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for conduit in site
        .conduit
        .iter()
        .filter(|conduit| cables_in(site, conduit).next().is_some())
    {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            tension(asking, site, conduit)
        });
    }
}

/// One pull from the two ends of a conduit.
struct BothWays {
    /// From the beginning to the end.
    forward: (Pulled, Outcome),
    /// From the end to the beginning.
    backward: (Pulled, Outcome),
    count: usize,
}

impl BothWays {
    fn easier_is_forward(&self) -> bool {
        self.forward.1.strain() <= self.backward.1.strain()
    }

    fn easier(&self) -> Outcome {
        if self.easier_is_forward() {
            self.forward.1
        } else {
            self.backward.1
        }
    }
}

fn tension<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    let inside = bore(asking, conduit);
    let friction = read!(asking, conduit.friction);
    let pieces = pieces(asking, conduit);
    let pulls = pulls(asking, site, conduit);
    let (inside, friction, pieces, pulls) = (inside?, friction?, pieces?, pulls?);
    let back = turned_round(&pieces);
    let mut hardest: Option<BothWays> = None;
    for cables in &pulls {
        let both = BothWays {
            forward: pulled(asking, &pieces, cables, (friction, inside))?,
            backward: pulled(asking, &back, cables, (friction, inside))?,
            count: cables.limits.len(),
        };
        let harder = |known: &BothWays| both.easier().strain() > known.easier().strain();
        if hardest.as_ref().is_none_or(harder) {
            hardest = Some(both);
        }
    }
    let Some(hardest) = hardest else {
        return Err(Halt);
    };
    say(asking, conduit, &hardest);
    Ok(hardest.easier())
}

fn say(asking: &mut Asking<'_>, conduit: &Conduit, hardest: &BothWays) {
    let end = |text: &Option<site::Text>, other: &str| {
        text.as_ref()
            .map_or_else(|| other.to_owned(), |text| text.as_str().to_owned())
    };
    asking.say(|print| {
        let (beginning, far) = (end(&conduit.from, "its beginning"), end(&conduit.to, "its end"));
        let (easy, hard) = (&hardest.forward.0, &hardest.backward.0);
        let (from, to, easy, hard) = if hardest.easier_is_forward() {
            (beginning, far, easy, hard)
        } else {
            (far, beginning, hard, easy)
        };
        let what = if hardest.count == 1 { "One cable".to_owned() } else { format!("{} cables together", hardest.count) };
        let bends = if easy.side_load > ForcePerLength::from_base(0.0) {
            format!(", pressing {} at the bends", print.q(easy.side_load))
        } else {
            String::new()
        };
        let limit = match hardest.easier() {
            Outcome::Compared(comparison) => format!(" The limit is {}.", print.value(&comparison.capacity.value)),
            Outcome::Rule(_) | Outcome::Figure(_) => String::new(),
        };
        format!(
            "{what} through {}: feed at {from} and pull at {to} with {}{bends}; the other way takes {}.{limit}",
            conduit.id,
            print.q(easy.tension),
            print.q(hard.tension)
        )
    });
}

/// The cables of a pull, and what each of them stands.
struct Group {
    bundle: Bundle,
    limits: Vec<(Force, ForcePerLength)>,
}

/// The pulls through a conduit; what is missing of all of them is noted.
fn pulls<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
) -> Result<Vec<Group>, Halt> {
    let mut groups = Vec::new();
    let mut whole = Ok(());
    for cables in together(site, conduit) {
        match group(asking, &cables) {
            Ok(group) => groups.push(group),
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| groups)
}

fn group<'s>(asking: &mut Asking<'s>, cables: &[&'s Cable]) -> Result<Group, Halt> {
    let bundle = bundle(asking, cables);
    let mut limits = Vec::with_capacity(cables.len());
    let mut whole = Ok(());
    for cable in cables {
        let tension = tension_limit(asking, cable);
        let side_load = read!(asking, cable.greatest_side_load);
        match (tension, side_load) {
            (Ok(tension), Ok(side_load)) => limits.push((tension, side_load)),
            _ => whole = Err(Halt),
        }
    }
    whole?;
    Ok(Group {
        bundle: bundle?,
        limits,
    })
}

/// Largest pull on a four-pair data cable, in newtons.
const FOUR_PAIR: f64 = 110.0;

/// Largest pull on a cable: its own, or that of the cabling standard.
pub(crate) fn tension_limit<'s>(asking: &mut Asking<'s>, cable: &'s Cable) -> Result<Force, Halt> {
    let four_pair = cable.carries == Some(Carries::Data) && cable.cores == Some(8);
    if cable.greatest_tension.is_none() && four_pair {
        asking.rest_on(&DATA_CABLE);
        return Ok(Force::from_base(FOUR_PAIR));
    }
    read!(asking, cable.greatest_tension)
}

fn pulled(
    asking: &mut Asking<'_>,
    pieces: &[Piece],
    group: &Group,
    conduit: (Ratio, Length),
) -> Result<(Pulled, Outcome), Halt> {
    let pulled = pull(asking, pieces, group.bundle, conduit, Force::from_base(0.0))?;
    let comparisons = group.limits.iter().flat_map(|(tension, side_load)| {
        [
            Comparison::at_most(
                Labeled::new("pull, all of it on one cable", pulled.tension),
                Labeled::new("greatest pull", *tension),
            ),
            Comparison::at_most(
                Labeled::new("side-wall load", pulled.side_load),
                Labeled::new("greatest side-wall load", *side_load),
            ),
        ]
    });
    let outcome = Outcome::worst(comparisons).ok_or(Halt)?;
    Ok((pulled, outcome))
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
        from = "box"
        to = "pole"
        friction = "0.35 ± 0.05"
        segment = [{ straight = "100 ft", bend = "90°", radius = "6 in" }, { straight = "4 ft" }]
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        carries = "data"
        cores = 8
        diameter = "0.29 in"
        mass_per_length = "0.045 lb/ft"
        greatest_side_load = "100 lbf/ft"
        route = ["c-01"]
    "#;

    #[test]
    fn holds_in_an_easy_conduit_from_its_easier_end() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // From the far end: 4 ft of straight, the bend, 100 ft of straight; a bend late in the pull costs more.
        let weight = 0.045 * 0.35;
        let pounds = 4.0 * weight * (0.35 * std::f64::consts::FRAC_PI_2).exp() + 100.0 * weight;
        let tension = finding.demand.unwrap().value.unwrap() / 4.448_221_6;
        assert!((tension - pounds).abs() < 1e-4, "{tension} {pounds}");
        assert!(
            finding.sentence.contains("feed at pole and pull at box"),
            "{}",
            finding.sentence
        );
        assert!(
            finding
                .sources
                .iter()
                .any(|source| source.work == "ANSI/TIA-568")
        );
    }

    #[test]
    fn fails_dry_and_with_many_bends() {
        // 200 ft, two bends, 200 ft: 5.4 lbf times e^(0.6 · π) before the second half, whichever end is fed.
        let hard = SITE
            .replace("0.35 ± 0.05", "0.6")
            .replace(
                "straight = \"100 ft\", bend",
                "straight = \"200 ft\", bend = \"90°\", radius = \"6 in\" }, { bend",
            )
            .replace("4 ft", "200 ft");
        let finding = only(&CHECK, &hard);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn the_whole_pull_of_a_group_is_held_against_its_weakest_cable() {
        let heavy = r#"
        [[cable]]
        id = "w-02"
        from = "source"
        to = "box"
        diameter = "0.5 in"
        mass_per_length = "1 lb/ft"
        greatest_tension = "500 lbf"
        greatest_side_load = "1000 lbf/ft"
        route = ["c-01"]
        "#;
        let group = SITE.replace("bore = \"1 in\"", "bore = \"2 in\"") + heavy;
        let finding = only(&CHECK, &group.replace("100 lbf/ft", "1000 lbf/ft"));
        // About 40 lbf in all. By weight the data cable would take under 2 lbf of it; its limit of 110 N is what counts.
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let capacity = finding.capacity.unwrap().value.unwrap();
        assert!((capacity - 110.0).abs() < 1e-9, "{capacity}");
    }

    #[test]
    fn unknown_without_friction() {
        let finding = only(&CHECK, &SITE.replace("friction = \"0.35 ± 0.05\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
        assert!(finding.missing[0].path.contains("friction"));
    }
}
