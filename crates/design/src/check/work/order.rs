//! Whether one pair of hands can do the tasks in an order that meets every need.
//!
//! The order that ends soonest is looked for among all orders in which each task comes after what it needs. What loads
//! concrete or adhesive waits for its cure at its temperature; what covers something waits until it has been seen and
//! photographed; what takes a delivery waits for it. Whatever else can be done fills the waiting days.

use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Outcome};
use crate::plain::{and, capitalized, counted};
use crate::plan::{Wish, WorkPlan};
use crate::subject::About;
use formula::{Evidence, Source};
use sim::job::Trouble;
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "work-order-and-cure",
    codes: BOTH,
    leaves_open: "illness, breakdowns and wrong deliveries; strength that nobody tests; what the inspector wants to see again",
    concerns: "each site with a gate",
    ask,
};

static ORDER: Source = Source {
    work: "critical path: each task after what it needs, one pair of hands, every order compared or bounded",
    clause: "",
    evidence: Evidence::Physics,
    seen: "held against every order tried one by one, and against another program",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.gate.is_empty() {
        let wish = Wish::default();
        round.ask_in_full(about(site), |asking| ordered(asking, site, &wish));
    }
}

/// The job of the site.
pub(crate) fn about(site: &Site) -> About<'_> {
    About::site(site.work.as_ref().map_or(&site.origin, |work| &work.origin))
}

/// The order of the tasks, or why there is none.
pub(crate) fn ordered<'s>(asking: &mut Asking<'s>, site: &'s Site, wish: &Wish) -> Answer {
    asking.rest_on(&ORDER);
    let plan = WorkPlan::read(asking, site, wish)?;
    if let Err(trouble) = &plan.found {
        let why = no_order(&plan, trouble);
        asking.say(|_| why);
        return Ok(Outcome::Rule(false));
    }
    let unseen = unseen(&plan);
    let cold: Vec<String> = plan
        .cures
        .iter()
        .filter(|cured| !cured.warmth.holds())
        .map(|cured| cured.task.id.to_string())
        .collect();
    note_the_plan(asking, &plan);
    asking.say(|_| {
        let mut said = in_order(&plan);
        if !cold.is_empty() {
            said = format!(
                "It is too cold for the cure of {}: keep it warm, or wait for warmer days.",
                and(&cold)
            );
        } else if !unseen.is_empty() {
            said = format!("{} would be covered without a photograph.", and(&unseen));
        }
        said
    });
    if !unseen.is_empty() {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::worst(plan.cures.iter().map(|cured| cured.warmth)).unwrap_or(Outcome::Rule(true)))
}

/// Tasks that are covered though no photograph of them is taken.
fn unseen(plan: &WorkPlan<'_>) -> Vec<String> {
    let covered = plan.site.task.iter().flat_map(|task| &task.covers);
    let mut unseen: Vec<String> = covered
        .filter(|id| {
            let task = plan.site.task.iter().find(|task| task.id == **id);
            let inspection = task.and_then(|task| task.inspection.as_ref());
            inspection.is_some_and(|inspection| inspection.photograph == Some(false))
        })
        .map(ToString::to_string)
        .collect();
    unseen.dedup();
    unseen
}

fn no_order(plan: &WorkPlan<'_>, trouble: &Trouble) -> String {
    let name = |at: &usize| {
        plan.tasks
            .get(*at)
            .map_or_else(String::new, |task| task.id.to_string())
    };
    match trouble {
        Trouble::Circle(circle) => format!(
            "{} wait for one another in a circle; none of them can begin.",
            and(&circle.iter().map(name).collect::<Vec<_>>())
        ),
        Trouble::NoRoom(task) => format!(
            "{} finds no day on which it can be done: it is longer than a day's hours or its light, or every day is taken off.",
            name(task)
        ),
    }
}

/// When it begins and ends, and what decides that.
fn in_order(plan: &WorkPlan<'_>) -> String {
    let shown = plan.shown();
    if shown.tasks.is_empty() {
        return "Every task of the job is done.".to_owned();
    }
    let chain: Vec<String> = shown
        .tasks
        .iter()
        .filter(|task| task.decides)
        .map(|task| task.id.clone())
        .collect();
    let idle = match shown.idle_days {
        0 => "no working day without work".to_owned(),
        1 => "one working day without work".to_owned(),
        days => format!("{days} working days without work"),
    };
    let proof = if shown.proved {
        String::from("no order ends sooner")
    } else {
        let days = (shown.end_minute - shown.bound_minute) / sim::job::DAY + 1;
        format!("another order might end up to {days} days sooner")
    };
    format!(
        "{} in {} of work, from {} to {}, with {idle}; {proof}. What decides the end: {}.",
        capitalized(&counted(shown.tasks.len(), "task")),
        counted(shown.days.len(), "day"),
        shown.begins,
        shown.ends,
        and(&chain)
    )
}

/// Each task with its time, as lines of the working.
fn note_the_plan(asking: &mut Asking<'_>, plan: &WorkPlan<'_>) {
    for task in plan.shown().tasks {
        asking.note(|_| {
            format!(
                "{}: from {} to {}, may slip {}; {}.",
                task.id,
                task.from,
                task.to,
                counted(task.slack_days as usize, "day"),
                task.because
            )
        });
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::work::example::SITE;

    #[test]
    fn holds_with_every_need_met() {
        let finding = only(&CHECK, SITE);
        assert_eq!(
            finding.verdict,
            Verdict::Holds,
            "{} {:?}",
            finding.sentence,
            finding.missing
        );
        assert!(
            finding.sentence.contains("no order ends sooner"),
            "{}",
            finding.sentence
        );
        assert!(
            finding.sentence.contains("task-pour"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_in_a_circle() {
        let circle = SITE.replace("loads = []", "loads = []\nafter = [\"task-hang\"]");
        let finding = only(&CHECK, &circle);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("circle"), "{}", finding.sentence);
    }

    #[test]
    fn fails_where_it_is_too_cold_or_too_long() {
        let cold = SITE.replace("temperature = \"54 °F\"", "temperature = \"36 °F\"");
        let finding = only(&CHECK, &cold);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("too cold"),
            "{}",
            finding.sentence
        );
        let long = SITE.replace("hours = \"4 h\"", "hours = \"14 h\"\nin_one_go = true");
        let finding = only(&CHECK, &long);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let unseen = SITE.replace("photograph = true", "photograph = false");
        assert_eq!(only(&CHECK, &unseen).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_hours_cure_and_inspection() {
        let bare = SITE
            .replace("hours = \"4 h\"", "")
            .replace("cement = \"normal\", ", "")
            .replace(
                "inspection = { by = \"county inspector\", wait = \"24 h\", photograph = true }",
                "",
            );
        let finding = only(&CHECK, &bare);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
        let none = SITE.split("[work]").next().unwrap();
        let finding = only(&CHECK, none);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing.len() >= 2, "{:?}", finding.missing);
    }
}
