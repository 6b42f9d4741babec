//! Whether the reels give every run of a cable in one piece, and which reel serves which run with the least drawn.
//!
//! Runs are taken at the long end of their tolerance, with the length for one new termination at each end. Reels that are
//! there cost nothing. A longer search than this one is `gatewright choose reels`.

use crate::asking::{Asking, Wants};
use crate::check::make::cut_list::LEAST;
use crate::check::{BOTH, Check, GEOMETRY, Round};
use crate::cutting::{Job, least, patterns, reels, runs_of};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Length, Quantity as _};
use sim::cutting::{Effort, Plan, Uncuttable, cut};
use site::{CableReels, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "pull-reels",
    codes: BOTH,
    leaves_open: "damage on a reel, footage marks that count wrong, and what a pull that goes wrong costs",
    concerns: "each cable that the site's runs are bought as",
    ask,
};

/// How reels are written.
const REELS: &str = "[[cable_reels]]\nid = \"reels-signal\"\nof = \"signal-4x18\"\nspare_each_end = \"12 in\"\nreel = [{ length = \"500 ft\", price = \"140.00 USD\" }, { length = \"180 ft\", on_hand = 1 }]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let mut asked: Vec<&str> = Vec::new();
    for cable in &site.cable {
        let Some(part) = &cable.part else {
            round.ask(About::new(&cable.origin, &cable.id), |asking| {
                asking.lack(&cable.origin, "part", Wants::Written("\"signal-4x18\""))
            });
            continue;
        };
        let listed = site
            .cable_reels
            .iter()
            .any(|reels| reels.of.as_str() == part.as_str());
        if !listed && !asked.contains(&part.as_str()) {
            asked.push(part.as_str());
            round.ask(About::new(&cable.origin, &cable.id), |asking| {
                asking.lack(&site.origin, "cable_reels", Wants::Table(REELS))
            });
        }
    }
    for reels in &site.cable_reels {
        if runs_of(site, reels.of.as_str()).next().is_some() {
            round.ask(About::new(&reels.origin, &reels.id), |asking| {
                served(asking, site, reels)
            });
        }
    }
}

fn served<'s>(asking: &mut Asking<'s>, site: &'s Site, given: &'s CableReels) -> Answer {
    asking.rest_on(&GEOMETRY);
    let job = reels(asking, site, given)?;
    match cut(&job.cutting, Effort::QUICK) {
        Ok(plan) => {
            asking.rest_on(&LEAST);
            told(asking, given, &job, &plan);
        }
        Err(Uncuttable::TooLong { .. }) => asking.say(|print| {
            format!(
                "Run {} needs {} of {} in one piece, and the longest reel holds {}. Get a longer reel: a splice is the last resort.",
                job.longest_piece().map_or("", |run| run.what.as_str()),
                print.value(&longest(&job).demand.value),
                given.of,
                print.q(job.longest_room())
            )
        }),
        Err(Uncuttable::TooFew) => {
            asking.say(|_| {
                format!(
                    "The reels of {} do not give all {} runs in one piece each. Get more.",
                    given.of,
                    job.count()
                )
            });
            return Ok(Outcome::Rule(false));
        }
        Err(Uncuttable::NotFound) => {
            return asking.wait_for(format!(
                "`gatewright choose reels` has found how {} is cut",
                given.of
            ));
        }
        Err(Uncuttable::Refused(why)) => return asking.refuse(why),
    }
    Outcome::worst([longest(&job)]).ok_or(Halt)
}

/// The longest run against the longest reel.
fn longest(job: &Job) -> Comparison {
    let run = job.longest_piece();
    let run = run.map_or(Length::from_base(0.0), |run| run.length);
    Comparison::at_most(
        Labeled::new("longest run with its spare ends", run),
        Labeled::new("longest reel", job.longest_room()),
    )
}

fn told(asking: &mut Asking<'_>, given: &CableReels, job: &Job, plan: &Plan) {
    for (line, cut) in patterns(job, plan, asking.print())
        .into_iter()
        .zip(&plan.cuts)
    {
        let runs: Vec<&str> = cut
            .pieces
            .iter()
            .map(|run| job.wanted[*run].what.as_str())
            .collect();
        asking.note(|_| format!("{line} ({})", runs.join(", ")));
    }
    asking.say(|print| {
        let proof = if plan.is_least() {
            "nothing less does, proved".to_owned()
        } else {
            format!("nothing comes below {}", least(job, plan.bound, print))
        };
        format!(
            "{} runs of {} come off {} reels in one piece each, for {}; {proof}.",
            job.count(),
            given.of,
            plan.bars(),
            least(job, plan.cost, print)
        )
    });
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only_bought;

    const PARTS: &str = r#"
        [[cable]]
        id = "signal"
        carries = "signal"
    "#;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        parts = ["parts.toml"]
        [[device]]
        id = "one"
        kind = "keypad"
        [[device]]
        id = "two"
        kind = "keypad"
        [[cable]]
        id = "w-01"
        part = "signal"
        from = "one"
        to = "two"
        length = "96 ft ± 2 ft"
        [[cable]]
        id = "w-02"
        part = "signal"
        from = "one"
        to = "two"
        length = "60 ft"
        [[cable_reels]]
        id = "reels-signal"
        of = "signal"
        spare_each_end = "1 ft"
        reel = [{ length = "100 ft", on_hand = 1 }, { length = "500 ft", price = "140.00 USD" }]
    "#;

    #[test]
    fn holds_with_a_new_reel_for_what_is_left() {
        let finding = only_bought(&CHECK, SITE, PARTS);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 98 ft and two spare ends fill the reel of 100 ft; the other run needs a new one, and then both go on it.
        assert!(
            finding.sentence.contains("140.00 USD"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_a_run_longer_than_every_reel_or_with_too_few_reels() {
        let long = only_bought(&CHECK, &SITE.replace("96 ft", "500 ft"), PARTS);
        assert_eq!(long.verdict, Verdict::Fails, "{}", long.sentence);
        let few = SITE.replace(", { length = \"500 ft\", price = \"140.00 USD\" }", "");
        assert_eq!(only_bought(&CHECK, &few, PARTS).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_spare_or_without_reels() {
        let spare = only_bought(
            &CHECK,
            &SITE.replace("spare_each_end = \"1 ft\"", ""),
            PARTS,
        );
        assert_eq!(spare.verdict, Verdict::UnknownUntil, "{}", spare.sentence);
        let bare = SITE.split("[[cable_reels]]").next().unwrap_or_default();
        assert_eq!(
            only_bought(&CHECK, bare, PARTS).verdict,
            Verdict::UnknownUntil
        );
    }
}
