//! How bars are cut into the pieces of the job with the least bought, and whether they can be brought to the site.
//!
//! Pieces are the leaf's members of the same section, the lengths of tracks and racks between their joints, and those of the
//! list. Every cut takes the width of the saw, every new end is trimmed square. A longer search than this one is
//! `gatewright choose cuts`.

use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, GEOMETRY, Round};
use crate::cutting::{Job, bars, least, patterns};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use sim::cutting::{Effort, Plan, Uncuttable, cut};
use site::{BarStock, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "make-cut-list",
    codes: BOTH,
    leaves_open: "miter cuts, holes near an end, bars that come bent or short, and a piece that is cut wrong: check each off against the drawing",
    concerns: "each kind of bar that the site lists",
    ask,
};

/// How bars are written.
const STOCK: &str = "[[bar_stock]]\nid = \"tube-2x2\"\nwhat = \"square tube, 2x2x1/8\"\nsection = \"HSS 2x2x1/8\"\nkerf = \"1/8 in\"\nend_trim = \"1/2 in\"\nlongest_carried = \"20 ft\"\nbar = [{ length = \"20 ft\", price = \"62.00 USD\" }]\npiece = [{ what = \"rail for the covers\", length = \"5 ft\", count = 2 }]";

/// Linear programming duality: what pieces are worth bounds what bars cost.
pub(crate) static LEAST: Source = Source {
    work: "Gilmore and Gomory, A linear programming approach to the cutting-stock problem, 1961: patterns as they are wanted, and worths of pieces as a bound",
    clause: "",
    evidence: Evidence::Physics,
    seen: "the bound is worked out in whole numbers here and needs no trust in the work",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.bar_stock.is_empty() && !site.gate.is_empty() {
        round.ask(About::site(&site.origin), |asking| {
            asking.lack(&site.origin, "bar_stock", Wants::Table(STOCK))
        });
    }
    for stock in &site.bar_stock {
        round.ask(About::new(&stock.origin, &stock.id), |asking| {
            listed(asking, site, stock)
        });
    }
}

fn listed<'s>(asking: &mut Asking<'s>, site: &'s Site, stock: &'s BarStock) -> Answer {
    asking.rest_on(&GEOMETRY);
    let carried = read!(asking, stock.longest_carried);
    let job = bars(asking, site, stock);
    let (carried, job) = (carried?, job?);
    let longest = longest(&job);
    match cut(&job.cutting, Effort::QUICK) {
        Ok(plan) => {
            asking.rest_on(&LEAST);
            Ok(told(asking, stock, &job, &plan, carried))
        }
        Err(Uncuttable::TooLong { .. }) => {
            asking.say(|print| {
                format!(
                    "{} has to be {} long, and no bar of {} leaves more than {}. Get a longer bar, or allow a joint.",
                    job.longest_piece().map_or("A piece", |piece| piece.what.as_str()),
                    print.value(&longest.demand.value),
                    stock.what,
                    print.value(&longest.capacity.value)
                )
            });
            Outcome::worst([longest]).ok_or(Halt)
        }
        Err(Uncuttable::TooFew) => {
            asking.say(|_| {
                format!(
                    "The bars of {} that are there or can be had do not give all {} pieces. Get more.",
                    stock.what,
                    job.count()
                )
            });
            Ok(Outcome::Rule(false))
        }
        Err(Uncuttable::NotFound) => asking.wait_for(format!(
            "`gatewright choose cuts` has found how {} is cut",
            stock.what
        )),
        Err(Uncuttable::Refused(why)) => asking.refuse(why),
    }
}

/// The longest piece against the room on the longest bar.
fn longest(job: &Job) -> Comparison {
    let piece = job.longest_piece();
    let piece = piece.map_or(Length::from_base(0.0), |piece| piece.length);
    Comparison::at_most(
        Labeled::new("longest piece", piece),
        Labeled::new("room on the longest bar, ends trimmed", job.longest_room()),
    )
}

fn told(
    asking: &mut Asking<'_>,
    stock: &BarStock,
    job: &Job,
    plan: &Plan,
    carried: Length,
) -> Outcome {
    let used = plan.cuts.iter().map(|cut| job.cutting.bars[cut.bar].length);
    let handled = Comparison::at_most(
        Labeled::new(
            "longest bar that is cut",
            used.fold(Length::from_base(0.0), |one, other| {
                if other > one { other } else { one }
            }),
        ),
        Labeled::new("longest length that can be brought", carried),
    );
    let longest = longest(job);
    for line in patterns(job, plan, asking.print()) {
        asking.note(|_| line.clone());
    }
    asking.say(|print| {
        let proof = if plan.is_least() {
            "nothing costs less, proved".to_owned()
        } else {
            format!("nothing comes below {}", least(job, plan.bound, print))
        };
        let bring = if handled.holds() {
            ""
        } else {
            " Buy shorter bars, or have them delivered and say so in the longest length."
        };
        format!(
            "{} pieces of {} come out of {} bars for {}; {proof}. The longest bar is {}, and {} can be brought.{bring}",
            job.count(),
            stock.what,
            plan.bars(),
            least(job, plan.cost, print),
            print.value(&handled.demand.value),
            print.q(carried),
        )
    });
    Outcome::worst([longest, handled]).unwrap_or(Outcome::Rule(true))
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        [[gate.leaf.member]]
        what = "upright"
        section = "HSS 2x2x1/8"
        length = "59 7/8 in"
        count = 4
        [[bar_stock]]
        id = "tube"
        what = "square tube"
        section = "HSS 2x2x1/8"
        kerf = "1/8 in"
        end_trim = "0 in"
        longest_carried = "20 ft"
        bar = [{ length = "240 in", price = "62.00 USD" }]
    "#;

    #[test]
    fn holds_with_four_uprights_out_of_one_bar() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 4 × 59.875 + 3 × 0.125 is 239.875 in.
        assert!(
            finding
                .sentence
                .contains("1 bars for 62.00 USD; nothing costs less, proved"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn holds_with_one_bar_more_where_the_saw_takes_the_rest() {
        let eight = SITE
            .replace("59 7/8 in", "60 in")
            .replace("count = 4", "count = 8");
        let finding = only(&CHECK, &eight);
        // By hand: 4 × 60 + 3 × 0.125 is over 240 in, so three bars.
        assert!(
            finding.sentence.contains("3 bars for 186.00 USD"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_a_piece_longer_than_every_bar_or_a_bar_too_long_to_carry() {
        let long = only(&CHECK, &SITE.replace("59 7/8 in", "21 ft"));
        assert_eq!(long.verdict, Verdict::Fails, "{}", long.sentence);
        let carried = only(&CHECK, &SITE.replace("\"20 ft\"", "\"16 ft\""));
        assert_eq!(carried.verdict, Verdict::Fails, "{}", carried.sentence);
        let few = SITE
            .replace("price", "at_most = 1, price")
            .replace("count = 4", "count = 5");
        assert_eq!(only(&CHECK, &few).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_price_or_without_the_saw() {
        let finding = only(&CHECK, &SITE.replace(", price = \"62.00 USD\"", ""));
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let saw = only(&CHECK, &SITE.replace("kerf = \"1/8 in\"", ""));
        assert_eq!(saw.verdict, Verdict::UnknownUntil, "{}", saw.sentence);
    }
}
