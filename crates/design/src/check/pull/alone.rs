//! Whether one person can feed and pull the cables of each conduit, and from which end.
//!
//! The pull is worked from both ends, with what it takes to turn the reel or to drag the loose cable before the first piece,
//! and the easier end is held against the guide force that a hand may be asked to keep up. Above it, gear pulls, and its
//! force counts. Nobody feeds while he pulls: the cable has to run off by itself, or a second person is there.

use super::together::{bundle, together};
use super::walk::{Pulled, pieces, pull, turned_round};
use crate::asking::{Asking, need, pick, read};
use crate::check::route::bore::{bore, cables_in};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::motion::{PushPullGuide, Pusher};
use quantity::Force;
use site::{Conduit, FeedBy, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "pull-alone",
    codes: BOTH,
    leaves_open: "the mass of the reel, which is a lift of its own; footing and reach at the pulling end; gear that is not set below the limit of the cable stretches it",
    concerns: "each conduit with cables in it",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for conduit in site
        .conduit
        .iter()
        .filter(|conduit| cables_in(site, conduit).next().is_some())
    {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            alone(asking, site, conduit)
        });
    }
}

/// The harder of the pulls through a conduit, from its easier end.
struct Hardest {
    pulled: Pulled,
    forward: bool,
}

fn alone<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    let feed = pick!(asking, site.pulling?.feed);
    let helper = need!(asking, site.pulling?.helper, "false").copied();
    let drag = read!(asking, site.pulling?.drag);
    let hardest = hardest(asking, site, conduit, drag);
    let (feed, helper, hardest) = (feed?, helper?, hardest?);
    let hand = asking.work(&PushPullGuide { who: Pusher::Women })?.keep;
    let mut rules = Rules::default();
    rules.keep(
        feed != FeedBy::Hand || helper,
        "Somebody has to feed while you pull: set the reel on a stand, lay the cable out loose, or bring a helper.",
    );
    let by_hand = Comparison::at_most(
        Labeled::new("pull at the easier end", hardest.pulled.tension),
        Labeled::new("pull that a hand keeps up", hand),
    );
    let gear = if by_hand.holds() {
        rules.compare(by_hand);
        None
    } else {
        let gear = need!(asking, site.pulling?.gear, "\"rope puller on a post\"");
        let force = read!(asking, site.pulling?.gear_force);
        let (gear, force) = (gear?, force?);
        rules.compare(Comparison::at_most(
            Labeled::new("pull at the easier end", hardest.pulled.tension),
            Labeled::new("pull of the gear", force),
        ));
        Some((gear, force))
    };
    let reach = hardest.pulled.passes(hand);
    asking.say(|print| {
        rules.says(|| {
            let (from, to) = ends(conduit, hardest.forward);
            let alone = format!(
                "Through {}, feed at {from} and pull at {to} with {}, the drag of the feed counted; a hand keeps up {}",
                conduit.id,
                print.q(hardest.pulled.tension),
                print.q(hand)
            );
            match (gear, reach) {
                (Some((gear, force)), Some(reach)) => format!(
                    "{alone}. This pulls it: {gear}, good for {}. Without it, a pull point not farther than {} from {from}.",
                    print.q(force),
                    print.q(reach)
                ),
                _ => format!("{alone}."),
            }
        })
    });
    Ok(rules.outcome())
}

/// The ends of a conduit, that at which the cables are fed first.
pub(crate) fn ends(conduit: &Conduit, forward: bool) -> (String, String) {
    let end = |text: &Option<site::Text>, other: &str| {
        text.as_ref()
            .map_or_else(|| other.to_owned(), |text| text.as_str().to_owned())
    };
    let beginning = end(&conduit.from, "its beginning");
    let far = end(&conduit.to, "its end");
    if forward {
        (beginning, far)
    } else {
        (far, beginning)
    }
}

fn hardest<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
    drag: Result<Force, Halt>,
) -> Result<Hardest, Halt> {
    let inside = bore(asking, conduit);
    let friction = read!(asking, conduit.friction);
    let pieces = pieces(asking, conduit);
    let mut bundles = Vec::new();
    let mut whole = Ok(());
    for cables in together(site, conduit) {
        match bundle(asking, &cables) {
            Ok(bundle) => bundles.push(bundle),
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    let (inside, friction, pieces, drag) = (inside?, friction?, pieces?, drag?);
    let back = turned_round(&pieces);
    let mut hardest: Option<Hardest> = None;
    for bundle in bundles {
        let forward = pull(asking, &pieces, bundle, (friction, inside), drag)?;
        let backward = pull(asking, &back, bundle, (friction, inside), drag)?;
        let easier = if forward.tension <= backward.tension {
            Hardest {
                pulled: forward,
                forward: true,
            }
        } else {
            Hardest {
                pulled: backward,
                forward: false,
            }
        };
        let harder = |known: &Hardest| easier.pulled.tension > known.pulled.tension;
        if hardest.as_ref().is_none_or(harder) {
            hardest = Some(easier);
        }
    }
    hardest.ok_or(Halt)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{ONE_PULL as SITE, only};

    #[test]
    fn holds_by_hand_from_the_easier_end() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 2 lbf of drag and 4 ft, around the bend, then 100 ft.
        let weight = 0.045 * 0.35;
        let pounds =
            (2.0 + 4.0 * weight) * (0.35 * std::f64::consts::FRAC_PI_2).exp() + 100.0 * weight;
        let tension = finding.demand.unwrap().value.unwrap() / 4.448_221_6;
        assert!((tension - pounds).abs() < 1e-4, "{tension} {pounds}");
        assert!(
            finding.sentence.contains("feed at pole"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_where_a_hand_would_have_to_feed() {
        let fed = SITE.replace("reel on a stand", "by hand");
        assert_eq!(only(&CHECK, &fed).verdict, Verdict::Fails);
        let helped = fed.replace("helper = false", "helper = true");
        assert_eq!(only(&CHECK, &helped).verdict, Verdict::Holds);
    }

    #[test]
    fn a_heavy_pull_asks_for_gear_and_says_where_a_pull_point_would_save_it() {
        // 104 ft of 0.9 lb/ft at 0.35: above 30 lbf, where a hand keeps up 7 kgf.
        let heavy = SITE.replace("0.045 lb/ft", "0.9 lb/ft");
        let finding = only(&CHECK, &heavy);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let weak = heavy.replace(
            "helper = false",
            "helper = false\ngear = \"rope puller\"\ngear_force = \"20 lbf\"",
        );
        assert_eq!(only(&CHECK, &weak).verdict, Verdict::Fails);
        let finding = only(&CHECK, &weak.replace("\"20 lbf\"", "\"300 lbf\""));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("pull point"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_while_nobody_says_how_it_is_fed() {
        let bare = SITE
            .replace("[pulling]", "")
            .replace("feed = \"reel on a stand\"", "");
        let bare = bare
            .replace("drag = \"2 lbf\"", "")
            .replace("helper = false", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }
}
