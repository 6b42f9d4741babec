//! Whether somebody notices when the one who works alone is hurt, and sends help to the right place.
//!
//! Each task that is heavy, live, in the travel, at height or in a hole and that is done alone has a longest time between two
//! calls. The calls go by means that were tried from the gate line, to somebody who knows what to do when none comes, and who
//! can tell the rescue service the address and the way in.

use crate::asking::{Asking, Wants, need, read};
use crate::check::work::order::about;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::{capitalized, counted};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Time};
use site::{Site, Task, TaskKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lifting-lone-check-in",
    codes: BOTH,
    leaves_open: "whether the calls are made; how long the rescue service takes; first aid on the spot",
    concerns: "each site with tasks",
    ask,
};

static CALLS: Source = Source {
    work: "whoever does something dangerous alone is heard of at least once an hour, by means tried on the spot",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as lone work is watched",
};

/// Longest time between two calls, in seconds.
const LONGEST: f64 = 3600.0;

/// How it is written who watches.
const CHECK_IN: &str = "{ person = \"office\", no_call = \"rings the owner, then the rescue service\", means = \"phone\", tried = 2026-05-04, address = \"end of the quay road\", way_in = \"keypad\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.task.is_empty() {
        round.ask(about(site), |asking| watched(asking, site));
    }
}

fn watched<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&CALLS);
    let marked: Vec<Result<(), Halt>> = site.task.iter().map(|task| marked(asking, task)).collect();
    let alone: Vec<&Task> = site.task.iter().filter(|task| is_alone(task)).collect();
    let calls: Vec<(&Task, Result<Time, Halt>)> = alone
        .iter()
        .map(|task| (*task, read!(asking, task.check_in)))
        .collect();
    let watch = if alone.is_empty() {
        Ok(None)
    } else {
        watch(asking, site).map(Some)
    };
    for marked in marked {
        marked?;
    }
    let watch = watch?;
    let mut compared = Vec::new();
    for (task, call) in calls {
        let comparison = Comparison::at_most(
            Labeled::new("longest time between two calls", call?),
            Labeled::new(
                "longest that somebody may lie unheard",
                Time::from_base(LONGEST),
            ),
        );
        compared.push((task, comparison));
    }
    let late = compared.iter().find(|one| !one.1.holds()).map(|one| one.0);
    asking.say(|print| match (late, watch) {
        (Some(task), _) => format!(
            "During {} nobody hears for longer than {}: shorten the time between calls, or have a helper.",
            task.id,
            print.q(Time::from_base(LONGEST))
        ),
        (None, Some(person)) => format!(
            "{} alone and with danger; {person} is called at least every {}, tried from the gate line, and knows the address and the way in.",
            capitalized(&counted(compared.len(), "task")),
            print.q(longest(&compared))
        ),
        (None, None) => "Nothing that is heavy, live, in the travel, at height or in a hole is done alone.".to_owned(),
    });
    Ok(Outcome::worst(compared.into_iter().map(|one| one.1)).unwrap_or(Outcome::Rule(true)))
}

/// A task whose kind is dangerous says so.
fn marked<'s>(asking: &mut Asking<'s>, task: &'s Task) -> Result<(), Halt> {
    let write = match task.kind {
        Some(TaskKind::Dig) => "[\"in a hole\"]",
        Some(TaskKind::Hang) => "[\"heavy\", \"in the travel\"]",
        Some(TaskKind::SwitchOn) => "[\"live\"]",
        Some(TaskKind::ForceTest) => "[\"in the travel\"]",
        _ => return Ok(()),
    };
    if task.done.is_none() && task.risk.is_empty() {
        return asking.lack(&task.origin, "risk", Wants::Written(write));
    }
    Ok(())
}

/// It is dangerous, and for some of its time nobody helps.
fn is_alone(task: &Task) -> bool {
    let helped_throughout = task.helper.is_some() && task.helper_hours.is_none();
    task.done.is_none() && !task.risk.is_empty() && !helped_throughout
}

/// Who watches, by what, and what they can tell.
fn watch<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<String, Halt> {
    let Some(work) = &site.work else {
        return asking.lack(&site.origin, "work.check_in", Wants::Written(CHECK_IN));
    };
    let Some(check_in) = &work.check_in else {
        return asking.lack(&work.origin, "check_in", Wants::Written(CHECK_IN));
    };
    let person = need!(asking, check_in.person, "\"office\"");
    let no_call = need!(
        asking,
        check_in.no_call,
        "\"rings the owner, then the rescue service\""
    );
    let means = need!(asking, check_in.means, "\"phone\"");
    let tried = need!(asking, check_in.tried, "2026-05-04");
    let address = need!(asking, check_in.address, "\"end of the quay road\"");
    let way_in = need!(asking, check_in.way_in, "\"keypad\"");
    no_call?;
    means?;
    tried?;
    address?;
    way_in?;
    Ok(person?.to_string())
}

fn longest(compared: &[(&Task, Comparison)]) -> Time {
    let calls = compared
        .iter()
        .filter_map(|(task, _)| task.check_in.as_ref());
    let longest = calls.map(|call| call.nominal().base()).fold(0.0, f64::max);
    Time::from_base(longest)
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::work::example::SITE;

    #[test]
    fn holds_with_calls_that_were_tried() {
        let finding = only(&CHECK, SITE);
        assert_eq!(
            finding.verdict,
            Verdict::Holds,
            "{} {:?}",
            finding.sentence,
            finding.missing
        );
        assert!(finding.sentence.contains("office"), "{}", finding.sentence);
    }

    #[test]
    fn fails_unheard_for_hours() {
        let rare = SITE.replace("check_in = \"1 h\"", "check_in = \"4 h\"");
        let finding = only(&CHECK, &rare);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("task-dig"),
            "{}",
            finding.sentence
        );
        let helped = rare.replace("check_in = \"4 h\"", "helper = \"second hand\"");
        assert_eq!(only(&CHECK, &helped).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_untried_and_unmarked() {
        let bare = SITE
            .replace("tried = 2026-05-04, ", "")
            .replace("risk = [\"in a hole\"]", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
