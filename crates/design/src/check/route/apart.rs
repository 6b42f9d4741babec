//! Whether mains and loop lead-ins have pipes of their own, and copper for data keeps its distance from mains in one trench.

use super::bore::cables_in;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Word as _};
use site::{Cable, Carries, Conduit, Medium, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "route-apart",
    codes: BOTH,
    leaves_open: "cables outside conduits, crossings, boxes and handholes where pipes meet, and barriers that a code allows",
    concerns: "each conduit with cables in it",
    ask,
};

static ALONE: Source = Source {
    work: "mains in a pipe of their own, loop lead-ins in a pipe of their own",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "asks for more than a code that lets barriers or insulation ratings stand in for distance",
};

static BESIDE: Source = Source {
    work: "12 in between a pipe with mains and a pipe with data copper or lead-ins along the same way",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as careful installers lay a joint trench",
};

/// Distance between such pipes, in meters: 12 in.
const APART: f64 = 0.3048;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let used = |conduit: &&Conduit| cables_in(site, conduit).next().is_some();
    for conduit in site.conduit.iter().filter(used) {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            apart(asking, site, conduit)
        });
    }
}

fn apart<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    asking.rest_on(&ALONE);
    let mut sorts: Vec<Carries> = Vec::new();
    let mut whole = Ok(());
    for cable in cables_in(site, conduit) {
        match pick!(asking, cable.carries) {
            Ok(sort) if !sorts.contains(&sort) => sorts.push(sort),
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    let names: Vec<String> = sorts.iter().map(|sort| sort.word().to_owned()).collect();
    let names = and(&names);
    if let Some(alone) = must_be_alone(&sorts) {
        asking.say(|_| {
            format!(
                "Conduit {} holds {names} together; {} in a pipe of {}.",
                conduit.id,
                if alone == Carries::Mains {
                    "mains run"
                } else {
                    "a loop's lead-in runs"
                },
                if alone == Carries::Mains {
                    "their own"
                } else {
                    "its own"
                },
            )
        });
        return Ok(Outcome::Rule(false));
    }
    if feels_mains(site, conduit) && beside_mains(asking, site, conduit)? {
        return along(asking, conduit, &names);
    }
    asking.say(|_| {
        format!(
            "Conduit {} holds {names} and nothing that must be apart from it.",
            conduit.id
        )
    });
    Ok(Outcome::Rule(true))
}

/// The distance to the pipe with mains in the same way.
fn along<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit, names: &str) -> Answer {
    asking.rest_on(&BESIDE);
    let distance = match &conduit.laid {
        Some(laid) => read!(asking, laid.from_mains),
        None => asking.lack_of(&conduit.origin, "laid.from_mains"),
    }?;
    let least = Length::from_base(APART);
    asking.say(|print| {
        format!(
            "Conduit {} with {names} lies {} from the nearest pipe with mains in its way; {} is good practice.",
            conduit.id,
            print.q(distance),
            print.q(least)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("distance that is good practice", least),
        Labeled::new("distance from the pipe with mains", distance),
    ))
}

/// What is in a pipe with something else, and must not be.
fn must_be_alone(sorts: &[Carries]) -> Option<Carries> {
    let alone = [Carries::Mains, Carries::LoopLeadIn].into_iter();
    alone
        .filter(|_| sorts.len() > 1)
        .find(|sort| sorts.contains(sort))
}

/// It holds data copper or lead-ins: what mains beside it would disturb.
fn feels_mains(site: &Site, conduit: &Conduit) -> bool {
    let is_fiber = |cable: &Cable| {
        let medium = cable.channel.as_ref().and_then(|channel| channel.medium);
        medium.is_some_and(|medium| medium != Medium::Copper)
    };
    cables_in(site, conduit).any(|cable| match cable.carries {
        Some(Carries::LoopLeadIn) => true,
        Some(Carries::Data) => !is_fiber(cable),
        _ => false,
    })
}

/// A conduit with mains lies in one of its ways.
fn beside_mains<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
) -> Result<bool, Halt> {
    let mains = |cable: &Cable| cable.carries == Some(Carries::Mains);
    let with_mains: Vec<&Conduit> = site
        .conduit
        .iter()
        .filter(|other| cables_in(site, other).any(mains))
        .collect();
    if with_mains.is_empty() {
        return Ok(false);
    }
    let mut ways = site
        .way
        .iter()
        .filter(|way| way.conduits.contains(&conduit.id))
        .peekable();
    if ways.peek().is_none() {
        return asking.lack(
            &conduit.origin,
            "way",
            Wants::Table("[[way]]\nid = \"way-1\"\nfrom = \"wp-box\"\nto = \"wp-h1\"\nby = \"trench\"\nsurface = \"lawn\"\nconduits = [\"c-01\"]"),
        );
    }
    Ok(ways.any(|way| {
        with_mains
            .iter()
            .any(|other| way.conduits.contains(&other.id))
    }))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::all;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [[enclosure]]
        id = "box"
        [[cable]]
        id = "w-01"
        carries = "mains"
        from = "mains"
        to = "box"
        route = ["c-01"]
        [[cable]]
        id = "w-02"
        carries = "data"
        from = "mains"
        to = "box"
        route = ["c-02"]
        [[conduit]]
        id = "c-01"
        [[conduit]]
        id = "c-02"
        laid = { from_mains = "13 in ± 1/2 in" }
        [[way_point]]
        id = "one"
        [[way_point]]
        id = "two"
        [[way]]
        id = "way-1"
        from = "one"
        to = "two"
        conduits = ["c-01", "c-02"]
    "#;

    fn verdicts(text: &str) -> Vec<Verdict> {
        let findings = all(&CHECK, text);
        findings.iter().map(|finding| finding.verdict).collect()
    }

    #[test]
    fn holds_in_pipes_of_their_own_apart() {
        assert_eq!(verdicts(SITE), [Verdict::Holds, Verdict::Holds]);
    }

    #[test]
    fn fails_in_one_pipe_or_near() {
        let one = SITE.replace("route = [\"c-02\"]", "route = [\"c-01\"]");
        assert_eq!(verdicts(&one), [Verdict::Fails]);
        let near = SITE.replace("13 in", "6 in");
        assert_eq!(verdicts(&near), [Verdict::Holds, Verdict::Fails]);
        let fiber = near.replace(
            "carries = \"data\"",
            "carries = \"data\"\nchannel = { medium = \"fiber\" }",
        );
        assert_eq!(verdicts(&fiber), [Verdict::Holds, Verdict::Holds]);
    }

    #[test]
    fn unknown_without_the_distance_or_the_sort() {
        let bare = SITE.replace("from_mains = \"13 in ± 1/2 in\"", "");
        assert_eq!(verdicts(&bare)[1], Verdict::UnknownUntil);
        let sortless = SITE.replace("carries = \"mains\"", "");
        assert_eq!(verdicts(&sortless)[0], Verdict::UnknownUntil);
    }
}
